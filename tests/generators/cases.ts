import fc from 'fast-check';
import {
  type CabinetContent,
  type CaseContent,
  type Circumstance,
  circumstanceKinds,
  displayMeanings,
  type Evidence,
  type Fault,
  faultModes,
  type Intervention,
  type LookObservation,
  linkEnds,
  onsets,
  type Snapshot,
  supplyMeanings,
  type TruthContent,
} from '../../engine/schema/index.ts';
import { type CabinetOptions, makeCabinet } from './cabinets.ts';
import { Random } from './random.ts';

/**
 * A case that fits its cabinet: every id exists, every set is one that can be seen. What was seen is drawn, not simulated, so it
 * need not follow from any fault.
 */
export function makeCase(seed: number, options: CabinetOptions = {}): CaseContent {
  const cabinet = makeCabinet(seed, options);
  const random = new Random(seed ^ 0x5ca1ab1e);
  return {
    id: `case-${seed}`,
    name: `Generated case ${seed}`,
    ...random.maybe(0.5, () => ({ startedAt: '2026-11-25T21:40:00+01:00' })),
    cabinet,
    evidence: makeEvidence(random, cabinet),
    ...random.maybe(0.4, () => ({
      log: [{ at: '2026-11-25T20:41:07.25Z', what: 'called in', by: 'night shift' }, { what: 'door opened' }],
    })),
    ...random.maybe(0.2, () => ({ result: { end: 'not-proved' as const, note: 'gone after handling' } })),
  };
}

export function makeEvidence(random: Random, cabinet: CabinetContent): Evidence {
  return {
    snapshots: Array.from({ length: random.whole(1, 3) }, (_, index) => makeSnapshot(random, cabinet, index)),
    ...random.maybe(0.6, () => ({ circumstances: makeCircumstances(random, cabinet) })),
    ...random.maybe(0.3, () => ({ daysSinceWhole: random.whole(0, 60) })),
  };
}

/** What was really wrong, drawn among the things of the cabinet. */
export function makeTruth(seed: number, options: CabinetOptions = {}): TruthContent {
  const random = new Random(seed ^ 0x7c01dea1);
  const cabinet = makeCabinet(seed, options);
  return {
    case: `case-${seed}`,
    faults: Array.from({ length: random.whole(1, 3) }, () => makeFault(random, cabinet)),
    ...random.maybe(0.5, () => ({ story: 'a crash' })),
  };
}

/** Generated cases for properties. */
export function arbitraryCase(maxUnits = 8): fc.Arbitrary<CaseContent> {
  return fc.record({ seed: fc.nat(), units: fc.integer({ min: 1, max: maxUnits }) }).map(({ seed, units }) => makeCase(seed, { units }));
}

function makeCircumstances(random: Random, cabinet: CabinetContent): Circumstance[] {
  const kinds = random.shuffled(circumstanceKinds).slice(0, random.whole(1, 3));
  return kinds.map((kind) => ({ kind, ...random.maybe(0.5, () => ({ subjects: [unitOf(random, cabinet)] })) }));
}

function makeSnapshot(random: Random, cabinet: CabinetContent, index: number): Snapshot {
  const units = (cabinet.units ?? []).filter(() => random.chance(0.7));
  const displays = units.map(({ id, kind }) => {
    const possible = kind === 'supply' ? supplyMeanings : displayMeanings;
    const meanings = possible.filter(() => random.chance(0.3));
    return { unit: id, meanings: meanings.length > 0 ? meanings : [random.pick(possible)], ...random.maybe(0.2, () => ({ code: 'E1' })) };
  });
  const reports = (cabinet.chains ?? [])
    .filter(() => random.chance(0.5))
    .map(({ id }) => ({ chain: id, gaps: random.pick([[1], [1, 'none' as const], ['none' as const]]) }));
  return {
    ...(index === 0
      ? {}
      : {
          interventions: Array.from({ length: random.whole(0, 3) }, () => makeIntervention(random, cabinet)),
          restarted: random.chance(0.5),
        }),
    onset: random.pick([...onsets, 'unknown' as const]),
    ...random.maybe(0.7, () => ({ halted: random.chance(0.8) })),
    displays,
    ...(reports.length > 0 ? { reports } : {}),
    ...random.maybe(0.4, () => ({ looks: [makeLook(random, cabinet)] })),
  };
}

function makeIntervention(random: Random, cabinet: CabinetContent): Intervention {
  const link = linkOf(random, cabinet);
  const unit = unitOf(random, cabinet);
  return random.pick<Intervention>([
    { do: 'reseat-plug', link, end: random.pick(linkEnds) },
    { do: 'unplug', link, end: random.pick(linkEnds) },
    { do: 'replace-cable', link },
    { do: 'exchange-cables', link, other: linkOf(random, cabinet) },
    { do: 'replace-board', unit },
    { do: 'bridge-unit', unit, cable: link },
    { do: 'replace-controller' },
  ]);
}

function makeLook(random: Random, cabinet: CabinetContent): LookObservation {
  const link = linkOf(random, cabinet);
  return random.pick<LookObservation>([
    { look: 'light-at-plug', link, end: random.pick(linkEnds), outcomes: ['weak', 'none'], note: 'flickers' },
    { look: 'lamp', link, fibre: 'outbound', outcomes: ['clear'] },
    { look: 'voltage', unit: unitOf(random, cabinet), outcomes: ['sags'], at: '2026-11-25T20:41Z' },
    { look: 'compare-fibres', link, outcomes: ['same'] },
  ]);
}

function makeFault(random: Random, cabinet: CabinetContent): Fault {
  const link = linkOf(random, cabinet);
  return random.pick<Fault>([
    { item: 'cable', link, mode: random.pick(faultModes.cable) },
    { item: 'plug', link, end: random.pick(linkEnds), mode: random.pick(faultModes.plug), presence: 'intermittent', absentNow: true },
    { item: 'board', unit: unitOf(random, cabinet), mode: random.pick(faultModes.board), presence: 'steady' },
    { item: 'controller', mode: 'all-ports-dead' },
  ]);
}

const linkOf = (random: Random, cabinet: CabinetContent) => random.pick(cabinet.links ?? []).id;
const unitOf = (random: Random, cabinet: CabinetContent) => random.pick(cabinet.units ?? []).id;
