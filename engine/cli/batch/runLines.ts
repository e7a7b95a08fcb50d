import { parseCabinetFile, shapeProblems } from '../../cabinet/index.ts';
import type { UsageProblem } from '../../messages/index.ts';
import { type CabinetContent, formatVersions } from '../../schema/index.ts';
import { interfaceVersion, type JsonProblem, jsonProblem, jsonUsageProblem } from '../answer/index.ts';
import { type CommandAnswer, failed, type Written } from '../command.ts';
import { type ExitCode, type Io, type LineRead, longestLineMegabytes } from '../io.ts';
import type { GivenArguments } from '../options.ts';
import { makeSound, makeUsageProblem, readCabinetOrCase, reasonOf, type SoundCabinet } from '../read/index.ts';

/** What one line of a batch is answered with. */
export type LineAnswer =
  | { readonly ok: true; readonly exit: 0 | 1; readonly json: object }
  | { readonly ok: false; readonly problems: readonly JsonProblem[] };

/** The part of a schema that a batch needs of it. Its issues become problems as in a file. */
interface LineSchema<L> {
  safeParse(
    value: unknown,
  ):
    | { readonly success: true; readonly data: L }
    | { readonly success: false; readonly error: { readonly issues: Parameters<typeof shapeProblems>[0] } };
}

/** A kind of batch: the shape of its lines, and what is answered to one of them. */
export interface Batch<L extends { readonly id?: string | number | undefined; readonly cabinet?: unknown }> {
  readonly command: string;
  readonly schema: LineSchema<L>;
  /** Options that go with `--batch`. */
  readonly goesWith: readonly string[];
  answer(line: L, sound: SoundCabinet): LineAnswer;
}

/** Bytes that are gathered before they are written: one write for each line would cost more than most answers. */
const gather = 65_536;

/**
 * Answers the lines of a batch one after another, one JSON object for each. A bad line is answered with its problems, and the rest
 * goes on; the run then ends with 2. Blank lines are passed over.
 */
export async function runLines<L extends { readonly id?: string | number | undefined; readonly cabinet?: unknown }>(
  io: Io,
  given: GivenArguments,
  batch: Batch<L>,
): Promise<CommandAnswer | Written> {
  const refused = checkOptions(given, batch);
  if (refused.length > 0) return failed(2, refused.map(jsonUsageProblem));
  const shared = await readShared(io, given.arguments[0]);
  if ('exit' in shared) return shared;
  const lines = given.options.get('batch')?.[0] ?? '-';
  let exit: ExitCode = 0;
  let waiting = '';
  try {
    for await (const read of io.readLines(lines)) {
      if ('text' in read && read.text.trim() === '') continue;
      const { id, answer } = answerLine(read, batch, shared.sound);
      exit = answer.ok ? (exit === 0 ? answer.exit : exit) : 2;
      const head = { interface: interfaceVersion, line: read.line, id, ok: answer.ok };
      waiting += `${JSON.stringify(answer.ok ? { ...head, problems: [], ...answer.json } : { ...head, problems: answer.problems })}\n`;
      if (waiting.length > gather) {
        await io.out(waiting);
        waiting = '';
      }
    }
  } catch (error) {
    if (!(error instanceof Error && 'code' in error)) throw error;
    await io.out(waiting);
    return failed(3, [jsonUsageProblem(makeUsageProblem('file-not-readable', { file: lines, reason: reasonOf(error) }))]);
  }
  await io.out(waiting);
  return { written: exit };
}

function checkOptions(given: GivenArguments, batch: Pick<Batch<never>, 'command' | 'goesWith'>): readonly UsageProblem[] {
  const others = [...given.options.keys()].filter((option) => option !== 'batch' && option !== 'json' && !batch.goesWith.includes(option));
  const unwanted = given.arguments.slice(1);
  return [
    ...others.map((option) => makeUsageProblem('options-together', { option: `--${option}`, other: '--batch' })),
    ...unwanted.map((argument) => makeUsageProblem('argument-unwanted', { argument, command: batch.command })),
  ];
}

/** The cabinet of the command line, for lines that carry none. */
async function readShared(io: Io, file: string | undefined): Promise<CommandAnswer | { readonly sound: SoundCabinet | null }> {
  if (file === undefined) return { sound: null };
  const read = await readCabinetOrCase(io, file);
  if (!read.ok) return failed(3, read.problems);
  const sound = makeSound(read.value.content, file);
  return sound.ok ? { sound: sound.value } : failed(1, sound.problems);
}

function answerLine<L extends { readonly id?: string | number | undefined; readonly cabinet?: unknown }>(
  read: LineRead,
  batch: Batch<L>,
  shared: SoundCabinet | null,
): { readonly id: string | number | null; readonly answer: LineAnswer } {
  const usage = (problem: UsageProblem) => ({ id: null, answer: { ok: false as const, problems: [jsonUsageProblem(problem)] } });
  const { line } = read;
  if ('tooLong' in read) return usage(makeUsageProblem('batch-line-too-long', { line, limitMegabytes: longestLineMegabytes }));
  let value: unknown;
  try {
    value = JSON.parse(read.text);
  } catch {
    return usage(makeUsageProblem('batch-line-not-json', { line }));
  }
  if (typeof value !== 'object' || value === null || Array.isArray(value))
    return usage(makeUsageProblem('batch-line-not-object', { line }));
  const given = 'id' in value && (typeof value.id === 'string' || typeof value.id === 'number') ? value.id : null;
  const parsed = batch.schema.safeParse(value);
  if (!parsed.success) {
    // The text is one line, so every place is in it; the line that counts is that of the batch.
    const problems = shapeProblems(parsed.error.issues, value, read.text, []).map((problem) =>
      jsonProblem({ ...problem, facts: { ...problem.facts, line } }, null),
    );
    return { id: given, answer: { ok: false, problems } };
  }
  const sound = parsed.data.cabinet === undefined ? shared : readOwnCabinet(parsed.data.cabinet);
  if (sound === null) return { ...usage(makeUsageProblem('batch-cabinet-missing', {})), id: given };
  return { id: given, answer: 'problems' in sound ? { ok: false, problems: sound.problems } : batch.answer(parsed.data, sound) };
}

/** A cabinet that a line carries, as content or as a whole file; it comes in by the same way as a file. */
function readOwnCabinet(cabinet: unknown): SoundCabinet | { readonly problems: readonly JsonProblem[] } {
  const whole = typeof cabinet === 'object' && cabinet !== null && 'format' in cabinet;
  const file = whole ? cabinet : { format: 'linkwright-cabinet', formatVersion: formatVersions['linkwright-cabinet'], content: cabinet };
  const parsed = parseCabinetFile(writeJson(file));
  if (!parsed.ok) return { problems: parsed.problems.map((problem) => jsonProblem(problem, null)) };
  const content: CabinetContent = parsed.value;
  const sound = makeSound(content, null);
  return sound.ok ? sound.value : { problems: sound.problems };
}

/** JSON again. What is nested so deep that it cannot be written is left to the reader of files to refuse: it names the depth. */
function writeJson(value: unknown): string {
  try {
    return JSON.stringify(value);
  } catch {
    return '['.repeat(1_000);
  }
}
