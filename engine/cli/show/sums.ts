import { listSumTables, type SumTable } from '../../documents/index.ts';
import {
  cautionsDefer,
  type Names,
  startSentence,
  sumHeadings,
  sumStatements,
  wordFigureChange,
  wordMissing,
  wordTerm,
  wordWaitingTime,
} from '../../messages/index.ts';
import type { FigureChange, Sums, SumTerm } from '../../sums/index.ts';
import type { Topology } from '../../topology/index.ts';
import type { JsonProblem } from '../answer/index.ts';
import { type Column, formatTable } from '../table.ts';
import { paragraph } from '../text.ts';
import { formatProblems } from './problems.ts';

export interface ShownSums {
  readonly topology: Topology;
  readonly names: Names;
  readonly sums: Sums;
  readonly changes: readonly FigureChange[];
  readonly findings: readonly JsonProblem[];
  readonly explain: boolean;
  readonly columns: number;
}

/** The sums for people: findings first, then light, axes, 24 V, DC link, and what is not written down. */
export function formatSums(shown: ShownSums): string {
  const { topology, names, sums, changes, columns } = shown;
  const parts = [
    paragraph(topology.content.name, columns) +
      changes.map((change) => paragraph(`${sumStatements.tried}: ${wordFigureChange(names, change)}`, columns)).join(''),
    section(sumHeadings.findings, formatProblems(shown.findings, columns)),
    ...listSumTables(names, sums).map((table) => section(table.head, formatOne(shown, table))),
    section(
      sumHeadings.missing,
      wordMissing(names, sums.missing)
        .map((line) => paragraph(line, columns, '    ', '  '))
        .join(''),
    ),
  ];
  return parts.filter(Boolean).join('\n');
}

function section(head: string, body: string): string {
  return body ? `${head}\n${body}` : '';
}

/** A table with what is said below it, and, where explanations are wanted, each line's terms. */
function formatOne(shown: ShownSums, { name, columns, lines, says }: SumTable): string {
  const below = name === 'dcLink' ? [...says, wordWaitingTime(shown.sums.waitingTimeS), cautionsDefer] : says;
  return formatLines(shown, columns, lines) + below.map((text) => paragraph(text, shown.columns)).join('');
}

function formatLines(shown: ShownSums, columns: SumTable['columns'], lines: SumTable['lines']): string {
  const text = formatTable(
    columns.map(({ head, isNumber }): Column => ({ head, ...(isNumber ? { align: 'right' } : {}) })),
    lines.map(({ cells }) => cells),
    shown.columns,
  );
  if (!shown.explain || lines.length === 0) return text;
  const explained = lines.map(
    ({ about, terms, of }) =>
      paragraph(`${startSentence(about)}:`, shown.columns, '  ') + terms.map((term) => formatTerm(shown, term, of, 2)).join(''),
  );
  return `${text}\n${explained.join('')}`;
}

function formatTerm(shown: ShownSums, term: SumTerm, parent: string | null, depth: number): string {
  const indent = '  '.repeat(depth);
  return (
    paragraph(wordTerm(shown.names, term, parent), shown.columns, `${indent}  `, indent) +
    term.from.map((from) => formatTerm(shown, from, term.of ?? parent, depth + 1)).join('')
  );
}
