import type { LeadId, UnitId } from '../base/index.ts';
import type { Feed, Topology } from '../topology/index.ts';
import { findLeadResistance, type LeadResistance } from './conductors.ts';
import { type Resistor, solveNetwork } from './solveNetwork.ts';
import { type Celsius, celsius, given, loadAmperes, ratedVolts, type Volts } from './units.ts';

/** The 24 V wiring as it is at one moment. */
export interface FeedState {
  /** Units that the leads reach from a supply that gives power, those supplies included (domain section 5, step 1). */
  readonly reached: ReadonlySet<UnitId>;
  /** Whether a lead is whole and in place. */
  readonly conducts: (feed: Feed) => boolean;
}

/** What a supply without a nominal voltage is taken to give. */
export const usualVolts = ratedVolts(24);

/** A voltage or current worked out; `isBound`: loads were missing, so voltages are at most and currents at least these. */
export interface FeedValue {
  readonly value: number;
  readonly isBound: boolean;
}

const noDraw: FeedValue = { value: 0, isBound: false };

/** The wiring solved. What rests on a lead of unknown resistance is absent. */
export interface SolvedFeed {
  readonly voltages: ReadonlyMap<UnitId, FeedValue>;
  /** Currents in the direction of the lead; negative against it. */
  readonly currents: ReadonlyMap<LeadId, FeedValue>;
  readonly supplyCurrents: ReadonlyMap<UnitId, FeedValue>;
  /** Supplies into which another one would feed: they give nothing. */
  readonly backFed: ReadonlySet<UnitId>;
  readonly tooMeshed: boolean;
}

/** The directed reach of supplies: what a whole cabinet feeds. */
export function reachFromSupplies(topology: Topology): ReadonlySet<UnitId> {
  const next = new Map<UnitId, UnitId[]>();
  for (const { from, to } of topology.feeds) next.set(from, [...(next.get(from) ?? []), to]);
  const reached = new Set<UnitId>(topology.supplies);
  const open = [...reached];
  for (let unit = open.pop(); unit !== undefined; unit = open.pop()) {
    for (const to of next.get(unit) ?? []) {
      if (reached.has(to)) continue;
      reached.add(to);
      open.push(to);
    }
  }
  return reached;
}

/** What a unit draws: its documented load, A; at least nothing when that is not given. */
export function loadOf(topology: Topology, unit: UnitId): FeedValue {
  const load = given(loadAmperes, topology.units.get(unit)?.control24?.loadA);
  return { value: load ?? 0, isBound: load === null };
}

/**
 * Voltages and currents of the 24 V wiring: units draw their documented current whatever their voltage, supplies hold theirs, leads
 * are resistors there and back, and current may flow either way in a lead between two units, as in any wire.
 *
 * @param sureOnly leave out what rests on anything assumed: leads without class or of a size that is not in the table, supplies
 *   without a nominal voltage
 * @param draw what a unit draws, A; bound: at least so much. Default: its documented load
 */
export function solveFeed(
  topology: Topology,
  state: FeedState,
  {
    sureOnly = false,
    draw = loadOf,
  }: { readonly sureOnly?: boolean; readonly draw?: (topology: Topology, unit: UnitId) => FeedValue } = {},
): SolvedFeed {
  const wiring = layWiring(topology, state, sureOnly);
  const draws = wiring.units.map((unit) => (wiring.sources.has(wiring.numberOf.get(unit) ?? -1) ? noDraw : draw(topology, unit)));
  const sources = new Map(wiring.sources);
  const backFed = new Set<number>();
  let voltages: readonly number[] | null;
  let drawn: ReadonlyMap<number, number>;
  for (;;) {
    voltages = solveNetwork({ nodes: wiring.units.length, sources, resistors: wiring.resistors, draws: draws.map(({ value }) => value) });
    drawn = voltages === null ? new Map() : sourceCurrents(wiring.resistors, voltages, sources);
    // A supply takes no current in. One that would gives none instead; that lifts all voltages, so none has to be taken back.
    const taking = [...drawn].filter(([, amperes]) => amperes < -1e-9);
    if (voltages === null || taking.length === 0) break;
    for (const [node] of taking) {
      sources.delete(node);
      backFed.add(node);
    }
  }
  return readAnswer(topology, wiring, { voltages, drawn, backFed, draws });
}

interface Wiring {
  readonly units: readonly UnitId[];
  readonly numberOf: ReadonlyMap<UnitId, number>;
  readonly sources: ReadonlyMap<number, number>;
  readonly feeds: readonly Feed[];
  readonly resistors: readonly (Resistor & { readonly known: boolean })[];
  /** Supplies whose voltage is not known well enough. */
  readonly unsureSources: ReadonlySet<number>;
}

