import { checkCabinet } from '../../cabinet/index.ts';
import { type Change, changeKinds, compareCabinets } from '../../edit/index.ts';
import { type ComparedSide, comparisonWords, makeNames, startSentence, wordChange } from '../../messages/index.ts';
import { jsonCabinet, jsonUsageProblem } from '../answer/index.ts';
import { type Command, failed } from '../command.ts';
import { makeUsageProblem, type ReadFile, readCabinetOrCase } from '../read/index.ts';
import { formatTable } from '../table.ts';
import { paragraph } from '../text.ts';

/** `linkwright compare BEFORE AFTER`: what differs between two cabinets. Exit code 1 where they differ. */
export const compare: Command = {
  options: { json: {} },
  async run(io, given) {
    const [first, second, unwanted] = given.arguments;
    if (first === undefined || second === undefined) {
      return failed(2, [jsonUsageProblem(makeUsageProblem('two-files-needed', { command: 'compare' }))]);
    }
    if (unwanted !== undefined) {
      return failed(2, [jsonUsageProblem(makeUsageProblem('argument-unwanted', { argument: unwanted, command: 'compare' }))]);
    }
    const [before, after] = [await readCabinetOrCase(io, first), await readCabinetOrCase(io, second)];
    if (!before.ok || !after.ok) return failed(3, [...(before.ok ? [] : before.problems), ...(after.ok ? [] : after.problems)]);
    const { changes } = compareCabinets(before.value.content, after.value.content);
    const sides = [sideOf(before.value), sideOf(after.value)] as const;
    return {
      exit: changes.length > 0 ? 1 : 0,
      problems: [],
      text: wordAnswer(before.value, after.value, sides, changes, io.columns),
      json: {
        before: jsonSide(before.value),
        after: jsonSide(after.value),
        changes: changes.map((change) => jsonChange(change, ...sides)),
      },
    };
  },
};

function sideOf({ content }: ReadFile): ComparedSide {
  return { content, names: makeNames(checkCabinet(content).topology) };
}

function jsonSide({ file, kind, content }: ReadFile) {
  return { file, kind, cabinet: jsonCabinet(content) };
}

function jsonChange(change: Change, before: ComparedSide, after: ComparedSide) {
  const { kind, of, ...facts } = change;
  const { thing, what, was, is } = wordChange(change, before, after);
  const text = what === '' ? thing : `${thing}, ${what}: ${was} → ${is}`;
  return { kind, list: of.list, before: of.before, after: of.after, facts, label: thing, text };
}

function wordAnswer(
  before: ReadFile,
  after: ReadFile,
  sides: readonly [ComparedSide, ComparedSide],
  changes: readonly Change[],
  columns: number,
): string {
  const names = `${before.file}: ${before.content.name}; ${after.file}: ${after.content.name}.`;
  if (changes.length === 0) return paragraph(`${names} ${comparisonWords.same}`, columns);
  const counts = changeKinds.flatMap((kind) => {
    const count = changes.filter((change) => change.kind === kind).length;
    return count > 0 ? [{ kind, count }] : [];
  });
  const head = paragraph(`${names} ${startSentence(comparisonWords.summary(counts))}.`, columns);
  const { heads } = comparisonWords;
  const table = formatTable(
    [
      { head: heads.kind },
      { head: heads.thing, grow: true },
      { head: heads.what, grow: true },
      { head: heads.was, grow: true },
      { head: heads.is, grow: true },
    ],
    changes.map((change) => {
      const { kind, thing, what, was, is } = wordChange(change, ...sides);
      return [kind, thing, what, was, is];
    }),
    columns,
  );
  return `${head}\n${table}`;
}
