import { checkCabinet } from '../../cabinet/index.ts';
import { exportedLists, writeList } from '../../documents/index.ts';
import { exportWords } from '../../messages/index.ts';
import type { CsvForm } from '../../tables/index.ts';
import { jsonUsageProblem } from '../answer/index.ts';
import { type Command, failed, firstValue } from '../command.ts';
import { writeOut } from '../files.ts';
import { makeUsageProblem, readCabinetOrCase, readOption } from '../read/index.ts';

const separators = { semicolon: ';', comma: ',', tab: '\t' } as const satisfies Readonly<Record<string, CsvForm['separator']>>;

/** `linkwright export FILE --what LIST`: a list as CSV, or the whole as GraphML. */
export const exportLists: Command = {
  options: {
    what: { value: true },
    separator: { value: true },
    decimal: { value: true },
    'byte-order-mark': {},
    'plain-designations': {},
    to: { value: true },
    replace: {},
  },
  async run(io, given) {
    const [file, unwanted] = given.arguments;
    if (file === undefined) return failed(2, [jsonUsageProblem(makeUsageProblem('file-argument-missing', { command: 'export' }))]);
    if (unwanted !== undefined) {
      return failed(2, [jsonUsageProblem(makeUsageProblem('argument-unwanted', { argument: unwanted, command: 'export' }))]);
    }
    const what = readOption(given, 'what', exportedLists);
    const separator = readOption(given, 'separator', ['semicolon', 'comma', 'tab']);
    const decimal = readOption(given, 'decimal', ['point', 'comma']);
    const problems = [what, separator, decimal].flatMap((one) => (one.ok ? [] : one.problems));
    if (!what.ok || !separator.ok || !decimal.ok) return failed(2, problems.map(jsonUsageProblem));
    const read = await readCabinetOrCase(io, file);
    if (!read.ok) return failed(3, read.problems);
    const { topology } = checkCabinet(read.value.content);
    const form: CsvForm = {
      separator: separators[separator.value],
      decimal: decimal.value === 'comma' ? ',' : '.',
      byteOrderMark: given.options.has('byte-order-mark'),
      designations: given.options.has('plain-designations') ? 'plain' : 'guarded',
    };
    const text = writeList(topology, what.value, form);
    const to = firstValue(given, 'to');
    if (to === undefined) return { exit: 0, problems: [], json: null, text };
    const problem = await writeOut(io, to, new TextEncoder().encode(text), given.options.has('replace'));
    return problem === null ? { exit: 0, problems: [], json: null, text: exportWords.written(to) } : failed(3, [problem]);
  },
};
