import type { ChainId, LinkId, UnitId } from '../base/index.ts';
import {
  comparisonOutcomes,
  type DisplayMeaning,
  type Evidence,
  type Intervention,
  lampOutcomes,
  lightOutcomes,
  type Onset,
  plugLightOutcomes,
  type Snapshot,
  voltageOutcomes,
} from '../schema/index.ts';
import { type Arrangement, arrange, arrangedChains, type Look, type LookOutcome } from '../simulation/index.ts';
import type { Cabinet } from '../topology/index.ts';
import { displayLogFactors, lookLogFactors, reportLogFactors } from './likelihood.ts';
import type { ObservationRef } from './types.ts';

/**
 * The evidence laid out for weighing: snapshots with the two moments each, and for every observation the logarithm of its
 * likelihood under each prediction, so that weighing a hypothesis is only looking up and adding.
 */
export interface Plan {
  readonly arrangements: readonly Arrangement[];
  readonly trips: readonly PlanTrip[];
  readonly snapshots: readonly PlanSnapshot[];
  /** By snapshot: what its restart was to bring out. */
  readonly provoked: readonly Snapshot['provoked'][];
  /** Number of moments at which an intermittent fault is there or not, each drawn anew. */
  readonly draws: number;
  /** The draw of the first trip, at which an intermittent fault is there for sure; −1 when no trip was seen. */
  readonly firstTripDraw: number;
  readonly observations: readonly PlanObservation[];
  /** Observations of one thing with one reading in several snapshots, each list in the order of snapshots. */
  readonly repeats: readonly (readonly number[])[];
  /** log of the product of the largest factors that any prediction could earn (L of domain section 6). */
  readonly largestLogFactor: number;
}

/** A trip: a halt of the machine or a power-up that failed. Several snapshots may show the displays after the same one. */
export interface PlanTrip {
  readonly onset: 'while-running' | 'at-power-up' | 'unknown';
}

export interface PlanSnapshot {
  readonly trip: number;
  readonly tripArrangement: number;
  readonly nowArrangement: number;
  readonly tripDraw: number;
  readonly nowDraw: number;
  /** True: a chain must be broken at the trip. False: none may be. Null: nobody looked. */
  readonly halted: boolean | null;
}

interface Common {
  readonly ref: ObservationRef;
  readonly snapshot: number;
  /** Earlier observations (indices) of the same thing with the same reading: alike predictions then add no factor. */
  readonly earlier: readonly number[];
}

/** One observation with the log of its factor for every prediction it can meet. */
export type PlanObservation =
  | (Common & {
      readonly kind: 'display';
      readonly unit: UnitId;
      readonly isSupply: boolean;
      readonly fits: readonly DisplayMeaning[];
      readonly logFactors: Float64Array;
    })
  /** `logFactors[0]` is "none", `logFactors[k]` the gap before position k. */
  | (Common & {
      readonly kind: 'report';
      readonly chain: ChainId;
      readonly fits: readonly (number | 'none')[];
      readonly logFactors: Float64Array;
    })
  | (Common & {
      readonly kind: 'look';
      readonly look: Look;
      readonly fits: readonly LookOutcome[];
      readonly outcomes: readonly LookOutcome[];
      readonly logFactors: Float64Array;
    });

/** Lays evidence out. Observations of things that are not in the cabinet are left out. */
export function planEvidence(cabinet: Cabinet, evidence: Evidence): Plan {
  return new Planner(cabinet, evidence).plan;
}

/**
 * Which snapshots begin a new trip: the first, those after a restart, and those of a machine that ran and is halted now, whether
 * anybody wrote so or not.
 */
export function tripStarts({ snapshots }: Evidence): readonly boolean[] {
  return snapshots.map(
    (snapshot, index) =>
      index === 0 || snapshot.restarted === true || (snapshots[index - 1]?.halted === false && snapshot.halted !== false),
  );
}

class Planner {
  private readonly arrangements: Arrangement[] = [];
  private readonly trips: PlanTrip[] = [];
  private readonly snapshots: PlanSnapshot[] = [];
  private readonly observations: PlanObservation[] = [];
  private readonly done: Intervention[] = [];
  private draws = 0;
  private firstTripDraw = -1;
  private largestLogFactor = 0;
  private readonly starts: readonly boolean[];
  readonly plan: Plan;

