import type { Fix, FixName } from '../edit/index.ts';
import { wordField } from './fields.ts';
import { wordCount, wordList } from './numbers.ts';

/*
 * What the window says where a cabinet is edited by fields, lists and problems.
 */

/** Labels of the commands of editing. */
export const editCommandLabels = {
  chooseColumns: 'Columns of the list…',
  setFields: 'Change fields',
  fixProblem: 'Mend a problem',
  renumber: 'Number designations anew',
  reconnectLead: 'Connect a lead elsewhere',
  addPicture: 'Add a picture',
  removePicture: 'Take a picture out',
  addFeedback: 'Add a feedback cable',
  addRecord: 'Add a line',
  removeRecord: 'Take a line out',
  closeRefusal: 'Close',
  compareSaved: 'Compare with what was saved',
  compareFile: 'Compare with a file…',
  closeComparison: 'Stop comparing',
  newMachine: 'New machine from this design…',
  makeMachine: 'Make the machine',
} as const;

const mostNamed = 3;

export const editWords = {
  /** Things of several kinds together. */
  things: 'things',
  inspector: {
    title: 'Inspector',
    cabinet: 'nothing chosen',
    chosen: (count: number) => (count === 1 ? '1 chosen' : `${count} chosen`),
    which: 'Of what is chosen',
    mixed: 'differ',
    several: 'Several values. What is typed here is set for all of them.',
    open: 'not said',
    yes: 'yes',
    no: 'no',
    unknownOption: (value: string) => `${value} (not there)`,
    notANumber: 'Write a number, with a point or a comma before its decimals.',
    notWhole: 'Write a whole number.',
    addRow: 'Add',
    rowMenu: (what: string) => `${what}: what to do`,
    insertRow: 'Insert a line above',
    rowUp: 'Move up',
    rowDown: 'Move down',
    removeRow: 'Take out',
    rowOf: (label: string, row: number) => `${label}, line ${row}`,
    equipment: 'Open the type',
    equipmentHint: 'Light and behaviour of a unit stand with its type of equipment.',
    designation: {
      'no-sign': 'No prefix sign: = function, + location, − product.',
      'no-letters': 'No class letters before the number.',
      'digit-first': 'A letter comes before the digits: -Q1, not -1Q1.',
      'other-class': (letters: string, edition: string) => `Other class letters than ${letters}, which IEC 81346-2 (${edition}) gives.`,
    },
    /** Why a number counts that nobody wrote down. */
    leftOpen: (why: string) => `Left open: ${why}.`,
    bySums: 'worked out by the sums of the DC link',
    assumed: 'an assumed figure; the cabinet’s own is better',
    numberAnew: 'Number designations anew',
    numberHint: 'In the order in which they were chosen, with the class letters of their kinds.',
    numberPrefix: 'Before the letters',
    numberFirst: 'First number',
    numberPrefixWrong: 'It begins with = or + or -, and ends with -: such as =M1+S2-.',
    numberFirstWrong: 'Write a whole number from 0 to 99999.',
    connections: {
      title: 'Where it hangs',
      place: 'Counted as',
      above: 'Towards the controller',
      below: 'Away from it',
      fedBy: 'Fed by',
      feeds: 'Feeds',
      feedbacks: 'Feedback cables',
      upper: 'Upper plug',
      lower: 'Lower plug',
      from: 'From',
      to: 'To',
      units: 'Units',
      cap: 'dust cap',
      nothing: 'nothing',
      derived: 'Worked out from cables and leads.',
    },
    problems: 'Problems here',
    pictures: {
      add: 'Add a picture',
      file: 'Picture file',
      remove: (caption: string) => `Take out ${caption}`,
      picture: (number: number) => `picture ${number}`,
    },
  },
  lists: {
    region: 'Lists',
    tabs: {
      units: 'Units',
      links: 'Cables',
      leads: 'Leads',
      feedbacks: 'Feedback cables',
      chains: 'Chains',
      spares: 'Spares',
      fibres: 'Fibres',
      types: 'Types',
    },
    empty: {
      units: 'No units yet. Insert them from the shelf, or paste rows of a table.',
      links: 'No cables yet. Units that are put onto a chain bring theirs along.',
      leads: 'No leads yet. Choose a unit and feed it from a supply.',
      feedbacks: 'No feedback cables yet.',
      chains: 'No chains yet. Add one from the shelf.',
      spares: 'No spares yet. A spare of equal part number can be offered as a next step.',
      fibres: 'No fibres yet. The light budget needs the attenuation of the fibre.',
      types: 'No types of equipment yet.',
    },
    place: 'Counted as',
    upper: 'Upper plug',
    lower: 'Lower plug',
    from: 'From',
    to: 'To',
    units: 'Units',
    hint: 'Enter goes down. Cells copied from a spreadsheet can be pasted into several cells at once. Other fields stand in the inspector, and can be shown as columns.',
    columns: {
      button: 'Columns',
      of: (table: string) => `Columns: ${table}`,
      count: (shown: number, all: number) => `${shown} of ${all}`,
      usual: 'The usual columns',
    },
    chooseHead: 'Choose',
    removeHead: 'Take out',
    choose: (line: number, name: string) => `${line}: choose ${name}`,
    cell: (row: string, column: string) => `${row}: ${column}`,
    port: { chain: (number: number) => `controller, chain ${number}`, unit: (name: string) => name },
    output: (supply: string, output: string) => `${supply}, ${output}`,
    add: { spares: 'Add a spare', fibres: 'Add a fibre', types: 'Add a type', feedbacks: 'Add a feedback cable of' },
    newName: { spares: '', fibres: 'New fibre', types: 'New type' },
    remove: (name: string) => `Take ${name} out`,
    pasted: (count: number) => `${wordCount(count, 'cell')} pasted.`,
    pasteTrouble: (row: number, column: string, trouble: string) =>
      `Nothing was pasted. Row ${row} of what was copied, ${column}: ${trouble}`,
    notAnOption: (word: string) => `“${word}” is none of what can be chosen there.`,
    pasteBesides: 'It reaches beyond the last column.',
  },
  problems: {
    region: 'Problems',
    none: 'No problems found.',
    show: 'Show',
    showOf: (what: string) => `Show: ${what}`,
    more: 'Why, and what to do',
    numberCables: (cables: number) => `Number ${wordCount(cables, 'cable')} without designation`,
    feedSeveral: (units: number, supply: string) => `Feed ${wordCount(units, 'unit')} from ${supply}`,
    fold: (shown: boolean) => (shown ? 'Fold the problems' : 'Unfold the problems'),
    count: (errors: number, incomplete: number, warnings: number) =>
      [
        errors > 0 ? wordCount(errors, 'error') : '',
        incomplete > 0 ? `${incomplete} incomplete` : '',
        warnings > 0 ? wordCount(warnings, 'warning') : '',
      ]
        .filter((part) => part !== '')
        .join(', '),
  },
  fixes: {
    'feed-from': ({ to }) => `Feed it from ${to}`,
    'feed-all-from': ({ to }) => `Feed all of them from ${to}`,
    'number-next': ({ to }) => `Call it ${to}`,
    'take-out': ({ thing }) => `Take ${thing} out`,
    'take-out-chain': ({ thing }) => `Take chain ${thing} out`,
    'add-controller': () => 'Add the controller',
    'move-to-end': ({ thing, to }) => `Move ${thing} to the end of row ${to}`,
    'hang-at-end': ({ to }) => `Hang it at the end of chain ${to}`,
    'number-chain': () => 'Give it the next number',
    'pull-others': ({ thing }) => `Keep ${thing}, pull the others`,
    'turn-lead': ({ thing }) => `Turn ${thing} round`,
    'forget-reference': () => 'Forget what is not there',
    'swap-figures': () => 'Exchange the two figures',
    'merge-codes': ({ thing }) => `Make one entry of ${thing}`,
    'clear-field': () => 'Take them out',
    'drop-line': () => 'Take this line out',
  } satisfies { readonly [F in FixName]: (facts: Fix['facts']) => string },
  steps: {
    addPicture: (what: string) => `picture of ${what}`,
    removePicture: (what: string) => `take a picture of ${what} out`,
    fix: (what: string) => lowerFirst(what),
    renumber: (count: number) => `designations of ${wordCount(count, 'thing')}, numbered anew`,
    reconnect: (lead: string) => `another end of ${lead}`,
    addFeedback: (unit: string) => `feedback cable of ${unit}`,
    addRecord: (table: string) => `new ${table}`,
    removeRecord: (name: string) => `without ${name}`,
    /** "length of cable -WH3", "serial number of 4 units". */
    fields: (paths: readonly string[], things: readonly string[], many: string) => {
      const labels = [...new Set(paths)].map((path) => wordField(path).label);
      const what = labels.length > mostNamed ? wordCount(labels.length, 'field') : wordList(labels);
      const [only] = things;
      return `${lowerFirst(what)} of ${things.length === 1 && only !== undefined ? only : `${things.length} ${many}`}`;
    },
  },
} as const;

function lowerFirst(text: string): string {
  // "DC link" and "24 V" keep their letters.
  return /^[A-Z][a-z]/.test(text) ? text.charAt(0).toLowerCase() + text.slice(1) : text;
}
