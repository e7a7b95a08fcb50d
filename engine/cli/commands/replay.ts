import { diagnose } from '../../diagnosis/index.ts';
import { replayCase } from '../../plan/index.ts';
import { jsonCabinet, jsonReplay, jsonUsageProblem } from '../answer/index.ts';
import { type Command, failed } from '../command.ts';
import { formatReplay, type ReplayedStep } from '../show/index.ts';
import { openCase, readTop } from './openCase.ts';

const usualTop = 3;

/** `linkwright replay CASE`: where the probabilities stood after each step of a case. */
export const replay: Command = {
  options: { top: { value: true }, json: {} },
  async run(io, given) {
    const top = readTop(given);
    if (!top.ok) return failed(2, top.problems.map(jsonUsageProblem));
    const opened = await openCase(io, given, 'replay');
    if (!opened.ok) return opened.answer;
    const { cabinet, names, evidence, remarks } = opened.value;
    const steps: readonly ReplayedStep[] = replayCase(evidence).map((step) => ({ step, diagnosis: diagnose(cabinet, step.evidence) }));
    return {
      exit: 0,
      problems: remarks,
      json: { cabinet: jsonCabinet(cabinet.content), ...jsonReplay(names, steps, top.value) },
      text: formatReplay({ cabinet, names, steps, top: top.value ?? usualTop, columns: io.columns }),
    };
  },
};
