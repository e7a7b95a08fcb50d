import { severities } from '../../base/index.ts';
import { statements, wordFindings } from '../../messages/index.ts';
import type { JsonProblem } from '../answer/index.ts';

/** Findings in a cabinet that do not stand in the way of an answer, as one problem: how many, and where they are listed. */
export function wordRemarks(file: string, remarks: readonly JsonProblem[]): readonly JsonProblem[] {
  if (remarks.length === 0) return [];
  const found = remarks.flatMap((remark) =>
    severities.filter((severity) => severity === remark.severity).map((severity) => ({ severity })),
  );
  const { title, whatToDo } = statements.remarks(file, wordFindings(found));
  return [
    {
      code: 'cabinet-has-findings',
      severity: 'warning',
      file,
      where: '',
      subjects: [],
      facts: { count: remarks.length },
      title,
      explanation: '',
      whatToDo,
    },
  ];
}
