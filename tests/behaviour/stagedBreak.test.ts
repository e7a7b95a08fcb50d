import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { LinkId, TypeId, UnitId } from '../../engine/base/index.ts';
import { findBehaviour, proposeBreaks, type StagedAct, type StagedBreak } from '../../engine/behaviour/index.ts';
import { checkCabinet } from '../../engine/cabinet/index.ts';
import { type Behaviour, behaviourParameters, behaviourValues, type CabinetContent } from '../../engine/schema/index.ts';
import { predictLook, simulate } from '../../engine/simulation/index.ts';
import type { Cabinet } from '../../engine/topology/index.ts';
import { makeCabinet } from '../generators/cabinets.ts';
import { Random } from '../generators/random.ts';

/** A cabinet whose first two types are not known in some parameters, and how they really behave. */
interface Riddle {
  readonly cabinet: Cabinet;
  readonly truth: ReadonlyMap<string, Behaviour>;
  readonly asked: ReadonlyMap<string, readonly (keyof Behaviour)[]>;
}

function makeRiddle(random: Random, seed: number, unitCount: number): Riddle | null {
  const drawn = makeCabinet(seed, { units: unitCount, chains: 1, behaviours: 'mixed', details: false });
  const truth = new Map<string, Behaviour>();
  const asked = new Map<string, readonly (keyof Behaviour)[]>();
  const types = (drawn.types ?? []).map((type, index) => {
    // Every value comes from its own parameter's list.
    const behaviour = Object.fromEntries(
      behaviourParameters.map((one) => [one, random.pick<string>(behaviourValues[one])]),
    ) as unknown as Behaviour;
    const unknown = index < 2 ? behaviourParameters.filter(() => random.chance(0.6)) : [];
    truth.set(type.id, behaviour);
    asked.set(type.id, unknown);
    return { ...type, behaviour: { ...behaviour, ...Object.fromEntries(unknown.map((one) => [one, 'unknown'] as const)) } };
  });
  // Without details the generator gives no unit a type.
  const units = (drawn.units ?? []).map((unit) =>
    unit.kind === 'supply' || types.length === 0 ? unit : { ...unit, type: random.pick(types).id },
  );
  const content: CabinetContent = { ...drawn, ...(drawn.types ? { types } : {}), units };
  const { cabinet } = checkCabinet(content);
  return cabinet && types.length > 0 ? { cabinet, truth, asked } : null;
}

function behaviourIn({ cabinet, truth }: Riddle): (unit: UnitId) => Behaviour {
  const usual = {
    lossScope: 'neighbour',
    onReceiveLoss: 'mute',
    idleLight: 'yes',
    complainsFrom: 'link-up',
    whenBoth: 'both',
    holds: 'until-reset',
    shortEffect: 'dark',
  } as const;
  return (unit) => truth.get(cabinet.units.get(unit)?.type ?? '') ?? usual;
}

/** What a person sees who stages this break on the real machine. */
function stage(riddle: Riddle, act: StagedAct, withLight: boolean): StagedBreak {
  const { link, end } = act;
  const input = {
    cabinet: riddle.cabinet,
    faults: [],
    onset: act.onset,
    beforeTrip: [{ do: 'unplug', link, end } as const],
    sinceTrip: act.pluggedAgain ? [{ do: 'plug-in', link, end } as const] : [],
    behaviourOf: behaviourIn(riddle),
  };
  const { displays, reports } = simulate(input);
  const look = { look: 'light-at-port', link, end: 'lower' } as const;
  const light = predictLook(look, input);
  return {
    ...act,
    displays: [...displays.values()].map(({ unit, meaning }) => ({ unit, meanings: [meaning] })),
    reports: [...reports.values()].map(({ chain, gap }) => ({ chain, gaps: [gap] })),
    looks: withLight && (light === 'none' || light === 'bright') ? [{ ...look, outcomes: [light] }] : [],
  };
}

function drawAct(random: Random, cabinet: Cabinet): StagedAct {
  return {
    link: random.pick(cabinet.chains.flatMap(({ links }) => links)),
    end: random.pick(['upper', 'lower'] as const),
    onset: random.pick(['while-running', 'at-power-up'] as const),
    pluggedAgain: random.chance(0.5),
  };
}

