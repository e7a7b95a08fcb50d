import { compareNatural, type Problem } from '../../engine/base/index.ts';
import { parseResultFile } from '../../engine/cabinet/index.ts';
import { type ClassRow, checkResult, classTable, isSameResult } from '../../engine/exercise/index.ts';
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

export interface ClassFiles {
  readonly results: readonly ClassFile[];
  readonly damaged: readonly DamagedFile[];
  /** Files of ours of another kind, left alone. */
  readonly foreign: number;
  /** Files that stand in the table already. */
  readonly twice: number;
  readonly leftOut: number;
}

export const noClassFiles: ClassFiles = { results: [], damaged: [], foreign: 0, twice: 0, leftOut: 0 };

/** Adds what was chosen to what is there. What is no whole result is named by what is wrong with it; what stands there already is not taken twice. */
export function addResults(before: ClassFiles, chosen: SeveralFiles): ClassFiles {
  const results = [...before.results];
  const damaged: DamagedFile[] = [];
  let foreign = 0;
  let twice = 0;
  for (const { content, ...file } of chosen.files) {
    const parsed = parseResultFile(content);
    const checked = parsed.ok ? checkResult(parsed.value) : parsed;
    if (!checked.ok) {
      const [problem] = checked.problems;
      // A folder holds the exercises too: they are no damaged results.
      if (checked.problems.some(({ code }) => code === 'format-other-kind')) foreign += 1;
      else if (problem !== undefined) damaged.push({ name: file.name, problem });
    } else if (results.some((other) => isSame(other, file, checked.value))) {
      twice += 1;
    } else {
      results.push({ file, result: checked.value });
    }
  }
  const unread = chosen.problems.map((problem) => ({ name: String(problem.facts['file'] ?? ''), problem }));
  return { results, damaged: [...damaged, ...unread], foreign, twice, leftOut: chosen.leftOut };
}

/** The same file again, or the same result in a copy of it. */
function isSame({ file, result }: ClassFile, other: FileRef, content: ResultContent): boolean {
  return (file.key !== '' && file.key === other.key) || isSameResult(result, content);
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