function layWiring(topology: Topology, state: FeedState, sureOnly: boolean): Wiring {
  const units = [...state.reached];
  const numberOf = new Map(units.map((unit, index) => [unit, index]));
  const sources = new Map<number, number>();
  const unsureSources = new Set<number>();
  for (const supply of topology.supplies) {
    const node = numberOf.get(supply);
    if (node === undefined) continue;
    const nominal = nominalVolts(topology, supply);
    sources.set(node, nominal ?? usualVolts);
    if (nominal === null && sureOnly) unsureSources.add(node);
  }
  const feeds = topology.feeds.filter(
    (feed) =>
      state.reached.has(feed.from) && state.reached.has(feed.to) && !sources.has(numberOf.get(feed.to) ?? -1) && state.conducts(feed),
  );
  const resistances = resistancesOf(topology);
  const resistors = feeds.map(({ lead, from, to }) => {
    const found = resistances.get(lead);
    const ohms = found?.term.value ?? null;
    // The current in a lead of unknown resistance may be known nevertheless, where there is no other way for it.
    return {
      a: numberOf.get(from) ?? -1,
      b: numberOf.get(to) ?? -1,
      ohms: ohms ?? 1,
      known: ohms !== null && (found?.sure === true || !sureOnly),
    };
  });
  return { units, numberOf, sources, feeds, resistors, unsureSources };
}

/** Documented nominal voltage of a supply, V; a supply of no volts is a slip of the pen. */
export function nominalVolts(topology: Topology, supply: UnitId): Volts | null {
  const nominal = given(ratedVolts, topology.units.get(supply)?.supply?.control24?.nominalV);
  return nominal === null || nominal === 0 ? null : nominal;
}

function sourceCurrents(
  resistors: readonly Resistor[],
  voltages: readonly number[],
  sources: ReadonlyMap<number, number>,
): ReadonlyMap<number, number> {
  const drawn = new Map([...sources.keys()].map((node) => [node, 0]));
  for (const { a, b, ohms } of resistors) {
    const amperes = currentIn(voltages, a, b, ohms);
    const before = drawn.get(a);
    if (before !== undefined) drawn.set(a, before + amperes);
  }
  return drawn;
}

function currentIn(voltages: readonly number[], a: number, b: number, ohms: number): number {
  return ((voltages[a] ?? Number.NaN) - (voltages[b] ?? Number.NaN)) / Math.max(ohms, 1e-9);
}

interface Solution {
  readonly voltages: readonly number[] | null;
  readonly drawn: ReadonlyMap<number, number>;
  readonly backFed: ReadonlySet<number>;
  readonly draws: readonly FeedValue[];
}

function readAnswer(topology: Topology, wiring: Wiring, { voltages, drawn, backFed, draws }: Solution): SolvedFeed {
  const { units, feeds, resistors } = wiring;
  const isSupply = new Set(wiring.sources.keys());
  const areas = findAreas(wiring, isSupply, backFed);
  const branches = peelBranches(wiring, isSupply, draws, backFed.size > 0);
  const boundAreas = new Set(draws.flatMap(({ isBound }, node) => (isBound && !isSupply.has(node) ? [areas[node]] : [])));
  const unknownAreas = new Set<number | undefined>();
  resistors.forEach(({ a, b, known }, index) => {
    if (!known && !branches.leads.has(index)) unknownAreas.add(areas[isSupply.has(a) && !backFed.has(a) ? b : a]);
  });
  resistors.forEach(({ a, b }) => {
    if (wiring.unsureSources.has(a)) unknownAreas.add(areas[b]);
  });
  // Whether a supply gives nothing hangs on every resistance: with one of them unknown, nothing can be said.
  if (backFed.size > 0 && unknownAreas.size > 0) for (const area of areas) unknownAreas.add(area);
  const isUnknown = (node: number) => unknownAreas.has(areas[node]) || branches.unknown.has(node);

  const voltageOf = new Map<UnitId, FeedValue>();
  units.forEach((unit, node) => {
    const value = voltages?.[node];
    if (value === undefined || Number.isNaN(value) || isSupply.has(node) || isUnknown(node)) return;
    voltageOf.set(unit, { value, isBound: boundAreas.has(areas[node]) });
  });
  const currents = new Map<LeadId, FeedValue>();
  const sums = new Map<number, FeedValue | null>([...isSupply].map((node) => [node, { value: 0, isBound: false }]));
  feeds.forEach(({ lead }, index) => {
    const resistor = resistors[index];
    if (resistor === undefined) return;
    const { a, b, ohms } = resistor;
    const inBranch = branches.leads.get(index);
    const area = areas[isSupply.has(a) && !backFed.has(a) ? b : a];
    // In a branch the current is what hangs behind it, whatever the resistances are.
    const value = inBranch ?? (voltages === null || unknownAreas.has(area) ? null : currentIn(voltages, a, b, ohms));
    const found = value === null ? null : { value, isBound: boundAreas.has(area) };
    if (found !== null) currents.set(lead, found);
    if (!sums.has(a)) return;
    const before = sums.get(a);
    sums.set(a, !before || found === null ? null : { value: before.value + found.value, isBound: before.isBound || found.isBound });
  });
  const supplyCurrents = new Map<UnitId, FeedValue>();
  for (const [node, sum] of sums) {
    const unit = units[node];
    if (unit === undefined) continue;
    const whole = sum ?? onlySupplyOf(wiring, areas, isSupply, node, draws, backFed);
    if (whole !== null) supplyCurrents.set(unit, backFed.has(node) ? { value: 0, isBound: false } : whole);
  }
  return {
    voltages: voltageOf,
    currents,
    supplyCurrents,
    backFed: new Set([...backFed].flatMap((node) => (units[node] === undefined ? [] : [units[node]]))),
    tooMeshed: voltages === null && drawn.size === 0 && topology.feeds.length > 0,
  };
}

