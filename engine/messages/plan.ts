import { assertNever } from '../base/index.ts';
import type { Displaced, EndReason, EndState, Plan, ReplayStep, StepRisk, UselessReason } from '../plan/index.ts';
import type { ChangeEffect } from '../repair/index.ts';
import type { MachineState } from '../schema/index.ts';
import type { Step } from '../steps/index.ts';
import { wordLook, wordOutcomes } from './looks.ts';
import type { Names } from './names.ts';
import { wordCount, wordList } from './numbers.ts';
import { wordActsDone, wordStepOutcome } from './steps.ts';
import { endWords, type Term } from './words.ts';

/*
 * What there is to say of a plan: costs, states, risks, what is useless and why, how the search ends.
 */

/** A cost in minutes, or worth so many: "41 min", "<1 min". */
export function wordMinutes(minutes: number): string {
  if (!Number.isFinite(minutes)) return '–';
  return minutes > 0 && minutes < 1 ? '<1 min' : `${Math.round(minutes)} min`;
}

/** The states of the machine as states. */
export const stateNames: { readonly [S in MachineState]: string } = { closed: 'closed', open: 'open', isolated: 'isolated' };

/** What a change of state brings with it. */
export const changeEffectWords: { readonly [E in ChangeEffect]: string } = {
  'opens-live-cabinet': 'opens the live cabinet',
  'erases-displays': 'erases held displays and the report',
  restarts: 'the next displays are those after switching on',
};

export function wordRisk(names: Names, risk: StepRisk): string {
  switch (risk.code) {
    case 'live-work':
      return 'work behind open doors under power';
    case 'reference-position':
      return `may lose the reference position: ${wordList(risk.feedbacks.map((feedback) => names.feedback(feedback)))}`;
    case 'spoiled-part':
      return 'a good part may be spoiled by what is still wrong';
    case 'handling':
      return `handling may leave a fault (${wordCount(Math.max(1, Math.round(risk.chance * 100)), 'case')} in 100)`;
    default:
      return assertNever(risk);
  }
}

/** Why a step is not worth doing, as a sentence. */
export function wordUseless(names: Names, step: Step, reason: UselessReason): string {
  switch (reason.code) {
    case 'same-for-all':
      return `Tells nothing: whatever is wrong, it says “${wordStepOutcome(names, step, reason.outcome)}”.`;
    case 'mends-nothing':
      return 'Mends nothing that is suspected.';
    case 'done-already':
      return 'Done already: it would say the same again.';
    case 'note-first':
      return 'Not yet: a restart erases what displays and report still hold. Read them first, and say whether the control is halted.';
    default:
      return assertNever(reason);
  }
}

export const endStateWords: { readonly [E in EndState['end']]: Term } = {
  open: { label: 'open', meaning: 'the search goes on' },
  proved: { label: 'proved', meaning: 'the fault left with the part, and the machine runs' },
  'not-proved': { label: 'not proved', meaning: 'the machine runs, but what was wrong is not shown: watch what was touched' },
  'running-provisionally': { label: 'running provisionally', meaning: 'the machine runs only because something is bypassed or moved' },
};

export const endReasonWords: { readonly [R in EndReason]: string } = {
  'still-halted': 'The machine is not known to run.',
  'nothing-done': 'Nothing was done to it yet.',
  'feedback-pulled': 'A feedback plug is pulled: the axis must not be left without its encoder.',
  'only-handled': 'It was gone after handling alone; that shows no part to be broken.',
  'several-acts-at-once': 'Several things were done at once; which of them helped is not known.',
  'comes-and-goes': 'What comes and goes may only be gone for the moment.',
  'parts-displaced': 'Parts stand elsewhere than documented.',
  'something-bypassed': 'Something is bypassed, pulled or taken out.',
};

/** What stands elsewhere or hangs free: "the board of -TB2 stands in -TB3". `isExchange`: the other one stands in its place. */
export function wordDisplaced(names: Names, displaced: Displaced, isExchange = false): string {
  switch (displaced.kind) {
    case 'board':
      if (isExchange) return `the boards of ${names.unit(displaced.unit)} and ${names.unit(displaced.from)} are exchanged`;
      return `the board of ${names.unit(displaced.from)} stands in ${names.unit(displaced.unit)}`;
    case 'cable':
      if (isExchange) return `${names.link(displaced.link)} and ${names.link(displaced.from)} are exchanged`;
      return displaced.from === displaced.link
        ? `${names.link(displaced.link)} lies end for end`
        : `${names.link(displaced.from)} lies in the place of ${names.link(displaced.link)}`;
    case 'unplugged':
      return `the ${endWords[displaced.end].label} of ${names.link(displaced.link)} is pulled`;
    case 'taken-out':
      return `${names.unit(displaced.unit)} is taken out`;
    case 'bridged':
      return `${names.unit(displaced.unit)} is bridged with ${names.link(displaced.cable)}`;
    case 'feedback-pulled':
      return `the plug of ${names.feedback(displaced.feedback)} is pulled`;
    default:
      return assertNever(displaced);
  }
}

