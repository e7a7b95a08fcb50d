/** What the desktop program says where its page cannot: in its menu, and when the page is what failed. */
export const shellWords = {
  pageMissingTitle: 'Linkwright cannot show its window',
  pageMissing: 'The built page is missing or cannot be read. Run "npm run build" in the program\'s folder, then start again.',
  pageCrashedTitle: 'The window stopped three times in a row',
  pageCrashed: 'Close the program and start it again. If it happens once more, start it without a file.',
  unresponsiveTitle: 'The window does not answer',
  unresponsive: 'It may be busy with a long calculation. You can wait, or load the window again.',
  wait: 'Wait',
  loadAgain: 'Load again',
  ourFiles: 'Cabinets and cases',
  allFiles: 'All files',
  exports: { pdf: 'PDF', zip: 'PDFs in a ZIP', html: 'Web page', csv: 'List (CSV)', graphml: 'Graph (GraphML)' },
  lists: 'Lists (CSV, GraphML)',
  file: 'File',
  edit: 'Edit',
  view: 'View',
  window: 'Window',
} as const;

/** What the start command says. Each sentence takes the facts it names. */
export const startWords = {
  help: `Use: npm start -- [options] [file]

Opens Linkwright in a window of its own. Where no window is to be had, it serves the same program as a page on this machine.

  file           a cabinet or case file to open
  --web          serve the page, even where a window could be opened
  --port N       port of the page (default: any free one)
  --no-sandbox   open the window without the system's sandbox; only for test machines that run everything as root
  -h, --help     show this text

Example: npm start -- --web --port 8080`,
  badUse: (detail: string) => `Not understood: ${detail}.`,
  badPort: (given: string) => `"${given}" is no port: give a whole number from 0 to 65535.`,
  fileMissing: (file: string) => `There is no file ${file}.`,
  noWindow: {
    'no-display': 'no display was found (neither DISPLAY nor WAYLAND_DISPLAY is set).',
    root: 'the desktop runtime does not work for root. Start it as an ordinary user; on a test machine: npm start -- --no-sandbox',
  },
  fetching: (minutes: number) =>
    `The desktop runtime is not here yet. Fetching it, once, for at most ${minutes} minutes.\nTo do without: Ctrl-C, then npm start -- --web`,
  fetchTooSlow: 'the desktop runtime could not be fetched in time.',
  fetchFailed: (said: string) => `the desktop runtime could not be fetched (${said}).`,
  runtimeMissing: (program: string) => `the desktop runtime is missing (${program}).`,
  windowRefused: (said: string) => `the desktop runtime could not open a window${said ? ` (${said})` : ''}.`,
  askedForWeb: '--web was given.',
  servedBecause: (why: string) => `Linkwright runs as a page in your browser: ${why}`,
  address: (address: string) => `Open this address in a browser on this machine:\n\n  ${address}\n`,
  openFilesYourself: (files: readonly string[]) => `A page cannot read files by itself. Open there: ${files.join(', ')}`,
  windowOpen: 'Linkwright runs in a window of its own.',
  howToEnd: 'Ctrl-C ends it.',
  notServed: (port: number, said: string) =>
    `The page could not be served${port ? ` on port ${port}` : ''} (${said}). Try another port, and whether "npm run build" works.`,
} as const;
