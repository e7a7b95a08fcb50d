import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { LeadId } from '../../engine/base/index.ts';
import { checkCabinet } from '../../engine/cabinet/index.ts';
import { referenceLikelihood } from '../../engine/diagnosis/diagnose.reference.ts';
import { diagnose } from '../../engine/diagnosis/diagnose.ts';
import { Evaluator } from '../../engine/diagnosis/evaluator.ts';
import { type Prepared, prepare } from '../../engine/diagnosis/searched.ts';
import type { CabinetContent, Evidence } from '../../engine/schema/index.ts';
import type { FaultChoice } from '../../engine/search/index.ts';
import { arrange, findPowered } from '../../engine/simulation/index.ts';
import type { Cabinet } from '../../engine/topology/index.ts';
import { makeCabinet } from '../generators/cabinets.ts';
import { makeEvidence } from '../generators/cases.ts';
import { Random } from '../generators/random.ts';

/** A sound cabinet from a generated content. */
function soundCabinet(content: CabinetContent): Cabinet {
  const { cabinet, problems } = checkCabinet(content);
  if (cabinet === null) {
    throw new Error(JSON.stringify(problems));
  }
  return cabinet;
}

function evaluatorOf(cabinet: Cabinet, evidence: Evidence): ConstructorParameters<typeof Evaluator> {
  const { plan, space, scenarios } = prepare(cabinet, evidence);
  return [plan, space, scenarios, cabinet, 0];
}

/** Every mode of every element. */
function choicesOf(prepared: Prepared): readonly FaultChoice[] {
  return prepared.space.elements.flatMap((element, e) => element.modes.map((_, m) => ({ element: e, mode: m })));
}

function isAllowed(prepared: Prepared, a: FaultChoice, b: FaultChoice): boolean {
  return (
    a.element !== b.element &&
    !prepared.space.excludes.some(
      ([one, other]) => (one === a.element && other === b.element) || (one === b.element && other === a.element),
    )
  );
}

function expectAgreement(cabinet: Cabinet, evidence: Evidence, random: Random, pairs: number, among?: readonly FaultChoice[]): void {
  const prepared = prepare(cabinet, evidence);
  const evaluator = new Evaluator(...evaluatorOf(cabinet, evidence));
  const choices = among ?? choicesOf(prepared);
  const hypotheses: (readonly FaultChoice[])[] = [[]];
  for (let i = 0; i < pairs; i += 1) {
    hypotheses.push([random.pick(choices)]);
    const [a, b] = [random.pick(choices), random.pick(choices)];
    if (isAllowed(prepared, a, b)) {
      hypotheses.push([a, b]);
    }
  }
  for (const hypothesis of hypotheses) {
    const faults = hypothesis.map(({ element, mode }) => prepared.space.faults[element]?.[mode]).filter((fault) => fault !== undefined);
    const slow = referenceLikelihood(cabinet, evidence, faults);
    const fast = evaluator.likelihood(hypothesis) * Math.exp(prepared.plan.largestLogFactor);
    expect(fast, JSON.stringify(faults)).toBeCloseTo(slow, 12);
    const [one, other] = hypothesis;
    if (one !== undefined && other !== undefined) {
      // The search asks for whole rows, which have a way of their own.
      const row = new Float64Array(3).fill(7);
      evaluator.weighRow(one, [one, other, other], 1, row);
      for (const value of row.slice(1)) {
        expect(Math.abs(value * Math.exp(prepared.plan.largestLogFactor) - slow), JSON.stringify(faults)).toBeLessThanOrEqual(1e-9 * slow);
      }
      expect(row[0]).toBe(7);
    }
    expect(Math.abs(fast - slow), JSON.stringify(faults)).toBeLessThanOrEqual(1e-9 * Math.max(fast, slow));
  }
}

/** The cabinet with 24 V figures: leads so long and loads so large that some units lack voltage, and a lead that opens helps others. */
function withVoltages(random: Random, content: CabinetContent, lengthOf = () => random.whole(2, 60)): CabinetContent {
  return {
    ...content,
    units: (content.units ?? []).map((unit) =>
      unit.kind === 'supply'
        ? { ...unit, supply: { ...unit.supply, control24: { nominalV: 24 } } }
        : { ...unit, control24: { loadA: random.whole(1, 5), ...(random.chance(0.8) ? { minimumV: 20.4 } : {}) } },
    ),
    leads: (content.leads ?? []).map((lead) => ({
      ...lead,
      lengthM: lengthOf(),
      crossSectionMm2: 1.5,
      conductorClass: 'class-5' as const,
    })),
  };
}

