import type { Severity } from '../base/index.ts';
import type { LinkEnd, OrdinalGroup, UnitKind } from '../schema/index.ts';
import { startSentence, wordCount, wordList } from './numbers.ts';
import { severityWords } from './problems.ts';
import { wordNumber } from './quantities.ts';

/*
 * What Draw says: labels of its commands, words on its drawing, what a screen reader hears.
 */

/** Labels of the commands of Draw. */
export const drawCommandLabels = {
  layCable: 'A loose cable',
  goDraw: 'Draw',
  goFind: 'Find',
  goPractice: 'Practice',
  choose: 'Choose',
  chooseAll: 'Choose all',
  chooseNone: 'Choose nothing',
  chooseChain: 'Choose the whole chain',
  chooseUpstream: 'Choose towards the controller',
  chooseDownstream: 'Choose away from the controller',
  showDrawing: 'Drawing',
  showLists: 'Lists',
  toggleDrawView: 'Drawing or lists',
  toggleArrangement: 'Mounting order',
  toggleFeedback: 'Feedback cables',
  insertServo: 'Insert a servo drive',
  insertSpindle: 'Insert a spindle drive',
  insertEncoder: 'Insert an encoder interface',
  insertSupply: 'Insert a supply',
  insertUnits: 'Insert units',
  addChain: 'Add a chain',
  removeThings: 'Delete',
  moveUnits: 'Move',
  takeOffChain: 'Take off the chain',
  moveBack: 'Move towards the controller',
  moveOn: 'Move away from the controller',
  moveUp: 'Move to the row above',
  moveDown: 'Move to the row below',
  joinPorts: 'Join two ports',
  replugEnd: 'Plug in elsewhere',
  feedUnits: 'Feed with 24 V',
  cut: 'Cut',
  copy: 'Copy',
  paste: 'Paste',
  duplicate: 'Duplicate',
  connectTo: 'Connect to…',
  findThing: 'Find…',
  palette: 'All commands…',
  pasteRows: 'Paste rows…',
  openDrawDialog: 'Open',
  closeDrawDialog: 'Close',
  hold: 'Take a kind from the shelf',
  editChosen: 'Go to the inspector',
} as const;

const summary = (chains: number, units: number, supplies: number) =>
  wordList([
    ...(chains > 0 ? [wordCount(chains, 'chain')] : []),
    wordCount(units, 'unit'),
    ...(supplies > 0 ? [supplies === 1 ? '1 supply' : `${supplies} supplies`] : []),
  ]);

const kinds: { readonly [K in UnitKind]: string } = {
  'servo-drive': 'Servo drive',
  'spindle-drive': 'Spindle drive',
  'encoder-interface': 'Encoder interface',
  supply: 'Supply',
};

/** "-TB3 becomes drive 4.", "-TB3 and -TB4 become drive 4 and drive 5.", "5 units are numbered anew." */
function wordRenumbered(list: readonly { readonly unit: string; readonly now: string }[]): string {
  const [only] = list;
  if (only === undefined) return '';
  if (list.length === 1) return `${only.unit} becomes ${only.now}.`;
  if (list.length > 3) return `${wordCount(list.length, 'unit')} behind it are numbered anew.`;
  return `${wordList(list.map(({ unit }) => unit))} become ${wordList(list.map(({ now }) => now))}.`;
}

