import { execFileSync } from 'node:child_process';
import { type Diagnosis, diagnose } from '../../engine/diagnosis/index.ts';
import { planning } from '../../engine/plan/index.ts';
import type { Behaviour, Evidence, Intervention, Snapshot } from '../../engine/schema/index.ts';
import { simulate } from '../../engine/simulation/index.ts';
import type { Cabinet } from '../../engine/topology/index.ts';
import { fullContent, fullEvidence, middleCut, soundCabinet } from './cabinets.ts';

/*
 * How long the next steps take, by the time the processor spends: what else runs on the machine then counts little. "Cold": for the first time
 * in a process of its own, after its diagnosis, as when the worker has just started. "Warm": as from the second question on.
 */

interface SpeedCase {
  readonly cabinet: Cabinet;
  readonly evidence: Evidence;
}

const unknown = { lossScope: 'unknown', holds: 'unknown', whenBoth: 'unknown' } as const;

/** Typical cases of a cabinet of about so many units. */
const cases: Readonly<Record<string, (units: number) => SpeedCase>> = {
  'one chain, all seen': (units) => caseOf(soundCabinet(fullContent(1, units)), units),
  'two chains, all seen': (units) => caseOf(soundCabinet(fullContent(2, Math.ceil(units / 2))), Math.ceil(units / 2)),
  'only the report': (units) => {
    const { cabinet, evidence } = caseOf(soundCabinet(fullContent(1, units)), units);
    return { cabinet, evidence: { snapshots: evidence.snapshots.map(({ displays: _displays, ...rest }) => rest) } };
  },
  'unknown behaviour': (units) => caseOf(soundCabinet(fullContent(1, units, unknown)), units),
  'wrong behaviour': (units) => {
    const real = soundCabinet(fullContent(1, units, { lossScope: 'chain', whenBoth: 'upstream' } satisfies Partial<Behaviour>));
    return { cabinet: soundCabinet(fullContent(1, units)), evidence: fullEvidence(real, middleCut(units)) };
  },
  'two acts done': (units) => {
    const { cabinet, evidence } = caseOf(soundCabinet(fullContent(1, units)), units);
    const { link } = middleCut(units) as { readonly link: string };
    const acts: readonly Intervention[] = [
      { do: 'reseat-plug', link, end: 'upper' },
      { do: 'replace-cable', link: 'w1.1' },
    ];
    const later = acts.map((act, index): Snapshot => {
      const { reports } = simulate({ cabinet, faults: [middleCut(units)], onset: 'at-power-up', beforeTrip: acts.slice(0, index + 1) });
      const seen = [...reports.values()].map(({ chain, gap }) => ({ chain, gaps: [gap] }));
      return { interventions: [act], restarted: true, onset: 'at-power-up', halted: true, reports: seen };
    });
    return { cabinet, evidence: { snapshots: [...evidence.snapshots, ...later] } };
  },
};

function caseOf(cabinet: Cabinet, perChain: number): SpeedCase {
  return { cabinet, evidence: fullEvidence(cabinet, middleCut(perChain)) };
}

/** Milliseconds of the processor until the first answer, until every step stands, and until nothing gets better. */
interface Times {
  readonly first: number;
  readonly all: number;
  readonly done: number;
  readonly method: string;
}

function timePlan({ cabinet, evidence }: SpeedCase, diagnosis: Diagnosis, toTheEnd: boolean): Times {
  const start = process.cpuUsage();
  const marks: number[] = [];
  const mark = () => {
    const { user, system } = process.cpuUsage(start);
    marks.push((user + system) / 1_000);
  };
  const work = planning(cabinet, evidence, diagnosis);
  for (;;) {
    const { done, value } = work.next();
    if (done !== true && value.plan === null) continue;
    mark();
    const [first = 0, all = 0] = marks;
    if (done === true) return { first, all, done: marks[marks.length - 1] ?? 0, method: value.method.kind };
    if (!toTheEnd && marks.length > 1) return { first, all, done: Number.NaN, method: '' };
  }
}

/** Medians of so many runs after one that does not count. */
function timeWarm(speedCase: SpeedCase, runs: number): Times {
  const diagnosis = diagnose(speedCase.cabinet, speedCase.evidence);
  const times = Array.from({ length: runs + 1 }, () => timePlan(speedCase, diagnosis, false)).slice(1);
  const median = (of: (one: Times) => number) => times.map(of).sort((a, b) => a - b)[times.length >> 1] ?? Number.NaN;
  const { done, method } = timePlan(speedCase, diagnosis, true);
  return { first: median(({ first }) => first), all: median(({ all }) => all), done, method };
}

/** Times one case for the first time in this process and writes them out; for `timeCold`, which asks for it. */
export function writeCold(name: string, units: number): void {
  const made = cases[name]?.(units);
  if (made !== undefined) console.log(JSON.stringify(timePlan(made, diagnose(made.cabinet, made.evidence), false)));
}

function timeCold(name: string, units: number): Times {
  const [, script = ''] = process.argv;
  return JSON.parse(execFileSync(process.execPath, [script, 'cold', name, String(units)], { encoding: 'utf8' })) as Times;
}

/** Prints how long the steps take: typical cases of 30 units, and how that grows with the units. */
export function benchPlanSpeed(isQuick: boolean): void {
  console.log('\nNext steps, milliseconds of the processor: until the first answer, until all steps stand, until nothing gets better.');
  console.log('Aim for 30 units: first answer under 50, all steps under 200.\n');
  const row = (cells: readonly string[]) =>
    console.log(cells.map((cell, index) => (index < 1 ? cell.padEnd(24) : cell.padStart(index < 2 ? 6 : 12))).join(''));
  row(['case', 'units', 'first', 'all', 'done', 'plan', 'cold first', 'cold all']);
  const print = (name: string, units: number, runs: number) => {
    const made = cases[name]?.(units);
    if (made === undefined) return;
    const warm = timeWarm(made, runs);
    const cold = isQuick ? null : timeCold(name, units);
    const figures = [warm.first, warm.all, warm.done].map((time) => time.toFixed(0));
    row([name, String(units), ...figures, warm.method, ...(cold ? [cold.first.toFixed(0), cold.all.toFixed(0)] : [])]);
  };
  const [usual = ''] = Object.keys(cases);
  for (const name of isQuick ? [usual] : Object.keys(cases)) print(name, isQuick ? 6 : 30, isQuick ? 1 : 15);
  if (!isQuick) for (const units of [10, 60, 100]) print(usual, units, units > 50 ? 5 : 15);
}
