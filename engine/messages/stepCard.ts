import type { Displaced, Plan, PlannedStep, StepRisk } from '../plan/index.ts';
import type { PartSource, StateChange } from '../repair/index.ts';
import type { Intervention } from '../schema/index.ts';
import type { Step } from '../steps/index.ts';
import { type Names, withoutCable } from './names.ts';
import { startSentence, wordCount, wordList } from './numbers.ts';
import { paperWords } from './papers.ts';
import { wordDisplaced } from './plan.ts';
import { wordHours } from './quantities.ts';
import { listActs, pulledHow, wordStepHow } from './steps.ts';
import type { Term } from './words.ts';

/** Minutes as one reads them at arm's length: "4 min", "1 h 20 min"; large sums are rounded, for they are estimates. */
export function wordTimeSpan(minutes: number): string {
  if (!Number.isFinite(minutes)) return '–';
  const whole = Math.max(minutes > 0 ? 1 : 0, minutes < 60 ? Math.round(minutes) : Math.round(minutes / 5) * 5);
  return whole < 60 ? `${whole} min` : wordHours(whole);
}

/** How good the order of the steps is, short; `wordMethod` says it in full. */
export function wordMethodShort({ method }: Plan): string {
  return method.kind === 'exact' ? 'exact order' : `looked ${wordCount(method.depth, 'step')} ahead`;
}

/** What a step endangers, short. */
export const riskWords: { readonly [R in StepRisk['code']]: Term } = {
  'live-work': { label: 'live cabinet', meaning: 'Behind the open door there are dangerous voltages.' },
  'reference-position': { label: 'reference position', meaning: 'The machine’s reference position may be lost.' },
  'spoiled-part': {
    label: 'part may be spoiled',
    meaning: 'A board or unit that is exchanged may be damaged by static charge or by a wrong fit.',
  },
  handling: { label: 'handling', meaning: 'What is touched may be left loose, fouled or crossed.' },
};

const changeWords: { readonly [C in `${StateChange['from']}-${StateChange['to']}`]: string } = {
  'closed-closed': 'Switch off and on again',
  'closed-open': 'Open the doors; the cabinet is live',
  'closed-isolated': 'Switch off every feed, lock out, tag; wait for the DC link, then measure',
  'open-closed': 'Close the doors',
  'open-open': '',
  'open-isolated': 'Switch off every feed, lock out, tag; wait for the DC link, then measure',
  'isolated-closed': 'Close the doors, take the lock off, switch on',
  'isolated-open': 'Take the lock off and switch on; the cabinet is open and live',
  'isolated-isolated': '',
};

/** A change of the machine's state, with its minutes. */
const wordChange = ({ from, to, minutes, effects }: StateChange) =>
  `${changeWords[`${from}-${to}`]}${minutes > 0 ? ` (${wordTimeSpan(minutes)})` : ''}${effects.includes('erases-displays') ? '; it erases displays and report' : ''}.`;

/** What is to be done, in plain steps, in order. */
export function wordPlainSteps(names: Names, { step, changes }: Pick<PlannedStep, 'step' | 'changes'>): readonly string[] {
  // How to provoke says itself that the machine is switched off and on.
  if (step.do === 'provoke') return [...changes.filter(({ from, to }) => from !== to).map(wordChange), wordStepHow(step)];
  if (step.do !== 'act') return [...changes.map(wordChange), wordStepHow(step)];
  const acts = listActs(names, step.acts, 'toDo').map((act) => `${startSentence(act)}.`);
  // The machine is switched off before the acts, and on after the last of them.
  const after = changes.findIndex(({ effects }) => effects.includes('restarts'));
  const [before, then] = after < 0 ? [changes, []] : [changes.slice(0, after), changes.slice(after)];
  const measured = wordBefore(step);
  const pulled = step.acts.some(({ do: kind }) => kind === 'pull-feedback') ? [pulledHow] : [];
  return [...measured, ...before.map(wordChange), ...acts, ...then.map(wordChange), ...pulled];
}

/** Whether a step exchanges something that brings power: then measuring comes before exchanging. */
export function isAboutPower(step: Step): boolean {
  return step.do === 'act' && step.acts.some(({ do: kind }) => kind === 'replace-supply' || kind === 'replace-lead');
}

/** What comes before exchanging what brings 24 V, or putting plugs right, in sentences; empty for other steps. */
export function wordBefore(step: Step): readonly string[] {
  const does = (wanted: RegExp) => step.do === 'act' && step.acts.some(({ do: kind }) => wanted.test(kind));
  return [
    ...(isAboutPower(step) ? [stepCardTexts.measureBefore] : []),
    ...(does(/^replace-fuse$/) ? [stepCardTexts.whyBlown] : []),
    ...(does(/^uncross-/) ? [stepCardTexts.compareBefore] : []),
  ];
}