  constructor(
    private readonly cabinet: Cabinet,
    private readonly evidence: Evidence,
  ) {
    this.starts = tripStarts(evidence);
    evidence.snapshots.forEach((snapshot, index) => {
      this.addSnapshot(snapshot, index);
    });
    const { arrangements, trips, snapshots, observations, draws, firstTripDraw, largestLogFactor } = this;
    const repeats = observations.flatMap((seen, index) => {
      const later = observations.flatMap(({ earlier }, other) => (earlier.includes(index) ? [other] : []));
      return seen.earlier.length === 0 && later.length > 0 ? [[index, ...later]] : [];
    });
    const provoked = evidence.snapshots.map((snapshot) => snapshot.provoked);
    this.plan = { arrangements, trips, snapshots, provoked, observations, repeats, draws, firstTripDraw, largestLogFactor };
  }

  /** The onset of the trip that begins with a snapshot: the first that any snapshot of that trip names. */
  private onsetFrom(index: number): Onset | 'unknown' | undefined {
    const next = this.starts.findIndex((isStart, later) => isStart && later > index);
    return this.evidence.snapshots.slice(index, next < 0 ? undefined : next).find(({ onset }) => onset !== undefined)?.onset;
  }

  private newDraw(): number {
    this.draws += 1;
    return this.draws - 1;
  }

  private addSnapshot(snapshot: Evidence['snapshots'][number], index: number): void {
    const before = this.snapshots[index - 1];
    const acts = snapshot.interventions ?? [];
    // What is done between a switch-off and the next trip lies before that trip; else the trip saw the cabinet as it was.
    const halted = snapshot.halted ?? null;
    const isNewTrip = this.starts[index] === true;
    const beforeActs = before === undefined && snapshot.restarted !== true && acts.length > 0 ? this.arrangement() : null;
    this.done.push(...acts);
    const now = acts.length === 0 && before !== undefined ? before.nowArrangement : this.arrangement();
    let trip = before?.trip ?? -1;
    let tripDraw = before?.tripDraw ?? -1;
    let tripArrangement = before?.tripArrangement ?? now;
    if (isNewTrip) {
      const usual = before === undefined ? 'unknown' : snapshot.restarted === true ? 'at-power-up' : 'while-running';
      this.trips.push({ onset: this.onsetFrom(index) ?? usual });
      trip = this.trips.length - 1;
      tripArrangement = beforeActs ?? now;
    }
    if (halted === false) {
      const draw = this.newDraw();
      this.snapshots.push({ trip, tripArrangement: now, nowArrangement: now, tripDraw: draw, nowDraw: draw, halted });
    } else {
      if (isNewTrip) {
        tripDraw = this.newDraw();
        if (this.firstTripDraw < 0) {
          this.firstTripDraw = tripDraw;
        }
      }
      // With fewer units such a control halts in any case, broken or whole.
      const tells = this.cabinet.chains.every(({ id }) => this.speaks(id, tripArrangement));
      this.snapshots.push({ trip, tripArrangement, nowArrangement: now, tripDraw, nowDraw: this.newDraw(), halted: tells ? halted : null });
    }
    this.addDisplays(snapshot, index);
    this.addReports(snapshot, index, halted === false ? now : tripArrangement);
    this.addLooks(snapshot, index);
  }

  private arrangement(): number {
    this.arrangements.push(arrange(this.cabinet, this.done));
    return this.arrangements.length - 1;
  }

  private add(observation: PlanObservation): void {
    this.observations.push(observation);
    let largest = Number.NEGATIVE_INFINITY;
    for (const value of observation.logFactors) {
      largest = Math.max(largest, value);
    }
    this.largestLogFactor += observation.earlier.length > 0 ? 0 : largest;
  }

  /** Earlier observations of the same thing with the same reading. */
  private earlierLike(matches: (other: PlanObservation) => boolean): readonly number[] {
    return this.observations.flatMap((other, index) => (matches(other) ? [index] : []));
  }

  private addDisplays(snapshot: Evidence['snapshots'][number], index: number): void {
    // Of two readings of one display in one snapshot the later one counts.
    for (const { unit, meanings } of new Map((snapshot.displays ?? []).map((seen) => [seen.unit, seen])).values()) {
      const id = unit as UnitId;
      const record = this.cabinet.units.get(id);
      if (record === undefined) {
        continue;
      }
      const isSupply = record.kind === 'supply';
      const earlier = this.earlierLike(
        (other) => other.kind === 'display' && other.unit === id && other.snapshot < index && isSameSet(other.fits, meanings),
      );
      const logFactors = displayLogFactors(meanings, isSupply);
      this.add({
        kind: 'display',
        ref: { kind: 'display', snapshot: index, unit: id },
        snapshot: index,
        earlier,
        unit: id,
        isSupply,
        fits: meanings,
        logFactors,
      });
    }
  }

