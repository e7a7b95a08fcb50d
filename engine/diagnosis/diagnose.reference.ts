import type { ChainId, UnitId } from '../base/index.ts';
import { documentedBehaviour, unknownParameters } from '../cabinet/index.ts';
import {
  type Behaviour,
  behaviourValues,
  displayMeanings,
  type Evidence,
  type Intervention,
  type Onset,
  type Snapshot,
} from '../schema/index.ts';
import { predictLook, type Simulation, type SimulationInput, simulate } from '../simulation/index.ts';
import type { Cabinet } from '../topology/index.ts';
import type { SettledFault } from './elements.ts';
import { lookOutcomes } from './plan.ts';

/*
 * The likelihood of a hypothesis, straight from domain section 6 and nothing else: every scenario, every joint pattern of presence,
 * every snapshot simulated anew. Slow and plain; for tests of the fast way only.
 */

const epsilon = 0.02;
const rho = 0.9;
const q = 0.5;
/** While what a fault sits on is moved or warmed (section 7). */
const provokedQ = 0.9;

interface Moment {
  readonly onset: Onset;
  readonly halted: boolean | undefined;
  readonly snapshot: Snapshot;
  readonly beforeTrip: readonly Intervention[];
  readonly sinceTrip: readonly Intervention[];
  readonly isNewTrip: boolean;
}

/** The likelihood of a set of faults: the mean over unknown behaviours, unknown onsets and presence. */
export function referenceLikelihood(cabinet: Cabinet, evidence: Evidence, faults: readonly SettledFault[]): number {
  let sum = 0;
  let count = 0;
  for (const behaviourOf of allBehaviours(cabinet)) {
    for (const moments of allOnsets(evidence.snapshots)) {
      const isImpossible =
        moments.some(({ onset }) => onset === 'while-running') &&
        faults.some((fault) => fault.item === 'wiring' || fault.mode === 'fibres-crossed');
      sum += isImpossible ? 0 : overPresence(cabinet, moments, faults, behaviourOf);
      count += 1;
    }
  }
  return sum / count;
}

function* allBehaviours(cabinet: Cabinet): Generator<(unit: UnitId) => Behaviour> {
  const open = new Map<string, { type: string; parameter: keyof Behaviour }>();
  for (const [unit, { type, kind }] of cabinet.units) {
    for (const parameter of type === undefined || kind === 'supply' ? [] : unknownParameters(cabinet, unit)) {
      open.set(`${type}/${parameter}`, { type: type ?? '', parameter });
    }
  }
  const list = [...open.values()];
  const types = [...new Set(list.map(({ type }) => type))].sort().slice(0, 2);
  const averaged = list.filter(({ type }) => types.includes(type));
  function* choose(index: number, chosen: ReadonlyMap<string, string>): Generator<ReadonlyMap<string, string>> {
    const next = averaged[index];
    if (next === undefined) {
      yield chosen;
      return;
    }
    for (const value of behaviourValues[next.parameter]) {
      yield* choose(index + 1, new Map([...chosen, [`${next.type}/${next.parameter}`, value]]));
    }
  }
  for (const chosen of choose(0, new Map())) {
    yield (unit) => {
      const own = averaged.filter(({ type }) => type === cabinet.units.get(unit)?.type);
      return {
        ...documentedBehaviour(cabinet, unit),
        ...Object.fromEntries(own.map(({ type, parameter }) => [parameter, chosen.get(`${type}/${parameter}`)])),
      };
    };
  }
}

