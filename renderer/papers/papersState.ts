import type { ListFile } from '../files/access.ts';

/** What is open of documents and imports: nothing, the documents, or a list that is to be imported. */
export type PapersState = { readonly shown: 'nothing' | 'documents' } | { readonly shown: 'import'; readonly list: ListFile };

export const noPapers: PapersState = { shown: 'nothing' };
