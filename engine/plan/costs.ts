import type { FeedbackId } from '../base/index.ts';
import { changeCost, type PartSource, partFor, type RepairTable, rowOf } from '../repair/index.ts';
import type { Intervention, MachineState, Provocation } from '../schema/index.ts';
import { positionsAtRisk, type Step, stateNeeded } from '../steps/index.ts';
import type { Cabinet } from '../topology/index.ts';
import type { StepRisk } from './types.ts';

/** What one act or look costs by itself, changes of state left aside. */
export interface OwnCost {
  readonly minutes: number;
  readonly parts: number;
  readonly risks: readonly StepRisk[];
  readonly sources: readonly PartSource[];
  readonly state: MachineState;
}

/** All of it in minutes, or worth so many: hands, parts, risks; changes of state left aside. */
export function sumOf({ minutes, parts, risks }: OwnCost): number {
  return minutes + parts + risks.reduce((sum, { cost }) => sum + cost, 0);
}

/** Minutes of provoking, besides the restart; with flexing the door is opened and closed within them. Assumed. */
const provocationMinutes: { readonly [P in Provocation]: number } = { wait: 15, flex: 10, warm: 25 };

/** Minutes of bringing a fault out, the restart left aside. */
export function provocationCost(how: Provocation): number {
  return provocationMinutes[how];
}

/** What a look costs by itself: its minutes, and the weight of looking behind open doors under power. */
export function lookCost(table: RepairTable, step: Exclude<Step, { do: 'act' | 'provoke' }>): OwnCost {
  const name = step.do === 'look' ? step.look.look : step.do === 'read-display' ? 'display' : 'report';
  const { minutes } = table.looks[name];
  const state = stateNeeded(step);
  return { minutes: minutes.value, parts: 0, risks: liveRisk(table, state), sources: [], state };
}

/** `used`: spares that were put in already. */
export function actCost(cabinet: Cabinet, table: RepairTable, act: Intervention, used: ReadonlyMap<string, number>): OwnCost {
  const row = rowOf(table, act);
  const source = partFor(cabinet, table, act, used);
  const { weights, chances } = table;
  const feedbacks: readonly FeedbackId[] = [...new Set(positionsAtRisk(cabinet, act))];
  const risks: StepRisk[] = [...liveRisk(table, row.state)];
  if (feedbacks.length > 0) {
    risks.push({ code: 'reference-position', cost: weights.referencePosition.value + table.changes.referencing.value, feedbacks });
  }
  if (/^(replace|exchange)-(board|boards|unit|supply|controller|controller-port)$/.test(act.do)) {
    risks.push({ code: 'spoiled-part', cost: weights.spoiledPart.value });
  }
  // What handling leaves behind is found by doing it once more.
  const again = row.minutes.value + changeCost(table, 'closed', row.state) + restartCost(table, row.state);
  risks.push({ code: 'handling', cost: chances.handlingFault.value * again, chance: chances.handlingFault.value });
  const wait = source?.mustBeGot === true ? weights.partWait.value : 0;
  return {
    minutes: row.minutes.value,
    parts: row.partMinutes.value + wait,
    risks,
    sources: source === null ? [] : [source],
    state: row.state,
  };
}

function liveRisk(table: RepairTable, state: MachineState): readonly StepRisk[] {
  return state === 'open' ? [{ code: 'live-work', cost: table.weights.liveWork.value }] : [];
}

/** Minutes of a restart that leaves the machine closed: with the doors closed before, and without a lock only off and on. */
export function restartCost(table: RepairTable, from: MachineState): number {
  return from === 'isolated' ? changeCost(table, 'isolated', 'closed') : changeCost(table, from, 'closed') + table.changes.boot.value;
}
