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

/** What one display shows now, without the terms: for those who ask thousands of times. */
export function predictMeaning(cabinet: Cabinet, unit: UnitId, behaviour: Behaviour, trip: MomentState, now: MomentState): DisplayMeaning {
  const isOnChain = cabinet.placeOf.has(unit);
  const shown = showsOfItself(now.units.get(unit)?.causes ?? []);
  if (shown !== null && (isOnChain || shown.meaning === 'dark')) {
    return shown.meaning;
  }
  return isOnChain && cabinet.units.get(unit)?.kind !== 'supply'
    ? meaningOfLosses(findLosses(unit, behaviour, trip, now), behaviour)
    : 'quiet';
}

/** What a lit unit has lost now, and what it holds from the trip. */
interface Losses {
  readonly restarted: boolean;
  /** It has not seen its chain up since it was switched on, and so says nothing. */
  readonly isMum: boolean;
  readonly lostUp: boolean;
  readonly lostDown: boolean;
  readonly heldUp: boolean;
  readonly heldDown: boolean;
}

function findLosses(unit: UnitId, behaviour: Behaviour, trip: MomentState, now: MomentState): Losses {
  const then = trip.units.get(unit);
  const current = now.units.get(unit);
  const restarted = then?.alive !== true;
  const holds = behaviour.holds === 'until-reset' && !restarted;
  return {
    restarted,
    isMum: restarted && behaviour.complainsFrom === 'link-up',
    lostUp: current?.lostUp === true,
    lostDown: current?.lostDown === true,
    heldUp: holds && then?.lostUp === true,
    heldDown: holds && then?.lostDown === true,
  };
}

function meaningOfLosses({ isMum, lostUp, lostDown, heldUp, heldDown }: Losses, { whenBoth }: Behaviour): DisplayMeaning {
  const up = !isMum && (lostUp || heldUp);
  const down = !isMum && (lostDown || heldDown);
  return up && down ? bothMeaning[whenBoth] : up ? 'upstream-loss' : down ? 'downstream-loss' : 'quiet';
}

function predictLosses(unit: UnitId, behaviour: Behaviour, trip: MomentState, now: MomentState): DisplayPrediction {
  const losses = findLosses(unit, behaviour, trip, now);
  const meaning = meaningOfLosses(losses, behaviour);
  const because: DisplayTerm[] = losses.restarted ? [{ code: 'restarted' }] : [];
  if (losses.isMum) {
    return { unit, meaning, because: [...because, { code: 'never-linked' }] };
  }
  const { lostUp, lostDown, heldUp, heldDown } = losses;
  for (const [side, lost, held] of [
    ['upstream', lostUp, heldUp],
    ['downstream', lostDown, heldDown],
  ] as const) {
    if (lost) {
      because.push(lossTerm(unit, side, 'now', behaviour, now));
    } else if (held) {
      because.push({ code: 'held' }, lossTerm(unit, side, 'trip', behaviour, trip));
    }
  }
  if ((lostUp || heldUp) && (lostDown || heldDown) && behaviour.whenBoth !== 'both') {
    because.push({ code: 'both-shown-as', shown: behaviour.whenBoth });
  }
  return { unit, meaning, because: meaning === 'quiet' ? [...because, ...quietTerms(unit, now)] : because };
}

const bothMeaning: Readonly<Record<Behaviour['whenBoth'], DisplayMeaning>> = {
  both: 'both-losses',
  upstream: 'upstream-loss',
  downstream: 'downstream-loss',
};

/** Why a unit complains of nothing: it hears both sides, or it would not say so yet. */
function quietTerms(unit: UnitId, now: MomentState): readonly DisplayTerm[] {
  const state = now.units.get(unit);
  const { chain } = standOf(unit, now);
  const isLast = chain?.units[chain.units.length - 1] === unit;
  const whole = state?.hearsUp === true && (isLast || state.hearsDown);
  return whole ? [{ code: isLast ? 'end-of-chain' : 'hears-both' }] : [{ code: 'never-linked' }];
}

type Stand = { readonly chain: MomentState['chains'][number] | null; readonly index: number };

/** By the chains of a moment, which many moments share: where every unit stands. */
const stands = new WeakMap<MomentState['chains'], ReadonlyMap<UnitId, Stand>>();

function standOf(unit: UnitId, { chains }: MomentState): Stand {
  let known = stands.get(chains);
  if (known === undefined) {
    known = new Map(chains.flatMap((chain) => chain.units.map((one, index) => [one, { chain, index }] as const)));
    stands.set(chains, known);
  }
  return known.get(unit) ?? { chain: null, index: -1 };
}

/** The link that explains a loss: the unit's own for a neighbour's eye, else the nearest one on which something is missing. */
function lossTerm(
  unit: UnitId,
  side: 'upstream' | 'downstream',
  moment: MomentName,
  behaviour: Behaviour,
  state: MomentState,
): DisplayTerm {
  const { chain, index } = standOf(unit, state);
  const links = chain?.links ?? [];
  const linkAt = (slot: number): LinkState | undefined => {
    const id = links[slot];
    return id === undefined ? undefined : state.links.get(id);
  };
  const isBroken = (link: LinkState | undefined) => link !== undefined && !(side === 'upstream' ? link.outbound.hears : link.return.hears);
  let at = -1;
  if (side === 'upstream') {
    for (let i = index; i >= 0 && at < 0; i -= 1) {
      at = isBroken(linkAt(i)) ? i : -1;
    }
  } else {
    for (let i = index + 1; i < links.length && at < 0; i += 1) {
      at = isBroken(linkAt(i)) ? i : -1;
    }
  }
  const link = linkAt(at);
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
