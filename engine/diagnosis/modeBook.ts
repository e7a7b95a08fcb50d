import { Recent, type UnitId } from '../base/index.ts';
import { type Arrangement, type Effect, effectsOf, modeKey } from '../simulation/index.ts';
import type { Cabinet } from '../topology/index.ts';
import {
  areasOf,
  type CompiledCabinet,
  compileCabinet,
  fedThrough,
  findTurned,
  isFeedEffect,
  OpsBuilder,
  type RegionOps,
} from './compiled.ts';
import type { SettledFault } from './elements.ts';
import type { Scenario } from './scenarios.ts';

/**
 * What one mode does, in every arrangement, whatever was observed. Kept per "variant": shorted cables act by the behaviour a scenario
 * assumes.
 */
export interface CompiledMode {
  readonly fault: SettledFault;
  /** Equal for modes that do the same. */
  readonly key: string;
  /** `effects[variant][arrangement]`. */
  readonly effects: readonly (readonly (readonly Effect[])[])[];
  /** `ops[variant][arrangement]` by region. */
  readonly ops: readonly (readonly ReadonlyMap<number, RegionOps>[])[];
  /** Regions that it touches in any variant and arrangement, ascending. */
  readonly regions: readonly number[];
  /** Those in which it does something to a unit itself, not only to links. */
  readonly regionsWithUnits: readonly number[];
  readonly isFeed: boolean;
  /** Of a feed fault: the units to which 24 V may come through what it is on; where voltages decide, `feedAreas` that it is in. */
  readonly fed: ReadonlySet<UnitId>;
}

/**
 * What the modes of a cabinet do in some arrangements, under the behaviours that scenarios assume. It does not depend on what was seen,
 * so from one reading to the next it stays.
 */
export class ModeBook {
  readonly compiled: CompiledCabinet;
  private readonly modes = new Map<string, CompiledMode>();
  private readonly joint = new Map<string, ReadonlyMap<number, RegionOps> | null>();

  private constructor(
    private readonly cabinet: Cabinet,
    readonly arrangements: readonly Arrangement[],
    private readonly variants: Variants,
  ) {
    this.compiled = compileCabinet(cabinet, arrangements);
  }

  static of(cabinet: Cabinet, arrangements: readonly Arrangement[], scenarios: readonly Scenario[]): ModeBook {
    const variants = listVariants(cabinet, scenarios);
    const key = `${arrangements.map(numberOf).join()}/${[...variants.places.keys()].join('/')}`;
    return recentBooks.get(cabinet, key, () => new ModeBook(cabinet, arrangements, variants));
  }

  variantOf(scenario: Scenario): number {
    return this.variants.places.get(variantKey(scenario, this.variants.units)) ?? 0;
  }

  /** Steady or not, a fault does the same while it is there. */
  modeOf(fault: SettledFault): CompiledMode {
    const name = modeKey(fault);
    const mode = this.modes.get(name) ?? this.compile(fault);
    this.modes.set(name, mode);
    return mode;
  }

