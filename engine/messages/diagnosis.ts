import { assertNever } from '../base/index.ts';
import type { BehaviourBelief, Contradiction, Diagnosis, DiagnosisNote, HypothesisFault, ObservationRef } from '../diagnosis/index.ts';
import type { Evidence } from '../schema/index.ts';
import { behaviourWords, findValueWords } from './behaviour.ts';
import { wordFault, wordTheItem } from './faults.ts';
import { wordLook } from './looks.ts';
import type { Names } from './names.ts';
import { startSentence, wordCount, wordList, wordProbability, wordUpperBound } from './numbers.ts';

/** Heads an ambiguity group. */
export const cannotTellApart = 'What was seen cannot tell these apart';
/** Stands beside it: inside a group nothing was seen that ranks. */
export const rankedByRatesOnly = 'Inside this group only the rates of the parts rank, nothing that was seen.';
/** The hypothesis without a fault. */
export const nothingBrokenLabel = 'nothing is broken';
/** Said when the evidence leaves no single and no pair of faults possible. */
export const impossibleStatement =
  'What was entered excludes every single fault and every pair of faults. Look again at whether the machine is halted, and at what was entered last.';

/** Faults of a hypothesis, joined: "cable -WH3: cut, both fibres + control fuse of -TB2: open". */
export function wordHypothesis(names: Names, faults: readonly HypothesisFault[]): string {
  return faults.length === 0 ? nothingBrokenLabel : faults.map(({ fault }) => wordFault(names, fault)).join(' + ');
}

/**
 * How much probability was not visited, as a sentence; null when it is too little to matter (1 % or less). The share is an upper bound:
 * where it is more than half, as it easily is with two faults at once, it is said to limit nothing, lest it be read as an estimate.
 */
export function wordUnvisitedShare(share: number): string | null {
  if (!(share > 0.01)) return null;
  return share > 0.5
    ? `Three or more faults at once were not looked at, and what was seen sets no useful limit to them (at most ${wordUpperBound(share)}).`
    : `At most ${wordUpperBound(share)} of the probability lies with three or more faults at once, which were not looked at.`;
}

/** The units of the last look whose display shows a code of its own, as the first thing to be done: "look up the code of -TB2". Null: none. */
export function wordCodesToLookUp(names: Names, { snapshots }: Evidence): { readonly head: string; readonly why: string } | null {
  const { displays = [], looks = [] } = snapshots[0] ?? {};
  const units = displays.filter(({ meanings }) => meanings.every((meaning) => meaning === 'other')).map(({ unit }) => names.unit(unit));
  if (units.length === 0 || snapshots.length > 1 || looks.length > 0) return null;
  return {
    head: `Look up the code that ${wordList(units)} show${units.length === 1 ? 's' : ''}.`,
    why: 'The unit’s manual or the legend says what it means: it is no loss of the chain. Nothing needs to be opened for it.',
  };
}

/** What a reader must know of an answer where no 24 V lead is documented. */
export const feedsNotDocumented =
  'No 24 V lead of this cabinet is written down: every unit is taken to have its 24 V, and faults of the feeds are not among the suspects. Where several units are dark, look first at what feeds them.';

/** A note on how the answer was reached. */
export function wordNote(names: Names, note: DiagnosisNote): string {
  switch (note.code) {
    case 'rates-assumed':
      return 'The yearly rates behind the percentages are assumed. Read the percentages as an order, not as a measurement.';
    case 'rates-sharpened':
      return `The yearly rates behind the percentages are assumed ones, sharpened by ${wordCount(note.cases, 'confirmed case')}. Read the percentages as an order, not as a measurement.`;
    case 'type-set-to-default':
      return `The behaviour of ${names.type(note.type)} is not known. At most two such types are weighed at once, so its usual behaviour was taken.`;
    case 'presence-sampled':
      return 'So much has been seen at so many moments that faults which come and go were weighed over a sample of what may have been there when.';
    case 'behaviour-narrowed':
      return 'The behaviour of some units may differ in so many ways that only the likeliest of them were weighed together with two faults at once.';
    case 'feeds-not-documented':
      return feedsNotDocumented;
    case 'nothing-observed':
      return 'Nothing has been entered yet, so only the rates of the parts rank.';
    default:
      return assertNever(note);
  }
}

