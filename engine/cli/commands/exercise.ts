import { makeProblem } from '../../base/index.ts';
import { serializeExercise } from '../../cabinet/index.ts';
import { checksum, classCsv, classTable, generateExercise, isSamePlay } from '../../exercise/index.ts';
import { classHeads, exerciseKindTexts, exerciseWords, type UsageProblem } from '../../messages/index.ts';
import { exerciseKinds, type ResultContent } from '../../schema/index.ts';
import { sealAnswer, weighPassphrase } from '../../sealing/index.ts';
import type { Cabinet } from '../../topology/index.ts';
import { type JsonProblem, jsonProblem, jsonUsageProblem } from '../answer/index.ts';
import { type Command, type CommandAnswer, failed, firstValue, type Written } from '../command.ts';
import type { Io } from '../io.ts';
import type { GivenArguments } from '../options.ts';
import {
  makeSound,
  makeUsageProblem,
  readCabinetOrCase,
  readChoice,
  readExercise,
  readNumber,
  readResult,
  understood,
} from '../read/index.ts';
import { formatClass, formatExercise } from '../show/index.ts';
import { writeExercisePapers } from './exercisePapers.ts';
import { type Made, makeAsked, wishOptions } from './exerciseWish.ts';

const actions = ['make', 'generate', 'check', 'sheet', 'class', 'delete'] as const;
type Action = (typeof actions)[number];

/** Options that not every action has; what is given beside them would be passed over without a word. */
const actionsOf: { readonly [O in string]: readonly Action[] } = {
  ...Object.fromEntries(Object.keys(wishOptions).map((option) => [option, ['make'] as const])),
  kind: ['make', 'generate'],
  seed: ['make', 'generate'],
  level: ['generate'],
  passphrase: ['make', 'generate', 'check', 'sheet'],
  answer: ['sheet'],
  as: ['sheet'],
  paper: ['sheet'],
  into: ['sheet'],
  replace: ['sheet'],
  csv: ['class'],
  yes: ['delete'],
};

/** `linkwright exercise make|generate|check|sheet|class|delete`. */
export const exercise: Command = {
  options: {
    ...wishOptions,
    kind: { value: true },
    level: { value: true },
    seed: { value: true },
    passphrase: { value: true },
    answer: {},
    as: { value: true },
    paper: { value: true },
    into: { value: true },
    replace: {},
    csv: {},
    yes: {},
    json: {},
  },
  async run(io, given) {
    const [word = '', ...files] = given.arguments;
    const action = readChoice('exercise', word, actions);
    if (!action.ok) return refuse(action.problems);
    const foreign = [...given.options.keys()].filter((option) => actionsOf[option]?.includes(action.value) === false);
    if (foreign.length > 0) return refuse(foreign.map((option) => wordForeign(option)));
    const [file] = files;
    if (file === undefined) return refuse([makeUsageProblem('file-argument-missing', { command: 'exercise' })]);
    if (action.value === 'class') return classOf(io, given, files);
    if (action.value === 'delete') return deleteFiles(io, given, files);
    const unwanted = files[1];
    if (unwanted !== undefined) return refuse([makeUsageProblem('argument-unwanted', { argument: unwanted, command: 'exercise' })]);
    return action.value === 'check' || action.value === 'sheet' ? tell(io, given, file, action.value) : make(io, given, file, action.value);
  },
};

function wordForeign(option: string): UsageProblem {
  const other = (actionsOf[option] ?? []).map((action) => `exercise ${action}`).join(', ');
  return makeUsageProblem('option-of-other-action', { option: `--${option}`, actions: other });
}

async function tell(io: Io, given: GivenArguments, file: string, action: 'check' | 'sheet'): Promise<CommandAnswer> {
  const read = await readExercise(io, file, firstValue(given, 'passphrase'));
  if (!read.ok) return failed(3, read.problems);
  const { game, answer, problems } = read.value;
  if (problems.length > 0) return failed(1, problems);
  if (action === 'sheet' && given.options.has('answer') && answer === null)
    return failed(1, [jsonProblem(makeProblem('exercise-seal-closed', 'refused', { where: '/sealed' }), file)]);
  if (action === 'sheet' && given.options.has('as')) return writeExercisePapers(io, given, file, read.value);
  const { id, name, kind, figures, possible, steps, solved } = read.value.exercise;
  return {
    exit: 0,
    problems: [],
    text: formatExercise(game, answer, { as: action, withAnswer: given.options.has('answer'), columns: io.columns }),
    json: {
      exercise: { id, name, kind, solved, possible: possible.length, steps: steps.length, figures: figures ?? null },
      sealOpened: answer !== null,
    },
  };
}

