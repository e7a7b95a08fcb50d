import { makeProblem, type Problem } from '../../base/index.ts';
import { checkCabinet, serializeCabinet } from '../../cabinet/index.ts';
import {
  importTexts,
  papersWords,
  tableKindWords,
  tableWords,
  wordDoes,
  wordDoubt,
  wordFieldChange,
  wordFindings,
  wordImport,
} from '../../messages/index.ts';
import {
  type ColumnKey,
  columnsOf,
  countKnownHeads,
  guessKind,
  guessMapping,
  type ImportPlan,
  labelHeads,
  type Mapping,
  planImport,
  type RawTable,
  readCsv,
  readGraphml,
  readTableText,
  type TableKind,
  tableKinds,
} from '../../tables/index.ts';
import { type JsonProblem, jsonCabinet, jsonProblem, jsonUsageProblem } from '../answer/index.ts';
import { type Command, failed, firstValue } from '../command.ts';
import { writeOut } from '../files.ts';
import { findNearest } from '../nearest.ts';
import type { GivenArguments } from '../options.ts';
import { type Asked, makeUsageProblem, readCabinetOrCase, readOption, understood } from '../read/index.ts';
import { formatTable } from '../table.ts';
import { paragraph } from '../text.ts';

/** `linkwright import FILE LIST`: what a list would do to a cabinet; with `--to` a new cabinet file. */
export const importLists: Command = {
  options: { what: { value: true }, map: { value: true, many: true }, overwrite: {}, to: { value: true }, replace: {}, json: {} },
  async run(io, given) {
    const [file, listFile, unwanted] = given.arguments;
    if (file === undefined || listFile === undefined) {
      return failed(2, [jsonUsageProblem(makeUsageProblem('file-argument-missing', { command: 'import' }))]);
    }
    if (unwanted !== undefined) {
      return failed(2, [jsonUsageProblem(makeUsageProblem('argument-unwanted', { argument: unwanted, command: 'import' }))]);
    }
    const read = await readCabinetOrCase(io, file);
    if (!read.ok) return failed(3, read.problems);
    const list = await io.readFile(listFile);
    if ('reason' in list) {
      return failed(3, [
        { ...jsonUsageProblem(makeUsageProblem('file-not-readable', { file: listFile, reason: list.reason })), file: listFile },
      ]);
    }
    const tables = readTables(list.bytes, given);
    if ('asked' in tables) return failed(2, tables.asked);
    if (!tables.ok)
      return failed(
        3,
        tables.problems.map((problem) => jsonProblem(problem, listFile)),
      );
    let content = read.value.content;
    const plans: ImportPlan[] = [];
    for (const [kind, table] of tables.value) {
      const mapping = readMapping(kind, table, given);
      if (!mapping.ok) return failed(2, mapping.problems.map(jsonUsageProblem));
      const plan = planImport(content, kind, table, tableWords, {
        mapping: mapping.value,
        replace: given.options.has('overwrite'),
        // A graph brings its cables along.
        place: tables.value.length === 1,
      });
      plans.push(plan);
      content = plan.content;
    }
    const to = firstValue(given, 'to');
    const unwritten =
      to === undefined ? null : await writeOut(io, to, new TextEncoder().encode(serializeCabinet(content)), given.options.has('replace'));
    if (unwritten !== null) return failed(3, [unwritten]);
    const findings = checkCabinet(content).problems;
    const isDoubtful = plans.some(({ rows }) => rows.some(({ does }) => does === 'doubtful'));
    return {
      exit: isDoubtful ? 1 : 0,
      problems: [],
      json: {
        cabinet: jsonCabinet(content),
        lists: plans.map(({ kind, rows }) => ({ list: kind, rows })),
        written: to ?? null,
        findings: findings.map((problem) => jsonProblem(problem, to ?? file)),
      },
      text: [
        ...plans.map((plan) => formatPlan(plan, io.columns)),
        `\n${paragraph(importTexts.after(wordFindings(findings)), io.columns)}`,
        paragraph(to === undefined ? importTexts.notWritten : importTexts.written(to), io.columns),
      ].join(''),
    };
  },
};

type Tables =
  | { readonly ok: true; readonly value: readonly (readonly [TableKind, RawTable])[] }
  | { readonly ok: false; readonly problems: readonly Problem[] }
  | { readonly asked: readonly JsonProblem[] };

function readTables(bytes: Uint8Array, given: GivenArguments): Tables {
  const text = readTableText(bytes);
  if (!text.ok) return text;
  const isGraph = /^\s*</.test(text.value.replace('\ufeff', ''));
  const what = given.options.has('what')
    ? readOption(given, 'what', [...tableKinds, 'graph'])
    : understood(isGraph ? ('graph' as const) : null);
  if (!what.ok) return { asked: what.problems.map(jsonUsageProblem) };
  if (what.value === 'graph' || isGraph) {
    const graph = readGraphml(text.value);
    if (!graph.ok) return graph;
    const all = tableKinds.map((kind) => [kind, graph.value[kind]] as const);
    return { ok: true, value: all.filter(([, table]) => table.rows.length > 0) };
  }
  const csv = readCsv(text.value, (cells) => countKnownHeads(cells, tableWords));
  if (csv.isBroken) return { ok: false, problems: [makeProblem('table-quote-open', 'refused')] };
  const kind: TableKind = what.value ?? guessKind(csv.heads, tableWords);
  return { ok: true, value: [[kind, csv]] };
}

/** What the heads tell, and what was said of them with `--map`. */
function readMapping(kind: TableKind, table: RawTable, given: GivenArguments): Asked<Mapping> {
  const { heads } = table;
  const mapping: Partial<Record<ColumnKey, number>> = { ...guessMapping(kind, table, tableWords) };
  const keys = columnsOf(kind).map(({ key }) => key);
  for (const text of given.options.get('map') ?? []) {
    const at = text.indexOf('=');
    const name = text.slice(0, Math.max(0, at)).trim();
    const head = text.slice(at + 1).trim();
    const key = keys.find((one) => one === name);
    if (at < 0 || key === undefined) return { ok: false, problems: [makeUsageProblem('map-malformed', { value: text })] };
    const labels = labelHeads(heads, papersWords.columnNumber);
    const index = labels.indexOf(head);
    // `--map KEY=`: this column is not in the list, whatever a head of it says.
    if (index < 0 && head !== '')
      return { ok: false, problems: [makeUsageProblem('head-unknown', { head, heads: labels, near: findNearest(head, labels) })] };
    mapping[key] = index;
  }
  return Object.keys(mapping).length > 0 ? understood(mapping) : { ok: false, problems: [makeUsageProblem('no-column-known', { heads })] };
}

function formatPlan({ kind, rows }: ImportPlan, columns: number): string {
  const shown = rows.filter(({ does, changes }) => does !== 'same' || changes.length > 0);
  const table = formatTable(
    [
      { head: importTexts.line, align: 'right' },
      { head: importTexts.name },
      { head: importTexts.does },
      { head: importTexts.what, grow: true },
    ],
    shown.map((row) => [
      String(row.line),
      row.name,
      wordDoes(row),
      [...row.doubts.map(wordDoubt), ...(row.does === 'doubtful' ? [] : row.changes.map(wordFieldChange))].join('; '),
    ]),
    columns,
  );
  return `${paragraph(`${tableKindWords[kind]}: ${wordImport(rows)}.`, columns)}${table === '' ? '' : `\n${table}`}`;
}
