import type { UnitId } from '../base/index.ts';
import type { Behaviour, DisplayMeaning } from '../schema/index.ts';
import type { Cabinet } from '../topology/index.ts';
import type { DisplayPrediction, DisplayTerm, LinkState, MomentName, MomentState, UnitCause } from './types.ts';

/** What one display shows now, from the states at the trip and now (domain section 5, step 6), with the terms that decided. */
export function predictDisplay(
  cabinet: Cabinet,
  unit: UnitId,
  behaviour: Behaviour,
  trip: MomentState,
  now: MomentState,
): DisplayPrediction {
  const current = now.units.get(unit);
  const causes = current?.causes ?? [];
  const isOnChain = cabinet.placeOf.has(unit);
  const shown = showsOfItself(causes);
  // A unit off the chain is dark by the same rules, else quiet: it says nothing of its own.
  if (shown !== null && (isOnChain || shown.meaning === 'dark')) {
    return { unit, meaning: shown.meaning, because: [{ code: 'unit', cause: shown.cause }] };
  }
  if (cabinet.units.get(unit)?.kind === 'supply') {
    return { unit, meaning: 'quiet', because: [{ code: 'supply-lit' }] };
  }
  if (!isOnChain) {
    return { unit, meaning: 'quiet', because: [{ code: 'off-chain' }] };
  }
  return predictLosses(unit, behaviour, trip, now);
}

/** The part of a display that does not depend on the light: dark, a code of its own, or dead but lit. Dark wins, then the code. */
function showsOfItself(causes: readonly UnitCause[]): { readonly meaning: DisplayMeaning; readonly cause: UnitCause } | null {
  for (const meaning of ['dark', 'other', 'quiet'] as const) {
    const cause = causes.find((one) => meaningOf(one) === meaning);
    if (cause !== undefined) {
      return { meaning, cause };
    }
  }
  return null;
}

function meaningOf(cause: UnitCause): DisplayMeaning {
  switch (cause.code) {
    case 'board-dead-lit':
      return 'quiet';
    case 'feedback-short':
      return cause.effect === 'dark' ? 'dark' : 'other';
    default:
      return 'dark';
  }
}

function predictLosses(unit: UnitId, behaviour: Behaviour, trip: MomentState, now: MomentState): DisplayPrediction {
  const then = trip.units.get(unit);
  const current = now.units.get(unit);
  const because: DisplayTerm[] = [];
  const restarted = then?.alive !== true;
  if (restarted) {
    because.push({ code: 'restarted' });
    if (behaviour.complainsFrom === 'link-up') {
      return { unit, meaning: 'quiet', because: [...because, { code: 'never-linked' }] };
    }
  }
  const holds = behaviour.holds === 'until-reset' && !restarted;
  const lost = { upstream: current?.lostUp === true, downstream: current?.lostDown === true };
  const held = { upstream: holds && then?.lostUp === true, downstream: holds && then?.lostDown === true };
  for (const side of ['upstream', 'downstream'] as const) {
    if (lost[side]) {
      because.push(lossTerm(unit, side, 'now', behaviour, now));
    } else if (held[side]) {
      because.push({ code: 'held' }, lossTerm(unit, side, 'trip', behaviour, trip));
    }
  }
  const up = lost.upstream || held.upstream;
  const down = lost.downstream || held.downstream;
  if (up && down) {
    if (behaviour.whenBoth !== 'both') {
      because.push({ code: 'both-shown-as', shown: behaviour.whenBoth });
    }
    return { unit, meaning: bothMeaning[behaviour.whenBoth], because };
  }
  if (up || down) {
    return { unit, meaning: up ? 'upstream-loss' : 'downstream-loss', because };
  }
  return { unit, meaning: 'quiet', because: [...because, ...quietTerms(unit, now)] };
}

const bothMeaning: Readonly<Record<Behaviour['whenBoth'], DisplayMeaning>> = {
  both: 'both-losses',
  upstream: 'upstream-loss',
  downstream: 'downstream-loss',
};

/** Why a unit complains of nothing: it hears both sides, or it would not say so yet. */
function quietTerms(unit: UnitId, now: MomentState): readonly DisplayTerm[] {
  const state = now.units.get(unit);
  const chain = now.chains.find((one) => one.units.includes(unit));
  const isLast = chain?.units[chain.units.length - 1] === unit;
  const whole = state?.hearsUp === true && (isLast || state.hearsDown);
  return whole ? [{ code: isLast ? 'end-of-chain' : 'hears-both' }] : [{ code: 'never-linked' }];
}

/** The link that explains a loss: the unit's own for a neighbour's eye, else the nearest one on which something is missing. */
function lossTerm(
  unit: UnitId,
  side: 'upstream' | 'downstream',
  moment: MomentName,
  behaviour: Behaviour,
  state: MomentState,
): DisplayTerm {
  const chain = state.chains.find((one) => one.units.includes(unit));
  const index = chain?.units.indexOf(unit) ?? -1;
  const links = (chain?.links ?? []).map((id) => state.links.get(id));
  const isBroken = (link: LinkState | undefined) => link !== undefined && !(side === 'upstream' ? link.outbound.hears : link.return.hears);
  let at = -1;
  if (side === 'upstream') {
    for (let i = index; i >= 0 && at < 0; i -= 1) {
      at = isBroken(links[i]) ? i : -1;
    }
  } else {
    for (let i = index + 1; i < links.length && at < 0; i += 1) {
      at = isBroken(links[i]) ? i : -1;
    }
  }
  const link = at < 0 ? undefined : links[at];
  const fibre = side === 'upstream' ? link?.outbound : link?.return;
  return {
    code: 'lost',
    side,
    moment,
    scope: behaviour.lossScope,
    link: link?.link ?? null,
    position: at + 1,
    causes: fibre?.causes ?? [],
  };
}
