import type { CommandName, UsageProblem } from '../messages/index.ts';
import { commandWords, statements } from '../messages/index.ts';
import { type JsonProblem, jsonUsageProblem, makeHead, programVersion } from './answer/index.ts';
import type { Command } from './command.ts';
import {
  cases,
  check,
  compare,
  diagnose,
  exercise,
  exportLists,
  importLists,
  isolation,
  next,
  print,
  replay,
  schema,
  simulate,
  sums,
} from './commands/index.ts';
import { commandNames, formatCommandHelp, formatHelp } from './help.ts';
import type { ExitCode, Io } from './io.ts';
import { findNearest } from './nearest.ts';
import { splitArguments } from './options.ts';
import { makeUsageProblem, reasonOf } from './read/index.ts';
import { paragraph } from './text.ts';

const commands: { readonly [C in CommandName]: Command } = {
  check,
  compare,
  simulate,
  diagnose,
  next,
  replay,
  cases,
  sums,
  print,
  isolation,
  export: exportLists,
  import: importLists,
  exercise,
  schema,
};

/** Runs the command line with the arguments that follow the program's name; answers the exit code. */
export async function run(args: readonly string[], io: Io): Promise<ExitCode> {
  const [first, ...rest] = args;
  if (first === undefined) return tell(io, [makeUsageProblem('command-missing', { commands: commandNames })]);
  if (first === '--version') return say(io, `linkwright ${programVersion}\n`);
  if (first === '--help' || first === '-h' || (first === 'help' && rest.length === 0)) return say(io, formatHelp(io.columns));
  const asked = first === 'help' ? rest[0] : first;
  const name = commandNames.find((one) => one === asked);
  if (name === undefined) {
    const command = asked ?? '';
    return tell(io, [makeUsageProblem('command-unknown', { command, commands: commandNames, near: findNearest(command, commandNames) })]);
  }
  // After “--” even --help would be the name of a file.
  const options = rest.includes('--') ? rest.slice(0, rest.indexOf('--')) : rest;
  if (first === 'help' || options.some((arg) => arg === '--help' || arg === '-h')) return say(io, formatCommandHelp(name, io.columns));
  return runCommand(name, rest, io);
}

async function runCommand(name: CommandName, args: readonly string[], io: Io): Promise<ExitCode> {
  const command = commands[name];
  const values = Object.fromEntries(Object.entries(commandWords[name].options).map(([option, { value }]) => [option, value]));
  const { given, problems } = splitArguments(name, args, command.options, values);
  const asJson = given.options.has('json');
  if (problems.length > 0) return tell(io, problems, asJson ? name : null);
  const answer = await command.run(io, given);
  if ('written' in answer) return answer.written;
  await io.err(formatProblems(answer.problems, io.columns));
  if (asJson) {
    const head = makeHead(name, answer.json !== null, answer.exit, answer.problems);
    await io.out(`${JSON.stringify({ ...head, ...answer.json }, null, 2)}\n`);
  } else {
    await io.out(answer.text);
  }
  return answer.exit;
}

async function say(io: Io, text: string): Promise<ExitCode> {
  await io.out(text);
  return 0;
}

/** Bad use: the problems to standard error, and as JSON to standard output where JSON was asked for. */
async function tell(io: Io, problems: readonly UsageProblem[], jsonFor: CommandName | null = null): Promise<ExitCode> {
  const worded = problems.map(jsonUsageProblem);
  await io.err(formatProblems(worded, io.columns));
  if (jsonFor !== null) await io.out(`${JSON.stringify(makeHead(jsonFor, false, 2, worded), null, 2)}\n`);
  return 2;
}

/** That standard output took no more, for people. */
export function formatOutputFailure(error: unknown, columns: number): string {
  return formatProblems([jsonUsageProblem(makeUsageProblem('output-not-writable', { reason: reasonOf(error) }))], columns);
}

/** Of problems that differ only in their place, so many are named one by one. */
const mostAlike = 5;

/** Problems for people: what and where, then why, then what to do; what is said of several alike is said once, under the last of them. */
export function formatProblems(problems: readonly JsonProblem[], columns: number): string {
  const groups = new Map<string, JsonProblem[]>();
  for (const problem of problems) {
    const { file, code, explanation, whatToDo } = problem;
    const key = JSON.stringify([file, code, explanation, whatToDo]);
    groups.set(key, [...(groups.get(key) ?? []), problem]);
  }
  return [...groups.values()].map((alike) => formatAlike(alike, columns)).join('');
}

function formatAlike(alike: readonly JsonProblem[], columns: number): string {
  const said = [...new Set(alike.map(sayPlace))];
  const shown = said.length > mostAlike + 1 ? said.slice(0, mostAlike) : said;
  const more = said.length - shown.length;
  const rest = [alike[0]?.explanation, alike[0]?.whatToDo].filter(Boolean).join(' ');
  return [
    ...shown.map((line) => paragraph(line, columns, '    ', '')),
    ...(more > 0 ? [paragraph(statements.moreAlike(more), columns, '    ')] : []),
    ...(rest ? [paragraph(rest, columns, '    ')] : []),
  ].join('');
}

function sayPlace({ file, where, title }: JsonProblem): string {
  const place = [file, where].filter(Boolean).join(' ');
  return `linkwright: ${place && !title.startsWith(place) ? `${place}: ` : ''}${title}.`;
}
