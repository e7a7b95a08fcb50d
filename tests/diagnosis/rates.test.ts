import { describe, expect, it } from 'vitest';
import { referenceLikelihood } from '../../engine/diagnosis/diagnose.reference.ts';
import { type Diagnosis, diagnose, editRate, isAssumed, rateOf } from '../../engine/diagnosis/index.ts';
import type { Circumstance, Evidence, Fault } from '../../engine/schema/index.ts';
import { drivesContent, seenSnapshot, soundCabinet } from '../plan/smallCabinet.ts';

/** λ per year, copied by hand from section 9 of the domain text (all assumed there). */
const perYear: Readonly<Record<string, number>> = {
  'cable cut': 0.0015,
  'cable outbound-cut': 0.0005,
  'cable return-cut': 0.0005,
  'cable outbound-dim': 0.0005,
  'cable return-dim': 0.0005,
  'plug loose': 0.004,
  'plug fouled': 0.002,
  'route kinked': 0.001,
  'board dead-dark': 0.001,
  'board dead-lit': 0.0005,
  'board up-rx': 0.0006,
  'board up-tx': 0.0004,
  'board down-rx': 0.0006,
  'board down-tx': 0.0004,
  'board up-port': 0.0006,
  'board down-port': 0.0006,
  'fuse open': 0.0005,
  'place contact-bad': 0.0005,
  'lead open': 0.0005,
  'feedback short': 0.0005,
  'controller-port dead': 0.0007,
  'controller all-ports-dead': 0.0003,
  'supply output-lost': 0.001,
  'supply dead': 0.001,
};
/** Probability per new or reworked cabinet, of each unit and each link. */
const wiringMistake = 0.002;
const onlySteady = ['cable fibres-crossed', 'wiring crossed', 'fuse open'];
const daysPerYear = 365.25;

const cabinet = soundCabinet(drivesContent(2));
const nameOf = ({ item, mode }: Fault) => `${item} ${mode}`;

/** Prior odds of every single fault, as `diagnose` gives them. */
function singles(evidence: Omit<Evidence, 'snapshots'>): readonly { readonly fault: Fault; readonly odds: number }[] {
  const { hypotheses } = diagnose(cabinet, { ...evidence, snapshots: [] }, { keep: 50_000 });
  return hypotheses.flatMap(({ faults: [first, second], priorOdds }) =>
    first === undefined || second !== undefined ? [] : [{ fault: first.fault, odds: priorOdds }],
  );
}

/** p = 1 − exp(−λ·w), so the odds are exp(λ·w) − 1; λ is split by f = 0.3 where the fault can come and go. */
function expectedOdds(fault: Fault, years: number, factor = 1): number {
  const name = nameOf(fault);
  // A probability per rework, not a rate: an exchange is such a rework, and multiplies it as it does the rates.
  if (name === 'cable fibres-crossed' || name === 'wiring crossed') return (wiringMistake * factor) / (1 - wiringMistake * factor);
  const share = onlySteady.includes(name) ? 1 : fault.presence === 'intermittent' ? 0.3 : 0.7;
  return Math.exp((perYear[name] ?? Number.NaN) * factor * share * years) - 1;
}

