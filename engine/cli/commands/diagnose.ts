import { diagnose as diagnoseCabinet } from '../../diagnosis/index.ts';
import { jsonCabinet, jsonDiagnosis, jsonUsageProblem } from '../answer/index.ts';
import { diagnoseLines, runLines } from '../batch/index.ts';
import { type Command, failed } from '../command.ts';
import { formatDiagnosis } from '../show/index.ts';
import { evidenceOptions, openCase, readTop } from './openCase.ts';

const usualTop = 10;

/** `linkwright diagnose FILE …`: what is broken, from what was seen. With `--batch`: many in one run. */
export const diagnose: Command = {
  options: {
    ...evidenceOptions,
    explain: {},
    top: { value: true },
    batch: { value: true },
    json: {},
  },
  async run(io, given) {
    const top = readTop(given);
    if (!top.ok) return failed(2, top.problems.map(jsonUsageProblem));
    if (given.options.has('batch')) return runLines(io, given, diagnoseLines(top.value));
    const opened = await openCase(io, given, 'diagnose');
    if (!opened.ok) return opened.answer;
    const { cabinet, names, evidence, remarks } = opened.value;
    const diagnosis = diagnoseCabinet(cabinet, evidence);
    return {
      exit: diagnosis.contradiction || diagnosis.impossible ? 1 : 0,
      problems: remarks,
      json: { cabinet: jsonCabinet(cabinet.content), evidence, ...jsonDiagnosis(names, evidence, diagnosis, top.value) },
      text: formatDiagnosis({
        cabinet,
        names,
        evidence,
        diagnosis,
        top: top.value ?? usualTop,
        explain: given.options.has('explain'),
        columns: io.columns,
      }),
    };
  },
};
