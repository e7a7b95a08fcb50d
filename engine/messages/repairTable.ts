import type { ItemModes } from '../plan/index.ts';
import type { ChanceName, ChangePart, WeightName } from '../repair/index.ts';
import type { ActKind, MachineState } from '../schema/index.ts';
import { actWords } from './acts.ts';
import { itemKindWords, wordMode } from './faults.ts';

const objects: { readonly [K in ActKind]: string } = {
  unplug: 'a plug',
  'plug-in': 'a plug',
  'reseat-plug': 'a plug',
  'clean-plug': 'a plug and its port',
  're-route': 'a cable',
  'replace-cable': 'a cable',
  'exchange-cables': 'two cables',
  'turn-cable': 'a cable',
  'uncross-fibres': 'two crossed fibres',
  'uncross-plugs': 'two crossed plugs',
  'replace-board': 'a board',
  'exchange-boards': 'two boards',
  'replace-unit': 'a unit',
  'reseat-unit': 'a unit',
  'take-out-unit': 'a unit',
  'put-back-unit': 'a unit',
  'replace-fuse': 'a control fuse',
  'replace-supply': 'a supply',
  'replace-lead': 'a lead',
  'replace-controller-port': 'a controller port',
  'replace-controller': 'the controller',
  'pull-feedback': 'a feedback plug',
  'plug-feedback': 'a feedback plug',
  'replace-feedback': 'a feedback cable',
  'bridge-unit': 'a unit',
  'unbridge-unit': 'of a unit',
};

/** Items with the modes concerned: "cable, plug (loose)". */
export const wordItemModes = (items: readonly ItemModes[]): string =>
  items
    .map(({ item, modes, isAll }) =>
      isAll ? itemKindWords[item].label : `${itemKindWords[item].label} (${modes.map((mode) => wordMode(item, mode)).join(', ')})`,
    )
    .join(', ');

/** An act of any place: "replace a board", "turn a cable end for end". */
const whole: { readonly [K in ActKind]?: string } = {
  'turn-cable': 'turn a cable end for end',
  'uncross-fibres': 'put two crossed fibres right',
  'uncross-plugs': 'put two crossed plugs right',
};

export const wordActKind = (act: ActKind): string => whole[act] ?? `${actWords[act].toDo} ${objects[act]}`;

/** States of the machine, as a table names them. */
const states: { readonly [S in MachineState]: string } = { closed: 'on, closed', open: 'on, open', isolated: 'off and locked' };

const changes: { readonly [C in ChangePart]: string } = {
  open: 'open the doors',
  close: 'close the doors',
  lockOut: 'switch off and lock out',
  discharge: 'wait for the DC link',
  boot: 'switch on',
  referencing: 'find the reference position again',
};

const weights: { readonly [W in WeightName]: string } = {
  liveWork: 'a look or act behind open doors under power',
  referencePosition: 'reference position at risk',
  spoiledPart: 'a part that may be spoiled',
  partWait: 'a part that must be got',
  comeback: 'called again, because it was not mended',
  outsideHelp: 'getting help from outside',
};

const chances: { readonly [C in ChanceName]: string } = {
  handlingFault: 'handling leaves a fault',
  badSpare: 'a spare is bad',
  unknownFit: 'a spare of unknown fit fits',
};

/** Words of the page of the repair table. */
export const repairTableWords = {
  title: 'Repair table',
  intro:
    'What each act takes and what it counts for. Parts, risks and waiting are given in the minutes that they are worth. Every act is done with the machine off and locked, after the DC link is discharged; leaving a fault on what is touched is reckoned with.',
  close: 'Close',
  acts: 'Acts',
  changesHead: 'Changes of the machine’s state',
  weightsHead: 'What counts as so many minutes',
  chancesHead: 'Chances',
  heads: {
    act: 'Act',
    minutes: 'Minutes',
    parts: 'Parts, worth min',
    state: 'Machine',
    mends: 'Mends',
    effects: 'Side effects and cautions',
    origin: 'Where from',
    chance: 'In 100',
  },
  moves: (what: string) => `moves ${what}`,
  opensFeed: 'opens the pass-through and the battery feed',
  onlyFor: (what: string, subject: string) => `${what}: ${subject}`,
  states,
  changes,
  weights,
  chances,
  assumed: 'assumed',
  cabinet: 'this cabinet',
  ownTitle: 'Repairs of this alone',
  ownIntro: 'What differs here from the repair table. Empty a figure, and the usual one holds again.',
  usualAgain: 'Back to the usual figures',
  badFigure: (most: number | null) =>
    `A number ${most === null ? 'of 0 or more' : `from 0 to ${most}`} is needed, such as 12 or 2,5. Escape puts the old one back.`,
  sums: 'DC-link sums',
  field: (what: string, head: string) => `${head}: ${what}`,
  written: (what: string) => `repair table: ${what}`,
} as const;
