import type { Problem } from '../../engine/base/index.ts';
import { fileWords } from '../../engine/messages/index.ts';
import { saveReport } from '../handback/saveReport.ts';
import type { FileActions, FileRef } from '../state/sitting.ts';
import { sortMachines } from './chooseMachines.ts';
import { type Desk, refuseOpening } from './desk.ts';

type Beside =
  | 'exportFile'
  | 'saveApart'
  | 'chooseResults'
  | 'deleteResults'
  | 'chooseMachines'
  | 'importList'
  | 'saveReport'
  | 'cancelReport';

/** What is done with files that are not the document: what is made of it, lists, results of exercises, other machines. */
export function makeFilesBeside(desk: Desk, inTurn: <T>(work: () => Promise<T>) => Promise<T>): Pick<FileActions, Beside> {
  const { bench, access, now } = desk;
  const { store } = bench;
  let reportCancelled = new AbortController();
  return {
    exportFile: (proposedName, content, kind) =>
      inTurn(async () => {
        const done = await access.exportFile(proposedName, content, kind);
        if (!done.ok) bench.refuse({ deed: 'export', name: proposedName, problems: done.problems });
        else if (done.value !== null) bench.announce(fileWords.exported(done.value));
      }),
    saveApart: (proposedName, content) =>
      inTurn(async () => {
        const saved = await access.saveAs(proposedName, content);
        if (!saved.ok) {
          bench.refuse({ deed: 'export', name: proposedName, problems: saved.problems });
          return null;
        }
        if (saved.value !== null) bench.announce(fileWords.exported(saved.value.name));
        return saved.value?.name ?? null;
      }),
    chooseResults: (from) =>
      inTurn(async () => {
        const chosen = await access.chooseJsonFiles(from);
        if (chosen.ok) return chosen.value;
        refuseOpening(bench, undefined, chosen.problems);
        return null;
      }),
    deleteResults:
      access.deleteResult === undefined
        ? null
        : (wanted) =>
            inTurn(async () => {
              const gone: FileRef[] = [];
              const problems: Problem[] = [];
              for (const file of wanted) {
                const done = await access.deleteResult?.(file);
                if (done?.ok === true) gone.push(file);
                else problems.push(...(done?.problems ?? []));
              }
              if (problems.length > 0) bench.refuse({ deed: 'delete', problems });
              return gone;
            }),
    chooseMachines: (from) =>
      inTurn(async () => {
        const chosen = await access.chooseJsonFiles(from);
        if (!chosen.ok) return refuseOpening(bench, undefined, chosen.problems);
        if (chosen.value === null) return;
        if (chosen.value.problems.length > 0) refuseOpening(bench, undefined, chosen.value.problems);
        bench.dispatch('add-machines', sortMachines(store.getState().cabinet, chosen.value.files));
      }),
    importList: () =>
      inTurn(async () => {
        const list = await access.chooseList();
        if (!list.ok) refuseOpening(bench, undefined, list.problems);
        else if (list.value) bench.dispatch('show-import', { list: list.value });
      }),
    saveReport: (choice) =>
      inTurn(() => {
        reportCancelled = new AbortController();
        return saveReport(bench, access, choice, now(), reportCancelled.signal);
      }),
    cancelReport: () => reportCancelled.abort(),
  };
}
