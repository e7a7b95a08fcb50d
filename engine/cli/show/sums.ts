import {
  cautionsDefer,
  directionWords,
  headings,
  type Names,
  startSentence,
  sumHeadings,
  sumStatements,
  termStatusWords,
  verdictWords,
  wordFigureChange,
  wordMissing,
  wordTerm,
  wordTermValue,
  wordWaitingTime,
} from '../../messages/index.ts';
import type { FibreBudget, FigureChange, Loading, Sums, SumTerm } from '../../sums/index.ts';
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
    section(sumHeadings.light, formatLight(shown) || paragraph(sumStatements.noChains, columns)),
    section(sumHeadings.axes, formatAxes(shown)),
    section(sumHeadings.supplies, formatSupplies(shown)),
    section(sumHeadings.feed, formatFeed(shown)),
    section(
      sumHeadings.dcLink,
      formatDcLinks(shown) + paragraph(wordWaitingTime(sums.waitingTimeS), columns) + paragraph(cautionsDefer, columns),
    ),
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

const number = (head: string): Column => ({ head, align: 'right' });

const wordShare = (share: number | null): string => (share === null ? '–' : `${Math.round(share * 100)} %`);

/** A table, and below it, where explanations are wanted, each row's terms. */
function table(
  shown: ShownSums,
  columns: readonly Column[],
  rows: readonly { readonly cells: readonly string[]; readonly head: string; readonly terms: readonly SumTerm[]; readonly of: string }[],
): string {
  const text = formatTable(
    columns,
    rows.map(({ cells }) => cells),
    shown.columns,
  );
  if (!shown.explain || rows.length === 0) return text;
  const explained = rows.map(
    ({ head, terms, of }) =>
      paragraph(`${startSentence(head)}:`, shown.columns, '  ') + terms.map((term) => formatTerm(shown, term, of, 2)).join(''),
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

function formatLight(shown: ShownSums): string {
  const { names, sums } = shown;
  return table(
    shown,
    [
      { head: headings.cable },
      { head: sumHeadings.way },
      number(sumHeadings.loss),
      number(sumHeadings.margin),
      number(sumHeadings.tooMuch),
      number(sumHeadings.length),
      number(sumHeadings.lengthAllowed),
      { head: sumHeadings.how },
    ],
    sums.optical.map((budget) => {
      const { link, direction, loss, margin, overloadMargin } = budget;
      const length = budget.limits[0]?.length ?? null;
      return {
        cells: [
          names.link(link),
          directionWords[direction].label,
          wordTermValue(loss),
          wordTermValue(margin),
          wordTermValue(overloadMargin),
          length === null ? '' : wordTermValue(length),
          leastLimit(budget),
          howKnown(loss, margin),
        ],
        head: `${names.link(link)}, ${directionWords[direction].label}`,
        terms: [margin, overloadMargin, ...budget.limits.map(({ limit }) => limit)],
        of: link,
      };
    }),
  );
}

/** Assumed where the margin is; else measured where the loss was. */
function howKnown(loss: SumTerm, margin: SumTerm): string {
  return termStatusWords[margin.status === 'assumed' ? 'assumed' : loss.status].label;
}

function leastLimit({ limits }: FibreBudget): string {
  const [least] = [...limits].sort((a, b) => (a.limit.value ?? 0) - (b.limit.value ?? 0));
  return least === undefined ? '' : wordTermValue(least.limit);
}

function formatAxes(shown: ShownSums): string {
  const { names, sums } = shown;
  return table(
    shown,
    [
      { head: headings.chain },
      { head: sumHeadings.cycleClass },
      number(sumHeadings.axes),
      number(sumHeadings.allowed),
      number(sumHeadings.left),
      number(sumHeadings.wire),
    ],
    sums.axes.map(({ chain, cycleClass, axes, limit, left, wireShare }) => ({
      cells: [
        names.chain(chain),
        cycleClass ?? '–',
        ...[axes, limit, left].map(wordTermValue),
        wireShare === null ? '' : wordTermValue(wireShare),
      ],
      head: names.chain(chain),
      terms: [left, ...(wireShare === null ? [] : [wireShare])],
      of: chain,
    })),
  );
}

function formatSupplies(shown: ShownSums): string {
  const { names, sums } = shown;
  const row = (of: string, name: string, what: string, { load, rated, share }: Loading) => ({
    cells: [name, what, wordTermValue(load), wordTermValue(rated), wordShare(share)],
    head: `${name}, ${what}`,
    terms: [load, rated],
    of,
  });
  return table(
    shown,
    [{ head: headings.unit }, { head: headings.what }, number(sumHeadings.load), number(sumHeadings.rated), number(sumHeadings.used)],
    sums.feed.supplies.flatMap(({ supply, steady, inrush, outputs }) => [
      row(supply, names.unit(supply), sumHeadings.steady, steady),
      row(supply, names.unit(supply), sumHeadings.inrush, inrush),
      ...outputs.map((output) => row(supply, names.unit(supply), sumHeadings.output(output.name), output)),
    ]),
  );
}

function formatFeed(shown: ShownSums): string {
  const { names, sums, columns } = shown;
  const text = table(
    shown,
    [
      { head: headings.unit },
      { head: sumHeadings.fedFrom },
      number(sumHeadings.load),
      number(sumHeadings.voltage),
      number(sumHeadings.needs),
      number(sumHeadings.spare),
      { head: sumHeadings.verdict },
    ],
    sums.feed.units.map(({ unit, voltage, load, minimum, headroom, verdict }) => ({
      cells: [
        names.unit(unit),
        sums.feed.leads
          .filter(({ to }) => to === unit)
          .map(({ from }) => names.unit(from))
          .join(', '),
        ...[load, voltage, minimum, headroom].map(wordTermValue),
        verdictWords[verdict],
      ],
      head: names.unit(unit),
      terms: [headroom.value === null ? voltage : headroom],
      of: unit,
    })),
  );
  const first = sums.feed.units.find(({ unit }) => unit === sums.feed.firstToFail);
  const says =
    first === undefined
      ? ''
      : (first.headroom.value ?? 0) < 0
        ? sumStatements.failsAlready(names.unit(first.unit))
        : sumStatements.firstToFail(names.unit(first.unit), wordTermValue(first.headroom));
  return [text, says && paragraph(says, columns), sums.feed.tooMeshed ? paragraph(sumStatements.tooMeshed, columns) : '']
    .filter(Boolean)
    .join('');
}

function formatDcLinks(shown: ShownSums): string {
  const { names, sums } = shown;
  return table(
    shown,
    [
      { head: headings.unit },
      number(sumHeadings.power),
      number(sumHeadings.rated),
      number(sumHeadings.used),
      number(sumHeadings.capacitance),
      { head: sumHeadings.discharge },
    ],
    sums.dcLinks.map(({ supply, power, rated, share, capacitance, discharge }) => ({
      cells: [
        names.unit(supply),
        wordTermValue(power),
        wordTermValue(rated),
        wordShare(share),
        wordTermValue(capacitance),
        discharge.value === null ? sumStatements.dischargeNotKnown : wordTermValue(discharge),
      ],
      head: names.unit(supply),
      terms: [power, discharge],
      of: supply,
    })),
  );
}
