import { type Severity, severities } from '../../base/index.ts';
import { headings, severityWords } from '../../messages/index.ts';
import type { JsonProblem } from '../answer/index.ts';
import { type Column, formatTable } from '../table.ts';

const columnsOfProblems: readonly Column[] = [
  { head: headings.severity },
  { head: headings.what, grow: true },
  { head: headings.whatToDo, grow: true },
];

/** Problems of a cabinet as a table; `places`: with the place of each in the file. Empty when there are none. */
export function formatProblems(problems: readonly JsonProblem[], columns: number, places = false): string {
  return formatTable(
    [...columnsOfProblems, ...(places ? [{ head: headings.where }] : [])],
    problems.map(({ severity, title, explanation, whatToDo, where }) => [
      wordSeverity(severity),
      explanation ? `${title}. ${explanation}` : title,
      whatToDo,
      ...(places ? [where] : []),
    ]),
    columns,
  );
}

function wordSeverity(text: string): string {
  const severity: Severity | undefined = severities.find((one) => one === text);
  return severity === undefined ? text : severityWords[severity].label;
}
