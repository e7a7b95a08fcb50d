import type { Diagnosis } from '../diagnosis/index.ts';
import type { Evidence, Intervention } from '../schema/index.ts';
import { simulate } from '../simulation/index.ts';
import type { Cabinet } from '../topology/index.ts';
import { listDisplaced, listHandlings, putBack } from './history.ts';
import { mendedBy } from './mended.ts';
import type { Displaced, EndReason, EndState } from './types.ts';

/** More than this probability that something comes back, and nothing is proved. Assumed. */
const mostDoubt = 0.1;

/**
 * How the search stands: proved, not proved, or running provisionally (domain section 7, "End"). Proved is what left with the one part
 * that was exchanged, or came with it to another place and left with it; what is gone after reseating or cleaning alone is not proved.
 */
export function endOf(cabinet: Cabinet, evidence: Evidence, diagnosis: Diagnosis): EndState {
  const { snapshots } = evidence;
  const displaced = listDisplaced(cabinet, evidence);
  const touched = listHandlings(evidence);
  const last = snapshots[snapshots.length - 1];
  const lastActs = lastDone(cabinet, evidence);
  const mayComeBack = chanceOfComingBack(cabinet, evidence, diagnosis);
  const rest = { lastActs, touched, displaced, expected: expectedNow(cabinet, evidence), mayComeBack };
  if (last === undefined || last.halted !== false) {
    return { end: 'open', because: ['still-halted'], ...rest };
  }
  if (touched.length === 0) {
    return { end: 'open', because: ['nothing-done'], ...rest };
  }
  // A chain that came up by a pulled plug has shown the cause; it is still to be mended.
  const isPulled = displaced.some(({ kind }) => kind === 'feedback-pulled');
  if (isPulled && lastActs.some(({ do: kind }) => kind === 'pull-feedback')) {
    return { end: 'open', because: ['feedback-pulled'], ...rest };
  }
  const provisional = provisionalReasons(displaced);
  if (provisional.length > 0) {
    return { end: 'running-provisionally', because: provisional, ...rest };
  }
  const because: EndReason[] = [];
  if (lastActs.every(isHandlingOnly)) because.push('only-handled');
  else if (new Set(lastActs.map((act) => JSON.stringify(act))).size > 1) because.push('several-acts-at-once');
  if (mayComeBack > mostDoubt) because.push('comes-and-goes');
  return { end: because.length === 0 ? 'proved' : 'not-proved', because, ...rest };
}

/**
 * The acts that ended the halt, or the newest that were done. What only puts things back into a machine that runs, and goes on running,
 * takes nothing from what was shown before it; nor does a feedback plug that goes in again along with another act, since it mends nothing.
 */
function lastDone(cabinet: Cabinet, { snapshots }: Evidence): readonly Intervention[] {
  for (let index = snapshots.length - 1; index >= 0; index -= 1) {
    const acts = snapshots[index]?.interventions ?? [];
    const before = snapshots.slice(0, index);
    if (acts.length > 0 && !(before[index - 1]?.halted === false && isPuttingBack(cabinet, { snapshots: before }, acts))) {
      const others = acts.filter(({ do: kind }) => kind !== 'plug-feedback');
      return others.length === 0 ? acts : others;
    }
  }
  return [];
}

/** Whether each of the acts puts back something that stood elsewhere, hung free or was gone round before them. */
function isPuttingBack(cabinet: Cabinet, before: Evidence, acts: readonly Intervention[]): boolean {
  const back = listDisplaced(cabinet, before).flatMap(putBack).map(keyOf);
  return acts.every((act) => back.includes(keyOf(act)));
}

/** An exchange is the same whichever of the two is named first. */
const keyOf = (act: Intervention) => Object.values(act).map(String).sort().join();

/** Handling cures by chance what was not looked for: it shows no part to be broken. */
function isHandlingOnly({ do: kind }: Intervention): boolean {
  return !/^(replace-|re-route$|uncross-)/.test(kind);
}

function provisionalReasons(displaced: readonly Displaced[]): readonly EndReason[] {
  const bypasses = displaced.some(
    ({ kind }) => kind === 'bridged' || kind === 'taken-out' || kind === 'feedback-pulled' || kind === 'unplugged',
  );
  const moved = displaced.some(({ kind }) => kind === 'board' || kind === 'cable');
  return [...(bypasses ? (['something-bypassed'] as const) : []), ...(moved ? (['parts-displaced'] as const) : [])];
}

/** Probability that some fault of the diagnosis is still in the cabinet, only not there at the moment. */
function chanceOfComingBack(cabinet: Cabinet, evidence: Evidence, { hypotheses }: Diagnosis): number {
  const isMended = mendedBy(cabinet, evidence);
  return hypotheses.reduce((sum, { faults, probability }) => sum + (faults.every(({ fault }) => isMended(fault)) ? 0 : probability), 0);
}

function expectedNow(cabinet: Cabinet, { snapshots }: Evidence): EndState['expected'] {
  const beforeTrip = snapshots.flatMap(({ interventions }) => interventions ?? []);
  const { displays, reports } = simulate({ cabinet, faults: [], onset: 'at-power-up', halted: false, beforeTrip });
  return {
    displays: [...displays.values()].map(({ unit, meaning }) => ({ unit, meaning })),
    reports: [...reports.values()].filter(({ speaks, length }) => speaks && length > 0).map(({ chain, gap }) => ({ chain, gap })),
  };
}
