import type { ChainId, LeadId, LinkId, UnitId } from '../base/index.ts';
import { documentedPortBehaviour } from '../cabinet/index.ts';
import { type Behaviour, type Direction, directions, type Fault, linkEnds } from '../schema/index.ts';
import type { Cabinet } from '../topology/index.ts';
import { type ArrangedChain, type Arrangement, arrangedChains, endKey } from './arrangement.ts';
import { type Effect, effectsOf, type UnitEffect } from './effects.ts';
import { findPower, findPowerCauses } from './power.ts';
import type { FibreCause, FibreState, LinkState, MomentState, UnitCause, UnitState } from './types.ts';

/** The effects that are there at one moment, each with the fault that has it. */
export interface PlacedEffect {
  readonly effect: Effect;
  readonly fault: Fault;
}

/** Everything that decides one moment: cabinet, how its parts lie, which faults are there. */
export interface Moment {
  readonly cabinet: Cabinet;
  readonly arrangement: Arrangement;
  readonly placed: readonly PlacedEffect[];
  readonly behaviourOf: (unit: UnitId) => Behaviour;
  /** A fault-free chain has been up since power-on; without it some units never complain. */
  readonly hasBeenUp: boolean;
  /** Kept here by `stateOf`, which alone reads and writes it: looked up in a map of all moments it would cost more than it saves. */
  state?: MomentState;
}

/** Puts the faults of a moment to their places. */
export function placeFaults(
  faults: readonly Fault[],
  cabinet: Cabinet,
  arrangement: Arrangement,
  behaviourOf: (unit: UnitId) => Behaviour,
): readonly PlacedEffect[] {
  return faults.flatMap((fault) => effectsOf(fault, cabinet, arrangement, behaviourOf).map((effect) => ({ effect, fault })));
}

/** Steps 1 to 5 of domain section 5 for one moment: power, life, what each fibre passes, muting, losses. Worked out once for a moment. */
export function stateOf(moment: Moment): MomentState {
  moment.state ??= computeMoment(moment);
  return moment.state;
}

