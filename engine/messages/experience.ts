import type { BehaviourClue, Difference, Equipment, Estimate, NotCounted, SharedClue, SharpenedRate } from '../experience/index.ts';
import type { Evidence } from '../schema/index.ts';
import { behaviourWords, findValueWords } from './behaviour.ts';
import { wordObservation } from './diagnosis.ts';
import { wordGap } from './explanations.ts';
import { itemKindWords, wordMode } from './faults.ts';
import { wordOutcomes } from './looks.ts';
import type { Names } from './names.ts';
import { startSentence, wordCount, wordList } from './numbers.ts';
import { endReasonWords, endStateWords } from './plan.ts';
import { wordNumber } from './quantities.ts';
import { meaningWords, unitKindWords } from './words.ts';

/*
 * What confirmed cases teach, in words.
 */

/** Why a case is not counted, as a sentence. */
export function wordNotCounted(reason: NotCounted): string {
  switch (reason.why) {
    case 'no-result':
      return 'No result is written down.';
    case 'other-end':
      return `It is not finished: ${endStateWords[reason.end].meaning}.`;
    case 'not-proved-by-acts':
      return `By what was seen and done, too much of what it may have been is not mended. ${reason.because.map((one) => endReasonWords[one]).join(' ')}`.trim();
    case 'cause-unclear':
      return 'What was mended does not explain what was seen, or not by the cause that the result names.';
    case 'simulated':
      return 'What is entered in it was taken over from a simulation; nobody saw it.';
    case 'cabinet-not-sound':
      return 'Its cabinet cannot be computed with.';
    case 'counted-already':
      return 'The same case is there again, by its id. The one handed back last is counted.';
  }
}

/** "cable: cut, both fibres" */
export const wordCauseKind = ({ item, mode }: Pick<SharpenedRate, 'item' | 'mode'>): string =>
  `${itemKindWords[item].label}: ${wordMode(item, mode)}`;

/** "servo drive “QE drive 2”, revision 07" */
export function wordEquipment({ kind, model, revision }: Equipment): string {
  return `${unitKindWords[kind]} “${model}”${revision === '' ? '' : `, revision ${revision}`}`;
}

/** "complains about any break in that direction" */
const wordBehaves = (parameter: BehaviourClue['parameter'], value: string): string =>
  `${behaviourWords[parameter].label} ${findValueWords(parameter, value)?.label ?? value}`;

/** What some equipment seems to do otherwise than documented, and what would settle it. */
export function wordClue({ equipment, parameter, assumed, instead, cases }: SharedClue): string {
  const behaves = startSentence(wordEquipment(equipment));
  return `${behaves}: in ${wordCount(cases.length, 'confirmed case')} what was seen fits better with “${wordBehaves(parameter, instead)}”; assumed is “${wordBehaves(parameter, assumed)}”. A misreading or a wrong legend may explain it too; a staged break settles it.`;
}

/** The same in short, for a narrow place. */
export function wordClueShort({ equipment, parameter, assumed, instead, cases }: SharedClue): string {
  const behaves = startSentence(wordEquipment(equipment));
  return `${behaves}: in ${wordCount(cases.length, 'confirmed case')} “${wordBehaves(parameter, instead)}” fits better than the assumed “${findValueWords(parameter, assumed)?.label ?? assumed}”.`;
}

/** One thing seen otherwise: "Display of -TB2: seen upstream loss, predicted quiet." */
export function wordDifference(names: Names, evidence: Evidence, { observation, seen, predicted }: Difference): string {
  const say = (value: string | number): string => {
    if (observation.kind === 'display' && Object.hasOwn(meaningWords, value)) return meaningWords[value as keyof typeof meaningWords].label;
    if (observation.kind === 'report') return wordGap(names, observation.chain, value === 'none' ? value : Number(value));
    const look = observation.kind === 'look' ? evidence.snapshots[observation.snapshot]?.looks?.[observation.index] : undefined;
    return look === undefined ? String(value) : wordOutcomes(look.look, [String(value)]);
  };
  return `${startSentence(wordObservation(names, evidence, observation))}: seen ${wordList(seen.map(say), 'or')}, predicted ${say(predicted)}.`;
}

const twoFigures = (value: number): string => Number(value.toPrecision(2)).toString();

/** Below this a rate per 1000 years says no more than that it is small. */
const leastShown = 0.001;
const wordPer1000 = (perYear: number): string => (perYear * 1000 < leastShown ? `<${leastShown}` : twoFigures(perYear * 1000));

/** A rate with its interval, per 1000 years: "1.5 (0.27–3.6)". */
export const wordRate = ({ value, low, high }: Estimate): string => `${wordPer1000(value)} (${wordPer1000(low)}–${wordPer1000(high)})`;

/** A number of cases, shared ones in parts: "3", "1.55", "<0.01". */
export const wordCases = (cases: number): string => (cases > 0 && cases < 0.01 ? '<0.01' : wordNumber(cases));

/** A multiple: "× 2.5". */
export const wordFactor = (factor: number): string => `× ${twoFigures(factor)}`;

