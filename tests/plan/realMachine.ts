import type { ChainId, UnitId } from '../../engine/base/index.ts';
import { touchedPlugs } from '../../engine/plan/handling.ts';
import {
  type Behaviour,
  type DisplayMeaning,
  displayMeanings,
  type Evidence,
  type Fault,
  type Intervention,
  type Onset,
  supplyMeanings,
} from '../../engine/schema/index.ts';
import { predictLook, type SimulationInput, simulate } from '../../engine/simulation/index.ts';
import type { Step } from '../../engine/steps/index.ts';
import type { Cabinet } from '../../engine/topology/index.ts';
import type { Random } from '../generators/random.ts';

/** How a machine differs from what is reckoned with. */
export interface World {
  /** Chance that a display or a look is misread. */
  readonly misreading?: number;
  /** Chance that a fault that comes and goes is there. */
  readonly presence?: number;
  /** Chance that a part put in is bad. */
  readonly badPart?: number;
  /** Chance that an act leaves a plug loose that it touched. */
  readonly looseAfterAct?: number;
  /** How the equipment really behaves; without it as documented. */
  readonly behaviourOf?: (unit: UnitId) => Behaviour;
}

/** A machine with its faults: answers steps as a technician would find it, and remembers what was done to it. */
export class RealMachine {
  private onset: Onset = 'while-running';
  private beforeTrip: Intervention[] = [];
  private atTrip: readonly Fault[];
  halted = true;

  constructor(
    private readonly cabinet: Cabinet,
    private readonly faults: readonly Fault[],
    private readonly random: Random | null = null,
    private readonly world: World = {},
  ) {
    this.atTrip = faults;
  }

  /** What is seen first: all displays and reports. */
  firstLook(): Evidence {
    const { displays, reports } = simulate(this.input());
    const read = (unit: UnitId, meaning: DisplayMeaning) => {
      const isSupply = this.cabinet.units.get(unit)?.kind === 'supply';
      return this.read(meaning, isSupply ? supplyMeanings : displayMeanings);
    };
    return {
      snapshots: [
        {
          onset: this.onset,
          halted: true,
          displays: [...displays.values()].map(({ unit, meaning }) => ({ unit, meanings: [read(unit, meaning)] })),
          reports: [...reports.values()].map(({ chain, gap }) => ({ chain, gaps: [gap] })),
        },
      ],
    };
  }

  /** Does a step and says what came of it. `outcomes`: what could be read instead by mistake. */
  take(step: Step, outcomes: readonly string[]): string {
    switch (step.do) {
      case 'act':
        for (const act of step.acts) {
          const isBad = act.do.startsWith('replace-') && this.random?.chance(this.world.badPart ?? 0) === true;
          if (!isBad) this.beforeTrip.push(act);
          const plugs = touchedPlugs(this.cabinet, act);
          if (plugs.length > 0 && this.random?.chance(this.world.looseAfterAct ?? 0) === true) {
            this.beforeTrip.push({ do: 'unplug', ...this.random.pick(plugs) });
          }
        }
        return this.restart();
      case 'provoke':
        return this.restart();
      case 'read-display':
        return this.read(simulate(this.input()).displays.get(step.unit as UnitId)?.meaning ?? 'quiet', outcomes);
      case 'read-report':
        return String(simulate(this.input()).reports.get(step.chain as ChainId)?.gap ?? 'none');
      case 'look':
        return this.read(predictLook(step.look, this.input()) ?? 'none', outcomes);
    }
  }

  /** It ran, and halts again while running: what comes and goes is there. */
  comeBack(): Evidence['snapshots'][number] {
    this.onset = 'while-running';
    this.atTrip = this.faults;
    this.halted = true;
    return { onset: 'while-running', halted: true };
  }

  /** Whether none of its faults would break a chain any more, were all of them there. */
  get isMended(): boolean {
    return this.runsWith(this.faults);
  }

  private restart(): string {
    this.onset = 'at-power-up';
    this.atTrip = this.drawn();
    this.halted = !this.runsWith(this.atTrip);
    return this.halted ? 'halts' : 'runs';
  }

  private runsWith(faults: readonly Fault[]): boolean {
    const { trip } = simulate({ cabinet: this.cabinet, faults, onset: 'at-power-up', beforeTrip: this.beforeTrip });
    return [...trip.links.values()].every((link) => link.outbound.hears && link.return.hears);
  }

  private drawn(): readonly Fault[] {
    return this.faults.filter(({ presence }) => presence !== 'intermittent' || this.random?.chance(this.world.presence ?? 0.5) !== false);
  }

  private read<T extends string>(truth: T, outcomes: readonly T[]): T {
    const others = outcomes.filter((outcome) => outcome !== truth);
    return others.length > 0 && this.random?.chance(this.world.misreading ?? 0) === true ? this.random.pick(others) : truth;
  }

  private input(): SimulationInput {
    const { cabinet, atTrip, onset, halted, beforeTrip } = this;
    const { behaviourOf } = this.world;
    return { cabinet, faults: atTrip, faultsNow: this.drawn(), onset, halted, beforeTrip, ...(behaviourOf ? { behaviourOf } : {}) };
  }
}
