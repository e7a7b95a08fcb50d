import { compareNatural } from '../base/index.ts';
import { checkCabinet } from '../cabinet/index.ts';
import {
  cautionsDefer,
  headings,
  type Names,
  paperKindWords,
  severityWords,
  startSentence,
  sumHeadings,
  sumsPaperWords,
  termBasisWords,
  termStatusWords,
  termWords,
  wordMissing,
  wordProblem,
  wordTermValue,
  wordWaitingTime,
} from '../messages/index.ts';
import type { Block, Paper, RichText } from '../paper/index.ts';
import { computeSums, type Sums, type SumTerm } from '../sums/index.ts';
import type { CellValue } from '../tables/index.ts';
import type { Topology } from '../topology/index.ts';
import { type DocumentSource, makePaper } from './source.ts';
import { listSumTables, type SumTable } from './sumTables.ts';

const words = sumsPaperWords;

/** The sums as a document: what was found, every table, by which formulas, and where each figure behind them comes from. */
export function sumsPaper(source: DocumentSource): Paper {
  const { topology, names } = source;
  const sums = computeSums(topology);
  const tables = listSumTables(names, sums);
  const terms = tables.flatMap(({ lines }) => lines.flatMap((line) => line.terms));
  const missing = wordMissing(names, sums.missing);
  return makePaper(source, {
    id: 'sums',
    title: startSentence(paperKindWords.sums.label),
    blocks: [
      { kind: 'paragraph', text: words.how, size: 9 },
      ...findings(topology, sums),
      ...tables.flatMap((table) => tableBlocks(table, sums)),
      ...(missing.length === 0
        ? []
        : [{ kind: 'heading', level: 2, text: sumHeadings.missing } as const, { kind: 'list', items: missing, size: 9 } as const]),
      ...formulas(terms),
      ...figures(names, terms),
    ],
  });
}

function findings(topology: Topology, sums: Sums): readonly Block[] {
  const found = [...checkCabinet(topology.content).problems.filter(({ code }) => code === 'axis-limit-exceeded'), ...sums.problems];
  if (found.length === 0) return [{ kind: 'paragraph', text: words.nothingFound }];
  return [
    { kind: 'heading', level: 2, text: sumHeadings.findings },
    {
      kind: 'table',
      words: sumHeadings.findings,
      columns: [{ head: headings.severity }, { head: headings.what, grow: 2 }, { head: headings.whatToDo, grow: 1 }],
      rows: found.map((problem) => {
        const { title, explanation, whatToDo } = wordProblem(problem);
        return [severityWords[problem.severity].label, explanation ? `${title}. ${explanation}` : title, whatToDo];
      }),
    },
  ];
}

function tableBlocks({ name, head, columns, lines, says }: SumTable, sums: Sums): readonly Block[] {
  const waits: readonly Block[] =
    name === 'dcLink' ? [{ kind: 'caution', title: wordWaitingTime(sums.waitingTimeS), text: cautionsDefer }] : [];
  if (lines.length === 0 && says.length === 0 && waits.length === 0) return [];
  const table: readonly Block[] =
    lines.length === 0
      ? []
      : [
          {
            kind: 'table',
            words: head,
            tight: true,
            columns: columns.map((column) => ({
              head: column.head,
              ...(column.isNumber ? ({ align: 'right' } as const) : {}),
              grow: 1,
            })),
            rows: lines.map(({ cells }) => cells.map((cell, index): RichText => (index === 0 ? [{ text: cell, face: 'bold' }] : cell))),
          },
        ];
  return [
    { kind: 'heading', level: 2, text: head },
    ...table,
    ...says.map((text): Block => ({ kind: 'paragraph', text, size: 9 })),
    ...waits,
  ];
}

/** Every term below some terms, themselves too. */
function allTerms(terms: readonly SumTerm[]): readonly SumTerm[] {
  return terms.flatMap((term) => [term, ...allTerms(term.from)]);
}

