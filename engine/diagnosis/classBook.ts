import type { UnitId } from '../base/index.ts';
import type { FaultChoice, SearchElement } from '../search/index.ts';
import { type Arrangement, type Effect, effectsOf, modeKey } from '../simulation/index.ts';
import type { Cabinet } from '../topology/index.ts';
import { type CompiledCabinet, compileCabinet, fedThrough, findTurned, isFeedEffect, OpsBuilder, type RegionOps } from './compiled.ts';
import type { FaultSpace, SettledFault } from './elements.ts';
import { isLookConcerned } from './lookConcern.ts';
import type { Plan } from './plan.ts';
import { isProvoked } from './presence.ts';
import type { Scenario } from './scenarios.ts';

/** What one class of faults does, in every arrangement. Kept per "variant": shorted cables act by the behaviour a scenario assumes. */
export interface EffectOps {
  readonly id: number;
  readonly fault: SettledFault;
  /** `ops[variant][arrangement]` by region. */
  readonly ops: readonly (readonly ReadonlyMap<number, RegionOps>[])[];
  /** Regions that it touches in any variant and arrangement, ascending. */
  readonly regions: readonly number[];
  /** Those in which it does something to a unit itself, not only to links. */
  readonly regionsWithUnits: readonly number[];
  /** Indices of the look observations whose outcome it can change. */
  readonly looks: readonly number[];
  readonly isFeed: boolean;
  /** Of a feed fault: the units to which 24 V may come through what it is on. */
  readonly fed: ReadonlySet<UnitId>;
  readonly onlyAtPowerUp: boolean;
}

/** A class with a presence: what one mode of the search weighs as. `index` counts them without gaps. */
export interface ClassHandle {
  readonly index: number;
  readonly ops: EffectOps;
  readonly isIntermittent: boolean;
  /** Snapshots whose restart brings it out, ascending. */
  readonly provokedIn: readonly number[];
  /** Σ prior odds of the modes that weigh as this. */
  weight: number;
}

/** All classes of a fault space, and which mode belongs to which. */
export interface ClassBook {
  readonly compiled: CompiledCabinet;
  readonly arrangements: readonly Arrangement[];
  /** Variant of each scenario. */
  readonly variantOf: ReadonlyMap<Scenario, number>;
  readonly handleOf: (choice: FaultChoice) => ClassHandle;
  readonly handles: readonly ClassHandle[];
  /** The elements with the effect key of every mode filled in. */
  readonly elements: readonly SearchElement[];
  /** Effects of a class in an arrangement, for what is not compiled (looks, second feeds). */
  readonly effectsOf: (ops: EffectOps, variant: number, arrangement: number) => readonly Effect[];
  /** Whether two faults may do something else together than each does alone: feed faults that may change the 24 V of the same unit. */
  readonly interact: (one: EffectOps, other: EffectOps) => boolean;
  /** What two feed faults do together besides what each does alone; null where that is nothing. */
  readonly jointOps: (one: EffectOps, other: EffectOps, arrangement: number) => ReadonlyMap<number, RegionOps> | null;
}

