import { compareProblems } from '../../base/index.ts';
import { checkCabinet } from '../../cabinet/index.ts';
import { wordContents, wordFindings } from '../../messages/index.ts';
import { computeSums } from '../../sums/index.ts';
import { type JsonProblem, jsonCabinet, jsonProblem, jsonUsageProblem } from '../answer/index.ts';
import { type Command, failed } from '../command.ts';
import type { ExitCode, Io } from '../io.ts';
import { makeUsageProblem, readCabinetOrCase } from '../read/index.ts';
import { formatProblems } from '../show/index.ts';
import { paragraph } from '../text.ts';

interface CheckedFile {
  readonly json: object;
  readonly text: string;
  readonly unreadable: readonly JsonProblem[];
  readonly findings: number;
}

/** `linkwright check FILE…`: what is wrong with cabinets, and with the cabinets in cases. */
export const check: Command = {
  options: { json: {} },
  async run(io, given) {
    if (given.arguments.length === 0) return failed(2, [jsonUsageProblem(makeUsageProblem('file-argument-missing', { command: 'check' }))]);
    const files: CheckedFile[] = [];
    for (const file of given.arguments) files.push(await checkFile(io, file));
    const exit: ExitCode = files.some(({ unreadable }) => unreadable.length > 0) ? 3 : files.some(({ findings }) => findings > 0) ? 1 : 0;
    return {
      exit,
      problems: files.flatMap(({ unreadable }) => unreadable),
      text: files
        .map(({ text }) => text)
        .filter(Boolean)
        .join('\n'),
      json: { files: files.map(({ json }) => json) },
    };
  },
};

async function checkFile(io: Io, file: string): Promise<CheckedFile> {
  const read = await readCabinetOrCase(io, file);
  if (!read.ok) return { json: { file, readable: false, problems: read.problems }, text: '', unreadable: read.problems, findings: 0 };
  const { content, kind } = read.value;
  const { cabinet, topology, problems: ofCabinet } = checkCabinet(content);
  // The sums need a cabinet that hangs together.
  const problems = cabinet === null ? ofCabinet : [...ofCabinet, ...computeSums(cabinet).problems].sort(compareProblems);
  const worded = problems.map((problem) => jsonProblem(problem, file));
  const chains = topology.chains.map(({ id, record, units, links }) => ({ chain: id, number: record.number, units, links }));
  const json = { file, readable: true, kind, cabinet: jsonCabinet(content), sound: cabinet !== null, chains, problems: worded };
  const head = paragraph(`${file}: ${content.name}. ${wordContents(topology)}; ${wordFindings(problems)}.`, io.columns);
  const table = formatProblems(worded, io.columns, true);
  return { json, text: head + (table ? `\n${table}` : ''), unreadable: [], findings: problems.length };
}