/** A number for every node, equal where current can flow between two units without passing a supply. */
function findAreas({ units, resistors }: Wiring, isSupply: ReadonlySet<number>, backFed: ReadonlySet<number>): readonly number[] {
  const around: number[][] = units.map(() => []);
  const parts = (node: number) => isSupply.has(node) && !backFed.has(node);
  for (const { a, b } of resistors) {
    if (parts(a) || parts(b)) continue;
    around[a]?.push(b);
    around[b]?.push(a);
  }
  const areas: number[] = units.map(() => -1);
  units.forEach((_, start) => {
    if (areas[start] !== -1) return;
    const open = [start];
    areas[start] = start;
    for (let node = open.pop(); node !== undefined; node = open.pop()) {
      for (const next of around[node] ?? []) {
        if (areas[next] !== -1) continue;
        areas[next] = start;
        open.push(next);
      }
    }
  });
  return areas;
}

/**
 * The branches of the wiring: leads behind which there is neither a supply nor a second way. Peeled off from their ends; the current
 * in each is what hangs behind it. A lead of unknown resistance makes unknown only what is behind it.
 */
function peelBranches(
  { units, resistors }: Wiring,
  isSupply: ReadonlySet<number>,
  draws: readonly FeedValue[],
  isBackFed: boolean,
): { readonly leads: ReadonlyMap<number, number>; readonly unknown: ReadonlySet<number> } {
  const at: Set<number>[] = units.map(() => new Set());
  resistors.forEach(({ a, b }, index) => {
    at[a]?.add(index);
    at[b]?.add(index);
  });
  const sum = units.map((_, node) => draws[node]?.value ?? 0);
  const leads = new Map<number, number>();
  const order: { readonly node: number; readonly far: number; readonly index: number }[] = [];
  const open = units.flatMap((_, node) => (at[node]?.size === 1 && !isSupply.has(node) ? [node] : []));
  for (let node = open.pop(); node !== undefined; node = open.pop()) {
    const [index] = at[node] ?? [];
    const resistor = index === undefined ? undefined : resistors[index];
    if (index === undefined || resistor === undefined) continue;
    const far = resistor.a === node ? resistor.b : resistor.a;
    at[node]?.delete(index);
    at[far]?.delete(index);
    leads.set(index, (resistor.b === node ? 1 : -1) * (sum[node] ?? 0));
    sum[far] = (sum[far] ?? 0) + (sum[node] ?? 0);
    order.push({ node, far, index });
    if (at[far]?.size === 1 && !isSupply.has(far)) open.push(far);
  }
  const unknown = new Set<number>();
  for (const { node, far, index } of order.reverse()) {
    if (unknown.has(far) || resistors[index]?.known === false) unknown.add(node);
  }
  return { leads: isBackFed ? new Map([...leads].filter(([index]) => !isSupply.has(resistors[index]?.a ?? -1))) : leads, unknown };
}

/** Where the split among leads is not known: everything that hangs on areas which this supply alone feeds. */
function onlySupplyOf(
  { units, resistors }: Wiring,
  areas: readonly number[],
  isSupply: ReadonlySet<number>,
  supply: number,
  draws: readonly FeedValue[],
  backFed: ReadonlySet<number>,
): FeedValue | null {
  if (backFed.size > 0) return null;
  const fed = new Set(resistors.flatMap(({ a, b }) => (a === supply ? [areas[b]] : [])));
  const isShared = resistors.some(({ a, b }) => isSupply.has(a) && a !== supply && fed.has(areas[b]));
  if (isShared) return null;
  let value = 0;
  let isBound = false;
  units.forEach((_, node) => {
    if (isSupply.has(node) || !fed.has(areas[node])) return;
    value += draws[node]?.value ?? 0;
    isBound ||= draws[node]?.isBound === true;
  });
  return { value, isBound };
}

const remembered = new WeakMap<Topology, ReadonlyMap<LeadId, LeadResistance>>();

/** Resistances of all leads, worked out once for each topology: the simulation asks for them over and over. */
export function resistancesOf(topology: Topology): ReadonlyMap<LeadId, LeadResistance> {
  let found = remembered.get(topology);
  if (found === undefined) {
    const ambient: Celsius | null = given(celsius, topology.content.ambientC);
    found = new Map([...topology.leads].map(([lead, record]) => [lead, findLeadResistance(record, ambient)]));
    remembered.set(topology, found);
  }
  return found;
}