export const experienceWords = {
  counted: (counted: number, uncounted: number) =>
    `${wordCount(counted, 'confirmed case')} ${counted === 1 ? 'is' : 'are'} counted, ${uncounted === 0 ? 'none is' : uncounted === 1 ? '1 is' : `${uncounted} are`} left out.`,
  heads: {
    case: 'Case',
    machine: 'Machine',
    handedBack: 'Handed back',
    cause: 'Cause, with its share of the case',
    kind: 'What can be wrong',
    confirmed: 'Confirmed',
    expected: 'Expected',
    assumed: 'Assumed',
    sharpened: 'Sharpened',
    factor: 'Moves',
  },
  left: 'Not counted',
  behaved: 'Equipment behaved differently than assumed',
  behavedIn: (name: string) => `Case ${name}:`,
  noneBehaved: 'No equipment behaved differently than assumed.',
  rates: 'Rates',
  noCases: 'There is no confirmed case, so all rates are as assumed.',
  how: (strength: string) =>
    `Rates are for one part, per 1000 years (those of wiring mistakes per 1000 new or reworked cabinets), with the interval in which they lie with 90 %. Each assumed rate is worth ${strength} of its own kind. Expected: how many of the counted cases would be of this kind at the assumed rates, by how many such parts their cabinets have. Rates that a cabinet gives with a source are never changed.`,
  model: 'The model stands in engine/DOMAIN.md, section 10.',
  moreCauses: (count: number) => `${count} more`,
  moreKinds: (count: number) => `${wordCount(count, 'more kind')} moved by less than 5 %.`,
  worth: (strength: number) => wordCount(strength, 'confirmed case'),
  otherFile: (kind: string) => `It is a file of another kind: ${kind}. Only cases of repair are counted.`,
} as const;

/** Words of the window about confirmed cases. */
export const confirmedWords = {
  title: 'Confirmed cases',
  close: 'Close',
  keywords: ['rates', 'experience', 'learn'],
  intro:
    'Finished repairs, kept by you: the cause is proved, or was seen, or is mended but for a small doubt. They sharpen the assumed rates. They stay on this computer; nothing leaves it.',
  empty: 'No case is kept yet. When a machine is handed back running, its repair can be kept there.',
  working: 'Working out what the cases teach …',
  ratesHead: 'Rates of the case in the window',
  assumedAll: 'rates assumed',
  sharpenedAll: (cases: number) => `rates sharpened by ${wordCount(cases, 'confirmed case')}`,
  choices: { assumed: 'Assumed rates', asKept: (cases: number) => `Sharpened by ${wordCount(cases, 'confirmed case')}` },
  older: (cases: number) => `As when the case was begun: sharpened by ${wordCount(cases, 'confirmed case')}`,
  onlyOthers: 'The case itself is not counted for its own rates.',
  noneForCase: 'No case is confirmed yet, so there are only the assumed rates.',
  noneButOwn:
    'Only this case is confirmed yet, and none counts for its own rates: so it stands on the assumed ones. Later cases take it in.',
  begin: 'New cases begin with sharpened rates',
  strength: 'Confirmed cases that an assumed rate is worth',
  strengthWhy: (least: number, most: number, usual: number) =>
    `With a small number a few cases move the rates far; with a large one they hardly move, and one odd case does little harm. ${usual} is usual (assumed); ${least} to ${most} may be set. Cases that were begun before keep their rates.`,
  casesHead: 'Cases',
  heads: { date: 'Handed back', machine: 'Machine', cause: 'Cause', effect: 'What it changed', remove: 'Remove' },
  noDate: '–',
  effect: (kind: string, before: string, after: string) => `${kind}: ${before} → ${after}`,
  noEffect: 'nothing yet',
  remove: 'Remove',
  removeOne: (name: string) => `Remove ${name}`,
  removed: (name: string) => `${name} is removed.`,
  putBack: 'Put it back',
  damaged: 'Files that do not open; they are left untouched',
  tableHead: 'Rates',
  behavedHead: 'Behaved differently than assumed',
  settle: 'Settle it by a staged break…',
  keep: 'Keep as a confirmed case',
  keepHead: 'Confirmed case',
  keepWhy: 'The cause is proved. Kept, this case sharpens the rates for later ones. It stays on this computer.',
  /** Nothing is proved, but what it may have been is mended: so what cleaning mends is counted too. */
  keepHandled: (mended: string) =>
    `Nothing is proved, but ${mended} of what it may have been is mended. Kept, the case is shared out among that and sharpens the rates for later ones. Remove it again if the fault comes back. It stays on this computer.`,
  /** Nobody ticked that the machine did its usual work since. */
  keepLater: 'It counts for more if the machine has done its usual work since: it is not ticked yet.',
  keepSeen: 'Somebody saw the cause. Kept, this case sharpens the rates for later ones. It stays on this computer.',
  keepNot: (left: string) =>
    `${left} of what it may have been is not mended yet. The case can be kept once more of it is, or once somebody who saw the cause names it above.`,
  keptAlready: 'Kept. Keep it again if something in it has changed since.',
  keepAgain: 'Keep again',
  keptNow: 'The case is kept.',
  show: 'Show confirmed cases…',
  sample: 'This is a sample: only repairs of your own are kept.',
  simulated: 'What is entered was taken over from a simulation, so the case does not count.',
  stepAssumed: 'assumed rates',
  stepSharpened: (cases: number) => `rates sharpened by ${wordCount(cases, 'confirmed case')}`,
} as const;
