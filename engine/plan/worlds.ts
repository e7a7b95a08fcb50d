import type { LinkId } from '../base/index.ts';
import { documentedBehaviour } from '../cabinet/index.ts';
import type { HypothesisFault } from '../diagnosis/index.ts';
import type { Evidence, Fault, Intervention, LinkEnd } from '../schema/index.ts';
import { type Arrangement, arrange, type Effect, effectsOf, endKey, modeKey, simulate } from '../simulation/index.ts';
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

/** Works out what acts do to faults, starting from everything that was done before. */
export class Workshop {
  /** By act (null: none) and mode. */
  private readonly effects = new Map<Intervention | null, Map<string, string>>();
  private readonly harmful = new Map<Intervention | null, Map<string, boolean>>();
  private readonly arrangements = new Map<Intervention | null, Arrangement>();

  constructor(
    private readonly cabinet: Cabinet,
    readonly done: readonly Intervention[],
  ) {}

  /** Whether a fault still does anything, now that all this was done. */
  isThere(fault: Fault): boolean {
    return this.effectOf(fault, null) !== '[]';
  }

  /** Whether a plug still hangs free after an act, or after none. */
  isLoose({ link, end }: Displacement, ...acts: readonly Intervention[]): boolean {
    return arrange(this.cabinet, [...this.done, ...acts]).unplugged.has(endKey(link, end));
  }

  curesOf(act: Intervention, faults: readonly Fault[]): Cures {
    const mended = new Set<string>();
    let moves = false;
    let isProvisional = act.do === 'pull-feedback' || act.do === 'bridge-unit';
    for (const fault of faults) {
      const before = this.effectOf(fault, null);
      const after = this.effectOf(fault, act);
      if (after === '[]') {
        mended.add(modeKey(fault));
      } else if (after !== before || act.do === 'bridge-unit') {
        if (this.doesHarm(fault, act)) {
          moves = true;
        } else {
          mended.add(modeKey(fault));
          isProvisional = true;
        }
      }
    }
    return { mends: (fault) => mended.has(modeKey(fault)), moves, isProvisional };
  }

  /** What is still wrong in a world, part by part: whether an act mends it. */
  partsOf(world: World): readonly ((act: Intervention) => boolean)[] {
    const { displacement } = world;
    const faults = world.faults
      .filter((fault) => this.isThere(fault))
      .map((fault) => (act: Intervention) => this.curesOf(act, [fault]).mends(fault));
    const loose = displacement !== null && this.isLoose(displacement) ? [(act: Intervention) => !this.isLoose(displacement, act)] : [];
    return [...faults, ...loose];
  }

  /** Probability that a restart finds the machine running although nothing is mended. */
  absentChance(faults: readonly Fault[], chance?: (fault: Fault) => number): number {
    return presences(faults, chance).reduce(
      (sum, { present, share }) => sum + (share > 0 && !present.some((fault) => this.doesHarm(fault, null)) ? share : 0),
      0,
    );
  }

  private doesHarm(fault: Fault, act: Intervention | null): boolean {
    return remembered(this.harmful, act, modeKey(fault), () => {
      const beforeTrip = act === null ? this.done : [...this.done, act];
      return !isWhole(simulate({ cabinet: this.cabinet, faults: [fault], onset: 'at-power-up', beforeTrip }).trip);
    });
  }

  private effectOf(fault: Fault, act: Intervention | null): string {
    return remembered(this.effects, act, modeKey(fault), () => {
      const arrangement = this.arrangements.get(act) ?? arrange(this.cabinet, act === null ? this.done : [...this.done, act]);
      this.arrangements.set(act, arrangement);
      const list: readonly Effect[] = effectsOf(fault, this.cabinet, arrangement, (unit) => documentedBehaviour(this.cabinet, unit));
      return JSON.stringify(list);
    });
  }
}

function remembered<A, T>(known: Map<A, Map<string, T>>, of: A, key: string, workOut: () => T): T {
  const inside = known.get(of) ?? new Map<string, T>();
  known.set(of, inside);
  const value = inside.get(key) ?? workOut();
  inside.set(key, value);
  return value;
}