describe('a staged break', () => {
  it('should never exclude the true values, nor find another combination likelier than theirs', () => {
    let settled = 0;
    fc.assert(
      fc.property(
        fc.integer({ min: 1, max: 1e9 }),
        fc.integer({ min: 2, max: 6 }),
        fc.integer({ min: 1, max: 3 }),
        (seed, units, count) => {
          const random = new Random(seed);
          const riddle = makeRiddle(random, seed, units);
          if (!riddle) return;
          const breaks = Array.from({ length: count }, () => stage(riddle, drawAct(random, riddle.cabinet), random.chance(0.5)));
          const found = findBehaviour(riddle.cabinet, breaks);
          expect(found.contradicted).toBe(false);
          expect(found.reportsElsewhere).toEqual([]);
          for (const { type, parameter, values, state } of found.parameters) {
            const truth = riddle.truth.get(type)?.[parameter];
            const own = values.find(({ value }) => value === truth);
            expect(own?.fits, `${type} ${parameter}`).toBe(true);
            expect(values.reduce((sum, { probability }) => sum + probability, 0)).toBeCloseTo(1, 9);
            if (state === 'settled') {
              settled += 1;
              expect(values.filter(({ fits }) => fits).map(({ value }) => value)).toEqual([truth]);
            }
            if (state === 'untouched') expect(new Set(values.map(({ probability }) => probability.toFixed(9))).size).toBe(1);
          }
        },
      ),
      { numRuns: 100, seed: 20261125 },
    );
    // A function that never settles anything would pass all the above.
    expect(settled).toBeGreaterThan(100);
  });

  it('should say the same as comparing every combination of every unknown parameter, one after another', () => {
    fc.assert(
      fc.property(fc.integer({ min: 1, max: 1e9 }), (seed) => {
        const random = new Random(seed);
        const riddle = makeRiddle(random, seed, random.whole(2, 4));
        if (!riddle) return;
        const seen = stage(riddle, drawAct(random, riddle.cabinet), true);
        const open = [...riddle.asked].flatMap(([type, parameters]) => parameters.map((parameter) => ({ type, parameter })));
        const onChain = new Set([...riddle.cabinet.placeOf.keys()].map((unit) => riddle.cabinet.units.get(unit)?.type));
        const asked = open.filter(({ type }) => onChain.has(type)).slice(0, 7);
        const fitting = new Set<string>();
        const tryAll = (chosen: readonly string[]): void => {
          const next = asked[chosen.length];
          if (next) {
            for (const value of behaviourValues[next.parameter]) tryAll([...chosen, value]);
            return;
          }
          const truth = new Map(
            [...riddle.truth].map(([type, behaviour]) => {
              const own = asked.flatMap((one, index) => (one.type === type ? [[one.parameter, chosen[index]]] : []));
              return [type, { ...behaviour, ...(Object.fromEntries(own) as Partial<Behaviour>) }]; // values of their own parameters
            }),
          );
          const other = stage({ ...riddle, truth }, seen, true);
          if (JSON.stringify([other.displays, other.looks]) === JSON.stringify([seen.displays, seen.looks])) {
            for (const [index, { type, parameter }] of asked.entries()) fitting.add(`${type} ${parameter} ${chosen[index]}`);
          }
        };
        tryAll([]);
        const found = findBehaviour(riddle.cabinet, [seen]).parameters;
        // Where more is asked than was tried out here, a value that fits there must fit here too; else the two are equal.
        for (const { type, parameter, values } of found.filter((one) =>
          asked.some((a) => a.type === one.type && a.parameter === one.parameter),
        )) {
          for (const { value, fits } of values) {
            const alone = fitting.has(`${type} ${parameter} ${value}`);
            if (asked.length === found.length) expect(fits, `${type} ${parameter} ${value}`).toBe(alone);
            else expect(fits || !alone).toBe(true);
          }
        }
      }),
      { numRuns: 40, seed: 20261125 },
    );
  });

  it('should exclude nothing when a display cannot be as it was read, and name it', () => {
    const riddle = makeRiddle(new Random(4), 4, 5);
    if (!riddle) throw new Error('no types');
    const [chain] = riddle.cabinet.chains;
    const act: StagedAct = { link: chain?.links[2] as LinkId, end: 'lower', onset: 'while-running', pluggedAgain: false };
    const seen = stage(riddle, act, false);
    const [first] = chain?.units ?? [];
    const misread = { ...seen, displays: seen.displays.map((one) => (one.unit === first ? { ...one, meanings: ['dark' as const] } : one)) };
    const found = findBehaviour(riddle.cabinet, [misread]);
    expect(found.contradicted).toBe(true);
    expect(found.unexplained).toEqual([first]);
    expect(found.parameters.every(({ values, state }) => state !== 'settled' && values.every(({ fits }) => fits))).toBe(true);
  });

  it('should propose breaks that tell something, until only what no break can tell stays open', () => {
    fc.assert(
      fc.property(fc.integer({ min: 1, max: 1e9 }), (seed) => {
        const random = new Random(seed);
        const riddle = makeRiddle(random, seed, 5);
        if (!riddle) return;
        const breaks = [stage(riddle, drawAct(random, riddle.cabinet), false)];
        for (let round = 0; round < 8; round += 1) {
          const [next] = [...proposeBreaks(riddle.cabinet, breaks)].sort((a, b) => b.bits - a.bits);
          if (!next) break;
          expect(next.parameter).not.toBe('shortEffect');
          breaks.push(stage(riddle, next.act, next.withLight));
          const { parameters } = findBehaviour(riddle.cabinet, breaks);
          for (const { type, parameter, values } of parameters) {
            expect(values.find(({ value }) => value === riddle.truth.get(type)?.[parameter])?.fits).toBe(true);
          }
        }
      }),
      { numRuns: 6, seed: 20261125 },
    );
  });

  it('should settle what a documented type does when it is asked thoroughly', () => {
    const riddle = makeRiddle(new Random(7), 7, 4);
    if (!riddle) throw new Error('no types');
    const [chain] = riddle.cabinet.chains;
    const unit = chain?.units[1] as UnitId;
    const type = riddle.cabinet.units.get(unit)?.type as TypeId | undefined;
    const act: StagedAct = { link: chain?.links[1] as LinkId, end: 'lower', onset: 'while-running', pluggedAgain: true };
    const found = findBehaviour(riddle.cabinet, [stage(riddle, act, true)], type);
    expect(found.parameters.filter((one) => one.type === type).map(({ parameter }) => parameter)).toEqual(type ? behaviourParameters : []);
  });
});
