import { diagnose } from '../../diagnosis/index.ts';
import { planSteps } from '../../plan/index.ts';
import { jsonCabinet, jsonPlan, jsonUsageProblem } from '../answer/index.ts';
import { type Command, failed } from '../command.ts';
import { formatPlan } from '../show/index.ts';
import { evidenceOptions, openCase, readTop } from './openCase.ts';

const usualTop = 6;

/** `linkwright next FILE …`: what to look at or to do next, by what it costs down to the repaired machine. */
export const next: Command = {
  options: {
    ...evidenceOptions,
    top: { value: true },
    all: {},
    json: {},
  },
  async run(io, given) {
    const top = readTop(given);
    if (!top.ok) return failed(2, top.problems.map(jsonUsageProblem));
    const opened = await openCase(io, given, 'next');
    if (!opened.ok) return opened.answer;
    const { cabinet, names, evidence, remarks } = opened.value;
    const diagnosis = diagnose(cabinet, evidence);
    const plan = planSteps(cabinet, evidence, diagnosis);
    return {
      exit: diagnosis.contradiction || diagnosis.impossible ? 1 : 0,
      problems: remarks,
      json: { cabinet: jsonCabinet(cabinet.content), evidence, ...jsonPlan(names, diagnosis, plan, top.value) },
      text: formatPlan({
        cabinet,
        names,
        evidence,
        diagnosis,
        plan,
        top: top.value ?? usualTop,
        withUseless: given.options.has('all'),
        columns: io.columns,
      }),
    };
  },
};
