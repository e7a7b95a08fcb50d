import type { Severity } from '../base/index.ts';
import type { UnitKind } from '../schema/index.ts';
import { startSentence, wordCount, wordList } from './numbers.ts';
import { severityWords } from './problems.ts';

/*
 * What Draw says: labels of its commands, words on its drawing, what a screen reader hears.
 */

/** Labels of the commands of Draw. */
export const drawCommandLabels = {
  goDraw: 'Draw',
  goFind: 'Find',
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

export const drawWords = {
  workspaces: { label: 'Workspaces', draw: 'Draw', find: 'Find' },
  region: 'Cabinet, drawing',
  title: 'Cabinet',
  summary,
  views: { label: 'View', drawing: 'Drawing', lists: 'Lists' },
  arrangements: { label: 'Order', chain: 'chain order', mounting: 'mounting order' },
  shelf: {
    region: 'Shelf',
    kinds,
    chains: 'Chains',
    chain: (number: number, units: number, axes: number) => ({
      name: `chain ${number}`,
      what: `${wordCount(units, 'unit')}, ${axes === 1 ? '1 axis' : `${axes} axes`}`,
    }),
  },
  inspector: 'Inspector',
  noPartNumber: 'no part number',
  notFed: 'no 24 V',
  axes: (count: number, limit: number | null) => (limit === null ? wordCount(count, 'axis', 'axes') : `${count} / ${limit} axes`),
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
  linkName: (link: string, upper: string, lower: string, chosen: boolean) =>
    `${startSentence(link)}, from ${upper} to ${lower}.${chosen ? ' Chosen.' : ''}`,
  chainName: (chain: string, units: number) => `${startSentence(chain)}, port of the controller, ${wordCount(units, 'unit')}.`,
  controllerName: (controller: string, chains: number) => `${startSentence(controller)}, controller, ${wordCount(chains, 'chain')}.`,
  skipTo: { cabinet: 'Go to the drawing', shelf: 'Go to the shelf', inspector: 'Go to the inspector', problems: 'Go to the problems' },
} as const;
