import type { JsonProblem } from './answer/index.ts';
import type { ExitCode, Io } from './io.ts';
import type { GivenArguments, OptionSpecs } from './options.ts';

/** What a command answers. Text and JSON say the same; only one of them is written. Problems go to standard error in any case. */
export interface CommandAnswer {
  readonly exit: ExitCode;
  readonly problems: readonly JsonProblem[];
  /** The answer for people; empty when there is none. */
  readonly text: string;
  /** What the JSON answer holds besides its head; null when nothing could be computed. */
  readonly json: object | null;
}

/** A command that has written its answer itself (a batch, a schema), and how it ended. */
export interface Written {
  readonly written: ExitCode;
}

/** One command of the command line. Its words stand in the message catalogue under the same name. */
export interface Command {
  readonly options: OptionSpecs;
  /** Runs it. */
  run(io: Io, given: GivenArguments): Promise<CommandAnswer | Written>;
}

/** Nothing could be computed, for these problems. */
export function failed(exit: ExitCode, problems: readonly JsonProblem[]): CommandAnswer {
  return { exit, problems, text: '', json: null };
}

/** The one value of an option, if it was given. */
export function firstValue(given: GivenArguments, option: string): string | undefined {
  return given.options.get(option)?.[0];
}
