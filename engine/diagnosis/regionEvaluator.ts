import { documentedPortBehaviour } from '../cabinet/index.ts';
import { type Behaviour, displayMeanings } from '../schema/index.ts';
import { applyUnitBits, type CompiledCabinet, linkBits, type RegionOps, silentBits, unitBits } from './compiled.ts';
import type { Scenario } from './scenarios.ts';

/** State of a unit at a moment, as bits. The lower three decide what is held; all six what is shown. */
export const stateBits = { lostUp: 1, lostDown: 2, alive: 4, dark: 8, other: 16, deadLit: 32 } as const;
const states = 64;
const heldStates = 8;

/** What there is in a region without any fault, to which a fault of local reach is only a correction. */
export interface Unharmed {
  readonly states: Uint8Array;
  /** By link, what is not heard on it, as `linkBits`. */
  readonly heard: Uint8Array;
  /** The gaps, ascending: a cable that is unplugged, a unit that lacks voltage as documented. */
  readonly gaps: readonly number[];
}

/** One region under one scenario: from what is wrong with links and units to the state of every unit and the reported gap. */
export class RegionEvaluator {
  /** Units in the region; the length of the state arrays. */
  readonly size: number;
  /** For each unit, the meaning (index into `displayMeanings`) by `heldState * 64 + state`. */
  private readonly displayTables: readonly Uint8Array[];
  /** Units complain only about their own links. */
  readonly seesNeighboursOnly: boolean;
  /** Every unit keeps showing the loss of the trip. */
  readonly holdsAll: boolean;
  private readonly isChain: boolean;
  private readonly isMuting: Uint8Array;
  private readonly isPortMuting: boolean;
  private readonly seesChain: Uint8Array;
  private readonly complainsAlways: Uint8Array;
  private readonly links: Uint8Array;
  private readonly units: Uint8Array;
  /** First and last link of the last evaluation; those outside are as without any fault. */
  private from = 0;
  private to = -1;

  constructor(
    private readonly compiled: CompiledCabinet,
    private readonly region: number,
    scenario: Scenario,
  ) {
    const { chain, units } = compiled.regions[region] ?? { chain: null, units: [] };
    const behaviours = units.map((unit) => scenario.behaviourOf(unit));
    this.size = units.length;
    this.isChain = chain !== null;
    this.isMuting = Uint8Array.from(behaviours, ({ onReceiveLoss }) => (onReceiveLoss === 'mute' ? 1 : 0));
    this.isPortMuting = chain !== null && documentedPortBehaviour(compiled.cabinet, chain).onReceiveLoss === 'mute';
    this.seesChain = Uint8Array.from(behaviours, ({ lossScope }) => (lossScope === 'chain' ? 1 : 0));
    this.seesNeighboursOnly = behaviours.every(({ lossScope }) => lossScope === 'neighbour');
    this.holdsAll = behaviours.every(({ holds }) => holds === 'until-reset');
    this.complainsAlways = Uint8Array.from(behaviours, ({ complainsFrom }) => (complainsFrom === 'power-on' ? 1 : 0));
    this.displayTables = behaviours.map((behaviour) => displayTable(behaviour));
    this.links = new Uint8Array(units.length + 1);
    this.units = new Uint8Array(units.length);
  }

  /** What a unit's display shows (index into `displayMeanings`), by its states at the trip and now. */
  meaning(unit: number, held: number, now: number): number {
    return this.displayTables[unit]?.[(held & (heldStates - 1)) * states + now] ?? 0;
  }