function computeMoment(moment: Moment): MomentState {
  const { cabinet, arrangement, placed } = moment;
  const powerFaults = {
    openLeads: new Set(placed.flatMap(({ effect }): LeadId[] => (effect.at === 'lead' ? [effect.lead] : []))),
    deadSupplies: new Set(placed.flatMap(({ effect }): UnitId[] => (effect.at === 'supply' ? [effect.unit] : []))),
  };
  const { powered, low } = findPower(cabinet, arrangement, powerFaults);
  const struck = new Set(placed.flatMap(({ effect }) => (effect.at === 'unit' || effect.at === 'supply' ? [effect.unit] : [])));
  const causesOf = new Map<UnitId, readonly UnitCause[]>();
  for (const unit of cabinet.units.keys()) {
    causesOf.set(unit, unitCauses(unit));
  }
  const isAlive = (unit: UnitId) => !(causesOf.get(unit) ?? none).some(silences);
  const chains = arrangedChains(cabinet, arrangement);
  const links = new Map<LinkId, LinkState>();
  const units = new Map<UnitId, UnitState>();
  for (const chain of chains) {
    const states = computeLinks(moment, chain, isAlive);
    for (const state of states) {
      links.set(state.link, state);
    }
    computeLosses(chain, states);
  }
  for (const unit of cabinet.units.keys()) {
    if (!units.has(unit)) {
      units.set(unit, offChainState(unit));
    }
  }
  return { units, links, chains };

  function unitCauses(unit: UnitId): readonly UnitCause[] {
    if (powered.has(unit) && !struck.has(unit) && !arrangement.takenOut.has(unit)) {
      return none;
    }
    const causes: UnitCause[] = [];
    const short = low.get(unit);
    if (arrangement.takenOut.has(unit)) {
      causes.push({ code: 'taken-out' });
    } else if (cabinet.units.get(unit)?.kind === 'supply') {
      if (placed.some(({ effect }) => effect.at === 'supply' && effect.unit === unit && effect.is === 'dead')) {
        causes.push({ code: 'supply-dead' });
      }
    } else if (short !== undefined) {
      causes.push({ code: 'voltage-too-low', volts: short.volts, minimumV: short.minimumV });
    } else if (!powered.has(unit)) {
      causes.push({ code: 'not-powered', ...findPowerCauses(cabinet, unit, powerFaults) });
    }
    for (const { effect } of placed) {
      if (effect.at === 'unit' && effect.unit === unit) {
        causes.push(wordless[effect.is]);
      }
    }
    return causes;
  }

  function offChainState(unit: UnitId): UnitState {
    // A bridged unit stands with both optical ports free: it hears nothing on either.
    const isBridged = arrangement.bridged.has(unit) && isAlive(unit);
    return {
      unit,
      powered: powered.has(unit),
      alive: isAlive(unit),
      causes: causesOf.get(unit) ?? none,
      hearsUp: false,
      hearsDown: false,
      lostUp: isBridged && speaks(unit),
      lostDown: isBridged && speaks(unit),
    };
  }

  /** Step 5: a unit says nothing of losses where it waits for a chain that has never been up. */
  function speaks(unit: UnitId): boolean {
    return moment.hasBeenUp || moment.behaviourOf(unit).complainsFrom === 'power-on';
  }

  function computeLosses(chain: ArrangedChain, states: readonly LinkState[]): void {
    const last = chain.units.length;
    const pathUp: boolean[] = [];
    const pathDown: boolean[] = [];
    states.forEach((state, index) => {
      pathUp[index] = state.outbound.hears && (index === 0 || pathUp[index - 1] === true);
    });
    for (let index = last - 1; index >= 0; index -= 1) {
      const below = states[index + 1];
      pathDown[index] = below === undefined || (below.return.hears && pathDown[index + 1] === true);
    }
    chain.units.forEach((unit, index) => {
      const hearsUp = states[index]?.outbound.hears === true;
      const below = states[index + 1];
      const hearsDown = below?.return.hears === true;
      const alive = isAlive(unit);
      const scope = moment.behaviourOf(unit).lossScope;
      const complains = alive && speaks(unit);
      units.set(unit, {
        unit,
        powered: powered.has(unit),
        alive,
        causes: causesOf.get(unit) ?? none,
        hearsUp,
        hearsDown,
        lostUp: complains && (scope === 'neighbour' ? !hearsUp : pathUp[index] !== true),
        lostDown: complains && (scope === 'neighbour' ? below !== undefined && !hearsDown : pathDown[index] !== true),
      });
    });
  }
}

/** Most units and fibres are well: they share what says so. */
const none: readonly UnitCause[] = [];
const heard: { readonly [D in Direction]: FibreState } = {
  outbound: { direction: 'outbound', raw: true, hears: true, causes: [] },
  return: { direction: 'return', raw: true, hears: true, causes: [] },
};

/** A cause after which a unit takes no part in the chain. */
function silences(cause: UnitCause): boolean {
  return cause.code !== 'feedback-short' || cause.effect !== 'code-linked';
}

const wordless: Readonly<Record<UnitEffect, UnitCause>> = {
  'dead-dark': { code: 'board-dead-dark' },
  'dead-lit': { code: 'board-dead-lit' },
  'fuse-open': { code: 'fuse-open' },
  'contact-bad': { code: 'contact-bad' },
  'short-dark': { code: 'feedback-short', effect: 'dark' },
  'short-code': { code: 'feedback-short', effect: 'code' },
  'short-code-linked': { code: 'feedback-short', effect: 'code-linked' },
};

