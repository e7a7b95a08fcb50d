import { compareNatural, type Problem } from '../../engine/base/index.ts';
import { parseResultFile } from '../../engine/cabinet/index.ts';
import { type ClassRow, checkResult, classTable, isSamePlay } from '../../engine/exercise/index.ts';
import { classWords } from '../../engine/messages/index.ts';
import type { ResultContent } from '../../engine/schema/index.ts';
import type { FileRef, SeveralFiles } from '../state/sitting.ts';

/** A result with the file in which it stood. */
export interface ClassFile {
  readonly file: FileRef;
  readonly result: ResultContent;
}

/** A file that is not in the table, and what is wrong with it. */
export interface DamagedFile {
  readonly name: string;
  readonly problem: Problem;
}

/** A file whose play stands in the table already, in another file or under another code. */
export interface TwiceFile {
  readonly name: string;
  readonly other: string;
  readonly code: string;
}

export interface ClassFiles {
  readonly results: readonly ClassFile[];
  readonly damaged: readonly DamagedFile[];
  /** Files of ours of another kind, left alone. */
  readonly foreign: readonly DamagedFile[];
  /** Files whose play stands in the table already. */
  readonly twice: readonly TwiceFile[];
  readonly leftOut: number;
}

export const noClassFiles: ClassFiles = { results: [], damaged: [], foreign: [], twice: [], leftOut: 0 };

/** Adds what was chosen to what is there. What is no whole result is named by what is wrong with it; what stands there already is not taken twice. */
export function addResults(before: ClassFiles, chosen: SeveralFiles): ClassFiles {
  const results = [...before.results];
  const damaged: DamagedFile[] = [];
  const foreign: DamagedFile[] = [];
  const twice: TwiceFile[] = [];
  for (const { content, ...file } of chosen.files) {
    const parsed = parseResultFile(content);
    const checked = parsed.ok ? checkResult(parsed.value) : parsed;
    if (!checked.ok) {
      const [problem] = checked.problems;
      if (problem === undefined) continue;
      // A folder holds the exercises too: they are no damaged results.
      (problem.code === 'format-other-kind' ? foreign : damaged).push({ name: file.name, problem });
      continue;
    }
    const same = results.find((other) => isSame(other, file, checked.value));
    if (same === undefined) results.push({ file, result: checked.value });
    else twice.push({ name: file.name, other: same.file.name, code: same.result.code });
  }
  const unread = chosen.problems.map((problem) => ({ name: String(problem.facts['file'] ?? ''), problem }));
  return { results, damaged: [...damaged, ...unread], foreign, twice, leftOut: chosen.leftOut };
}

/** The same file again, or the same play in another one. */
function isSame({ file, result }: ClassFile, other: FileRef, content: ResultContent): boolean {
  return (file.key !== '' && file.key === other.key) || isSamePlay(result, content);
}

/** Of which exercises the results are, and how many of each: "Two neighbours (5)". */
export function countExercises(results: readonly ClassFile[]): readonly string[] {
  const counts = new Map<string, { readonly name: string; readonly count: number }>();
  for (const { result } of results)
    counts.set(result.exercise, { name: result.name, count: (counts.get(result.exercise)?.count ?? 0) + 1 });
  return [...counts.values()].sort((a, b) => compareNatural(a.name, b.name)).map(({ name, count }) => classWords.countOf(name, count));
}

/** One line of the table, with its file. */
export interface ClassLine extends ClassRow {
  readonly file: FileRef;
}

export const classColumns = ['code', 'name', 'solved', 'minutes', 'ratio', 'predictionsRight', 'unsafe', 'seconds', 'startedAt'] as const;
export type ClassColumn = (typeof classColumns)[number];
export interface ClassOrder {
  readonly by: ClassColumn;
  readonly descending: boolean;
}

/** The lines of the table in an order; what is not told stands last, whichever way round. */
export function orderLines(results: readonly ClassFile[], { by, descending }: ClassOrder): readonly ClassLine[] {
  const lines = results.flatMap(({ file, result }) => classTable([result]).map((row) => ({ ...row, file })));
  const sign = descending ? -1 : 1;
  return lines.sort(
    (a, b) =>
      compareValues(sortValue(a, by), sortValue(b, by), sign) || compareNatural(a.code, b.code) || compareNatural(a.exercise, b.exercise),
  );
}

function sortValue(line: ClassLine, by: ClassColumn): string | number | null {
  // Shares, so that 3 of 4 stands before 3 of 9.
  if (by === 'predictionsRight') return line.predictions === 0 ? null : line.predictionsRight / line.predictions;
  if (by === 'solved') return line.solved ? 0 : 1;
  return line[by];
}

function compareValues(a: string | number | null, b: string | number | null, sign: number): number {
  if (a === null || b === null) return Number(a === null) - Number(b === null);
  return sign * (typeof a === 'number' && typeof b === 'number' ? a - b : compareNatural(String(a), String(b)));
}