  /** Whether two faults may do something else together than each does alone: feed faults that may change the 24 V of the same unit. */
  interact(one: CompiledMode, other: CompiledMode): boolean {
    if (!this.compiled.doFeedsInteract || !one.isFeed || !other.isFeed) {
      return false;
    }
    if (this.compiled.doVoltagesDecide && this.compiled.feedAreas === null) {
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

  /** What two feed faults do together besides what each does alone; null where that is nothing. */
  jointOps(one: CompiledMode, other: CompiledMode, arrangement: number): ReadonlyMap<number, RegionOps> | null {
    if (!this.interact(one, other)) {
      return null;
    }
    const key = `${modeKey(one.fault)} ${modeKey(other.fault)} ${arrangement}`;
    let found = this.joint.get(key);
    if (found === undefined) {
      found = this.buildJoint(arrangement, [one, other]);
      this.joint.set(key, found);
    }
    return found;
  }

  /** Comes on top of what each of the two does alone: it takes that back and puts what both do together in its place. */
  private buildJoint(arrangement: number, pair: readonly CompiledMode[]): ReadonlyMap<number, RegionOps> {
    const parts = pair.map(({ effects }) => (effects[0]?.[arrangement] ?? []).filter(isFeedEffect));
    const builder = new OpsBuilder(this.compiled, arrangement);
    for (const effects of [parts.flat(), ...parts]) {
      builder.turnPower(findTurned(this.compiled, arrangement, this.arrangements[arrangement] ?? missing(), effects));
    }
    return builder.build();
  }

  private compile(fault: SettledFault): CompiledMode {
    const { compiled, cabinet, arrangements } = this;
    const regions = new Set<number>();
    const withUnits = new Set<number>();
    const fed = new Set<UnitId>();
    const parts: string[] = [];
    let isFeed = false;
    const effects = this.variants.examples.map(({ behaviourOf }) =>
      arrangements.map((state) => effectsOf(fault, cabinet, state, behaviourOf)),
    );
    const ops = effects.map((inVariant, variant) =>
      inVariant.map((list, arrangement) => {
        const feeds = list.filter(isFeedEffect);
        isFeed ||= feeds.length > 0;
        if (compiled.doFeedsInteract) {
          const { doVoltagesDecide, feedAreas } = compiled;
          const fedBy = (effect: Effect) =>
            doVoltagesDecide && feedAreas ? areasOf(effect, cabinet, feedAreas) : fedThrough(effect, cabinet);
          for (const unit of feeds.flatMap((effect) => [...fedBy(effect)])) {
            fed.add(unit);
          }
          parts.push(JSON.stringify(feeds));
        }
        const built = this.build(arrangement, list);
        for (const [region, { slots, slotBits, units, unitBits }] of built) {
          regions.add(region);
          if (units.length > 0) {
            withUnits.add(region);
          }
          parts.push(`${variant}.${arrangement}.${region}:${slots.join()}/${slotBits.join()}/${units.join()}/${unitBits.join()}`);
        }
        return built;
      }),
    );
    return {
      fault,
      key: parts.join(';'),
      effects,
      ops,
      regions: [...regions].sort((a, b) => a - b),
      regionsWithUnits: [...withUnits],
      isFeed,
      fed,
    };
  }

  private build(arrangement: number, effects: readonly Effect[]): ReadonlyMap<number, RegionOps> {
    const builder = new OpsBuilder(this.compiled, arrangement);
    for (const effect of effects) {
      builder.add(effect);
    }
    builder.turnPower(findTurned(this.compiled, arrangement, this.arrangements[arrangement] ?? missing(), effects));
    return builder.build();
  }
}

const recentBooks = new Recent<Cabinet, ModeBook>(4);

/** A number for each arrangement, so that a key can name it. */
const numbers = new WeakMap<Arrangement, number>();
let numbered = 0;

function numberOf(arrangement: Arrangement): number {
  let number = numbers.get(arrangement);
  if (number === undefined) {
    number = numbered;
    numbered += 1;
    numbers.set(arrangement, number);
  }
  return number;
}

/** Scenarios that assume the same effect of shorted feedback cables are one variant: an example of each, and its place by its key. */
interface Variants {
  readonly units: readonly UnitId[];
  readonly examples: readonly Scenario[];
  readonly places: ReadonlyMap<string, number>;
}

function listVariants(cabinet: Cabinet, scenarios: readonly Scenario[]): Variants {
  const units = [...new Set([...cabinet.feedbacks.values()].map(({ unit }) => unit as UnitId))]; // the file schema holds plain strings
  const places = new Map<string, number>();
  const examples: Scenario[] = [];
  for (const scenario of scenarios) {
    const key = variantKey(scenario, units);
    if (!places.has(key)) {
      places.set(key, examples.length);
      examples.push(scenario);
    }
  }
  return { units, examples, places };
}

function variantKey({ behaviourOf }: Scenario, units: readonly UnitId[]): string {
  return units.map((unit) => behaviourOf(unit).shortEffect).join();
}

function missing(): never {
  throw new Error('an arrangement that was never laid out');
}
