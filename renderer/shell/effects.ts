import { serializeCase } from '../../engine/cabinet/index.ts';
import { loadSample, readDocument } from '../samples/sampleCabinets.ts';
import type { CanvasControl } from '../state/command.ts';
import type { MakeEffects } from '../state/dispatcher.ts';
import { chooseFile, offerFile } from './browserFiles.ts';

/** What commands do besides changing the state: samples, files, the picture. */
export function makeEffects(canvas: () => CanvasControl | null): MakeEffects {
  return ({ store, openDocument, refuse }) => {
    const take = (name: string, kind: 'sample' | 'file', source: ReturnType<typeof readDocument>) => {
      if (source.ok) openDocument(source.value, { kind, name });
      else refuse({ name, problems: source.problems });
    };
    return {
      canvas,
      async openSample(name) {
        take(name, 'sample', await loadSample(name));
      },
      async openFile() {
        const file = await chooseFile('.json,application/json');
        if (file) take(file.name, 'file', readDocument(file.name, file.content));
      },
      saveCase() {
        const { cabinet, caseRecord } = store.getState();
        offerFile(`${caseRecord.id}.case.json`, serializeCase({ ...caseRecord, cabinet }));
      },
    };
  };
}