/** What was looked at: "display of -TB2". With several snapshots its number is added. */
export function wordObservation(names: Names, evidence: Evidence, ref: ObservationRef): string {
  const which = evidence.snapshots.length > 1 ? ` (look ${ref.snapshot + 1})` : '';
  return `${observed(names, evidence, ref)}${which}`;
}

function observed(names: Names, evidence: Evidence, ref: ObservationRef): string {
  switch (ref.kind) {
    case 'display':
      return `display of ${names.unit(ref.unit)}`;
    case 'report':
      return `report of ${names.chain(ref.chain)}`;
    case 'look': {
      const look = evidence.snapshots[ref.snapshot]?.looks?.[ref.index];
      return look ? wordLook(names, look) : `look ${ref.index + 1}`;
    }
    default:
      return assertNever(ref);
  }
}

/** So many misreadings are spelt out. */
const mostMisreadings = 3;

/**
 * What does not fit, as sentences: first what stands against the most probable answer, then what would follow from a misreading. Where
 * one misreading leaves a single fault, or none, nobody believes another one and two faults besides.
 */
export function wordContradiction(names: Names, evidence: Evidence, contradiction: Contradiction): readonly string[] {
  const fewest = Math.min(...contradiction.withoutWhich.map(({ instead }) => instead.length));
  const believable = contradiction.withoutWhich.filter(({ instead }) => instead.length <= Math.max(1, fewest)).slice(0, mostMisreadings);
  const rest = believable.map(
    ({ observation, instead }) =>
      `${startSentence(wordObservation(names, evidence, observation))} misread? Then all the rest ${instead.length === 0 ? 'is as if nothing were broken' : `is explained by: ${wordHypothesis(names, instead)}`}.`,
  );
  const stands = contradiction.mispredicted.length === 1 ? 'stands' : 'stand';
  return [
    `The most probable explanation does not fit everything that was seen. Against it ${stands}: ${wordAgainst(names, evidence, contradiction)}.`,
    ...rest,
  ];
}

/** What stands against the most probable answer: "display of -TB4 and report of chain 1". */
function wordAgainst(names: Names, evidence: Evidence, { mispredicted }: Pick<Contradiction, 'mispredicted'>): string {
  return wordList(mispredicted.map((ref) => wordObservation(names, evidence, ref)));
}

/** The same in as few words as a head has room for: "displays of -TB3, -KE2 and -TB5, report of chain 1". */
export function wordAgainstShort(names: Names, evidence: Evidence, { mispredicted }: Contradiction): string {
  if (evidence.snapshots.length > 1) return wordAgainst(names, evidence, { mispredicted });
  const units = mispredicted.flatMap((ref) => (ref.kind === 'display' ? [names.unit(ref.unit)] : []));
  const others = mispredicted.filter(({ kind }) => kind !== 'display').map((ref) => wordObservation(names, evidence, ref));
  const displays = units.length === 0 ? [] : [`display${units.length === 1 ? '' : 's'} of ${wordList(units)}`];
  return [...displays, ...others].join(', ');
}

/** What the evidence says of one unknown parameter: "Type Q: a port that hears nothing: stops sending 82 %, goes on sending 18 %". */
export function wordBehaviourBelief(names: Names, belief: BehaviourBelief): string {
  const values = belief.values.map(
    ({ value, probability }) => `${findValueWords(belief.parameter, value)?.label ?? value} ${wordProbability(probability)}`,
  );
  return `${names.type(belief.type)}: ${behaviourWords[belief.parameter].label}: ${values.join(', ')}`;
}

/**
 * The answer in one line: "Look at cable -WH3 first: 82 % likely." Where it is likelier that nothing is broken, that comes first.
 * Null when there is no answer to give.
 */
export function wordAnswer(names: Names, diagnosis: Diagnosis): string | null {
  const best = diagnosis.items[0];
  if (diagnosis.impossible || !best) return null;
  const look = `ook at ${wordTheItem(names, best.item.fault)} first: ${wordProbability(best.probability)} likely.`;
  if (diagnosis.nothingBroken <= best.probability) return `L${look}`;
  return `Most likely nothing is broken: ${wordProbability(diagnosis.nothingBroken)}. Otherwise l${look}`;
}