/** Units to which some single open lead gives their 24 V back. */
function countRelieved(cabinet: Cabinet): number {
  const arrangement = arrange(cabinet, []);
  const powered = (openLeads: readonly LeadId[]) =>
    findPowered(cabinet, arrangement, { openLeads: new Set(openLeads), deadSupplies: new Set() });
  const before = powered([]);
  return cabinet.feeds.reduce((sum, { lead }) => sum + [...powered([lead])].filter((unit) => !before.has(unit)).length, 0);
}

describe('the likelihood of a hypothesis', () => {
  it('should be what the plain reading of the domain text gives, on random cabinets and random evidence', () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 1, max: 1e9 }),
        fc.integer({ min: 1, max: 6 }),
        fc.constantFrom('default', 'mixed'),
        (seed, units, behaviours) => {
          const content = makeCabinet(seed, { units, behaviours, details: true });
          const random = new Random(seed);
          const evidence = makeEvidence(random, content);
          expectAgreement(soundCabinet(content), { ...evidence, snapshots: evidence.snapshots.slice(0, 2) }, random, 6);
        },
      ),
      { numRuns: 150, seed: 20261125 },
    );
  });

  it('should be so with three snapshots, restarts and intermittent faults that repeat their readings', () => {
    fc.assert(
      fc.property(fc.integer({ min: 1, max: 1e9 }), (seed) => {
        const content = makeCabinet(seed, { units: 3, chains: 1, behaviours: 'mixed', details: true, offChain: 0, supplies: 1 });
        const random = new Random(seed);
        const { snapshots } = makeEvidence(random, content);
        const [first] = snapshots;
        if (first === undefined) {
          return;
        }
        const again = { ...first, interventions: [], restarted: random.chance(0.5) };
        expectAgreement(soundCabinet(content), { snapshots: [first, again, { ...again, halted: random.chance(0.5) }] }, random, 4);
      }),
      { numRuns: 60, seed: 20261125 },
    );
  });

  it('should be so for faults far apart on long chains, over several snapshots that repeat each other', () => {
    fc.assert(
      fc.property(fc.integer({ min: 1, max: 1e9 }), fc.integer({ min: 1, max: 3 }), (seed, trips) => {
        const content = makeCabinet(seed, {
          units: 7,
          chains: 1 + (seed % 2),
          behaviours: 'default',
          details: true,
          offChain: 0,
          supplies: 1,
        });
        const random = new Random(seed);
        const { snapshots } = makeEvidence(random, content);
        const [first] = snapshots;
        if (first === undefined) {
          return;
        }
        const later = Array.from({ length: trips - 1 }, () => ({
          ...random.pick(snapshots),
          ...(random.chance(0.5) ? { displays: first.displays ?? [], reports: first.reports ?? [] } : {}),
          interventions: [],
          restarted: random.chance(0.7),
          halted: random.chance(0.7),
        }));
        expectAgreement(soundCabinet(content), { snapshots: [first, ...later] }, random, 8);
      }),
      { numRuns: 25, seed: 20261126 },
    );
  });

  it('should be so where chains are broken without any fault: units that lack voltage as documented, cables that are unplugged', () => {
    let broken = 0;
    fc.assert(
      fc.property(fc.integer({ min: 1, max: 1e9 }), fc.integer({ min: 1, max: 3 }), (seed, trips) => {
        const random = new Random(seed);
        const drawn = makeCabinet(seed, {
          units: 7,
          chains: 1 + (seed % 2),
          behaviours: seed % 3 === 0 ? 'mixed' : 'default',
          details: true,
          offChain: 0,
          supplies: 1 + (seed % 2),
        });
        const content = withVoltages(random, drawn, () => (random.chance(0.15) ? random.whole(10, 300) : 1));
        const { snapshots } = makeEvidence(random, content);
        const [first] = snapshots;
        if (first === undefined) {
          return;
        }
        const link = random.pick(content.links ?? [])?.id;
        const unplug = random.chance(0.5) && link !== undefined ? [{ do: 'unplug' as const, link, end: 'upper' as const }] : [];
        const later = Array.from({ length: trips - 1 }, (_, index) => ({
          ...random.pick(snapshots),
          ...(random.chance(0.5) ? { displays: first.displays ?? [], reports: first.reports ?? [] } : {}),
          interventions: index === 0 ? unplug : [],
          restarted: random.chance(0.7),
          halted: random.chance(0.7),
        }));
        const cabinet = soundCabinet(content);
        const evidence = { snapshots: [{ ...first, halted: trips === 1 || random.chance(0.7) }, ...later] };
        const arrangement = arrange(cabinet, []);
        broken += findPowered(cabinet, arrangement, { openLeads: new Set(), deadSupplies: new Set() }).size < cabinet.units.size ? 1 : 0;
        expectAgreement(cabinet, evidence, random, 10);
        const prepared = prepare(cabinet, evidence);
        const feeds = choicesOf(prepared).filter(({ element }) => /^(lead|supply)\//.test(prepared.space.elements[element]?.id ?? ''));
        expectAgreement(cabinet, evidence, random, 4, feeds);
      }),
      { numRuns: 20, seed: 20261126 },
    );
    expect(broken).toBeGreaterThan(8);
  });

  it('should be so where restarts were provoked by moving or warming parts', () => {
    let broughtOut = 0;
    fc.assert(
      fc.property(fc.integer({ min: 1, max: 1e9 }), fc.constantFrom(4, 7), (seed, units) => {
        const content = makeCabinet(seed, { units, chains: 1, behaviours: 'mixed', details: true, offChain: 0, supplies: 1 });
        const random = new Random(seed);
        const { snapshots } = makeEvidence(random, content);
        const [first] = snapshots;
        if (first === undefined) {
          return;
        }
        const ids = [...(content.links ?? []), ...(content.units ?? []), ...(content.leads ?? [])].map(({ id }) => id);
        const later = Array.from({ length: random.whole(1, 2) }, () => ({
          ...random.pick(snapshots),
          ...(random.chance(0.5) ? { displays: first.displays ?? [], reports: first.reports ?? [] } : {}),
          interventions: [],
          restarted: true,
          halted: random.chance(0.6),
          provoked: { how: random.pick(['wait', 'flex', 'warm'] as const), subjects: ids.filter(() => random.chance(0.6)) },
        }));
        const cabinet = soundCabinet(content);
        const evidence = { snapshots: [first, ...later] };
        const { book } = new Evaluator(...evaluatorOf(cabinet, evidence));
        broughtOut += book.handles.filter(({ provokedIn }) => provokedIn.length > 0).length;
        expectAgreement(cabinet, evidence, random, 8);
      }),
      { numRuns: 20, seed: 20261126 },
    );
    expect(broughtOut).toBeGreaterThan(50);
  });

  it('should believe a machine that runs while its cables are moved more than one that only runs', () => {
    const cabinet = soundCabinet(makeCabinet(7, { units: 3, chains: 1, behaviours: 'default', details: false, offChain: 0, supplies: 1 }));
    const links = [...cabinet.links.keys()];
    const shareOfCables = (how: 'wait' | 'flex') =>
      diagnose(cabinet, {
        snapshots: [
          { onset: 'while-running', halted: true },
          { onset: 'at-power-up', restarted: true, halted: false, provoked: { how, subjects: links } },
        ],
      })
        .items.filter(({ item }) => item.key.startsWith('plug/') || item.key.startsWith('cable/'))
        .reduce((sum, { probability }) => sum + probability, 0);
    // Odds of cables against boards fall by (1 − 0.9) / (1 − 0.5), a fifth; nothing steady is left after a restart that runs.
    const odds = (share: number) => share / (1 - share);
    expect(odds(shareOfCables('flex')) / odds(shareOfCables('wait'))).toBeLessThan(0.3);
  });

  it('should weigh two feed faults that only together cut a unit off, steady or not', () => {
    fc.assert(
      fc.property(fc.integer({ min: 1, max: 1e9 }), (seed) => {
        const content = makeCabinet(seed, { units: 4, behaviours: 'mixed', details: true, supplies: 2 });
        const random = new Random(seed);
        const { snapshots } = makeEvidence(random, content);
        const cabinet = soundCabinet(content);
        const prepared = prepare(cabinet, { snapshots: snapshots.slice(0, 2) });
        const feeds = choicesOf(prepared).filter(({ element }) => /^(lead|supply)\//.test(prepared.space.elements[element]?.id ?? ''));
        expectAgreement(cabinet, { snapshots: snapshots.slice(0, 2) }, random, 8, feeds);
      }),
      { numRuns: 80, seed: 20261125 },
    );
  });

  it('should weigh faults of leads and supplies that take 24 V away, and those that give it back', () => {
    let relieved = 0;
    fc.assert(
      fc.property(fc.integer({ min: 1, max: 1e9 }), (seed) => {
        const random = new Random(seed);
        const content = withVoltages(random, makeCabinet(seed, { units: 4, behaviours: 'mixed', details: true, supplies: 2 }));
        const cabinet = soundCabinet(content);
        const evidence = { snapshots: makeEvidence(random, content).snapshots.slice(0, 2) };
        const prepared = prepare(cabinet, evidence);
        const feeds = choicesOf(prepared).filter(({ element }) => /^(lead|supply)\//.test(prepared.space.elements[element]?.id ?? ''));
        expectAgreement(cabinet, evidence, random, 8, feeds);
        expectAgreement(cabinet, evidence, random, 4);
        relieved += countRelieved(cabinet);
      }),
      { numRuns: 80, seed: 20261125 },
    );
    expect(relieved).toBeGreaterThan(20);
  });

  it('should name a lead that relieves another one where a unit came back to life', () => {
    // Two drives at the end of one long lead: together they draw it below what they need, one alone has enough.
    const content: CabinetContent = {
      id: 'c',
      name: 'Relief',
      controller: { id: 'k', designation: '-KF1' },
      chains: [{ id: 'ch1', number: 1 }],
      units: [
        { id: 's', kind: 'supply', designation: '-TB9', supply: { control24: { nominalV: 24 } } },
        { id: 'u1', kind: 'servo-drive', designation: '-T1', control24: { loadA: 3, minimumV: 20.4 } },
        { id: 'u2', kind: 'servo-drive', designation: '-T2', control24: { loadA: 3, minimumV: 20.4 } },
      ],
      links: [
        { id: 'w1', designation: '-WH1', upper: { chain: 'ch1' }, lower: { unit: 'u1' } },
        { id: 'w2', designation: '-WH2', upper: { unit: 'u1' }, lower: { unit: 'u2' } },
      ],
      leads: [
        { id: 'd1', from: { unit: 's' }, to: { unit: 'u1' }, lengthM: 30, crossSectionMm2: 1.5, conductorClass: 'class-5' },
        { id: 'd2', from: { unit: 'u1' }, to: { unit: 'u2' }, lengthM: 1, crossSectionMm2: 1.5, conductorClass: 'class-5' },
      ],
    };
    const seen = (u1: 'dark' | 'downstream-loss'): Evidence => ({
      snapshots: [
        {
          onset: 'while-running',
          halted: true,
          displays: [
            { unit: 'u1', meanings: [u1] },
            { unit: 'u2', meanings: ['dark'] },
          ],
        },
      ],
    });
    const cabinet = soundCabinet(content);
    expect(diagnose(cabinet, seen('downstream-loss')).items[0]?.item.key).toBe('lead/d2');
    expect(diagnose(cabinet, seen('dark')).items[0]?.item.key).not.toBe('lead/d2');
  });

  it('should average over one type of unknown behaviour', () => {
    fc.assert(
      fc.property(fc.integer({ min: 1, max: 1e9 }), (seed) => {
        const random = new Random(seed);
        const drawn = makeCabinet(seed, { units: 3, chains: 1, behaviours: 'mixed', details: true, offChain: 0, supplies: 1 });
        const types = drawn.types?.map((type, index) =>
          index === 0
            ? { ...type, behaviour: { ...type.behaviour, lossScope: 'unknown', holds: 'unknown', onReceiveLoss: 'unknown' } as const }
            : type,
        );
        const content: CabinetContent = types === undefined ? drawn : { ...drawn, types };
        const { snapshots } = makeEvidence(random, content);
        expectAgreement(soundCabinet(content), { snapshots: snapshots.slice(0, 1) }, random, 4);
      }),
      { numRuns: 40, seed: 20261125 },
    );
  });
});
