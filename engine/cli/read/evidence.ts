import type { ChainId, UnitId } from '../../base/index.ts';
import { makeNames, type UsageProblem } from '../../messages/index.ts';
import { type Circumstance, circumstanceKinds, type Evidence, onsets, type Snapshot } from '../../schema/index.ts';
import type { Topology } from '../../topology/index.ts';
import type { GivenArguments } from '../options.ts';
import { type Asked, allOf, makeUsageProblem, refused, understood } from './asked.ts';
import { readDisplay } from './displays.ts';
import { readFeedback, readLead, readLink, readUnit } from './names.ts';
import { readReport } from './reports.ts';
import { readChoice, readNumber } from './values.ts';

/**
 * The evidence of a run: that of a case, if there is one, with what the command line says put into its last snapshot. A display or
 * report that is given replaces what the snapshot says of the same unit or chain, and is refused where the command line says two things of
 * it; circumstances are added.
 */
export function readEvidence(topology: Topology, before: Evidence | null, given: GivenArguments): Asked<Evidence> {
  const all = <T>(option: string, read: (text: string) => Asked<T>) => allOf((given.options.get(option) ?? []).map(read));
  const one = <T>(option: string, read: (text: string) => Asked<T>): Asked<T | undefined> => {
    const text = given.options.get(option)?.[0];
    return text === undefined ? understood(undefined) : read(text);
  };
  const displays = all('display', (text) => readDisplay(topology, text));
  const reports = all('report', (text) => readReport(topology, text));
  const circumstances = all('circumstance', (text) => readCircumstance(topology, text));
  const onset = one('onset', (text) => readChoice('--onset', text, [...onsets, 'unknown']));
  const halted = one('halted', (text) => readChoice('--halted', text, ['yes', 'no']));
  const days = one('days', (text) => readNumber('--days', text, 0));
  if (!displays.ok || !reports.ok || !circumstances.ok || !onset.ok || !halted.ok || !days.ok) {
    const problems: UsageProblem[] = [displays, reports, circumstances, onset, halted, days].flatMap((asked) =>
      asked.ok ? [] : asked.problems,
    );
    return { ok: false, problems };
  }
  const names = makeNames(topology);
  const contradictions = [
    ...findContradictions('display', given, displays.value, ({ unit }) => names.unit(unit as UnitId)), // was read as a unit of this cabinet
    ...findContradictions('report', given, reports.value, ({ chain }) => names.chain(chain as ChainId)), // as above
  ];
  if (contradictions.length > 0) return { ok: false, problems: contradictions };
  const earlier = before?.snapshots ?? [];
  const last: Snapshot = earlier[earlier.length - 1] ?? {};
  const snapshot: Snapshot = {
    ...last,
    ...(onset.value === undefined ? {} : { onset: onset.value }),
    ...(halted.value === undefined ? {} : { halted: halted.value === 'yes' }),
    displays: replaced(last.displays ?? [], displays.value, ({ unit }) => unit),
    reports: replaced(last.reports ?? [], reports.value, ({ chain }) => chain),
  };
  const daysSinceWhole = days.value ?? before?.daysSinceWhole;
  return understood({
    snapshots: [...earlier.slice(0, -1), snapshot],
    circumstances: [...(before?.circumstances ?? []), ...circumstances.value],
    ...(daysSinceWhole === undefined ? {} : { daysSinceWhole }),
    ...(before?.rates === undefined ? {} : { rates: before.rates }),
  });
}

/** Things of which an option, given several times, says different things. */
function findContradictions<T>(option: 'display' | 'report', given: GivenArguments, read: readonly T[], nameOf: (one: T) => string) {
  const texts = given.options.get(option) ?? [];
  const said = new Map<string, { readonly seen: string; readonly text: string }[]>();
  for (const [index, one] of read.entries()) {
    said.set(nameOf(one), [...(said.get(nameOf(one)) ?? []), { seen: JSON.stringify(one), text: texts[index] ?? '' }]);
  }
  return [...said].flatMap(([name, sayings]): UsageProblem[] =>
    new Set(sayings.map(({ seen }) => seen)).size > 1
      ? [makeUsageProblem('said-differently', { option: `--${option}`, name, values: sayings.map(({ text }) => text) })]
      : [],
  );
}

/** The old ones without those that a new one speaks of, then the new ones. */
function replaced<T>(old: readonly T[], added: readonly T[], key: (one: T) => string): T[] {
  const byKey = new Map([...old, ...added].map((one) => [key(one), one]));
  return [...byKey.values()];
}

/** `KIND` or `KIND:NAME,NAME`: something that makes some faults likelier, and what it concerns. */
export function readCircumstance(topology: Topology, text: string): Asked<Circumstance> {
  const colon = text.indexOf(':');
  const kind = readChoice('--circumstance', colon < 0 ? text : text.slice(0, colon), circumstanceKinds);
  if (!kind.ok) return kind;
  const names =
    colon < 0
      ? []
      : text
          .slice(colon + 1)
          .split(',')
          .filter((name) => name.trim() !== '');
  const subjects = allOf(names.map((name) => readSubject(topology, name.trim())));
  if (!subjects.ok) return subjects;
  return understood({ kind: kind.value, ...(subjects.value.length > 0 ? { subjects: [...subjects.value] } : {}) });
}

/** Anything that a circumstance can concern. */
function readSubject(topology: Topology, name: string): Asked<string> {
  const readers = [readUnit, readLink, readLead, readFeedback];
  for (const read of readers) {
    const asked = read(topology, name);
    if (asked.ok) return understood<string>(asked.value);
  }
  const unit = readUnit(topology, name);
  const unknown = unit.ok ? undefined : unit.problems[0];
  if (unknown?.code === 'name-unknown') return refused('name-unknown', { thing: 'any', name, near: unknown.facts.near });
  return unit;
}