describe('the default rates', () => {
  it('should be those of the domain text, for the week where nobody says when the machine was last whole, and for a year', () => {
    const known = new Set<string>();
    for (const days of [undefined, daysPerYear]) {
      for (const { fault, odds } of singles(days === undefined ? {} : { daysSinceWhole: days })) {
        known.add(nameOf(fault));
        expect([nameOf(fault), odds / expectedOdds(fault, (days ?? 7) / daysPerYear)]).toEqual([nameOf(fault), expect.closeTo(1, 6)]);
        if (onlySteady.includes(nameOf(fault))) expect(fault.presence).toBe('steady');
      }
    }
    expect([...known].sort()).toEqual([...Object.keys(perYear), 'cable fibres-crossed', 'wiring crossed'].sort());
  });

  const concerns: Readonly<Record<Exclude<Circumstance['kind'], 'not-reworked'>, readonly [number, (fault: Fault) => boolean]>> = {
    'transport-or-crash': [10, ({ item }) => item === 'plug' || item === 'place'],
    'work-at-door': [20, ({ item }) => item === 'plug' || item === 'route'],
    'recent-exchange': [50, () => true],
    'oil-or-coolant': [10, ({ mode }) => mode === 'fouled'],
    heat: [3, ({ item }) => item === 'board'],
    storm: [5, ({ item }) => item === 'board' || item === 'supply'],
  };

  it.each(Object.keys(concerns) as (keyof typeof concerns)[])('should be multiplied by %s where it concerns them', (kind) => {
    const [factor, isConcerned] = concerns[kind];
    for (const { fault, odds } of singles({ circumstances: [{ kind }] })) {
      const expected = expectedOdds(fault, 7 / daysPerYear, isConcerned(fault) ? factor : 1);
      expect([nameOf(fault), odds / expected]).toEqual([nameOf(fault), expect.closeTo(1, 6)]);
    }
  });

  it('should be multiplied only at the places that a circumstance names', () => {
    for (const { fault, odds } of singles({ circumstances: [{ kind: 'recent-exchange', subjects: ['w2'] }] })) {
      const isThere = 'link' in fault && fault.link === 'w2';
      expect(odds / expectedOdds(fault, 7 / daysPerYear, isThere ? 50 : 1)).toBeCloseTo(1, 6);
    }
  });

  it('should suspect the plugs first of a drive that was just exchanged, where all is quiet and the report breaks at it', () => {
    const evidence: Evidence = {
      circumstances: [{ kind: 'recent-exchange', subjects: ['u2'] }],
      snapshots: [
        {
          onset: 'at-power-up',
          halted: true,
          displays: ['u1', 'u2'].map((unit) => ({ unit, meanings: ['quiet'] })),
          reports: [{ chain: 'c1', gaps: [2] }],
        },
      ],
    };
    const crossed = (of: Evidence) =>
      diagnose(cabinet, of).items.find(({ item }) => item.fault.item === 'wiring' && item.fault.unit === 'u2')?.probability ?? 0;
    expect(crossed(evidence)).toBeGreaterThan(crossed({ ...evidence, circumstances: [] }));
  });

  it('should leave no wiring mistake where nobody wired anything since the machine last ran', () => {
    const names = singles({ circumstances: [{ kind: 'not-reworked' }] }).map(({ fault }) => nameOf(fault));
    expect(names).not.toContain('wiring crossed');
    expect(names).not.toContain('cable fibres-crossed');
    expect(names).toContain('cable cut');
  });
});

describe('what is searched', () => {
  it('should hold wiring mistakes only as long as nothing was seen while the machine ran', () => {
    const wiring = (onset: 'while-running' | 'at-power-up') =>
      diagnose(cabinet, { snapshots: [{ onset, halted: true }] }, { keep: 50_000 }).hypotheses.some(({ faults }) =>
        faults.some(({ fault }) => fault.item === 'wiring' || fault.mode === 'fibres-crossed'),
      );
    expect(wiring('at-power-up')).toBe(true);
    expect(wiring('while-running')).toBe(false);
  });

  /** ∏ over items (1 + Σ of the odds of its modes) of domain section 6, from the single hypotheses and their prior odds. */
  function allOdds(broken: Diagnosis['hypotheses']): number {
    const items = new Map<string, Map<string, number>>();
    for (const { faults, priorOdds } of broken) {
      const [{ fault, item } = { fault: null, item: '' }, second] = faults;
      if (fault === null || second !== undefined) continue;
      const part = fault.item === 'cable' ? (/^(outbound|return)/.exec(fault.mode)?.[0] ?? 'whole') : 'whole';
      const parts = items.get(item) ?? new Map<string, number>();
      items.set(item, parts.set(part, (parts.get(part) ?? 0) + priorOdds));
    }
    // Each fibre of a cable may have a mode of its own, where the whole cable has none.
    const ways = (parts: ReadonlyMap<string, number>) => {
      const [whole, outbound, back] = ['whole', 'outbound', 'return'].map((part) => parts.get(part) ?? 0);
      return (whole ?? 0) + (1 + (outbound ?? 0)) * (1 + (back ?? 0));
    };
    return [...items.values()].reduce((product, parts) => product * ways(parts), 1);
  }
  const old = { daysSinceWhole: 40 * daysPerYear };

  // Without evidence L is 1, and Z + R is the product over the items.
  it('should tell how much probability may lie with three faults and more', () => {
    const diagnosis = diagnose(cabinet, { ...old, snapshots: [] }, { keep: 50_000 });
    const broken = diagnosis.hypotheses.filter(({ faults }) => faults.length > 0);
    const visited = broken.reduce((sum, { priorOdds }) => sum + priorOdds, 1);
    expect(diagnosis.unvisitedShare).toBeGreaterThan(0.05);
    expect(diagnosis.unvisitedShare).toBeCloseTo(1 - visited / allOdds(broken), 6);
  });

  // R·L / (Z + R·L). L: 0.98 for each of two displays, 1 for a set with "other" and for a repeat, 0.9 for the report.
  it('should tell so after something was seen', () => {
    const seen = {
      onset: 'at-power-up',
      displays: [
        { unit: 'u1', meanings: ['quiet'] },
        { unit: 'u2', meanings: ['dark', 'upstream-loss'] },
        { unit: 's1', meanings: ['quiet', 'other'] },
      ],
      reports: [{ chain: 'c1', gaps: [2] }],
    } satisfies Evidence['snapshots'][number];
    const evidence: Evidence = { ...old, snapshots: [seen, { displays: [{ unit: 'u1', meanings: ['quiet'] }] }] };
    const prior = diagnose(cabinet, { ...old, snapshots: [] }, { keep: 50_000 }).hypotheses.filter(({ faults }) => faults.length > 0);
    const unvisited = allOdds(prior) - 1 - prior.reduce((sum, { priorOdds }) => sum + priorOdds, 0);
    const diagnosis = diagnose(cabinet, evidence, { keep: 50_000 });
    // Z over what was visited, each weighed once more by the plain reading of the text.
    const visited = diagnosis.hypotheses.reduce(
      (sum, { faults, priorOdds }) =>
        sum +
        priorOdds *
          referenceLikelihood(
            cabinet,
            evidence,
            faults.map(({ fault }) => fault),
          ),
      0,
    );
    const largest = 0.98 * 0.98 * 0.9;
    expect(diagnosis.unvisitedShare).toBeGreaterThan(0.05);
    expect(diagnosis.unvisitedShare).toBeCloseTo((unvisited * largest) / (visited + unvisited * largest), 6);
  });
});

