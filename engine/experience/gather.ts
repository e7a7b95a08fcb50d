import type { CaseContent, SharpenedRates } from '../schema/index.ts';
import { equipmentKey } from './behaved.ts';
import { confirmCase } from './confirm.ts';
import { sharpen, usualStrength } from './sharpen.ts';
import type { CauseKind, ConfirmedCase, Experience, SharedClue, UncountedCase } from './types.ts';

/** What a collection of cases says together. The order in which they come does not matter; a case counts once, by its id. */
export function gatherExperience(
  cases: readonly CaseContent[],
  strength = usualStrength,
  confirm: (content: CaseContent) => ConfirmedCase | UncountedCase = confirmCase,
): Experience {
  const { once, again } = countOnce(cases);
  const read = once.map(confirm);
  const confirmed = read.filter((one): one is ConfirmedCase => !('reason' in one));
  return {
    strength,
    confirmed,
    uncounted: [...read.filter((one): one is UncountedCase => 'reason' in one), ...again],
    rates: sharpen(confirmed, strength),
    clues: shareClues(confirmed),
  };
}

/** The rates of an experience as a case keeps them; undefined where nothing is confirmed. Exact to six figures, as written. */
export function ratesFor({ confirmed, rates, strength }: Pick<Experience, 'confirmed' | 'rates' | 'strength'>): SharpenedRates | undefined {
  if (confirmed.length === 0) return undefined;
  const factors = rates.map(({ item, mode, factor }) => ({ item, mode, factor: Number(factor.toPrecision(6)) }));
  return { cases: confirmed.length, strength, factors: factors.filter(({ factor }) => factor !== 1) };
}

/** The same experience without one of its cases. */
export function withoutCase(experience: Experience, id: string): Experience {
  const confirmed = experience.confirmed.filter(({ content }) => content.id !== id);
  return { ...experience, confirmed, rates: sharpen(confirmed, experience.strength), clues: shareClues(confirmed) };
}

/** The same experience with each assumed rate worth so many cases. */
export function withStrength(experience: Experience, strength: number): Experience {
  return strength === experience.strength ? experience : { ...experience, strength, rates: sharpen(experience.confirmed, strength) };
}

/** How one case moves the rate of the kind that it moves most, as multiples of what is assumed: without it, and with it. */
export interface CaseEffect extends CauseKind {
  readonly without: number;
  readonly with: number;
}

/** What a confirmed case changed; null where it moves nothing. */
export function effectOf(experience: Experience, one: ConfirmedCase): CaseEffect | null {
  const before = withoutCase(experience, one.content.id).rates;
  let best: CaseEffect | null = null;
  experience.rates.forEach(({ item, mode, factor }, index) => {
    const without = before[index]?.factor ?? 1;
    const share = one.causes.some((cause) => cause.item === item && cause.mode === mode);
    if (share && factor > without && (best === null || factor / without > best.with / best.without)) {
      best = { item, mode, without, with: factor };
    }
  });
  return best;
}

/** Of cases with one id the one that was handed back last; all in the order of their ids. */
function countOnce(cases: readonly CaseContent[]): { readonly once: readonly CaseContent[]; readonly again: readonly UncountedCase[] } {
  const moment = ({ result, startedAt }: CaseContent) => result?.at ?? startedAt ?? '';
  const text = (content: CaseContent) => JSON.stringify(content);
  const inOrder = [...cases].sort((a, b) => compare(a.id, b.id) || compare(moment(b), moment(a)) || compare(text(a), text(b)));
  const isFirst = (content: CaseContent, index: number) => inOrder[index - 1]?.id !== content.id;
  return {
    once: inOrder.filter(isFirst),
    again: inOrder.filter((content, index) => !isFirst(content, index)).map((content) => ({ content, reason: { why: 'counted-already' } })),
  };
}

function shareClues(confirmed: readonly ConfirmedCase[]): readonly SharedClue[] {
  const shared = new Map<string, SharedClue>();
  for (const { content, clues } of confirmed) {
    for (const clue of clues) {
      const key = `${equipmentKey(clue.equipment)} ${clue.parameter} ${clue.assumed} ${clue.instead}`;
      const before = shared.get(key)?.cases ?? [];
      // Equipment of two types may give one clue twice.
      shared.set(key, { ...clue, cases: before.includes(content) ? before : [...before, content] });
    }
  }
  return [...shared].sort(([a, one], [b, other]) => other.cases.length - one.cases.length || compare(a, b)).map(([, clue]) => clue);
}

const compare = (a: string, b: string) => Number(a > b) - Number(a < b);
