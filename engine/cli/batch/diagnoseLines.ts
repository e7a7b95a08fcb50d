import { diagnose } from '../../diagnosis/index.ts';
import { type DiagnoseLine, diagnoseLine } from '../../schema/index.ts';
import { jsonDiagnosis, jsonUsageProblem } from '../answer/index.ts';
import { checkEvidence } from '../read/index.ts';
import type { Batch } from './runLines.ts';

/** Many diagnoses in one run. `most` cuts the lists of lines that do not say so themselves. */
export function diagnoseLines(most: number | undefined): Batch<DiagnoseLine> {
  return {
    command: 'diagnose',
    schema: diagnoseLine,
    goesWith: ['top'],
    answer(line, { cabinet, names }) {
      const problems = checkEvidence(cabinet, names, line.evidence);
      if (problems.length > 0) return { ok: false, problems: problems.map(jsonUsageProblem) };
      const diagnosis = diagnose(cabinet, line.evidence);
      const exit = diagnosis.contradiction || diagnosis.impossible ? 1 : 0;
      return { ok: true, exit, json: jsonDiagnosis(names, line.evidence, diagnosis, line.top ?? most) };
    },
  };
}
