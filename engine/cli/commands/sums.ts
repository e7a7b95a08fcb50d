import { checkCabinet } from '../../cabinet/index.ts';
import { changeFigures, computeSums, type FigureChange } from '../../sums/index.ts';
import type { Topology } from '../../topology/index.ts';
import { jsonCabinet, jsonProblem, jsonSums, jsonUsageProblem } from '../answer/index.ts';
import { type Command, failed, firstValue } from '../command.ts';
import type { GivenArguments } from '../options.ts';
import {
  type Asked,
  allOf,
  makeSound,
  makeUsageProblem,
  readCabinetFigure,
  readCabinetOrCase,
  readFigureChange,
  understood,
} from '../read/index.ts';
import { formatSums, wordRemarks } from '../show/index.ts';

/** `linkwright sums FILE`: light, axes, 24 V and DC link, as they are or with some figures tried. */
export const sums: Command = {
  options: { set: { value: true, many: true }, ambient: { value: true }, reserve: { value: true }, explain: {}, json: {} },
  async run(io, given) {
    const [file, unwanted] = given.arguments;
    if (file === undefined) return failed(2, [jsonUsageProblem(makeUsageProblem('file-argument-missing', { command: 'sums' }))]);
    if (unwanted !== undefined) {
      return failed(2, [jsonUsageProblem(makeUsageProblem('argument-unwanted', { argument: unwanted, command: 'sums' }))]);
    }
    const read = await readCabinetOrCase(io, file);
    if (!read.ok) return failed(3, read.problems);
    const written = makeSound(read.value.content, file);
    if (!written.ok) return failed(1, written.problems);
    const asked = readChanges(written.value.cabinet, given);
    if (!asked.ok) return failed(2, asked.problems.map(jsonUsageProblem));
    const changes = asked.value;
    const content = changeFigures(read.value.content, changes);
    // Changed figures change nothing of how the cabinet hangs together, so it is as sound as it was.
    const { topology, problems } = checkCabinet(content);
    const found = computeSums(topology);
    const findings = [...problems.filter(({ code }) => code === 'axis-limit-exceeded'), ...found.problems].map((problem) =>
      jsonProblem(problem, file),
    );
    const { names, remarks } = written.value;
    return {
      exit: findings.length > 0 ? 1 : 0,
      problems: wordRemarks(file, remarks),
      json: { cabinet: jsonCabinet(content), tried: changes, ...jsonSums(names, found), findings },
      text: formatSums({ topology, names, sums: found, changes, findings, explain: given.options.has('explain'), columns: io.columns }),
    };
  },
};

function readChanges(topology: Topology, given: GivenArguments): Asked<readonly FigureChange[]> {
  const whole = (['ambient', 'reserve'] as const).flatMap((figure): readonly Asked<FigureChange>[] => {
    const text = firstValue(given, figure);
    if (text === undefined) return [];
    const value = readCabinetFigure(`--${figure}`, figure, text);
    return [value.ok ? understood({ figure, value: value.value }) : value];
  });
  return allOf([...whole, ...(given.options.get('set') ?? []).map((text) => readFigureChange(topology, text))]);
}