/** Compiles every mode of a fault space and finds which are predicted alike. */
export function makeClassBook(cabinet: Cabinet, plan: Plan, space: FaultSpace, scenarios: readonly Scenario[]): ClassBook {
  const compiled = compileCabinet(cabinet, plan.arrangements);
  const variants = listVariants(cabinet, scenarios);
  const mayHaveRun = scenarios.some(({ onsets }) => onsets.includes('while-running'));
  const classes = new Map<string, EffectOps>();
  const compiledModes = new Map<string, CompiledMode>();
  const handles: ClassHandle[][] = [];
  const known = new Map<string, ClassHandle>();
  const joint = new Map<string, ReadonlyMap<number, RegionOps> | null>();

  const effectsIn = (fault: SettledFault, variant: number, arrangement: number): readonly Effect[] => {
    const state = plan.arrangements[arrangement];
    const scenario = variants.examples[variant];
    return state === undefined || scenario === undefined ? [] : effectsOf(fault, cabinet, state, scenario.behaviourOf);
  };

  const elements = space.elements.map((element, e) => {
    const row: ClassHandle[] = [];
    handles.push(row);
    const modes = element.modes.map((mode, m) => {
      const fault = space.faults[e]?.[m];
      if (fault === undefined) {
        throw new Error('every mode of a fault space stands for a fault');
      }
      // Steady or not, a fault does the same while it is there.
      const name = modeKey(fault);
      const { key, entry } = compiledModes.get(name) ?? compileFault(fault);
      compiledModes.set(name, { key, entry });
      let ops = classes.get(key);
      if (ops === undefined) {
        ops = { ...entry, id: classes.size };
        classes.set(key, ops);
      }
      const provokedIn = plan.provoked.flatMap((provoked, snapshot) =>
        fault.presence === 'intermittent' && isProvoked(provoked, fault) ? [snapshot] : [],
      );
      const effect = `${key}|${fault.presence}|${provokedIn.join()}`;
      let handle = known.get(effect);
      if (handle === undefined) {
        handle = { index: known.size, ops, isIntermittent: fault.presence === 'intermittent', provokedIn, weight: 0 };
        known.set(effect, handle);
      }
      handle.weight += mode.odds;
      row.push(handle);
      return { ...mode, effect };
    });
    return { ...element, modes };
  });

  return {
    compiled,
    arrangements: plan.arrangements,
    variantOf: variants.variantOf,
    elements,
    handleOf: ({ element, mode }) => handles[element]?.[mode] ?? missing(),
    handles: [...known.values()],
    effectsOf: (entry, variant, arrangement) => effectsIn(entry.fault, variant, arrangement),
    interact,
    jointOps,
  };

  function compileFault(fault: SettledFault): CompiledMode {
    const regions = new Set<number>();
    const withUnits = new Set<number>();
    const parts: string[] = [];
    let isFeed = false;
    const fed = new Set<UnitId>();
    const concerned = new Set<number>();
    const byVariant = variants.examples.map((_, variant) =>
      plan.arrangements.map((state, arrangement) => {
        const effects = effectsIn(fault, variant, arrangement);
        for (const effect of effects.filter(isFeedEffect)) {
          isFeed = true;
          for (const unit of compiled.doFeedsInteract ? fedThrough(effect, cabinet) : []) {
            fed.add(unit);
          }
        }
        const built = build(arrangement, effects, findTurned(compiled, arrangement, state, effects));
        for (const [region, one] of built) {
          regions.add(region);
          if (one.units.length > 0) {
            withUnits.add(region);
          }
          parts.push(
            `${variant}.${arrangement}.${region}:${one.slots.join()}/${one.slotBits.join()}/${one.units.join()}/${one.unitBits.join()}`,
          );
        }
        if (compiled.doFeedsInteract) {
          parts.push(JSON.stringify(effects.filter(isFeedEffect)));
        }
        plan.observations.forEach((seen, index) => {
          const at = plan.snapshots[seen.snapshot]?.nowArrangement;
          if (seen.kind === 'look' && at === arrangement && isLookConcerned(seen.look, effects, cabinet, state)) {
            concerned.add(index);
            parts.push(`${index}${JSON.stringify(effects)}`);
          }
        });
        return built;
      }),
    );
    // Whether a later look repeats an earlier one depends on what the earlier one was predicted to show.
    plan.observations.forEach((seen, index) => {
      if (seen.kind === 'look' && seen.earlier.some((other) => concerned.has(other))) {
        concerned.add(index);
      }
    });
    // Where the machine never ran in any scenario, a wiring mistake is like any other fault and may share a class.
    const onlyAtPowerUp = mayHaveRun && (fault.item === 'wiring' || fault.mode === 'fibres-crossed');
    return {
      key: `${onlyAtPowerUp ? 'w' : ''}${parts.join(';')}`,
      entry: {
        fault,
        ops: byVariant,
        regions: [...regions].sort((a, b) => a - b),
        regionsWithUnits: [...withUnits],
        looks: [...concerned].sort((a, b) => a - b),
        isFeed,
        fed,
        onlyAtPowerUp,
      },
    };
  }

  function build(arrangement: number, effects: readonly Effect[], turned: readonly UnitId[]): ReadonlyMap<number, RegionOps> {
    const builder = new OpsBuilder(compiled, arrangement);
    for (const effect of effects) {
      builder.add(effect);
    }
    builder.turnPower(turned);
    return builder.build();
  }

  function interact(one: EffectOps, other: EffectOps): boolean {
    if (!compiled.doFeedsInteract || !one.isFeed || !other.isFeed) {
      return false;
    }
    if (compiled.doVoltagesDecide) {
      return true;
    }
    const [fewer, more] = one.fed.size < other.fed.size ? [one.fed, other.fed] : [other.fed, one.fed];
    for (const unit of fewer) {
      if (more.has(unit)) {
        return true;
      }
    }
    return false;
  }

  function jointOps(one: EffectOps, other: EffectOps, arrangement: number): ReadonlyMap<number, RegionOps> | null {
    if (!interact(one, other)) {
      return null;
    }
    const key = `${one.id}/${other.id}/${arrangement}`;
    let found = joint.get(key);
    if (found === undefined) {
      const state = plan.arrangements[arrangement];
      found = state === undefined ? null : buildJoint(state, arrangement, [one, other]);
      joint.set(key, found);
    }
    return found;
  }

  /** Comes on top of what each of the two does alone: it takes that back and puts what both do together in its place. */
  function buildJoint(state: Arrangement, arrangement: number, pair: readonly EffectOps[]): ReadonlyMap<number, RegionOps> {
    const parts = pair.map(({ fault }) => effectsIn(fault, 0, arrangement).filter(isFeedEffect));
    const builder = new OpsBuilder(compiled, arrangement);
    for (const effects of [parts.flat(), ...parts]) {
      builder.turnPower(findTurned(compiled, arrangement, state, effects));
    }
    return builder.build();
  }
}

/** What a mode does, with the key under which it shares a class. */
interface CompiledMode {
  readonly key: string;
  readonly entry: Omit<EffectOps, 'id'>;
}

function missing(): never {
  throw new Error('a choice outside the fault space');
}

/** Scenarios that assume the same effect of shorted feedback cables share their ops. */
function listVariants(
  cabinet: Cabinet,
  scenarios: readonly Scenario[],
): { readonly variantOf: ReadonlyMap<Scenario, number>; readonly examples: readonly Scenario[] } {
  const units = [...new Set([...cabinet.feedbacks.values()].map(({ unit }) => unit as UnitId))];
  const known = new Map<string, number>();
  const variantOf = new Map<Scenario, number>();
  const examples: Scenario[] = [];
  for (const scenario of scenarios) {
    const key = units.map((unit) => scenario.behaviourOf(unit).shortEffect).join();
    let variant = known.get(key);
    if (variant === undefined) {
      variant = examples.length;
      known.set(key, variant);
      examples.push(scenario);
    }
    variantOf.set(scenario, variant);
  }
  return { variantOf, examples };
}