/** By which formula each quantity is worked out; once for each. */
function formulas(terms: readonly SumTerm[]): readonly Block[] {
  const lines = new Map<string, readonly [string, string]>();
  for (const { code, status, basis } of allTerms(terms)) {
    if (status === 'computed' && basis !== null) {
      lines.set(`${code} ${basis}`, [startSentence(termWords[code]), startSentence(termBasisWords[basis])]);
    }
  }
  if (lines.size === 0) return [];
  return [
    { kind: 'heading', level: 2, text: words.formulas },
    {
      kind: 'table',
      words: words.formulas,
      tight: true,
      columns: [{ head: words.quantity }, { head: words.formula, grow: 1 }],
      rows: [...lines.values()],
    },
  ];
}

/** Every figure that stands in the file or was assumed, with its source; equal ones of several things in one line. */
function figures(names: Names, terms: readonly SumTerm[]): readonly Block[] {
  const groups = new Map<string, { readonly term: SumTerm; readonly things: Set<string> }>();
  for (const term of allTerms(terms)) {
    if (term.from.length > 0 || term.value === null || term.status === 'computed') continue;
    const key = JSON.stringify([term.code, term.value, term.bound, term.status, term.source, term.basis]);
    const group = groups.get(key) ?? { term, things: new Set() };
    if (term.of !== null) group.things.add(names.thing(term.of));
    groups.set(key, group);
  }
  if (groups.size === 0) return [];
  const codes = Object.keys(termWords);
  const sorted = [...groups.values()].sort((a, b) => codes.indexOf(a.term.code) - codes.indexOf(b.term.code));
  return [
    { kind: 'heading', level: 2, text: words.figures },
    {
      kind: 'table',
      words: words.figures,
      tight: true,
      columns: [
        { head: words.quantity, width: 42 },
        { head: words.value, align: 'right', width: 24 },
        { head: words.of, grow: 1 },
        { head: sumHeadings.how },
        { head: words.source, width: 52 },
      ],
      rows: sorted.map(({ term, things }) => [
        startSentence(termWords[term.code]),
        wordTermValue(term),
        listThings([...things]) || words.wholeCabinet,
        termStatusWords[term.status].label,
        sourceOf(term),
      ]),
    },
  ];
}

/** "cable -WH2, -WH3, -WH5 to -WH9": what all have in common is said once, and what follows each other by its ends. */
export function listThings(unsorted: readonly string[]): string {
  const names = [...unsorted].sort(compareNatural);
  const first = /^\S+ (?=\S+$)/.exec(names[0] ?? '')?.[0] ?? '';
  const kind = names.every((name) => name.startsWith(first)) ? first : '';
  const runs: string[][] = [];
  for (const name of names.map((one) => one.slice(kind.length))) {
    const run = runs[runs.length - 1];
    if (run !== undefined && follows(run[run.length - 1] ?? '', name)) run.push(name);
    else runs.push([name]);
  }
  return kind + runs.flatMap((run) => (run.length < 3 ? run : [words.range(run[0] ?? '', run[run.length - 1] ?? '')])).join(', ');
}

/** Whether a name is another one with the next number. */
function follows(before: string, name: string): boolean {
  const [, stem, number] = /^(.*?)(\d{1,9})$/.exec(before) ?? [];
  const [, otherStem, otherNumber] = /^(.*?)(\d{1,9})$/.exec(name) ?? [];
  return stem !== undefined && stem === otherStem && Number(number) + 1 === Number(otherNumber);
}

/** Where a figure was read; else why it was taken. */
function sourceOf({ source, basis }: SumTerm): string {
  return source ?? (basis === null ? words.noSource : termBasisWords[basis]);
}

/** The sums as rows of a table, each with where it comes from. Values are numbers without their units, for a spreadsheet. */
export function sumRows(
  names: Names,
  topology: Topology,
): { readonly heads: readonly string[]; readonly rows: readonly (readonly CellValue[])[] } {
  const rows = listSumTables(names, computeSums(topology)).flatMap(({ head, lines }) =>
    lines.flatMap(({ about, terms }) =>
      allTerms(terms).map((term): readonly CellValue[] => [
        head,
        about,
        startSentence(termWords[term.code]),
        term.of === null ? '' : names.thing(term.of),
        term.bound === null ? '' : words.bounds[term.bound],
        term.value,
        term.unit === '1' ? '' : term.unit,
        termStatusWords[term.status].label,
        term.basis === null ? '' : termBasisWords[term.basis],
        term.source ?? '',
      ]),
    ),
  );
  return { heads: words.csvHeads, rows };
}
