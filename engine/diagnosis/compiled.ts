import type { ChainId, LeadId, LinkId, UnitId } from '../base/index.ts';
import { assertNever } from '../base/index.ts';
import { type Arrangement, arrangedChains, type Effect, endKey, findPowered, findReached } from '../simulation/index.ts';
import { hasMinimumVoltage } from '../sums/index.ts';
import type { Cabinet } from '../topology/index.ts';

/*
 * The cabinet in numbers, for weighing thousands of hypotheses: every chain is a region of its own, since what happens on one
 * chain shows nowhere else; units off the chains and supplies are one more region. Checked against the plain simulation by
 * property tests.
 */

/** What is wrong with a link: bit 0 outbound passes nothing, bit 1 return passes nothing. */
export const linkBits = { outbound: 1, return: 2, both: 3 } as const;
/**
 * What is wrong with a unit. Where voltages decide, lack of 24 V is a bit of its own, `unpowered`, because a fault may take the 24 V
 * away and also give it back; elsewhere a unit without it is simply not alive and dark.
 */
export const unitBits = { notAlive: 1, dark: 2, other: 4, deadLit: 8, unpowered: 16 } as const;
/** A unit with any of these hears and sends nothing. */
export const silentBits = unitBits.notAlive | unitBits.unpowered;

/** A part of the cabinet whose displays depend on nothing outside it but power. */
export interface Region {
  readonly chain: ChainId | null;
  readonly units: readonly UnitId[];
}

/** How a region hangs together in one arrangement. */
export interface Layout {
  /** Local index of the unit at each position; its length is the number of links. */
  readonly unitAt: Int32Array;
  readonly slotOf: ReadonlyMap<LinkId, number>;
  /** Local indices of units of the chain that are bridged. */
  readonly bridged: readonly number[];
  readonly baseLinks: Uint8Array;
  readonly baseUnits: Uint8Array;
}

/**
 * What a set of faults does to one region: which links and units get which bits. `unpowered` is turned round instead: it marks the
 * units whose 24 V is otherwise than without these faults.
 */
export interface RegionOps {
  readonly slots: readonly number[];
  readonly slotBits: readonly number[];
  readonly units: readonly number[];
  readonly unitBits: readonly number[];
  /** First and last link on which something may be heard otherwise than without these faults. */
  readonly from: number;
  readonly to: number;
}

/** The cabinet compiled for a list of arrangements. `layouts[a][r]` is region r in arrangement a. */
export interface CompiledCabinet {
  readonly cabinet: Cabinet;
  readonly regions: readonly Region[];
  readonly regionOf: ReadonlyMap<UnitId, { readonly region: number; readonly local: number }>;
  readonly layouts: readonly (readonly Layout[])[];
  /** Two feed faults together may do something else than each alone: some unit has more than one feed, or `doVoltagesDecide`. */
  readonly doFeedsInteract: boolean;
  /**
   * A unit that the leads reach may have too little voltage, or lose and regain it by what happens elsewhere. Never so in a cabinet
   * where every unit has one feed and enough: there a lead that opens can only lift the voltage of others.
   */
  readonly doVoltagesDecide: boolean;
  /**
   * By unit, one that stands for all those whose voltage may depend on its own feed: what hangs on one lead of a supply. Null where
   * currents may take more than one way, so that any two feed faults may matter to each other.
   */
  readonly feedAreas: ReadonlyMap<UnitId, UnitId> | null;
  /** By arrangement: the units that have their 24 V without any fault. */
  readonly powered: readonly ReadonlySet<UnitId>[];
}