/** Steps 3 and 4: what each fibre of a chain passes by itself, and what is heard after muting. */
function computeLinks(moment: Moment, chain: ArrangedChain, isAlive: (unit: UnitId) => boolean): readonly LinkState[] {
  const port = documentedPortBehaviour(moment.cabinet, chain.id);
  const isPortAlive =
    moment.cabinet.content.controller?.powered !== false &&
    !moment.placed.some(({ effect }) => effect.at === 'chain-port' && effect.chain === chain.id);
  return chain.links.map((link, index) => {
    const upper = index === 0 ? null : (chain.units[index - 1] ?? null);
    const lower = chain.units[index] ?? null;
    const upperAlive = upper === null ? isPortAlive : isAlive(upper);
    const lowerAlive = lower !== null && isAlive(lower);
    const stops = ({ effect }: PlacedEffect) => directions.some((direction) => stopsFibre(effect, chain.id, link, upper, lower, direction));
    if (upperAlive && lowerAlive && moment.arrangement.unplugged.size === 0 && !moment.placed.some(stops)) {
      return { link, chain: chain.id, index: index + 1, ...heard };
    }
    const physical = (direction: Direction) => fibreCauses(moment, chain.id, link, upper, lower, direction);
    const outbound = physical('outbound');
    const back = physical('return');
    if (!upperAlive) {
      outbound.push({ code: 'sender-not-alive', unit: upper });
      back.push({ code: 'receiver-not-alive', unit: upper });
    }
    if (!lowerAlive) {
      outbound.push({ code: 'receiver-not-alive', unit: lower });
      back.push({ code: 'sender-not-alive', unit: lower });
    }
    const outRaw = outbound.length === 0;
    const backRaw = back.length === 0;
    // Step 4 is settled after one round: an end mutes when it does not hear, and then the other end does not hear either.
    const upperMutes = (upper === null ? port : moment.behaviourOf(upper)).onReceiveLoss === 'mute';
    const lowerMutes = lower !== null && moment.behaviourOf(lower).onReceiveLoss === 'mute';
    if (outRaw && !backRaw && upperMutes) {
      outbound.push({ code: 'muted', by: upper });
    }
    if (backRaw && !outRaw && lowerMutes) {
      back.push({ code: 'muted', by: lower });
    }
    return {
      link,
      chain: chain.id,
      index: index + 1,
      outbound: fibre('outbound', outRaw, outbound),
      return: fibre('return', backRaw, back),
    };
  });
}

function fibre(direction: Direction, raw: boolean, causes: readonly FibreCause[]): FibreState {
  return causes.length === 0 ? heard[direction] : { direction, raw, hears: false, causes };
}

/** Why one direction of a link passes no telegrams, its two ends' life left aside. */
function fibreCauses(
  moment: Moment,
  chain: ChainId,
  link: LinkId,
  upper: UnitId | null,
  lower: UnitId | null,
  direction: Direction,
): FibreCause[] {
  const causes: FibreCause[] = [];
  for (const end of moment.arrangement.unplugged.size === 0 ? [] : linkEnds) {
    if (moment.arrangement.unplugged.has(endKey(link, end))) {
      causes.push({ code: 'unplugged', end });
    }
  }
  for (const { effect, fault } of moment.placed) {
    if (stopsFibre(effect, chain, link, upper, lower, direction)) {
      causes.push({ code: 'fault', fault });
    }
  }
  return causes;
}

/** Whether an effect by itself keeps telegrams from passing in one direction of a link. */
export function stopsFibre(
  effect: Effect,
  chain: ChainId,
  link: LinkId,
  upper: UnitId | null,
  lower: UnitId | null,
  direction: Direction,
): boolean {
  switch (effect.at) {
    case 'fibre':
      return effect.link === link && effect.direction === direction && effect.is !== 'weak';
    case 'plug':
    case 'route':
    case 'holes':
      return effect.link === link;
    case 'wiring':
      return effect.unit === upper || effect.unit === lower;
    case 'port': {
      const isSender = direction === 'outbound' ? 'upper' : 'lower';
      const at = effect.unit === upper && effect.port === 'down' ? 'upper' : effect.unit === lower && effect.port === 'up' ? 'lower' : null;
      return at !== null && effect.is === (at === isSender ? 'tx-dead' : 'rx-dead');
    }
    case 'chain-port':
      // The port board is one end of link 1; its life is judged with the ends.
      return effect.chain === chain && upper === null;
    default:
      return false;
  }
}
