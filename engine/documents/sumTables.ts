import {
  directionWords,
  headings,
  type Names,
  sumHeadings,
  sumStatements,
  termStatusWords,
  verdictWords,
  wordTermValue,
} from '../messages/index.ts';
import type { FibreBudget, Loading, Sums, SumTerm } from '../sums/index.ts';

/** A column of a table of sums. */
export interface SumColumn {
  readonly head: string;
  readonly isNumber: boolean;
}

/** One line of a table of sums, with what its figures were worked out from. */
export interface SumLine {
  readonly cells: readonly string[];
  /** What it is about: "-WH3, outbound". */
  readonly about: string;
  readonly terms: readonly SumTerm[];
  /** Id of the link, chain or unit that it is about. */
  readonly of: string;
}

export type SumTableName = 'light' | 'axes' | 'supplies' | 'feed' | 'dcLink';

/** A table of sums, for every place where sums are shown line by line. */
export interface SumTable {
  readonly name: SumTableName;
  readonly head: string;
  readonly columns: readonly SumColumn[];
  readonly lines: readonly SumLine[];
  /** What is said below it. */
  readonly says: readonly string[];
}

const text = (head: string): SumColumn => ({ head, isNumber: false });
const number = (head: string): SumColumn => ({ head, isNumber: true });
const wordShare = (share: number | null): string => (share === null ? '–' : `${Math.round(share * 100)} %`);

/** Every table of the sums, in the order in which they are read; also those without a line. */
export function listSumTables(names: Names, sums: Sums): readonly SumTable[] {
  return [light(names, sums), axes(names, sums), supplies(names, sums), feed(names, sums), dcLinks(names, sums)];
}

function light(names: Names, sums: Sums): SumTable {
  return {
    name: 'light',
    head: sumHeadings.light,
    columns: [
      text(headings.cable),
      text(sumHeadings.way),
      number(sumHeadings.loss),
      number(sumHeadings.margin),
      number(sumHeadings.tooMuch),
      number(sumHeadings.length),
      number(sumHeadings.lengthAllowed),
      text(sumHeadings.how),
    ],
    lines: sums.optical.map((budget) => {
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
        about: `${names.link(link)}, ${directionWords[direction].label}`,
        terms: [margin, overloadMargin, ...budget.limits.map(({ limit }) => limit)],
        of: link,
      };
    }),
    says: sums.optical.length === 0 ? [sumStatements.noChains] : [],
  };
}

/** Assumed where the margin is; else measured where the loss was. */
function howKnown(loss: SumTerm, margin: SumTerm): string {
  return termStatusWords[margin.status === 'assumed' ? 'assumed' : loss.status].label;
}

function leastLimit({ limits }: FibreBudget): string {
  const [least] = [...limits].sort((a, b) => (a.limit.value ?? 0) - (b.limit.value ?? 0));
  return least === undefined ? '' : wordTermValue(least.limit);
}

function axes(names: Names, sums: Sums): SumTable {
  return {
    name: 'axes',
    head: sumHeadings.axes,
    columns: [
      text(headings.chain),
      text(sumHeadings.cycleClass),
      number(sumHeadings.axes),
      number(sumHeadings.allowed),
      number(sumHeadings.left),
      number(sumHeadings.wire),
    ],
    lines: sums.axes.map((chain) => ({
      cells: [
        names.chain(chain.chain),
        chain.cycleClass ?? '–',
        ...[chain.axes, chain.limit, chain.left].map(wordTermValue),
        chain.wireShare === null ? '' : wordTermValue(chain.wireShare),
      ],
      about: names.chain(chain.chain),
      terms: [chain.left, ...(chain.wireShare === null ? [] : [chain.wireShare])],
      of: chain.chain,
    })),
    says: [],
  };
}

function supplies(names: Names, sums: Sums): SumTable {
  const line = (of: string, name: string, what: string, { load, rated, share }: Loading): SumLine => ({
    cells: [name, what, wordTermValue(load), wordTermValue(rated), wordShare(share)],
    about: `${name}, ${what}`,
    terms: [load, rated],
    of,
  });
  return {
    name: 'supplies',
    head: sumHeadings.supplies,
    columns: [text(headings.unit), text(headings.what), number(sumHeadings.load), number(sumHeadings.rated), number(sumHeadings.used)],
    lines: sums.feed.supplies.flatMap(({ supply, steady, inrush, outputs }) => [
      line(supply, names.unit(supply), sumHeadings.steady, steady),
      line(supply, names.unit(supply), sumHeadings.inrush, inrush),
      ...outputs.map((output) => line(supply, names.unit(supply), sumHeadings.output(output.name), output)),
    ]),
    says: [],
  };
}

function feed(names: Names, { feed: { units, leads, firstToFail, tooMeshed } }: Sums): SumTable {
  const first = units.find(({ unit }) => unit === firstToFail);
  const says =
    first === undefined
      ? []
      : (first.headroom.value ?? 0) < 0
        ? [sumStatements.failsAlready(names.unit(first.unit))]
        : [sumStatements.firstToFail(names.unit(first.unit), wordTermValue(first.headroom))];
  return {
    name: 'feed',
    head: sumHeadings.feed,
    columns: [
      text(headings.unit),
      text(sumHeadings.fedFrom),
      number(sumHeadings.load),
      number(sumHeadings.voltage),
      number(sumHeadings.needs),
      number(sumHeadings.spare),
      text(sumHeadings.verdict),
    ],
    lines: units.map(({ unit, voltage, load, minimum, headroom, verdict }) => ({
      cells: [
        names.unit(unit),
        leads
          .filter(({ to }) => to === unit)
          .map(({ from }) => names.unit(from))
          .join(', '),
        ...[load, voltage, minimum, headroom].map(wordTermValue),
        verdictWords[verdict],
      ],
      about: names.unit(unit),
      terms: [headroom.value === null ? voltage : headroom],
      of: unit,
    })),
    says: [...says, ...(tooMeshed ? [sumStatements.tooMeshed] : [])],
  };
}

function dcLinks(names: Names, sums: Sums): SumTable {
  return {
    name: 'dcLink',
    head: sumHeadings.dcLink,
    columns: [
      text(headings.unit),
      number(sumHeadings.power),
      number(sumHeadings.rated),
      number(sumHeadings.used),
      number(sumHeadings.capacitance),
      text(sumHeadings.discharge),
    ],
    lines: sums.dcLinks.map(({ supply, power, rated, share, capacitance, discharge }) => ({
      cells: [
        names.unit(supply),
        wordTermValue(power),
        wordTermValue(rated),
        wordShare(share),
        wordTermValue(capacitance),
        discharge.value === null ? sumStatements.dischargeNotKnown : wordTermValue(discharge),
      ],
      about: names.unit(supply),
      terms: [power, discharge],
      of: supply,
    })),
    says: [],
  };
}
