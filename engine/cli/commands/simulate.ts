import { type ChainId, compareText } from '../../base/index.ts';
import type { Names, UsageProblem } from '../../messages/index.ts';
import { type Fault, onsets } from '../../schema/index.ts';
import { type SimulationInput, simulate as simulateCabinet } from '../../simulation/index.ts';
import type { Topology } from '../../topology/index.ts';
import { type JsonSimulation, jsonCabinet, jsonLook, jsonMoments, jsonSimulation, jsonUsageProblem, looksAtLink } from '../answer/index.ts';
import { runLines, simulateLines } from '../batch/index.ts';
import { type Command, failed, firstValue } from '../command.ts';
import type { GivenArguments } from '../options.ts';
import {
  type Asked,
  allOf,
  checkFaults,
  checkOnset,
  makeSound,
  makeUsageProblem,
  readAct,
  readCabinetOrCase,
  readChain,
  readChoice,
  readFault,
  understood,
} from '../read/index.ts';
import { formatSimulation, wordRemarks } from '../show/index.ts';

/** `linkwright simulate FILE --fault …`: what every display shows when something breaks. With `--batch`: many in one run. */
export const simulate: Command = {
  options: {
    fault: { value: true, many: true },
    onset: { value: true },
    'not-halted': {},
    'before-trip': { value: true, many: true },
    'since-trip': { value: true, many: true },
    chain: { value: true, many: true },
    explain: {},
    light: {},
    batch: { value: true },
    json: {},
  },
  async run(io, given) {
    if (given.options.has('batch')) return runLines(io, given, simulateLines);
    const [file, unwanted] = given.arguments;
    if (file === undefined) return refuse(makeUsageProblem('file-argument-missing', { command: 'simulate' }));
    if (unwanted !== undefined) return refuse(makeUsageProblem('argument-unwanted', { argument: unwanted, command: 'simulate' }));
    const read = await readCabinetOrCase(io, file);
    if (!read.ok) return failed(3, read.problems);
    const sound = makeSound(read.value.content, file);
    if (!sound.ok) return failed(1, sound.problems);
    const { cabinet, names, remarks } = sound.value;
    const asked = readAsked(cabinet, names, given);
    if (!asked.ok) return failed(2, asked.problems.map(jsonUsageProblem));
    const { chains, ...what } = asked.value;
    const input: SimulationInput = { cabinet, ...what };
    const simulation = simulateCabinet(input);
    const shown = { ...cabinet, chains: cabinet.chains.filter(({ id }) => chains === null || chains.includes(id)) };
    const answer: JsonSimulation = {
      ...onlyChains(jsonSimulation(cabinet, names, simulation), chains),
      ...(given.options.has('light')
        ? { looks: shown.chains.flatMap(({ links }) => links.flatMap(looksAtLink)).map((look) => jsonLook(look, input)) }
        : {}),
      ...(given.options.has('explain') ? { moments: jsonMoments(simulation) } : {}),
    };
    return {
      exit: 0,
      problems: wordRemarks(file, remarks),
      json: { cabinet: jsonCabinet(cabinet.content), input: what, ...answer },
      text: formatSimulation({ topology: cabinet, names, input: what, answer, simulation, chains, columns: io.columns }),
    };
  },
};

interface AskedSimulation {
  readonly faults: readonly Fault[];
  readonly onset: SimulationInput['onset'];
  readonly halted: boolean;
  readonly beforeTrip: NonNullable<SimulationInput['beforeTrip']>;
  readonly sinceTrip: NonNullable<SimulationInput['sinceTrip']>;
  /** Only these are shown; null: all. */
  readonly chains: readonly ChainId[] | null;
}

function readAsked(topology: Topology, names: Names, given: GivenArguments): Asked<AskedSimulation> {
  const all = <T>(option: string, read: (text: string) => Asked<T>) => allOf((given.options.get(option) ?? []).map(read));
  const faults = all('fault', (text) => readFault(topology, text));
  const beforeTrip = all('before-trip', (text) => readAct(topology, text));
  const sinceTrip = all('since-trip', (text) => readAct(topology, text));
  const chains = all('chain', (text) => readChain(topology, text));
  const onset = readChoice('--onset', firstValue(given, 'onset') ?? 'while-running', onsets);
  const problems: UsageProblem[] = [faults, beforeTrip, sinceTrip, chains, onset].flatMap((asked) => (asked.ok ? [] : asked.problems));
  if (faults.ok) problems.push(...checkFaults(topology, names, faults.value));
  if (faults.ok && onset.ok && beforeTrip.ok && sinceTrip.ok) {
    problems.push(...checkOnset(names, faults.value, onset.value, beforeTrip.value.length + sinceTrip.value.length > 0));
  }
  if (!faults.ok || !beforeTrip.ok || !sinceTrip.ok || !chains.ok || !onset.ok || problems.length > 0) return { ok: false, problems };
  return understood({
    faults: faults.value,
    onset: onset.value,
    halted: !given.options.has('not-halted'),
    beforeTrip: beforeTrip.value,
    sinceTrip: sinceTrip.value,
    chains: chains.value.length > 0 ? [...chains.value].sort(compareText) : null,
  });
}

/** The displays and reports of some chains only; what is on no chain is left out too. */
function onlyChains(answer: JsonSimulation, chains: readonly string[] | null): JsonSimulation {
  if (chains === null) return answer;
  return {
    displays: answer.displays.filter(({ chain }) => chain !== null && chains.includes(chain)),
    reports: answer.reports.filter(({ chain }) => chains.includes(chain)),
  };
}

function refuse(problem: UsageProblem) {
  return failed(2, [jsonUsageProblem(problem)]);
}