describe('editRate', () => {
  const content = drivesContent(2);
  const loose = { item: 'plug', mode: 'loose' } as const;

  it('should put a figure in the place of the assumed one, with its share and source, and give the assumed one back', () => {
    const edited = [
      { ...loose, field: 'perYear', value: 0.01 } as const,
      { ...loose, field: 'intermittentShare', value: 0.5 } as const,
      { ...loose, field: 'source', value: 'service records' } as const,
    ].reduce(editRate, content);
    expect(rateOf(loose, edited)).toEqual({ perYear: 0.01, intermittentShare: 0.5, source: 'service records' });
    expect(isAssumed(rateOf(loose, edited))).toBe(false);
    expect(soundCabinet(edited)).toBeTruthy();
    expect(rateOf({ item: 'plug', mode: 'fouled' }, edited).perYear).toBe(perYear['plug fouled']);
    const without = editRate(edited, { ...loose, field: 'source', value: null });
    expect(rateOf(loose, without)).toEqual({ perYear: 0.01, intermittentShare: 0.5, source: 'cabinet' });
    expect(editRate(edited, { ...loose, field: 'perYear', value: null })).toEqual(content);
  });

  it('should make the usual figure the cabinet’s own when only its share or source is written, and leave other lines in their order', () => {
    const shared = editRate(content, { ...loose, field: 'intermittentShare', value: 1 });
    expect(shared.rates).toEqual([{ ...loose, perYear: 0.004, intermittentShare: 1 }]);
    expect(editRate(content, { ...loose, field: 'source', value: null })).toBe(content);
    const two = editRate(shared, { item: 'route', mode: 'kinked', field: 'perYear', value: 0.2 });
    const again = editRate(two, { ...loose, field: 'perYear', value: 0.3 });
    expect(again.rates?.map(({ item, perYear: figure }) => [item, figure])).toEqual([
      ['plug', 0.3],
      ['route', 0.2],
    ]);
  });
});

describe('a wiring mistake that a cabinet takes for certain', () => {
  it.each([1, 2])('should be weighed as certain, and leave the sums numbers: %i', (certain) => {
    const own = soundCabinet(drivesContent(3, { rates: [{ item: 'wiring', mode: 'crossed', perYear: certain }] }));
    const { items, unvisitedShare } = diagnose(own, {
      snapshots: [seenSnapshot(own, [{ item: 'wiring', unit: 'u2', mode: 'crossed' }], { onset: 'at-power-up' })],
    });
    expect(items[0]?.item.key).toMatch(/^wiring/);
    expect(items.every(({ probability }) => probability >= 0 && probability <= 1)).toBe(true);
    expect(unvisitedShare).toBeGreaterThanOrEqual(0);
    expect(unvisitedShare).toBeLessThanOrEqual(1);
  });
});