/** Compiles a cabinet for its arrangements. */
export function compileCabinet(cabinet: Cabinet, arrangements: readonly Arrangement[]): CompiledCabinet {
  const chainUnits = new Set<UnitId>(cabinet.chains.flatMap((chain) => [...chain.units]));
  const rest = [...cabinet.units.keys()].filter((unit) => !chainUnits.has(unit));
  const regions: Region[] = [...cabinet.chains.map(({ id, units }) => ({ chain: id, units })), { chain: null, units: rest }];
  const regionOf = new Map<UnitId, { region: number; local: number }>();
  regions.forEach(({ units }, region) => {
    units.forEach((unit, local) => {
      regionOf.set(unit, { region, local });
    });
  });
  const fed = new Set<UnitId>();
  let hasSecondFeeds = false;
  for (const { to } of cabinet.feeds) {
    hasSecondFeeds ||= fed.has(to);
    fed.add(to);
  }
  const powered = arrangements.map((arrangement) => findPowered(cabinet, arrangement, noFaults));
  const doVoltagesDecide =
    hasMinimumVoltage(cabinet) &&
    (hasSecondFeeds || arrangements.some((arrangement, at) => findReached(cabinet, arrangement, noFaults).size !== powered[at]?.size));
  const layouts = arrangements.map((arrangement, at) =>
    regions.map((region) => layOutRegion(cabinet, arrangement, region, powered[at] ?? new Set(), doVoltagesDecide)),
  );
  return {
    cabinet,
    regions,
    regionOf,
    layouts,
    doFeedsInteract: hasSecondFeeds || doVoltagesDecide,
    doVoltagesDecide,
    feedAreas: hasSecondFeeds ? null : findFeedAreas(cabinet),
    powered,
  };
}

/**
 * Where every unit has one feed and no supply has any, the wiring is a tree below each lead of a supply. Supplies hold their voltage,
 * so what happens in one tree does nothing in another.
 */
function findFeedAreas({ feeds, units }: Cabinet): ReadonlyMap<UnitId, UnitId> | null {
  const isSupply = (unit: UnitId) => units.get(unit)?.kind === 'supply';
  if (feeds.some(({ to }) => isSupply(to))) {
    return null;
  }
  const feederOf = new Map(feeds.map(({ from, to }) => [to, from]));
  const areas = new Map<UnitId, UnitId>();
  for (const unit of units.keys()) {
    const way = new Set<UnitId>();
    let top = unit;
    // Leads in a circle feed nobody; any of its units stands for it.
    for (let next: UnitId | undefined = unit; next !== undefined && !isSupply(next) && !areas.has(next) && !way.has(next); ) {
      way.add(next);
      top = next;
      next = feederOf.get(next);
    }
    const above = feederOf.get(top);
    const area = (above === undefined ? undefined : areas.get(above)) ?? top;
    for (const one of way) {
      areas.set(one, area);
    }
  }
  return areas;
}

const noFaults = { openLeads: new Set<LeadId>(), deadSupplies: new Set<UnitId>() };

function layOutRegion(
  cabinet: Cabinet,
  arrangement: Arrangement,
  region: Region,
  powered: ReadonlySet<UnitId>,
  doVoltagesDecide: boolean,
): Layout {
  const chain = arrangedChains(cabinet, arrangement).find(({ id }) => id === region.chain);
  const localOf = new Map(region.units.map((unit, local) => [unit, local]));
  const links = chain?.links ?? [];
  const baseLinks = new Uint8Array(links.length);
  const slotOf = new Map<LinkId, number>();
  links.forEach((link, slot) => {
    slotOf.set(link, slot);
    const isFree = arrangement.unplugged.has(endKey(link, 'upper')) || arrangement.unplugged.has(endKey(link, 'lower'));
    const isOff = slot === 0 && cabinet.content.controller?.powered === false;
    baseLinks[slot] = isFree || isOff ? linkBits.both : 0;
  });
  const baseUnits = Uint8Array.from(region.units, (unit) => {
    const isSupply = cabinet.units.get(unit)?.kind === 'supply';
    const isUnpowered = !isSupply && !powered.has(unit);
    return (arrangement.takenOut.has(unit) ? dead : 0) | (isUnpowered ? unpoweredBits(doVoltagesDecide) : 0);
  });
  return {
    unitAt: Int32Array.from(chain?.units ?? [], (unit) => localOf.get(unit) ?? 0),
    slotOf,
    bridged: region.chain === null ? [] : region.units.flatMap((unit, local) => (arrangement.bridged.has(unit) ? [local] : [])),
    baseLinks,
    baseUnits,
  };
}

