import { serializeCase } from '../../engine/cabinet/index.ts';
import { loadSample, readDocument } from '../samples/sampleCabinets.ts';
import type { CanvasControl } from '../state/command.ts';
import type { MakeEffects, Workbench } from '../state/dispatcher.ts';
import { askForFile, type IncomingFile, saveText } from './files.ts';

type Taker = Pick<Workbench, 'openDocument' | 'refuse'>;

/** Opens what stands in a file, or tells why not. */
export function takeFile(bench: Taker, file: IncomingFile): void {
  take(bench, file.name, 'file', readDocument(file.name, file.content));
}

function take({ openDocument, refuse }: Taker, name: string, kind: 'sample' | 'file', source: ReturnType<typeof readDocument>): void {
  if (source.ok) openDocument(source.value, { kind, name });
  else refuse({ deed: 'open', name, problems: source.problems });
}

/** What commands do besides changing the state: samples, files, the picture. */
export function makeEffects(canvas: () => CanvasControl | null): MakeEffects {
  return (bench) => ({
    canvas,
    async openSample(name) {
      take(bench, name, 'sample', await loadSample(name));
    },
    async openFile() {
      const file = await askForFile();
      if (!file.ok) bench.refuse({ deed: 'open', problems: file.problems });
      else if (file.value) takeFile(bench, file.value);
    },
    async saveCase() {
      const { cabinet, caseRecord } = bench.store.getState();
      const saved = await saveText(`${caseRecord.id}.case.json`, serializeCase({ ...caseRecord, cabinet }));
      if (!saved.ok) bench.refuse({ deed: 'save', problems: saved.problems });
    },
  });
}
