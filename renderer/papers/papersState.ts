import type { CabinetContent } from '../../engine/schema/index.ts';
import type { ListFile } from '../files/access.ts';

/** Another machine of the same design, read from a file to be printed along. */
export interface OtherMachine {
  readonly file: string;
  readonly content: CabinetContent;
}

/** Files that were chosen as machines, and what became of them. */
export interface ChosenMachines {
  readonly machines: readonly OtherMachine[];
  /** Names of files that hold no cabinet of this design. */
  readonly leftOut: readonly string[];
}

/** What is open of documents and imports: nothing, the documents, or a list that is to be imported. */
export type PapersState =
  | { readonly shown: 'nothing' }
  | ({ readonly shown: 'documents' } & ChosenMachines)
  | { readonly shown: 'import'; readonly list: ListFile };

export const noPapers: PapersState = { shown: 'nothing' };
export const noMachines: ChosenMachines = { machines: [], leftOut: [] };
