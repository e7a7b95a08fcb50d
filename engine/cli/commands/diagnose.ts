import { diagnose as diagnoseCabinet } from '../../diagnosis/index.ts';
import type { UsageProblem } from '../../messages/index.ts';
import { jsonCabinet, jsonDiagnosis, jsonUsageProblem } from '../answer/index.ts';
import { diagnoseLines, runLines } from '../batch/index.ts';
import { type Command, failed, firstValue } from '../command.ts';
import { checkEvidence, makeSound, makeUsageProblem, readCabinetOrCase, readEvidence, readNumber, understood } from '../read/index.ts';
import { formatDiagnosis, wordRemarks } from '../show/index.ts';

const usualTop = 10;

/** `linkwright diagnose FILE …`: what is broken, from what was seen. With `--batch`: many in one run. */
export const diagnose: Command = {
  options: {
    display: { value: true, many: true },
    report: { value: true, many: true },
    onset: { value: true },
    halted: { value: true },
    days: { value: true },
    circumstance: { value: true, many: true },
    explain: {},
    top: { value: true },
    batch: { value: true },
    json: {},
  },
  async run(io, given) {
    const topText = firstValue(given, 'top');
    const top = topText === undefined ? understood(undefined) : readNumber('--top', topText, 1, true);
    if (!top.ok) return failed(2, top.problems.map(jsonUsageProblem));
    if (given.options.has('batch')) return runLines(io, given, diagnoseLines(top.value));
    const [file, unwanted] = given.arguments;
    if (file === undefined) return refuse(makeUsageProblem('file-argument-missing', { command: 'diagnose' }));
    if (unwanted !== undefined) return refuse(makeUsageProblem('argument-unwanted', { argument: unwanted, command: 'diagnose' }));
    const read = await readCabinetOrCase(io, file);
    if (!read.ok) return failed(3, read.problems);
    const sound = makeSound(read.value.content, file);
    if (!sound.ok) return failed(1, sound.problems);
    const { cabinet, names, remarks } = sound.value;
    const asked = readEvidence(cabinet, read.value.evidence, given);
    if (!asked.ok) return failed(2, asked.problems.map(jsonUsageProblem));
    const evidence = asked.value;
    const unknown = checkEvidence(cabinet, names, evidence);
    // What the command line names was found; so these stand in the case file.
    if (unknown.length > 0)
      return failed(
        3,
        unknown.map((problem) => ({ ...jsonUsageProblem(problem), file })),
      );
    const diagnosis = diagnoseCabinet(cabinet, evidence);
    return {
      exit: diagnosis.contradiction || diagnosis.impossible ? 1 : 0,
      problems: wordRemarks(file, remarks),
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

function refuse(problem: UsageProblem) {
  return failed(2, [jsonUsageProblem(problem)]);
}