/** Collects what effects do to the regions of a compiled cabinet in one arrangement. */
export class OpsBuilder {
  private readonly ops = new Map<number, { slots: Map<number, number>; units: Map<number, number> }>();

  constructor(
    private readonly compiled: CompiledCabinet,
    private readonly arrangement: number,
  ) {}

  /** Adds one effect; feed faults are added by `turnPower` once it is known whose 24 V they change. */
  add(effect: Effect): void {
    switch (effect.at) {
      case 'fibre':
        this.link(effect.link, effect.direction === 'outbound' ? linkBits.outbound : linkBits.return);
        return;
      case 'plug':
      case 'route':
      case 'holes':
        this.link(effect.link, linkBits.both);
        return;
      case 'wiring':
        this.linkBeside(effect.unit, 'up', linkBits.both);
        this.linkBeside(effect.unit, 'down', linkBits.both);
        return;
      case 'port': {
        // Up: its receiver hears outbound, its transmitter sends return. Down: the other way round.
        const isOutbound = (effect.port === 'up') === (effect.is === 'rx-dead');
        this.linkBeside(effect.unit, effect.port, isOutbound ? linkBits.outbound : linkBits.return);
        return;
      }
      case 'unit':
        this.unit(effect.unit, unitEffectBits[effect.is]);
        return;
      case 'chain-port': {
        const region = this.compiled.regions.findIndex(({ chain }) => chain === effect.chain);
        this.slot(region, 0, linkBits.both);
        return;
      }
      case 'supply':
        if (effect.is === 'dead') {
          this.unit(effect.unit, dead);
        }
        return;
      case 'lead':
        return;
      default:
        assertNever(effect);
    }
  }

  /** Adds units that lose their 24 V or, where voltages decide, get it back; there a unit added twice keeps what it had. */
  turnPower(units: Iterable<UnitId>): void {
    for (const unit of units) {
      this.unit(unit, unpoweredBits(this.compiled.doVoltagesDecide));
    }
  }

  /** Per region, what was collected; regions without anything are absent. */
  build(): ReadonlyMap<number, RegionOps> {
    const built = new Map<number, RegionOps>();
    for (const [region, { slots, units }] of [...this.ops].sort(([a], [b]) => a - b)) {
      const bySlot = [...slots].sort(([a], [b]) => a - b);
      const byUnit = [...units].sort(([a], [b]) => a - b);
      const { unitAt } = this.compiled.layouts[this.arrangement]?.[region] ?? { unitAt: new Int32Array() };
      // A unit that is not alive silences the link above it and the one below.
      const touched = [...slots.keys(), ...[...units.keys()].flatMap((unit) => [unitAt.indexOf(unit), unitAt.indexOf(unit) + 1])];
      built.set(region, {
        from: Math.max(0, Math.min(...touched)),
        to: Math.max(...touched),
        slots: bySlot.map(([slot]) => slot),
        slotBits: bySlot.map(([, bits]) => bits),
        units: byUnit.map(([unit]) => unit),
        unitBits: byUnit.map(([, bits]) => bits),
      });
    }
    return built;
  }

  private of(region: number): { slots: Map<number, number>; units: Map<number, number> } {
    let entry = this.ops.get(region);
    if (entry === undefined) {
      entry = { slots: new Map(), units: new Map() };
      this.ops.set(region, entry);
    }
    return entry;
  }

  private slot(region: number, slot: number, bits: number): void {
    const layout = this.compiled.layouts[this.arrangement]?.[region];
    if (layout !== undefined && slot >= 0 && slot < layout.baseLinks.length) {
      const { slots } = this.of(region);
      slots.set(slot, (slots.get(slot) ?? 0) | bits);
    }
  }

  private link(link: LinkId, bits: number): void {
    this.compiled.layouts[this.arrangement]?.forEach((layout, region) => {
      this.slot(region, layout.slotOf.get(link) ?? -1, bits);
    });
  }

