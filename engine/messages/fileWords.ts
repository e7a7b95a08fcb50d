import { wordCount, wordList } from './numbers.ts';

/*
 * What the window says of its files: commands, banners, questions. Times come worded, because only the window knows how the user's
 * system writes them.
 */

/** Labels of the commands about files. */
export const fileCommandLabels = {
  newCabinet: 'New cabinet',
  newCase: 'New case of this cabinet',
  openSample: 'Open a sample',
  openFile: 'Open a cabinet or a case…',
  openRecent: 'Open a recent file',
  openKeptCopy: 'Open the copy kept before the last save',
  save: 'Save',
  saveCaseAs: 'Save the case as…',
  saveCabinetAs: 'Save the cabinet as…',
  revert: 'Go back to the saved file',
  showDocuments: 'Documents…',
  chooseMachines: 'Print other machines along…',
  addMachines: 'Print these machines along',
  dropMachines: 'Print this cabinet alone',
  importList: 'Import a list…',
  showImport: 'Show what a list would do',
  takeImport: 'Take the list over',
  closePapers: 'Close the documents',
  exportFile: 'Save a document',
  listRecent: 'List recent files',
  loadOutside: 'Load it from the disk',
  keepMine: 'Keep mine',
  takeCabinet: 'Use the cabinet of today',
  answerQuestion: 'Answer',
  putAlertAway: 'Put away',
} as const;

const parts = { case: 'The case', cabinet: 'The cabinet' } as const;

/** How many things two documents or two cabinets differ in. */
export interface DifferenceCounts {
  readonly units: number;
  readonly links: number;
  readonly leads: number;
  /** Everything else of the cabinet: types, legends, spares, names. */
  readonly other: number;
  readonly displays: number;
  readonly reports: number;
  /** Everything else of the case. */
  readonly caseOther: number;
}

/** "2 units, 1 link and 3 displays differ." */
function wordDifferences(counts: DifferenceCounts): string {
  const { units, links, leads, other, displays, reports, caseOther } = counts;
  const things: readonly (readonly [number, string])[] = [
    [units, 'unit'],
    [links, 'link'],
    [leads, 'lead'],
    [other, 'other entry of the cabinet'],
    [displays, 'display'],
    [reports, 'report'],
  ];
  const named = things
    .filter(([count]) => count > 0)
    .map(([count, thing]) => (thing.includes(' ') && count > 1 ? `${count} other entries of the cabinet` : wordCount(count, thing)));
  const list = [...named, ...(caseOther > 0 ? ['other entries of the case'] : [])];
  const total = units + links + leads + other + displays + reports;
  if (list.length === 0) return 'They say the same.';
  return `${wordList(list)} ${total === 1 && caseOther === 0 ? 'differs' : 'differ'}.`;
}

const wordRevision = (revision: string | null) => (revision === null ? 'without a revision' : `revision ${revision}`);