  /**
   * Steps 2 to 5 of domain section 5 in one arrangement. Writes the state of every unit to `out` and answers the gap
   * (0: all reached). `ops` are applied on top of each other. `unharmed` is given where only neighbours complain: what lies outside
   * the faults' reach is copied from it.
   */
  evaluate(
    arrangement: number,
    hasBeenUp: boolean,
    ops: readonly (RegionOps | undefined)[],
    out: Uint8Array,
    unharmed: Unharmed | null,
  ): number {
    const layout = this.compiled.layouts[arrangement]?.[this.region];
    if (layout === undefined) {
      return 0;
    }
    const { links, units } = this;
    const { unitAt } = layout;
    const length = unitAt.length;
    links.set(layout.baseLinks);
    units.set(layout.baseUnits);
    let from = length;
    let to = -1;
    for (const one of ops) {
      if (one !== undefined) {
        from = Math.min(from, one.from);
        to = Math.max(to, one.to);
        for (let i = 0; i < one.slots.length; i += 1) {
          const slot = one.slots[i] ?? 0;
          links[slot] = (links[slot] ?? 0) | (one.slotBits[i] ?? 0);
        }
        for (let i = 0; i < one.units.length; i += 1) {
          const unit = one.units[i] ?? 0;
          units[unit] = applyUnitBits(units[unit] ?? 0, one.unitBits[i] ?? 0);
        }
      }
    }
    if (!this.isChain) {
      for (let unit = 0; unit < this.size; unit += 1) {
        // Off the chain a unit is dark or quiet, and says nothing of its own.
        out[unit] = ownState((units[unit] ?? 0) & ~unitBits.other);
      }
      return 0;
    }
    if (unharmed === null) {
      from = 0;
      to = length - 1;
    } else {
      out.set(unharmed.states);
      to = Math.min(to, length - 1);
    }
    this.from = from;
    this.to = to;
    let gap = 0;
    const upper = from > 0 ? (unitAt[from - 1] ?? 0) : -1;
    let isUpperAlive = upper < 0 || ((units[upper] ?? 0) & silentBits) === 0;
    let isUpperMuting = upper < 0 ? this.isPortMuting : this.isMuting[upper] === 1;
    let isPathUpBroken = 0;
    let lastReturnBroken = -1;
    for (let slot = from; slot <= to; slot += 1) {
      const unit = unitAt[slot] ?? 0;
      const bits = units[unit] ?? 0;
      const isAlive = (bits & silentBits) === 0;
      const isMuting = this.isMuting[unit] === 1;
      let heard = isAlive && isUpperAlive ? (links[slot] ?? 0) : linkBits.both;
      if ((heard === linkBits.outbound && isMuting) || (heard === linkBits.return && isUpperMuting)) {
        heard = linkBits.both;
      }
      links[slot] = heard;
      isPathUpBroken |= heard & linkBits.outbound;
      if (heard !== 0 && gap === 0) {
        gap = slot + 1;
      }
      const isLost = this.seesChain[unit] === 1 ? isPathUpBroken : heard & linkBits.outbound;
      const complains = isLost !== 0 && isAlive && (hasBeenUp || this.complainsAlways[unit] === 1);
      out[unit] = ownState(bits) | (complains ? stateBits.lostUp : 0);
      if ((heard & linkBits.return) !== 0) {
        lastReturnBroken = slot;
      }
      isUpperAlive = isAlive;
      isUpperMuting = isMuting;
    }
    if (unharmed !== null && from <= to) {
      out[upper] = (out[upper] ?? 0) & ~stateBits.lostDown;
      // The link below their reach may be broken without the faults.
      const below = unharmed.heard[to + 1] ?? 0;
      links[to + 1] = below;
      lastReturnBroken = (below & linkBits.return) === 0 ? lastReturnBroken : to + 1;
    }
    // Losses downstream reach from the lowest broken return upwards; below it there is nothing to say.
    for (let slot = lastReturnBroken - 1; slot >= Math.max(0, from - 1); slot -= 1) {
      const unit = unitAt[slot] ?? 0;
      const isLost = this.seesChain[unit] === 1 || ((links[slot + 1] ?? 0) & linkBits.return) !== 0;
      if (isLost && ((units[unit] ?? 0) & silentBits) === 0 && (hasBeenUp || this.complainsAlways[unit] === 1)) {
        out[unit] = (out[unit] ?? 0) | stateBits.lostDown;
      }
    }
    for (const unit of layout.bridged) {
      // Both optical ports of a bridged unit are free: it hears nothing.
      const complains = ((units[unit] ?? 0) & silentBits) === 0 && (hasBeenUp || this.complainsAlways[unit] === 1);
      out[unit] = ownState(units[unit] ?? 0) | (complains ? stateBits.lostUp | stateBits.lostDown : 0);
    }
    return unharmed === null ? gap : nearestGap(unharmed.gaps, from, to, gap);
  }

