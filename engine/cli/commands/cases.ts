import { gatherExperience, leastStrength, mostStrength, usualStrength } from '../../experience/index.ts';
import { jsonCases, jsonUsageProblem } from '../answer/index.ts';
import { type Command, failed, firstValue } from '../command.ts';
import { makeUsageProblem, readCases, readLevel, understood } from '../read/index.ts';
import { formatCases } from '../show/index.ts';

/** `linkwright cases FOLDER|CASE…`: what confirmed cases teach. */
export const cases: Command = {
  options: { strength: { value: true }, json: {} },
  async run(io, given) {
    if (given.arguments.length === 0) return failed(2, [jsonUsageProblem(makeUsageProblem('file-argument-missing', { command: 'cases' }))]);
    const asked = firstValue(given, 'strength');
    const strength = asked === undefined ? understood(usualStrength) : readLevel('--strength', asked, leastStrength, mostStrength);
    if (!strength.ok) return failed(2, strength.problems.map(jsonUsageProblem));
    const read = await readCases(io, given.arguments);
    const experience = gatherExperience(
      read.cases.map(({ content }) => content),
      strength.value,
    );
    const fileOf = new Map(read.cases.map(({ file, content }) => [content, file]));
    return {
      exit: read.unreadable.length > 0 ? 3 : 0,
      problems: read.unreadable,
      text: formatCases({ experience, fileOf, others: read.others, columns: io.columns }),
      json: jsonCases(experience, fileOf, read.others),
    };
  },
};