  private addReports(snapshot: Evidence['snapshots'][number], index: number, arrangement: number): void {
    for (const { chain, gaps } of new Map((snapshot.reports ?? []).map((seen) => [seen.chain, seen])).values()) {
      const id = chain as ChainId;
      const state = this.arrangements[arrangement];
      const arranged = state && arrangedChains(this.cabinet, state).find((one) => one.id === id);
      const documented = this.cabinet.chainById.get(id);
      if (arranged === undefined || documented === undefined || arranged.units.length === 0) {
        continue;
      }
      const length = arranged.units.length;
      if (!gaps.some((gap) => gap === 'none' || gap <= length)) {
        continue;
      }
      const logFactors = this.speaks(id, arrangement) ? reportLogFactors(gaps, length) : new Float64Array(length + 1);
      const earlier = this.earlierLike(
        (other) => other.kind === 'report' && other.chain === id && other.snapshot < index && isSameSet(other.fits, gaps),
      );
      this.add({
        kind: 'report',
        ref: { kind: 'report', snapshot: index, chain: id },
        snapshot: index,
        earlier,
        chain: id,
        fits: gaps,
        logFactors,
      });
    }
  }

  /** A control that does not start with fewer units says nothing of where the gap is while one is bridged. */
  private speaks(chain: ChainId, arrangement: number): boolean {
    const state = this.arrangements[arrangement];
    const documented = this.cabinet.chainById.get(chain);
    const arranged = state && arrangedChains(this.cabinet, state).find(({ id }) => id === chain);
    return arranged?.units.length === documented?.units.length || documented?.record.toleratesFewerUnits === true;
  }

  private addLooks(snapshot: Evidence['snapshots'][number], index: number): void {
    // Of the same look made twice in one snapshot the later one counts.
    const last = new Map<string, { readonly look: Look; readonly fits: readonly LookOutcome[]; readonly at: number }>();
    (snapshot.looks ?? []).forEach((seen, at) => {
      const { outcomes: fits, note: _note, photo: _photo, at: _at, ...look } = seen;
      last.set(JSON.stringify(look), { look, fits, at });
    });
    const arrangement = this.arrangements[this.snapshots[index]?.nowArrangement ?? -1];
    for (const [name, { look, fits, at }] of last) {
      if (arrangement === undefined || !canBeLookedAt(look, this.cabinet, arrangement)) {
        continue;
      }
      const outcomes = lookOutcomes(look);
      const earlier = this.earlierLike(
        (other) => other.kind === 'look' && JSON.stringify(other.look) === name && other.snapshot < index && isSameSet(other.fits, fits),
      );
      const logFactors = lookLogFactors(fits, outcomes);
      this.add({
        kind: 'look',
        ref: { kind: 'look', snapshot: index, index: at },
        snapshot: index,
        earlier,
        look,
        fits,
        outcomes,
        logFactors,
      });
    }
  }
}

/** Whether a look concerns something that is there: a unit of the cabinet, or a link that hangs on a chain as things now lie. */
function canBeLookedAt(look: Look, cabinet: Cabinet, arrangement: Arrangement): boolean {
  if (look.look === 'voltage' || look.look === 'compare-plugs') {
    return cabinet.units.has(look.unit as UnitId);
  }
  // A lamp shines through a cable wherever it lies; light is seen at a link in use.
  const isLight = look.look === 'light-at-plug' || look.look === 'light-at-port';
  return isLight
    ? arrangedChains(cabinet, arrangement).some(({ links }) => links.includes(look.link as LinkId))
    : cabinet.links.has(look.link as LinkId);
}

const portLightOutcomes = lightOutcomes.filter((outcome) => outcome !== 'weak');

/** Every outcome that a kind of look can have. */
export function lookOutcomes(look: Look): readonly LookOutcome[] {
  switch (look.look) {
    case 'light-at-plug':
      return plugLightOutcomes;
    case 'light-at-port':
      return portLightOutcomes;
    case 'lamp':
      return lampOutcomes;
    case 'voltage':
      return voltageOutcomes;
    case 'compare-plugs':
    case 'compare-fibres':
      return comparisonOutcomes;
  }
}

function isSameSet(a: readonly unknown[], b: readonly unknown[]): boolean {
  return new Set(a).size === new Set(b).size && a.every((value) => b.includes(value));
}