export const drawWords = {
  workspaces: { label: 'Workspaces', draw: 'Draw', find: 'Find', practice: 'Practice' },
  region: 'Cabinet, drawing',
  title: 'Cabinet',
  summary,
  views: { label: 'View', drawing: 'Drawing', lists: 'Lists' },
  arrangements: { label: 'Order', chain: 'chain order', mounting: 'mounting order' },
  shelf: {
    region: 'Shelf',
    kinds,
    chains: 'Chains',
    addChain: 'Add a chain',
    controllerHint: 'Each chain begins at a port of the controller; a cabinet has one controller.',
    cable: 'Optical cable',
    newCable: 'a new cable',
    cableHint: 'Cables are drawn from port to port. From here one is dragged onto a port, or laid loose by a click.',
    loose: 'Loose cables',
    looseHint: 'Drag one onto a port to plug it in.',
    hint: 'Drag a unit onto the drawing, or onto a cable to insert it; a cable onto a port. By keyboard: choose a cable or a unit, then press the letter.',
    held: (kind: string) => `Click where the ${kind} shall stand. Esc puts it back.`,
    chain: (number: number, units: number, axes: number) => ({
      name: `chain ${number}`,
      what: `${wordCount(units, 'unit')}, ${axes === 1 ? '1 axis' : `${axes} axes`}`,
    }),
  },
  inspector: 'Inspector',
  closeRefusal: 'Close',
  /** One decimal: no voltmeter at the cabinet tells more. */
  volts: (value: number) => `${wordNumber(value, 1)} V`,
  /** "drive 3", "encoder 1": there is room for no more under a module. */
  counted: (group: OrdinalGroup, ordinal: number) => `${group === 'drive' ? 'drive' : 'encoder'} ${ordinal}`,
  /** There is room for no more under a module. */
  unreached: 'on no chain',
  shortKind: { 'encoder-interface': 'encoder' } as { readonly [K in UnitKind]?: string },
  noPartNumber: 'no part no.',
  notFed: 'no 24 V',
  axes: (count: number, limit: number | null) => (limit === null ? wordCount(count, 'axis', 'axes') : `${count} / ${limit} axes`),
  /** "-TB2", "-TB2 and -TB3", "4 things". */
  things: (names: readonly string[]) => (names.length <= 3 ? wordList(names) : wordCount(names.length, 'thing')),
  /** What stands after "Undo" and "Redo". */
  steps: {
    insert: (kindWords: readonly string[]) =>
      kindWords.length === 1 ? `new ${kindWords[0] ?? ''}` : `${wordCount(kindWords.length, 'new unit')}`,
    addChain: 'new chain',
    layCable: 'new cable',
    remove: (what: string) => `delete ${what}`,
    cut: (what: string) => `cut ${what}`,
    move: (what: string) => `move ${what}`,
    takeOff: (what: string) => `take ${what} off the chain`,
    join: (a: string, b: string) => `join ${a} and ${b}`,
    replug: (cable: string, port: string) => `${cable} into ${port}`,
    unplug: (end: LinkEnd, cable: string) => `${end} plug of ${cable} out`,
    feed: (what: string, from: string) => `feed ${what} from ${from}`,
    paste: 'paste',
    pasteRows: 'paste rows',
    duplicate: (what: string) => `duplicate ${what}`,
  },
  /** Keys of the drawing that run no command of their own. */
  keys: [
    ['← → ↑ ↓', 'along cables and units, and choose'],
    ['Shift+← →', 'choose more'],
    ['Ctrl+Space', 'choose this too, or no longer'],
    ['Shift+F10', 'what to do here'],
    ['Alt', 'while dragging a unit: a copy; from the shelf: beside the chains'],
    ['Esc', 'while dragging: put back'],
  ] as readonly (readonly [string, string])[],
  contextMenu: 'What to do here',
  minimap: 'The whole cabinet, small',
  chooser: {
    nothingFits: 'Nothing fits what was typed.',
    connect: {
      title: 'Connect to',
      label: 'A port, a cable or a supply',
      empty: 'There is nothing to which this could be connected: every port that would fit is taken.',
    },
    find: {
      title: 'Find',
      label: 'Designation, kind, axis, part number …',
      empty: 'The cabinet is empty.',
      leadsTo: (to: string | null) => (to === null ? 'leads nowhere' : `to ${to}`),
      units: (count: number) => wordCount(count, 'unit'),
    },
    palette: { title: 'All commands', label: 'What to do', notNow: 'not now' },
  },
  rows: {
    title: 'Paste rows',
    how: 'Rows out of a spreadsheet, one for each unit: designation, kind, chain, axes, fed by, model, part number, serial number. A first row with heads sets another order.',
    makes: (units: number, chains: number, ignored: readonly string[]) =>
      `Makes ${wordCount(units, 'unit')}${chains > 0 ? ` on ${wordCount(chains, 'chain')}` : ''}.${ignored.length > 0 ? ` Left out: ${wordList(ignored)}.` : ''}`,
    cancel: 'Cancel',
    build: 'Build',
  },
  said: {
    copied: (what: string) => `Copied: ${what}.`,
    nothingCopied: 'Nothing was copied yet.',
    /** What a drag says to a screen reader: at its begin, and at its end. */
    taken: (what: string) => `${startSentence(what)}: taken hold of. Escape puts it back.`,
    newUnit: (kind: string) => `a new ${kind}`,
    newCable: 'an end of a new cable',
    plug: (end: LinkEnd, cable: string) => `the ${end} plug of ${cable}`,
    newLead: (unit: string) => `a new lead at ${unit}`,
    nowhere: 'Outside the drawing: it would be put back.',
    dropped: (step: string) => `Done: ${step}.`,
    putBack: 'Put back. Nothing was changed.',
    moved: (unit: string, place: string) => `${unit}: ${place}.`,
    chosen: (count: number) => (count === 0 ? 'Nothing is chosen.' : `${wordCount(count, 'thing')} chosen.`),
  },
  /** What the bar says while something is dragged over the drawing. */
  drop: {
    between: (what: string, first: string, second: string) => `Insert ${what} between ${first} and ${second}`,
    head: (what: string, chain: string) => `Insert ${what} at the head of ${chain}`,
    end: (what: string, chain: string) => `Add ${what} at the end of ${chain}`,
    newChain: (what: string) => `Begin a new chain with ${what}`,
    apart: (what: string) => `Put ${what} beside the chains`,
    takeOff: (what: string) => `Take ${what} off the chain`,
    copyOf: (what: string) => `a copy of ${what}`,
    copy: 'a copy',
    place: (what: string, row: number, slot: number) => `Put ${what} into row ${row}, slot ${slot}`,
    cannot: 'This cannot go here',
    putBack: 'put back',
    beside: 'beside the chains',
    plug: 'Join with a port that is lit up',
    plugEnd: 'Plug into a port that is lit up',
    layLoose: 'Lay a cable that is plugged in nowhere yet',
    letHang: (cable: string) => `Let this end of ${cable} hang loose`,
    newUnit: 'Let go: choose a new unit for this end',
    offer: 'A new unit here',
    feed: 'Feed a unit with 24 V',
    join: (a: string, b: string) => `Join ${a} and ${b}`,
    plugInto: (cable: string, port: string) => `Plug ${cable} into ${port}`,
    feedFrom: (unit: string, from: string) => `Feed ${unit} from ${from}`,
    /** "Cable -WH3 stays, a new cable -WH10 leads on to -TB3. -TB3 and -TB4 become drives 4 and 5." */
    detail: (parts: {
      readonly stays: string | null;
      /** Cables that are left over. */
      readonly gone: readonly string[];
      readonly made: readonly string[];
      readonly leadsTo: readonly string[];
      readonly renumbered: readonly { readonly unit: string; readonly now: string; readonly chain: string }[];
    }) => {
      const [made] = parts.made;
      const cables =
        made === undefined
          ? ''
          : parts.stays === null
            ? `A new ${made} leads to ${parts.leadsTo[0] ?? ''}.`
            : `${startSentence(parts.stays)} stays, a new ${made} leads on to ${parts.leadsTo[0] ?? ''}.`;
      const left =
        parts.gone.length === 0 ? '' : `${startSentence(wordList(parts.gone))} ${parts.gone.length === 1 ? 'is' : 'are'} left over.`;
      return [cables, left, wordRenumbered(parts.renumbered)].filter((sentence) => sentence !== '').join(' ');
    },
  },
  /** What a screen reader hears of a unit. */
  unitName: (parts: {
    readonly unit: string;
    readonly kind: string;
    readonly place: string;
    readonly axes: string;
    readonly problem: Severity | null;
    readonly chosen: boolean;
  }) =>
    [
      `${parts.unit}, ${parts.kind}${parts.place ? `, ${parts.place}` : ''}.`,
      parts.axes === '' ? '' : `Axes: ${parts.axes}.`,
      parts.problem === null ? '' : `${startSentence(severityWords[parts.problem].label)}.`,
      parts.chosen ? 'Chosen.' : '',
    ]
      .filter((part) => part !== '')
      .join(' '),
  /** What a screen reader hears of a cable of which one end is plugged in nowhere. */
  looseName: (link: string, at: string, chosen: boolean) =>
    `${startSentence(link)}, at ${at}, the other end is loose.${chosen ? ' Chosen.' : ''}`,
  looseEnd: 'loose',
  linkName: (link: string, upper: string, lower: string, chosen: boolean) =>
    `${startSentence(link)}, from ${upper} to ${lower}.${chosen ? ' Chosen.' : ''}`,
  chainName: (chain: string, units: number) => `${startSentence(chain)}, port of the controller, ${wordCount(units, 'unit')}.`,
  controllerName: (controller: string, chains: number) => `${startSentence(controller)}, controller, ${wordCount(chains, 'chain')}.`,
  skipTo: { cabinet: 'Go to the drawing', shelf: 'Go to the shelf', inspector: 'Go to the inspector', problems: 'Go to the problems' },
} as const;
