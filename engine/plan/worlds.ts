import type { FeedbackId, LinkId } from '../base/index.ts';
import { documentedBehaviour } from '../cabinet/index.ts';
import type { HypothesisFault } from '../diagnosis/index.ts';
import type { Evidence, Fault, Intervention, LinkEnd } from '../schema/index.ts';
import { type Arrangement, arrange, type Effect, effectsOf, endKey, tripOf } from '../simulation/index.ts';
import { isWhole, presences } from '../steps/index.ts';
import type { Cabinet } from '../topology/index.ts';

/** One thing that may be the matter: a hypothesis of the diagnosis, perhaps with a fault that handling has added. */
export interface World {
  readonly faults: readonly Fault[];
  readonly probability: number;
  /** What was done, as it really came out in this world; null: as it is written down. */
  readonly evidence: Evidence | null;
  /** A plug that handling left loose. */
  readonly displacement: Displacement | null;
}

/** An end of a link that sits loose after it was touched. */
export interface Displacement {
  readonly link: LinkId;
  readonly end: LinkEnd;
}

export function worldOf(faults: readonly HypothesisFault[], probability: number): World {
  return { faults: faults.map(({ fault }) => fault), probability, evidence: null, displacement: null };
}

/** What is at fault in a world, the loose plug as a fault like others: for names, and for sums over items. */
export function faultsOf({ faults, displacement }: World): readonly Fault[] {
  return displacement === null ? faults : [...faults, { item: 'plug', ...displacement, mode: 'loose', presence: 'steady' }];
}

/** Which faults an act mends, as the simulation says, and whether it moves any to where it does harm. */
export interface Cures {
  readonly mends: (fault: Fault) => boolean;
  readonly moves: boolean;
  /** It mends by going round what is broken: the machine then runs only for now. */
  readonly isProvisional: boolean;
}

/** What an act does to a fault: nothing, mends it, goes round it so that the machine runs, or moves it to where it does harm. */
type Verdict = 'nothing' | 'mends' | 'goes-round' | 'moves';

/**
 * Works out what acts do to faults, starting from everything that was done before. Asked for every act and every fault over and over, so
 * all is kept, by the objects themselves.
 */
export class Workshop {
  /** The cabinet before any of these acts, and after each. */
  private readonly before: Bench;
  private readonly benches = new Map<Intervention, Bench>();
  private readonly effects = new Map<Fault, readonly Effect[]>();
  private readonly harmful = new Map<Fault, boolean>();
  private readonly parts = new Map<World, readonly ((act: Intervention) => boolean)[]>();

  constructor(
    private readonly cabinet: Cabinet,
    readonly done: readonly Intervention[],
  ) {
    this.before = new Bench(cabinet, done);
  }

  /** Whether a fault still does anything, now that all this was done. */
  isThere(fault: Fault): boolean {
    return this.effectsBefore(fault).length > 0;
  }

  /** Whether a plug still hangs free after an act, or after none. */
  isLoose({ link, end }: Displacement, act: Intervention | null = null): boolean {
    return (act === null ? this.before : this.after(act)).arrangement.unplugged.has(endKey(link, end));
  }

  curesOf(act: Intervention, faults: readonly Fault[]): Cures {
    const verdicts = faults.map((fault) => this.verdictOf(act, fault));
    return {
      mends: (fault) => this.doesMend(act, fault),
      moves: verdicts.includes('moves'),
      isProvisional: act.do === 'pull-feedback' || act.do === 'bridge-unit' || verdicts.includes('goes-round'),
    };
  }

  /** What is still wrong in a world, part by part: whether an act mends it. */
  partsOf(world: World): readonly ((act: Intervention) => boolean)[] {
    let parts = this.parts.get(world);
    if (parts === undefined) {
      const { displacement } = world;
      const faults = world.faults
        .filter((fault) => this.isThere(fault) || this.before.isPulled(fault))
        .map((fault) => (act: Intervention) => this.doesMend(act, fault));
      const loose = displacement !== null && this.isLoose(displacement) ? [(act: Intervention) => !this.isLoose(displacement, act)] : [];
      parts = [...faults, ...loose];
      this.parts.set(world, parts);
    }
    return parts;
  }

  /** Probability that a restart finds the machine running although nothing is mended. */
  absentChance(faults: readonly Fault[], chance?: (fault: Fault) => number): number {
    return presences(faults, chance).reduce(
      (sum, { present, share }) => sum + (share > 0 && !present.some((fault) => this.doesHarmBefore(fault)) ? share : 0),
      0,
    );
  }

  private doesMend(act: Intervention, fault: Fault): boolean {
    const verdict = this.verdictOf(act, fault);
    return verdict === 'mends' || verdict === 'goes-round';
  }

  private verdictOf(act: Intervention, fault: Fault): Verdict {
    const bench = this.after(act);
    let verdict = bench.verdicts.get(fault);
    if (verdict === undefined) {
      const now = bench.effectsOf(fault);
      const isSame = act.do !== 'bridge-unit' && isSameList(now, this.effectsBefore(fault));
      const isStillPulled = bench.isPulled(fault) && this.before.isPulled(fault);
      verdict = isStillPulled
        ? 'nothing'
        : now.length === 0
          ? 'mends'
          : isSame
            ? 'nothing'
            : bench.doesHarm(fault)
              ? 'moves'
              : 'goes-round';
      bench.verdicts.set(fault, verdict);
    }
    return verdict;
  }

  private after(act: Intervention): Bench {
    let bench = this.benches.get(act);
    if (bench === undefined) {
      bench = new Bench(this.cabinet, [...this.done, act]);
      this.benches.set(act, bench);
    }
    return bench;
  }

  private effectsBefore(fault: Fault): readonly Effect[] {
    const effects = this.effects.get(fault) ?? this.before.effectsOf(fault);
    this.effects.set(fault, effects);
    return effects;
  }

  private doesHarmBefore(fault: Fault): boolean {
    const isHarmful = this.harmful.get(fault) ?? this.before.doesHarm(fault);
    this.harmful.set(fault, isHarmful);
    return isHarmful;
  }
}

/** The cabinet after some acts, and what faults do in it. */
class Bench {
  readonly arrangement: Arrangement;
  /** What the last of the acts does to each fault. */
  readonly verdicts = new Map<Fault, Verdict>();

  constructor(
    private readonly cabinet: Cabinet,
    private readonly done: readonly Intervention[],
  ) {
    this.arrangement = arrange(cabinet, done);
  }

  effectsOf(fault: Fault): readonly Effect[] {
    return effectsOf(fault, this.cabinet, this.arrangement, (unit) => documentedBehaviour(this.cabinet, unit));
  }

  /** Whether a fault does nothing only because its feedback cable is pulled: the cable is still to be mended. */
  isPulled(fault: Fault): boolean {
    return fault.item === 'feedback' && this.arrangement.pulledFeedbacks.has(fault.feedback as FeedbackId);
  }

  /** Whether a fault alone keeps the machine from running. */
  doesHarm(fault: Fault): boolean {
    return !isWhole(tripOf({ cabinet: this.cabinet, faults: [fault], onset: 'at-power-up', beforeTrip: this.done }));
  }
}

function isSameList(ones: readonly Effect[], others: readonly Effect[]): boolean {
  return ones.length === others.length && ones.every((effect, index) => isSameEffect(effect, others[index]));
}

function isSameEffect(one: Effect, other: Effect | undefined): boolean {
  for (const key in one) {
    // Both have fields of plain text only; where one lacks a field it is another kind of effect.
    if (one[key as keyof Effect] !== other?.[key as keyof Effect]) {
      return false;
    }
  }
  return true;
}