/** The snapshots as moments, once for every way in which unknown onsets may have been. */
function* allOnsets(snapshots: readonly Snapshot[], done: readonly Moment[] = []): Generator<readonly Moment[]> {
  const snapshot = snapshots[done.length];
  if (snapshot === undefined) {
    yield done;
    return;
  }
  const before = done[done.length - 1];
  const isNewTrip = before === undefined || snapshot.restarted === true || (before.halted === false && snapshot.halted !== false);
  const acts = snapshot.interventions ?? [];
  const all = [...(before?.beforeTrip ?? []), ...(before?.sinceTrip ?? []), ...acts];
  const isBeforeTrip = snapshot.halted === false || (isNewTrip && !(before === undefined && snapshot.restarted !== true));
  const beforeTrip = isBeforeTrip ? all : (before?.beforeTrip ?? []);
  const usual = before === undefined ? 'unknown' : snapshot.restarted === true ? 'at-power-up' : 'while-running';
  // The first onset that any snapshot of the same trip names.
  let named = snapshot.onset;
  for (let later = done.length + 1; named === undefined && later < snapshots.length; later += 1) {
    const next = snapshots[later];
    if (next?.restarted === true || (snapshots[later - 1]?.halted === false && next?.halted !== false)) {
      break;
    }
    named = next?.onset;
  }
  const onset = isNewTrip ? (named ?? usual) : before.onset;
  for (const one of onset === 'unknown' ? (['while-running', 'at-power-up'] as const) : [onset]) {
    yield* allOnsets(snapshots, [
      ...done,
      { onset: one, halted: snapshot.halted, snapshot, beforeTrip, sinceTrip: all.slice(beforeTrip.length), isNewTrip },
    ]);
  }
}

/** One joint pattern: which faults were there at each moment's trip and now. */
interface Present {
  readonly trip: readonly SettledFault[];
  readonly now: readonly SettledFault[];
}

function overPresence(
  cabinet: Cabinet,
  moments: readonly Moment[],
  faults: readonly SettledFault[],
  behaviourOf: (unit: UnitId) => Behaviour,
): number {
  const steady = faults.filter(({ presence }) => presence === 'steady');
  const drawn = subsets(faults.filter(({ presence }) => presence === 'intermittent'));
  const share = drawn.length === 1 ? 1 : q ** (Math.log2(drawn.length) || 0);
  const intermittent = faults.filter(({ presence }) => presence === 'intermittent');
  /** Probability that at the trip of a moment exactly these are there. */
  const chanceAt = ({ snapshot: { provoked } }: Moment, there: readonly SettledFault[]): number =>
    intermittent.reduce((product, fault) => {
      const isBroughtOut =
        (provoked?.how === 'flex' || provoked?.how === 'warm') &&
        (provoked.subjects ?? []).some((subject) => Object.values(fault).includes(subject as never));
      const chance = isBroughtOut ? provokedQ : q;
      return product * (there.includes(fault) ? chance : 1 - chance);
    }, 1);
  const step = (index: number, patterns: readonly Present[]): number => {
    const moment = moments[index];
    if (moment === undefined) {
      return likelihoodOf(cabinet, moments, patterns, behaviourOf);
    }
    let sum = 0;
    if (moment.halted === false) {
      for (const there of drawn) {
        const now = [...steady, ...there];
        sum += chanceAt(moment, there) * step(index + 1, [...patterns, { trip: now, now }]);
      }
      return sum;
    }
    const isFirst = !moments.slice(0, index).some(({ halted }) => halted !== false);
    const trips =
      !moment.isNewTrip && patterns[index - 1] !== undefined
        ? [{ trip: patterns[index - 1]?.trip ?? [], chance: 1 }]
        : isFirst
          ? [{ trip: faults, chance: 1 }]
          : drawn.map((there) => ({ trip: [...steady, ...there], chance: chanceAt(moment, there) }));
    for (const { trip, chance } of trips) {
      for (const there of drawn) {
        sum += chance * share * step(index + 1, [...patterns, { trip, now: [...steady, ...there] }]);
      }
    }
    return sum;
  };
  return step(0, []);
}

function subsets<T>(list: readonly T[]): readonly (readonly T[])[] {
  const [first, ...rest] = list;
  return first === undefined ? [[]] : subsets(rest).flatMap((subset) => [subset, [first, ...subset]]);
}

