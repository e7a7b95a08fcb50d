import packageFile from '../../../package.json' with { type: 'json' };
import type { Problem } from '../../base/index.ts';
import { type UsageProblem, wordProblem, wordUsage } from '../../messages/index.ts';
import type { ExitCode } from '../io.ts';

/** Version of the JSON interface (JSON.md). It grows by one when a field goes or changes its meaning; new fields do not change it. */
export const interfaceVersion = 1;
/** Version of the program. */
export const programVersion: string = packageFile.version;

/** A problem as the JSON interface gives it: data, and its words. */
export interface JsonProblem {
  readonly code: string;
  readonly severity: string;
  readonly file: string | null;
  readonly where: string;
  readonly subjects: readonly string[];
  readonly facts: Readonly<Record<string, unknown>>;
  readonly title: string;
  readonly explanation: string;
  readonly whatToDo: string;
}

/** What stands at the head of every JSON answer. `ok: false`: nothing could be computed, `problems` says why. */
export interface JsonHead {
  readonly interface: typeof interfaceVersion;
  readonly program: string;
  readonly command: string;
  readonly ok: boolean;
  readonly exit: ExitCode;
  readonly problems: readonly JsonProblem[];
}

/** Builds the head of an answer. */
export function makeHead(command: string, ok: boolean, exit: ExitCode, problems: readonly JsonProblem[] = []): JsonHead {
  return { interface: interfaceVersion, program: programVersion, command, ok, exit, problems };
}

/** A problem of a file, with its words. */
export function jsonProblem(problem: Problem, file: string | null): JsonProblem {
  const { code, severity, where, subjects, facts } = problem;
  return { code, severity, file, where, subjects, facts, ...wordProblem(problem) };
}

/** A problem of what was asked, with its words. It is always a refusal. */
export function jsonUsageProblem(problem: UsageProblem): JsonProblem {
  const { title, whatToDo } = wordUsage(problem);
  return {
    code: problem.code,
    severity: 'refused',
    file: null,
    where: '',
    subjects: [],
    facts: problem.facts,
    title,
    explanation: '',
    whatToDo,
  };
}

/** A cabinet in a few words. */
export interface JsonCabinet {
  readonly id: string;
  readonly name: string;
  readonly revision: string | null;
  readonly machineNumber: string | null;
}

/** Names the cabinet that an answer is about. */
export function jsonCabinet(content: {
  readonly id: string;
  readonly name: string;
  readonly revision?: string | undefined;
  readonly machineNumber?: string | undefined;
}): JsonCabinet {
  return { id: content.id, name: content.name, revision: content.revision ?? null, machineNumber: content.machineNumber ?? null };
}