/** The part that a step needs: "spare board 41-7, fits", "must be got: cable 12-3". */
export function wordPart({ kind, partNumber, spare, mustBeGot, fits }: PartSource): string {
  const what = `${paperWords.spareKinds[kind]}${partNumber === null ? '' : ` ${partNumber}`}`;
  if (mustBeGot) return `${what} must be got`;
  if (spare === null) return `needs ${what}`;
  return `spare ${what}${fits === 'unknown' ? ', fit not known' : ''}`;
}

/** Labels around the plan. */
export const stepCardTexts = {
  minutesTitle: 'Hands, changes of the machine’s state and restart included',
  inAll: (minutes: string) => `in all ${minutes}`,
  inAllLong: (minutes: string) => `Down to the repaired machine about ${minutes}.`,
  inAllTitle:
    'Expected minutes down to the repaired machine if this is done next; parts and risks count as minutes, as the repair table says.',
  bestOf: (count: number) => (count === 1 ? 'the only one' : `best of ${count}`),
  other: (count: number) => `one of ${count}`,
  improving: 'getting better …',
  stop: 'Stop here',
  stopped: 'stopped early',
  noParts: 'no parts',
  does: 'What to do',
  measureBefore: 'Measure first what feeds it and what it gives: a breaker or a feed that is off looks the same.',
  compareBefore: 'Compare with a photo, a drawing or the marking first: only what sits wrong is put right.',
  whyBlown: 'A fuse blows for a reason: look for a short or a chafed cable before a new one goes in.',
  feedWasOff: 'Feed or breaker was off: runs now',
  showAll: (count: number) => `Show ${count} more`,
  showFewer: 'Show fewer',
  useless: (count: number) => `${wordCount(count, 'step')} of no use`,
  sawElse: 'Did it, saw something else',
  stopping: {
    watch: 'Watch it: nothing that is left is worth more than waiting.',
    'get-help': 'Get help: nothing that is left costs less.',
  },
  exhausted: {
    watch: (more: boolean) =>
      `The machine runs, and nothing that is left is worth more than waiting. Watch it; when it stops again, note every display before anything is switched off.${more ? ' What could be done all the same is listed here.' : ''}`,
    'get-help': (more: boolean) =>
      `Nothing that is left is expected to cost less than getting help. Hand over what is known: the report says it.${more ? ' What is listed here tells more before somebody comes.' : ''}`,
  },
  worth: (step: string, reason: string) => `${startSentence(step)}. ${reason}`,
  picture: (parts: readonly { readonly place: string; readonly before: string; readonly after: string }[]) =>
    wordList(parts.map(({ place, before, after }) => `${place} from ${before} to ${after}`)),
} as const;

/** Acts in the middle of a sentence: "exchange the boards of -TB2 and -TB3". */
export const wordMending = (names: Names, acts: readonly Intervention[]): string => wordList(listActs(names, acts, 'toDo'));

/** The same put back, for the log: "put back: in -TB2 is the board of -TB3". */
export const wordPutBack = (names: Names, displaced: Displaced): string => `put back: ${wordDisplaced(names, displaced)}`;

/** Very short, for a mark on the drawing: "board of -TB3". */
export function wordDisplacedShort(names: Names, displaced: Displaced): string {
  switch (displaced.kind) {
    case 'board':
      return `board of ${names.unit(displaced.from)}`;
    case 'cable':
      return displaced.from === displaced.link ? 'turned' : `is ${withoutCable(names.link(displaced.from))}`;
    case 'unplugged':
      return 'unplugged';
    case 'taken-out':
      return 'taken out';
    case 'bridged':
      return 'bridged past';
    case 'feedback-pulled':
      return 'feedback pulled';
  }
}

/** Labels of what was touched and does not stand in its place. */
export const touchedTexts = {
  region: 'Touched',
  displaced: 'Not in its place',
  remind: (count: number) => `${wordCount(count, 'thing')} not in ${count === 1 ? 'its' : 'their'} place`,
  putBack: 'Put back',
  putBackHow: (what: string) => `Switch off, lock out, wait; ${what}; switch on again. What came of it?`,
  runs: 'Machine runs',
  halts: 'Still halted',
  notTried: 'Not started yet',
  cancel: 'Not now',
  worse: 'It got worse',
  worseTitle: 'Begin with what was touched last',
  worseWhy: (what: string) =>
    `Last: ${what}. Is it seated, clean, in its own place? Look there before anything else, then note the displays again.`,
  mishap: (share: string) => `That it was left loose, or that a part put in is bad: ${share}.`,
  look: (number: number) => `before look ${number}`,
  noteAgain: 'Note the displays again',
  lightUp: (what: string) => `Show on the cabinet: ${what}`,
} as const;

/** The column beside the cabinet: the line that leads to what stands below. */
export const sideTexts = {
  index: 'Further down',
  how: 'How',
  seen: 'Seen',
} as const;