export const fileWords = {
  openedExercise: (name: string) => `${name}: the exercise is opened.`,
  /** Where the document in the window comes from; follows its name. */
  source: { sample: 'sample', file: 'file', new: 'new', copy: 'copy', restored: 'restored' },
  unsaved: 'not saved',
  today: (time: string) => `today ${time}`,
  title: (name: string, unsaved: boolean) => `${unsaved ? '● ' : ''}${name} – Linkwright`,
  newCabinetName: 'New cabinet',

  recent: 'Open recent',
  recentNone: 'Nothing has been opened yet.',
  recentMissing: 'not found',
  saved: (name: string) => `${name} is saved.`,
  alreadyOpen: (name: string) => `${name} is open already.`,
  openedAsCopy: (name: string) => `${name} is open as a copy. Saving asks for its place.`,
  openedKept: (name: string, time: string) => `Open: the copy of ${name} that was kept before the save of ${time}.`,
  refusedTitle: {
    open: (name = 'The file') => `${name} was not opened`,
    kept: (name = 'the file') => `There is no kept copy of ${name}`,
    restore: () => 'The unsaved work of an earlier run cannot be read',
    start: () => 'Please note',
    export: (name = 'The file') => `${name} was not saved`,
    delete: () => 'Not everything was deleted',
  },
  exported: (name: string) => `Saved: ${name}.`,
  keptThere: (time: string) => `There is a copy of it as it stood before its last save here, of ${time}.`,
  openKept: 'Open that copy',
  nothingKept: (name: string) => `A copy of ${name} is made when a save replaces it; that has not happened yet.`,
  dropHint: 'Drop a cabinet or a case here',
  dropOne: 'One file at a time can be opened. The first was taken.',

  /** What the browser cannot do; stands in the file menu. */
  limits: {
    browser: 'In a browser: saved in place where you allow it. Unsaved work is kept in this browser only, until its data are cleared.',
    download:
      'In this browser: saving is a download, and only you see whether it arrived. Unsaved work is kept in this browser only, until its data are cleared.',
  },

  alerts: {
    region: 'Notices about files',
    close: 'Put away',
    'not-saved': (part: keyof typeof parts, name: string) => `${parts[part]} is not saved: ${name}.`,
    again: 'Try again',
    saveAs: 'Save as…',
    'changed-outside': (name: string, time: string) => `Another program changed ${name}: ${time}.`,
    changedWhat: 'What stands in this window is older, or has your own changes. Nothing has been replaced.',
    load: 'Load it from the disk',
    keepMine: 'Replace it with mine',
    gone: (name: string) => `${name} is not there any more.`,
    goneWhat: 'It was moved, renamed or deleted, or its drive is not connected. Your work is still in this window.',
    saveThere: 'Save it there again',
    'no-recovery': 'No recovery copy can be kept.',
    downloaded: (name: string) => `${name} was handed to the browser.`,
    downloadedWhat: 'Only you can see whether it arrived among the downloads. Look there before you close this page.',
    restored: (kept: string) => `Restored: your unsaved work of ${kept}.`,
    restoredFile: (name: string, time: string) => `${name} on the disk is older: ${time}. It does not have this work yet.`,
    restoredNoTime: (name: string) => `It belongs to ${name}, and is not saved there yet.`,
    restoredNoFile: 'It has not been saved as a file yet.',
    others: (count: number) => `${wordCount(count, 'other piece')} of unsaved work will be offered at the next start.`,
    save: 'Save',
    goBack: 'Go back to the saved file',
    'cabinet-changed': (name: string, copy: string | null, today: string | null) =>
      copy === today
        ? `${name} has changed since this case was saved.`
        : `${name} has changed since this case was saved: then ${wordRevision(copy)}, today ${wordRevision(today)}.`,
    cabinetChangedWhat: 'The case shows the cabinet as it was then.',
    compare: 'Compare',
    useToday: 'Use the cabinet of today',
    keepCopy: 'Leave it as it was',
  },
  differences: wordDifferences,
  usedToday: (name: string) => `cabinet of today, ${name}`,

  questions: {
    unsaved: {
      title: (name: string) => `“${name}” is not saved`,
      what: {
        close: 'The window is about to close.',
        open: 'Another document is about to take its place.',
        new: 'A new document is about to take its place.',
        machine: 'The new machine will say that it is based on this design, and will be compared with it. So the design is saved first.',
        revert: 'The saved file is about to take its place.',
      },
      lost: 'Without saving, what you changed since the last save is gone for good.',
      save: 'Save',
      saveDesign: 'Save the design, then make the machine',
      discard: 'Do not save',
      cancel: 'Cancel',
    },
    revert: {
      title: (name: string) => `Go back to “${name}” as it was saved?`,
      what: (time: string) => `The file on the disk is of ${time}. What you changed since then is gone for good.`,
      discard: 'Go back to the saved file',
      cancel: 'Cancel',
    },
    recovery: {
      title: 'There is unsaved work, but the file is newer',
      what: (name: string) => `The program ended with unsaved work on ${name}. Since then the file was changed on the disk.`,
      kept: 'Unsaved work',
      file: 'File on the disk',
      unreadable: 'The file on the disk does not open.',
      restore: 'Open the unsaved work as a copy',
      restoreHow: 'The file stays as it is; saving asks for a new place.',
      discard: 'Open the file, drop the unsaved work',
      later: 'Decide later',
    },
  },
} as const;
