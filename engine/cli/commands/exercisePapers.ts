import { makeFileName } from '../../base/index.ts';
import { exerciseAnswer, exerciseSheet } from '../../documents/index.ts';
import { exerciseWords, paperWords } from '../../messages/index.ts';
import { type PaperSize, paperNames, writeHtml } from '../../paper/index.ts';
import { writePdf } from '../../pdf/index.ts';
import type { JsonProblem } from '../answer/index.ts';
import { jsonUsageProblem } from '../answer/index.ts';
import { type CommandAnswer, failed, firstValue } from '../command.ts';
import { baseOf, folderOf, writeOut } from '../files.ts';
import type { Io } from '../io.ts';
import type { GivenArguments } from '../options.ts';
import { type OpenedExercise, readOption } from '../read/index.ts';

/** `linkwright exercise sheet FILE --as pdf|html`: the exercise on paper, and the answer sheet as a file of its own. */
export async function writeExercisePapers(io: Io, given: GivenArguments, file: string, opened: OpenedExercise): Promise<CommandAnswer> {
  const form = readOption(given, 'as', ['pdf', 'html']);
  const size = readOption(given, 'paper', paperNames as readonly [PaperSize, ...PaperSize[]]); // there are three
  if (!form.ok || !size.ok)
    return failed(
      2,
      [form, size].flatMap((asked) => (asked.ok ? [] : asked.problems.map(jsonUsageProblem))),
    );
  const { game, answer } = opened;
  const source = { game, date: io.now().toISOString().slice(0, 10), size: size.value };
  const papers = [exerciseSheet(source), ...(given.options.has('answer') && answer !== null ? [exerciseAnswer(source, answer)] : [])];
  const into = firstValue(given, 'into');
  const folder = into === undefined ? folderOf(file) : `${into.replace(/[/\\]$/, '')}/`;
  const problems: JsonProblem[] = [];
  const documents: { file: string; title: string; pages: number }[] = [];
  for (const made of papers) {
    const target = `${folder}${makeFileName(`${baseOf(file)}.${made.id}`, `.${form.value}`, 'exercise')}`;
    const bytes =
      form.value === 'html'
        ? new TextEncoder().encode(writeHtml(made.paper, { language: paperWords.language }))
        : (await writePdf([made], { title: made.title, language: paperWords.language, madeAt: io.now() }))?.bytes;
    const problem = bytes === undefined ? null : await writeOut(io, target, bytes, given.options.has('replace'));
    if (problem === null) documents.push({ file: target, title: made.title, pages: made.pages.length });
    else problems.push(problem);
  }
  return {
    exit: problems.length > 0 ? 3 : 0,
    problems,
    text: documents.map((one) => `${exerciseWords.printed(one.title, one.file)}\n`).join(''),
    json: { documents },
  };
}
