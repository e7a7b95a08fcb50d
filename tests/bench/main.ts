import { consistentHypotheses, diagnose } from '../../engine/diagnosis/index.ts';
import { simulate } from '../../engine/simulation/index.ts';
import type { SolverSnapshot } from '../outside/solver/facts.ts';
import { consistentBySolver } from '../outside/solver/solve.ts';
import { fullEvidence, middleCut, plainCabinet, plainContent } from './cabinets.ts';
import { timeDocuments } from './documents.ts';
import { benchPlans, benchWrongWorld } from './planBench.ts';
import { benchPlanSpeed, writeCold } from './planSpeed.ts';

/*
 * `npm run bench`: how long the engine takes, how that grows, and what a general solver takes for the same question in the same run.
 * `npm run bench -- speed`: one part of it (`engine`, `solver`, `documents`, `speed`, `plans`, `repairs`). With BENCH_SMOKE=1 it makes few runs, to see
 * that it works.
 */

const isQuick = process.env['BENCH_SMOKE'] === '1';
const sizes: readonly (readonly [chains: number, perChain: number])[] = [
  [1, 10],
  [1, 30],
  [1, 100],
  [10, 30],
];

/** Median of the times of repeated runs, in milliseconds: at least `least` runs, more while a second has not passed. */
function medianTime(run: () => unknown, least: number): number {
  run();
  const times: number[] = [];
  const end = performance.now() + (isQuick ? 0 : 1_000);
  while (times.length < least || performance.now() < end) {
    const start = performance.now();
    run();
    times.push(performance.now() - start);
  }
  times.sort((a, b) => a - b);
  return times[times.length >> 1] ?? Number.NaN;
}

function print(cells: readonly string[]): void {
  console.log(cells.map((cell, index) => (index === 0 ? cell.padEnd(24) : cell.padStart(14))).join(''));
}

/** Slope between two points in a double logarithmic diagram: the power of n with which the time grows. */
function exponent(n1: number, t1: number, n2: number, t2: number): string {
  return (Math.log(t2 / t1) / Math.log(n2 / n1)).toFixed(2);
}

function benchEngine(): void {
  console.log('Engine: one cut cable, every display and report observed, all single faults and all pairs. Medians.\n');
  print(['units (chains)', 'simulate ms', 'growth n^', 'diagnose ms', 'growth n^', 'hypotheses', 'ns each']);
  let before: { readonly units: number; readonly simulate: number; readonly diagnose: number } | null = null;
  for (const [chains, perChain] of sizes) {
    const cabinet = plainCabinet(chains, perChain);
    const fault = middleCut(perChain);
    const evidence = fullEvidence(cabinet, fault);
    const units = chains * perChain;
    const simulateMs = medianTime(() => simulate({ cabinet, faults: [fault], onset: 'while-running' }), isQuick ? 2 : 20);
    const diagnoseMs = medianTime(() => diagnose(cabinet, evidence), isQuick ? 1 : 5);
    const { hypothesesVisited } = diagnose(cabinet, evidence);
    print([
      `${units} (${chains})`,
      simulateMs.toFixed(2),
      before === null ? '' : exponent(before.units, before.simulate, units, simulateMs),
      diagnoseMs.toFixed(1),
      before === null ? '' : exponent(before.units, before.diagnose, units, diagnoseMs),
      hypothesesVisited.toLocaleString('en'),
      ((diagnoseMs * 1e6) / hypothesesVisited).toFixed(1),
    ]);
    before = { units, simulate: simulateMs, diagnose: diagnoseMs };
  }
}

async function benchSolver(): Promise<void> {
  console.log('\nThe same question to clingo, a general answer-set solver: all single and double faults that explain everything seen.');
  console.log('"engine" lists them one by one as the solver does; "diagnose" weighs all and ranks them.\n');
  print(['units', 'answers', 'clingo ms', 'engine ms', 'diagnose ms', 'clingo/engine']);
  for (const perChain of isQuick ? [2] : [2, 4, 6, 8]) {
    const content = plainContent(1, perChain);
    const cabinet = plainCabinet(1, perChain);
    const evidence = fullEvidence(cabinet, middleCut(perChain));
    const snapshots: SolverSnapshot[] = evidence.snapshots.map(({ displays, reports }) => ({
      onset: 'while-running',
      halted: true,
      displays: new Map((displays ?? []).map(({ unit, meanings }) => [unit, meanings])),
      reports: new Map((reports ?? []).map(({ chain, gaps }) => [chain, gaps])),
    }));
    await consistentBySolver(content, snapshots);
    const start = performance.now();
    const answers = await consistentBySolver(content, snapshots);
    const clingoMs = performance.now() - start;
    const engineMs = medianTime(() => consistentHypotheses(cabinet, evidence), 1);
    const diagnoseMs = medianTime(() => diagnose(cabinet, evidence), 3);
    print([
      String(perChain),
      String(answers.length),
      clingoMs.toFixed(0),
      engineMs.toFixed(0),
      diagnoseMs.toFixed(1),
      `${(clingoMs / engineMs).toFixed(1)}×`,
    ]);
    if (answers.length !== consistentHypotheses(cabinet, evidence).length) {
      throw new Error('the solver and the engine disagree: run the tests');
    }
  }
}

async function benchDocuments(): Promise<void> {
  console.log('\nAll documents of a cabinet (drawing, lists, labels, door sheets, pattern sheet) as one PDF.\n');
  print(['units (chains)', 'pages', 'CPU ms']);
  for (const [chains, perChain] of isQuick
    ? ([[1, 6]] as const)
    : ([
        [4, 15],
        [1, 60],
      ] as const)) {
    const { milliseconds, pages } = await timeDocuments(chains, perChain);
    print([`${chains * perChain} (${chains})`, String(pages), milliseconds.toFixed(0)]);
    if (milliseconds > 5_000) {
      throw new Error('all documents of 60 units must take less than five seconds');
    }
  }
}

const parts: Readonly<Record<string, () => void | Promise<void>>> = {
  engine: benchEngine,
  solver: benchSolver,
  documents: benchDocuments,
  speed: () => benchPlanSpeed(isQuick),
  plans: () => benchPlans(isQuick ? 3 : 500),
  repairs: () => benchWrongWorld(isQuick ? 2 : 500),
};
const [, , part, name = '', units = ''] = process.argv;
if (part === 'cold') {
  writeCold(name, Number(units));
} else {
  for (const [title, run] of Object.entries(parts)) if (part === undefined || part === title) await run();
}