function likelihoodOf(
  cabinet: Cabinet,
  moments: readonly Moment[],
  patterns: readonly Present[],
  behaviourOf: (unit: UnitId) => Behaviour,
): number {
  let product = 1;
  /** What was read of each thing before, with what was predicted of it then. */
  const read = new Map<string, { reading: string; prediction: string }[]>();
  const count = (thing: string, reading: string, prediction: string, factor: number) => {
    const before = read.get(thing) ?? [];
    product *= before.some((one) => one.reading === reading && one.prediction === prediction) ? 1 : factor;
    read.set(thing, [...before, { reading, prediction }]);
  };
  moments.forEach((moment, index) => {
    const { trip, now } = patterns[index] ?? { trip: [], now: [] };
    const input = inputFor(cabinet, moment, trip, now, behaviourOf);
    const result = simulate(input);
    // A control that does not start with fewer units halts while one is bridged, whatever the chains are like.
    const haltsAnyway = moment.halted === true && [...result.reports.values()].some(({ speaks }) => !speaks);
    if (moment.halted !== undefined && !haltsAnyway && moment.halted !== isBroken(result)) {
      product = 0;
    }
    for (const { unit, meanings } of new Map((moment.snapshot.displays ?? []).map((seen) => [seen.unit, seen])).values()) {
      const predicted = result.displays.get(unit as UnitId)?.meaning;
      if (predicted !== undefined) {
        count(`display ${unit}`, [...meanings].sort().join(), predicted, displayFactor(cabinet, unit as UnitId, meanings, predicted));
      }
    }
    for (const { chain, gaps } of new Map((moment.snapshot.reports ?? []).map((seen) => [seen.chain, seen])).values()) {
      const predicted = result.reports.get(chain as ChainId);
      if (predicted?.speaks === true && predicted.length > 0) {
        count(`report ${chain}`, [...gaps].sort().join(), String(predicted.gap), reportFactor(gaps, predicted.gap, predicted.length));
      }
    }
    const looks = (moment.snapshot.looks ?? []).map(({ note: _note, photo: _photo, at: _at, ...seen }) => seen);
    for (const { outcomes, ...look } of new Map(
      looks.map(({ outcomes, ...look }) => [JSON.stringify(look), { outcomes, ...look }]),
    ).values()) {
      const predicted = predictLook(look, input);
      if (predicted !== null) {
        const others = lookOutcomes(look).length - 1;
        const factor = outcomes.reduce((sum, outcome) => sum + (outcome === predicted ? 1 - epsilon : epsilon / others), 0);
        count(`look ${JSON.stringify(look)}`, [...outcomes].sort().join(), predicted, Math.min(1, factor));
      }
    }
  });
  return product;
}

function inputFor(
  cabinet: Cabinet,
  moment: Moment,
  trip: readonly SettledFault[],
  now: readonly SettledFault[],
  behaviourOf: (unit: UnitId) => Behaviour,
): SimulationInput {
  const { onset, halted, beforeTrip, sinceTrip } = moment;
  return { cabinet, faults: trip, faultsNow: now, onset, beforeTrip, sinceTrip, behaviourOf, ...(halted === undefined ? {} : { halted }) };
}

function isBroken({ trip }: Simulation): boolean {
  return [...trip.links.values()].some((link) => !link.outbound.hears || !link.return.hears);
}

function displayFactor(cabinet: Cabinet, unit: UnitId, meanings: readonly string[], predicted: string): number {
  const others = cabinet.units.get(unit)?.kind === 'supply' ? 2 : displayMeanings.length - 1;
  if (meanings.includes('other') && predicted !== 'dark') {
    return 1;
  }
  return meanings.includes(predicted) ? 1 - epsilon : Math.min(1, (epsilon * new Set(meanings).size) / others);
}

function reportFactor(gaps: readonly (number | 'none')[], predicted: number | 'none', length: number): number {
  const real = [...new Set(gaps)].filter((gap) => gap === 'none' || gap <= length);
  return real.length === 0 ? 1 : real.reduce<number>((sum, gap) => sum + (gap === predicted ? rho : (1 - rho) / length), 0);
}