  /** What the last evaluation, one without any fault, left. */
  keepUnharmed(states: Uint8Array): Unharmed {
    const heard = this.links.slice(0, this.to + 1);
    return { states, heard, gaps: [...heard].flatMap((bits, slot) => (bits === 0 ? [] : [slot + 1])) };
  }

  /** The first gap of the last evaluation on some links; 0: none. `heard`: what there is outside the reach of its faults. */
  firstGapIn(from: number, to: number, heard: Uint8Array): number {
    for (let slot = from; slot <= Math.min(to, heard.length - 1); slot += 1) {
      const bits = slot >= this.from && slot <= this.to ? this.links[slot] : heard[slot];
      if (bits !== 0) {
        return slot + 1;
      }
    }
    return 0;
  }
}

/** The gap nearest to the controller: one that is there without any fault, outside of some links, or the one on these; 0: none. */
function nearestGap(gaps: readonly number[], from: number, to: number, within: number): number {
  for (const gap of gaps) {
    if (gap <= from) {
      return gap;
    }
    if (gap > to + 1) {
      return within === 0 ? gap : within;
    }
  }
  return within;
}

/**
 * The part of a state that a unit's own faults decide: dark, other and dead-lit lie two bits higher in a state than in the bits of a
 * fault, and a unit without its 24 V is dark.
 */
function ownState(bits: number): number {
  return (
    ((bits & (unitBits.dark | unitBits.other | unitBits.deadLit)) << 2) |
    ((bits & unitBits.unpowered) === 0 ? 0 : stateBits.dark) |
    ((bits & silentBits) === 0 ? stateBits.alive : 0)
  );
}

const tables = new Map<string, Uint8Array>();

/** Step 6 of domain section 5 as a table: what is shown, by the state at the trip (lower three bits) and the state now. */
function displayTable(behaviour: Behaviour): Uint8Array {
  const { whenBoth, holds, complainsFrom } = behaviour;
  const key = `${whenBoth}/${holds}/${complainsFrom}`;
  let table = tables.get(key);
  if (table === undefined) {
    table = new Uint8Array(heldStates * states);
    for (let held = 0; held < heldStates; held += 1) {
      for (let now = 0; now < states; now += 1) {
        table[held * states + now] = displayMeanings.indexOf(meaningOf(behaviour, held, now));
      }
    }
    tables.set(key, table);
  }
  return table;
}

function meaningOf({ whenBoth, holds, complainsFrom }: Behaviour, held: number, now: number): (typeof displayMeanings)[number] {
  if ((now & stateBits.dark) !== 0) {
    return 'dark';
  }
  if ((now & stateBits.other) !== 0) {
    return 'other';
  }
  const hasRestarted = (held & stateBits.alive) === 0;
  if ((now & stateBits.deadLit) !== 0 || (hasRestarted && complainsFrom === 'link-up')) {
    return 'quiet';
  }
  const losses = (now | (holds === 'until-reset' && !hasRestarted ? held : 0)) & (stateBits.lostUp | stateBits.lostDown);
  if (losses === (stateBits.lostUp | stateBits.lostDown)) {
    return whenBoth === 'both' ? 'both-losses' : whenBoth === 'upstream' ? 'upstream-loss' : 'downstream-loss';
  }
  return losses === stateBits.lostUp ? 'upstream-loss' : losses === stateBits.lostDown ? 'downstream-loss' : 'quiet';
}