async function make(io: Io, given: GivenArguments, file: string, action: 'make' | 'generate'): Promise<CommandAnswer | Written> {
  const passphrase = firstValue(given, 'passphrase') ?? '';
  if (passphrase === '') return refuse([makeUsageProblem('passphrase-missing', {})]);
  const strength = weighPassphrase(passphrase);
  if (!strength.isEnough) return refuse([makeUsageProblem('passphrase-weak', { strength })]);
  const read = await readCabinetOrCase(io, file);
  if (!read.ok) return failed(3, read.problems);
  const sound = makeSound(read.value.content, file);
  if (!sound.ok) return failed(1, sound.problems);
  const made = action === 'make' ? makeAsked(sound.value.cabinet, given) : generateAsked(sound.value.cabinet, given, passphrase);
  if (!made.ok)
    return made.usage
      ? refuse(made.usage)
      : failed(
          1,
          (made.problems ?? []).map((problem) => jsonProblem(problem, file)),
        );
  const sealed = await sealAnswer(made.value.answer, passphrase);
  await io.out(serializeExercise({ ...made.value.exercise, sealed }));
  return { written: 0 };
}

function generateAsked(cabinet: Cabinet, given: GivenArguments, passphrase: string): Made {
  const kindText = firstValue(given, 'kind');
  const levelText = firstValue(given, 'level');
  const kind = kindText === undefined ? understood(undefined) : readChoice('--kind', kindText, exerciseKinds);
  const level = levelText === undefined ? understood(undefined) : readNumber('--level', levelText, 1, true);
  const seed = readNumber('--seed', firstValue(given, 'seed') ?? '1', 0, true);
  if (!kind.ok || !level.ok || !seed.ok)
    return { ok: false, usage: [kind, level, seed].flatMap((asked) => (asked.ok ? [] : asked.problems)) };
  return generateExercise({
    cabinet: cabinet.content,
    // Who knows the seed alone must not be able to make the exercise again, with its answer.
    seed: (seed.value + Number.parseInt(checksum(passphrase), 16)) % 2 ** 31,
    texts: exerciseKindTexts,
    ...(kind.value === undefined ? {} : { kind: kind.value }),
    ...(level.value === undefined ? {} : { level: level.value }),
  });
}

async function classOf(io: Io, given: GivenArguments, files: readonly string[]): Promise<CommandAnswer> {
  const taken: { readonly file: string; readonly result: ResultContent }[] = [];
  const copies: JsonProblem[] = [];
  const problems: CommandAnswer['problems'][number][] = [];
  for (const file of files) {
    const read = await readResult(io, file);
    if (!read.ok) {
      problems.push(...read.problems);
      continue;
    }
    const same = taken.find(({ result }) => isSamePlay(result, read.value));
    if (same === undefined) taken.push({ file, result: read.value });
    else copies.push({ ...jsonUsageProblem(makeUsageProblem('result-twice', { file, other: same.file, code: same.result.code })), file });
  }
  const rows = classTable(taken.map(({ result }) => result));
  const text = given.options.has('csv') ? classCsv(rows, classHeads) : formatClass(rows, io.columns);
  return {
    exit: problems.length > 0 ? 3 : 0,
    problems: [...problems, ...copies],
    text: rows.length > 0 ? text : '',
    json: rows.length > 0 ? { rows } : null,
  };
}

async function deleteFiles(io: Io, given: GivenArguments, files: readonly string[]): Promise<CommandAnswer> {
  if (!given.options.has('yes')) return refuse([makeUsageProblem('delete-not-confirmed', { count: files.length })]);
  const deleted: string[] = [];
  const problems: CommandAnswer['problems'][number][] = [];
  for (const file of files) {
    // Only what is a result of ours is deleted, never another file that was named by mistake.
    const read = await readResult(io, file);
    const reason = read.ok || read.problems.every(({ code }) => code === 'result-changed') ? await io.removeFile(file) : '';
    if (reason === null) deleted.push(file);
    else if (reason !== '') problems.push({ ...jsonUsageProblem(makeUsageProblem('file-not-readable', { file, reason })), file });
    else if (!read.ok) problems.push(...read.problems);
  }
  return {
    exit: problems.length > 0 ? 3 : 0,
    problems,
    text: deleted.map((file) => `${exerciseWords.deleted(file)}\n`).join(''),
    json: { deleted },
  };
}

function refuse(problems: readonly UsageProblem[]): CommandAnswer {
  return failed(2, problems.map(jsonUsageProblem));
}
