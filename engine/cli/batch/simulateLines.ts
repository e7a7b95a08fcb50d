import { type SimulateLine, simulateLine } from '../../schema/index.ts';
import { type SimulationInput, simulate } from '../../simulation/index.ts';
import { jsonLook, jsonSimulation, jsonUsageProblem } from '../answer/index.ts';
import { checkActs, checkFaults, checkOnset, unknownThings } from '../read/index.ts';
import type { Batch } from './runLines.ts';

/** Many simulations in one run. */
export const simulateLines: Batch<SimulateLine> = {
  command: 'simulate',
  schema: simulateLine,
  goesWith: [],
  answer(line, { cabinet, names }) {
    const { faults, onset = 'while-running', halted = true, beforeTrip = [], sinceTrip = [], looks } = line;
    const problems = [
      ...checkFaults(cabinet, names, faults),
      ...checkOnset(names, faults, onset, beforeTrip.length + sinceTrip.length > 0),
      ...checkActs(cabinet, [...beforeTrip, ...sinceTrip]),
      ...(looks ?? []).flatMap((look) => unknownThings(cabinet, look)),
    ];
    if (problems.length > 0) return { ok: false, problems: problems.map(jsonUsageProblem) };
    const input: SimulationInput = { cabinet, faults, onset, halted, beforeTrip, sinceTrip };
    const answer = jsonSimulation(cabinet, names, simulate(input));
    return { ok: true, exit: 0, json: { ...answer, ...(looks ? { looks: looks.map((look) => jsonLook(look, input)) } : {}) } };
  },
};
