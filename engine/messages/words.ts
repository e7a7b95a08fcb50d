import {
  type Direction,
  type DisplayMeaning,
  displayMeanings,
  type LinkEnd,
  type Onset,
  type OrdinalGroup,
  type Presence,
  type positionKeeping,
  supplyMeanings,
  type UnitKind,
} from '../schema/index.ts';
import { wordList } from './numbers.ts';

/** A short word for a place where there is little room, and what it means in one line. */
export interface Term {
  readonly label: string;
  readonly meaning: string;
}

/** What a display says. */
export const meaningWords: { readonly [M in DisplayMeaning]: Term } = {
  dark: { label: 'dark', meaning: 'nothing is lit' },
  quiet: { label: 'quiet', meaning: 'lit, and complains of nothing' },
  'upstream-loss': { label: 'upstream loss', meaning: 'hears nothing from above, the controller’s side' },
  'downstream-loss': { label: 'downstream loss', meaning: 'hears nothing from below, the side away from the controller' },
  'both-losses': { label: 'both losses', meaning: 'hears nothing from above and nothing from below' },
  other: { label: 'other', meaning: 'shows some other code' },
};

/** Answers that are sets of meanings. */
export const meaningSetWords = {
  lit: { label: 'lit, cannot read it', meaning: 'something is lit, but it cannot be read' },
  complains: { label: 'complains, cannot tell which way', meaning: 'a loss, but it cannot be told which way' },
  unread: { label: 'not read yet', meaning: 'noted or photographed, and not read yet: it speaks for nothing' },
} as const satisfies Readonly<Record<string, Term>>;

const sameSet = (a: readonly DisplayMeaning[], b: readonly DisplayMeaning[]) =>
  a.length === b.length && b.every((meaning) => a.includes(meaning));
const litMeanings = displayMeanings.filter((meaning) => meaning !== 'dark');
const litSupplyMeanings = supplyMeanings.filter((meaning) => meaning !== 'dark');
const complaints: readonly DisplayMeaning[] = ['upstream-loss', 'downstream-loss', 'both-losses'];

/** What was seen of a display: one meaning, one of the set answers, or "a or b". An empty list: not looked at. */
export function wordMeanings(meanings: readonly DisplayMeaning[]): string {
  if (meanings.length === 0) return 'not looked at';
  if (sameSet(meanings, litMeanings) || sameSet(meanings, litSupplyMeanings)) return meaningSetWords.lit.label;
  if (sameSet(meanings, complaints)) return meaningSetWords.complains.label;
  if (sameSet(meanings, displayMeanings) || sameSet(meanings, supplyMeanings)) return meaningSetWords.unread.label;
  const inOrder = displayMeanings.filter((meaning) => meanings.includes(meaning));
  return wordList(
    inOrder.map((meaning) => meaningWords[meaning].label),
    'or',
  );
}

export const unitKindWords: { readonly [K in UnitKind]: string } = {
  'servo-drive': 'servo drive',
  'spindle-drive': 'spindle drive',
  'encoder-interface': 'encoder interface',
  supply: 'supply',
};

/** How a unit is called when it is counted on its chain: "drive 2", "encoder interface 1". */
export const groupWords: { readonly [G in OrdinalGroup]: string } = { drive: 'drive', 'encoder-interface': 'encoder interface' };

export const presenceWords: { readonly [P in Presence]: Term } = {
  steady: { label: 'steady', meaning: 'there all the time' },
  intermittent: { label: 'intermittent', meaning: 'comes and goes' },
};

export const onsetWords: { readonly [O in Onset | 'unknown']: Term } = {
  'while-running': { label: 'while running', meaning: 'the machine was running when it stopped' },
  'at-power-up': { label: 'when switched on', meaning: 'the machine was being switched on and did not come up' },
  unknown: { label: 'not known', meaning: 'nobody knows whether it was running or being switched on' },
};

/** When a fault came, by whether the control is halted: a machine that is not halted neither stopped nor failed to come up. */
export function wordOnset(onset: Onset | 'unknown', halted: boolean | undefined): string {
  if (halted === true) return onsetWords[onset].meaning;
  if (halted === false) return onset === 'at-power-up' ? 'the machine was switched on and came up' : 'the machine is not halted';
  return onset === 'unknown'
    ? onsetWords.unknown.meaning
    : `the fault came ${onset === 'while-running' ? 'while the machine was running' : 'when the machine was switched on'}`;
}

/** Whether the control is halted by an alarm of a chain. */
export const haltedWords = {
  yes: { label: 'halted', meaning: 'the control is halted by an alarm of a chain' },
  no: { label: 'not halted', meaning: 'the control is not halted by an alarm of a chain' },
  'not-observed': { label: 'not looked at', meaning: 'nobody looked whether the control is halted' },
} as const satisfies Readonly<Record<string, Term>>;

export const directionWords: { readonly [D in Direction]: Term } = {
  outbound: { label: 'outbound', meaning: 'from the controller outwards' },
  return: { label: 'return', meaning: 'back towards the controller' },
};

export const endWords: { readonly [E in LinkEnd]: Term } = {
  upper: { label: 'upper plug', meaning: 'the plug nearer the controller' },
  lower: { label: 'lower plug', meaning: 'the plug farther from the controller' },
};

export const positionKeepingWords: { readonly [P in (typeof positionKeeping)[number]]: string } = {
  'battery-in-unit': 'kept by a battery in the unit',
  'battery-in-cabinet': 'kept by a battery in the cabinet',
  'none-needed': 'needs no battery',
  unknown: 'not known how it is kept',
};
