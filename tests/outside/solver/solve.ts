import { createRequire } from 'node:module';
import type { ClingoError, ClingoResult } from 'clingo-wasm';
import type { CabinetContent, Fault } from '../../../engine/schema/index.ts';
import { hypothesisProgram, lookProgram, simulationProgram } from './encoding.ts';
import { cabinetFacts, faultFacts, faultWords, momentNames, type SolverSnapshot, snapshotFacts } from './facts.ts';

// The package is CommonJS with types of an ES module: by `require` it comes the same way into Node and into the test runner.
const { run } = createRequire(import.meta.url)('clingo-wasm') as typeof import('clingo-wasm');

/** What the solver says the displays show and the reports say. */
export interface SolverPrediction {
  readonly displays: Readonly<Record<string, string>>;
  readonly reports: Readonly<Record<string, number | 'none'>>;
}

/** Displays and reports of a cabinet with these faults, halted, by the general solver. */
export async function predictBySolver(
  content: CabinetContent,
  faults: readonly Fault[],
  onset: SolverSnapshot['onset'],
): Promise<SolverPrediction> {
  const snapshots = [{ onset }];
  const now = momentNames(snapshots)[0]?.now ?? '';
  const program = [
    simulationProgram,
    cabinetFacts(content),
    snapshotFacts(snapshots),
    faultFacts(faults, now),
    '#show shows/3. #show reports/3.',
  ];
  const models = await modelsOf(program.join('\n'), []);
  const model = models[0];
  if (models.length !== 1 || model === undefined) throw new Error(`expected one model, not ${models.length}`);
  const displays: Record<string, string> = {};
  const reports: Record<string, number | 'none'> = {};
  for (const atom of model) {
    const shown = /^shows\(0,("[^"]*"),("[^"]*")\)$/.exec(atom);
    const reported = /^reports\(0,("[^"]*"),(\d+|"none")\)$/.exec(atom);
    if (shown?.[1] !== undefined && shown[2] !== undefined) {
      const unit = unquote(shown[1]);
      if (displays[unit] !== undefined) throw new Error(`two displays of ${unit}`);
      displays[unit] = unquote(shown[2]);
    } else if (reported?.[1] !== undefined && reported[2] !== undefined) {
      reports[unquote(reported[1])] = reported[2] === '"none"' ? 'none' : Number(reported[2]);
    } else throw new Error(`foreign atom ${atom}`);
  }
  return { displays, reports };
}

/** What every look of every kind shows now, as `kind/thing/part` → outcome; the part is a plug's end or a fibre's direction, or empty. */
export async function looksBySolver(content: CabinetContent, faults: readonly Fault[]): Promise<Readonly<Record<string, string>>> {
  const snapshots = [{ onset: 'while-running' as const }];
  const now = momentNames(snapshots)[0]?.now ?? '';
  const show = `#show sees(K,A,B,O) : sees(K,A,B,O,"${now}"). #show.`;
  const program = [simulationProgram, lookProgram, cabinetFacts(content), snapshotFacts(snapshots), faultFacts(faults, now), show];
  const models = await modelsOf(program.join('\n'), []);
  const looks: Record<string, string> = {};
  for (const atom of models[0] ?? []) {
    const [, kind, thing, part, outcome] = /^sees\("([^"]*)","([^"]*)","([^"]*)","([^"]*)"\)$/.exec(atom) ?? [];
    const key = `${kind}/${thing}/${part}`;
    if (outcome === undefined || looks[key] !== undefined) throw new Error(`foreign atom ${atom}`);
    looks[key] = outcome;
  }
  return looks;
}

/** Every single and every pair that explains all snapshots in some pattern of presence, each as a key of `hypothesisKey`; sorted. */
export async function consistentBySolver(content: CabinetContent, snapshots: readonly SolverSnapshot[]): Promise<readonly string[]> {
  const program = [simulationProgram, hypothesisProgram, cabinetFacts(content), snapshotFacts(snapshots)];
  const models = await modelsOf(program.join('\n'), ['--project=show']);
  return models
    .filter((model) => model.length > 0)
    .map((model) => joinKeys(model.map(atomKey)))
    .sort();
}

/** A hypothesis as one text, the same for the solver's and for the engine's. */
export function hypothesisKey(faults: readonly Fault[]): string {
  return joinKeys(
    faults.map((fault) => {
      const { kind, ref, part, mode } = faultWords(fault);
      return [kind, ref, part, mode, fault.presence ?? 'steady'].join('/');
    }),
  );
}

const joinKeys = (keys: readonly string[]): string => [...keys].sort().join(' + ');
const unquote = (text: string): string => text.slice(1, -1);

function atomKey(atom: string): string {
  const parts = /^fault\(it\("([^"]*)","([^"]*)","([^"]*)"\),"([^"]*)","([^"]*)"\)$/.exec(atom);
  if (parts === null) throw new Error(`foreign atom ${atom}`);
  return parts.slice(1).join('/');
}

async function modelsOf(program: string, options: readonly string[]): Promise<readonly (readonly string[])[]> {
  const answer: ClingoResult | ClingoError = await run(program, 0, [...options, '--warn=none']);
  if (answer.Result === 'ERROR') throw new Error(answer.Error);
  return answer.Call.flatMap((call) => call.Witnesses ?? []).map((witness) => witness.Value);
}