/** How good the figures are. */
export function wordMethod({ method }: Plan): string {
  return method.kind === 'exact'
    ? 'Exact: with these steps and suspects no cheaper way exists.'
    : `Looked ${wordCount(method.depth, 'step')} ahead; beyond, the costs are estimates.`;
}

/** Labels and statements of plans. */
export const planTexts = {
  step: 'Next step',
  expected: 'In all',
  itself: 'Itself',
  mends: 'Mends',
  tells: 'Tells',
  state: 'Machine',
  /** "Board, part number AX-100: spare b1", "Cable: not in stock". */
  part: (kind: string, partNumber: string | null, spare: string | null, fits: 'yes' | 'unknown', mustBeGot: boolean) =>
    [
      `${kind.charAt(0).toUpperCase()}${kind.slice(1).replaceAll('-', ' ')}${partNumber === null ? '' : `, part number ${partNumber}`}`,
      spare === null ? (mustBeGot ? 'not in stock' : 'a new one') : `spare ${spare}${fits === 'unknown' ? ', not known to fit' : ''}`,
    ].join(': '),
  outcomes: 'What it may show, and what would follow',
  useless: 'Not worth doing',
  displaced: 'Still to be put back',
  machineIs: (state: string, isSaid: boolean) => `The machine is ${isSaid ? '' : 'taken to be '}${state}.`,
  costsMean: 'Costs are minutes to the repaired machine, or worth so many: parts, risks and outside help are counted in.',
  exhausted: {
    watch: 'The machine runs, and nothing that is left is worth more than waiting: watch it, and note every display when it stops again.',
    'get-help': 'Nothing that is left to look at or to do is expected to cost less than getting help.',
  },
  bits: (information: number) => (information > 0 ? `${information.toFixed(2)} bit` : ''),
  change: (change: string, minutes: string) => `${change}: ${minutes}`,
  outcome: (outcome: string, probability: string, rest: string) => `${outcome} ${probability}: ${rest}`,
  onward: (cost: string, next: string) => `then ${next} (${cost})`,
  onwardDone: 'then it is repaired',
  onwardWatch: (cost: string) => `then leave it at that and watch: it may come back (${cost})`,
  onwardHelp: (cost: string) => `then nothing more is worth it (${cost})`,
  moreSteps: (count: number) => `${wordCount(count, 'more step')}. Show more with --top.`,
  covered: (share: string) => `Reckoned with suspects of ${share} of the probability.`,
  end: (label: string) => `The search is ${label}.`,
} as const;

/** One step of a case as it went: "replaced cable -WH3: machine runs", "read 9 displays and 2 reports". */
export function wordReplayStep(names: Names, { kind, snapshot, look, evidence }: ReplayStep): string {
  const part = evidence.snapshots[snapshot];
  if (kind === 'seen') return replayTexts.seen(part?.displays?.length ?? 0, part?.reports?.length ?? 0);
  const seen = look === null ? undefined : part?.looks?.[look];
  if (seen !== undefined) return `${wordLook(names, seen)}: ${wordOutcomes(seen.look, seen.outcomes)}`;
  const acts = part?.interventions ?? [];
  const done = [...(acts.length > 0 ? [wordActsDone(names, acts)] : []), ...(part?.restarted === true ? [replayTexts.restarted] : [])];
  const what = done.length > 0 ? wordList(done) : replayTexts.begins(snapshot + 1);
  return part?.halted === undefined ? what : `${what}: ${part.halted ? replayTexts.halted : replayTexts.runs}`;
}

/** Heads and lines of a replay. */
export const replayTexts = {
  seen: (displays: number, reports: number) =>
    `read ${wordList([...(displays > 0 ? [wordCount(displays, 'display')] : []), ...(reports > 0 ? [wordCount(reports, 'report')] : [])])}`,
  restarted: 'restarted',
  runs: 'machine runs',
  halted: 'halted',
  begins: (snapshot: number) => `look ${snapshot} at the machine`,
  likely: 'Likely',
  suspects: 'Suspects',
  before: 'Before',
  nothingSuspected: 'nothing suspected',
} as const;
