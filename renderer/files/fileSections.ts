/** The lines of the file menu, section by section. */
export const fileSections = [
  ['new-cabinet', 'new-case'],
  ['open-file', 'open-kept-copy'],
  ['save', 'save-case-as', 'save-cabinet-as', 'revert'],
  ['show-documents', 'import-list'],
  ['close-window', 'quit'],
] as const;
