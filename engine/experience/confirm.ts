import { checkCabinet } from '../cabinet/index.ts';
import { type Diagnosis, defaultDaysSinceWhole, diagnose, isAssumed, listFaultSpace, rateOf } from '../diagnosis/index.ts';
import { type EndState, endOf, listCauses } from '../plan/index.ts';
import type { CaseContent, Evidence } from '../schema/index.ts';
import type { Cabinet } from '../topology/index.ts';
import { findClues, findDifferences, mendedCauses } from './behaved.ts';
import type { CauseShare, ConfirmedCase, UncountedCase } from './types.ts';

/**
 * Whether a repair that ended so counts: the machine runs as it should, and either what was done has mended all but a small doubt of what
 * it may have been, or somebody named what was wrong. That a part is proved to be broken is not asked: what is mended by cleaning and
 * reseating never is, and without it these kinds would seem rarer with each case.
 */
export function countsAs({ end, because }: Pick<EndState, 'end' | 'because'>, { item, mode }: Pick<CaseResult, 'item' | 'mode'>): boolean {
  if (end !== 'proved' && end !== 'not-proved') return false;
  return !because.includes('comes-and-goes') || item !== undefined || mode !== undefined;
}

type CaseResult = NonNullable<CaseContent['result']>;

/**
 * What one case confirms, or why it is not counted: its result must say that the machine runs, and what was seen and done must bear it
 * out (`countsAs`). The cause is worked out anew at the assumed rates, so that no case counts for more because of others. Takes the
 * time of a diagnosis, and of some thousand simulations where equipment behaved otherwise than documented.
 */
export function confirmCase(content: CaseContent): ConfirmedCase | UncountedCase {
  const { result } = content;
  if (result === undefined) return { content, reason: { why: 'no-result' } };
  if (result.end !== 'proved' && result.end !== 'not-proved') return { content, reason: { why: 'other-end', end: result.end } };
  if (content.evidence.snapshots.some(({ simulated }) => simulated === true)) return { content, reason: { why: 'simulated' } };
  const { cabinet } = checkCabinet(content.cabinet);
  if (!cabinet) return { content, reason: { why: 'cabinet-not-sound' } };
  const { rates: _, ...evidence } = content.evidence;
  const diagnosis = diagnose(cabinet, evidence);
  const end = endOf(cabinet, evidence, diagnosis);
  if (!countsAs(end, result)) return { content, reason: { why: 'not-proved-by-acts', because: end.because } };
  const causes = causesOf(cabinet, evidence, diagnosis, result);
  if (causes.length === 0) return { content, reason: { why: 'cause-unclear' } };
  const likely = mendedCauses(cabinet, evidence, diagnosis);
  const differences = findDifferences(cabinet, evidence, diagnosis, likely);
  return {
    content,
    ...countOf(cabinet, evidence, causes),
    differences,
    clues: differences.length === 0 ? [] : findClues(cabinet, evidence, diagnosis, likely, differences),
  };
}

/** The kinds of cause among what was mended, by the diagnosis; only the named one, where the result names it. */
function causesOf(cabinet: Cabinet, evidence: Evidence, diagnosis: Diagnosis, { item, mode }: CaseResult): readonly CauseShare[] {
  const shares = new Map<string, CauseShare>();
  let whole = 0;
  for (const { key, fault, share } of listCauses(cabinet, evidence, diagnosis)) {
    if ((item !== undefined && item !== key) || (mode !== undefined && mode !== fault.mode)) continue;
    const kind = `${fault.item}/${fault.mode}`;
    shares.set(kind, { item: fault.item, mode: fault.mode, share: (shares.get(kind)?.share ?? 0) + share });
    whole += share;
  }
  return whole === 0 ? [] : [...shares.values()].map((one) => ({ ...one, share: one.share / whole })).sort((a, b) => b.share - a.share);
}

/** What could have been the cause. A kind whose rate somebody wrote into this cabinet is known, and teaches nothing of the assumed one. */
function countOf(
  cabinet: Cabinet,
  evidence: Evidence,
  causes: readonly CauseShare[],
): Pick<ConfirmedCase, 'causes' | 'exposures' | 'fixedWeight'> {
  const space = listFaultSpace(cabinet, {
    circumstances: evidence.circumstances ?? [],
    daysSinceWhole: evidence.daysSinceWhole ?? defaultDaysSinceWhole,
    withWiringMistakes: !evidence.snapshots.some(({ onset }) => onset === 'while-running'),
  });
  const weights = new Map<string, ConfirmedCase['exposures'][number]>();
  let fixedWeight = 0;
  space.faults.forEach((faults, element) => {
    faults.forEach((fault, index) => {
      const odds = space.elements[element]?.modes[index]?.odds ?? 0;
      if (!isAssumed(rateOf(fault, cabinet.content))) {
        fixedWeight += odds;
        return;
      }
      const key = `${fault.item}/${fault.mode}`;
      weights.set(key, { item: fault.item, mode: fault.mode, weight: (weights.get(key)?.weight ?? 0) + odds });
    });
  });
  return { causes, exposures: [...weights.values()], fixedWeight };
}