  private linkBeside(unit: UnitId, side: 'up' | 'down', bits: number): void {
    const at = this.compiled.regionOf.get(unit);
    const position = at === undefined ? -1 : (this.compiled.layouts[this.arrangement]?.[at.region]?.unitAt.indexOf(at.local) ?? -1);
    if (at !== undefined && position >= 0) {
      this.slot(at.region, side === 'up' ? position : position + 1, bits);
    }
  }

  private unit(unit: UnitId, bits: number): void {
    const at = this.compiled.regionOf.get(unit);
    if (at !== undefined) {
      const { units } = this.of(at.region);
      units.set(at.local, applyUnitBits(units.get(at.local) ?? 0, bits));
    }
  }
}

/** The bits of a unit without its 24 V. */
function unpoweredBits(doVoltagesDecide: boolean): number {
  return doVoltagesDecide ? unitBits.unpowered : dead;
}

/** Bits of a unit with those of a fault on top. */
export function applyUnitBits(before: number, bits: number): number {
  return (before | (bits & ~unitBits.unpowered)) ^ (bits & unitBits.unpowered);
}

const dead = unitBits.notAlive | unitBits.dark;
const unitEffectBits = {
  'dead-dark': dead,
  'dead-lit': unitBits.notAlive | unitBits.deadLit,
  'fuse-open': dead,
  'contact-bad': dead,
  'short-dark': dead,
  'short-code': unitBits.notAlive | unitBits.other,
  'short-code-linked': unitBits.other,
} as const;

/**
 * Units whose 24 V is otherwise in an arrangement when these effects are there: lost, or given back where a lead or supply that goes
 * out of use relieves another one.
 */
export function findTurned(
  { cabinet, powered, doVoltagesDecide }: CompiledCabinet,
  arrangement: number,
  state: Arrangement,
  effects: readonly Effect[],
) {
  const openLeads = new Set(effects.flatMap((effect) => (effect.at === 'lead' ? [effect.lead] : [])));
  const deadSupplies = new Set(effects.flatMap((effect) => (effect.at === 'supply' ? [effect.unit] : [])));
  if (openLeads.size === 0 && deadSupplies.size === 0) {
    return [];
  }
  const before: ReadonlySet<UnitId> = powered[arrangement] ?? new Set();
  const find = doVoltagesDecide ? findPowered : findReached;
  const after = find(cabinet, state, { openLeads, deadSupplies });
  return [...cabinet.units.keys()].filter((unit) => before.has(unit) !== after.has(unit) && cabinet.units.get(unit)?.kind !== 'supply');
}

/** Whether an effect is one of the 24 V feed. */
export function isFeedEffect(effect: Effect): boolean {
  return effect.at === 'lead' || effect.at === 'supply';
}

/** Of a feed effect: the areas in which it may change a voltage. */
export function areasOf(effect: Effect, { feeds }: Cabinet, areas: ReadonlyMap<UnitId, UnitId>): ReadonlySet<UnitId> {
  const reached = new Set<UnitId>();
  for (const { lead, from, to } of feeds) {
    if ((effect.at === 'lead' && effect.lead === lead) || (effect.at === 'supply' && effect.unit === from)) {
      reached.add(areas.get(to) ?? to);
    }
  }
  return reached;
}

/** The units to which 24 V may come through the lead or from the supply that an effect concerns, however the other leads are. */
export function fedThrough(effect: Effect, { feeds }: Cabinet): ReadonlySet<UnitId> {
  const reached = new Set<UnitId>(
    effect.at === 'supply'
      ? [effect.unit]
      : effect.at === 'lead'
        ? feeds.flatMap(({ lead, to }) => (lead === effect.lead ? [to] : []))
        : [],
  );
  // A set may grow while it is gone through.
  for (const from of reached) {
    for (const feed of feeds) {
      if (feed.from === from) {
        reached.add(feed.to);
      }
    }
  }
  return reached;
}
