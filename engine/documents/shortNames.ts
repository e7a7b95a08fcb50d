import { doorSheetWords, makeNames, type Names } from '../messages/index.ts';
import type { RichText } from '../paper/index.ts';
import type { CabinetContent } from '../schema/index.ts';
import { buildTopology, type Topology } from '../topology/index.ts';

/** Names for a sheet with narrow columns: what stands before a designation is said once. */
export interface ShortNames {
  readonly topology: Topology;
  readonly names: Names;
  /** What all designations begin with; empty: they have nothing in common. */
  readonly prefix: string;
  /** Where beginnings differ and are long: each with the units that are named without it. */
  readonly beginnings: readonly Beginning[];
}

export interface Beginning {
  readonly prefix: string;
  readonly tails: readonly string[];
}

/** Up to so many signs a designation stands in full whatever it begins with. */
const longestPlain = 14;
const mostParts = 4;

/**
 * What all designations of a cabinet begin with, as far as whole parts: "=G1+C2" of "=G1+C2-TB1" and "=G1+C2-WH1". IEC 81346-1 lets what is
 * common be left out where it is said at one place of the document (from memory). Empty where one has nothing of it, or nothing behind it.
 */
export function commonPrefix(designations: readonly string[]): string {
  const [first = '', ...others] = designations;
  const parts = first.match(/[=+-]+[^=+-]*/g) ?? [];
  if (parts.join('') !== first) return '';
  let prefix = '';
  // The last part names the thing itself.
  for (const part of parts.slice(0, -1)) {
    const longer = prefix + part;
    const goesOn = (name: string) => name.startsWith(longer) && /^[=+-]/.test(name.slice(longer.length));
    if (!others.every(goesOn)) break;
    prefix = longer;
  }
  return prefix;
}

/**
 * The last parts of each designation, as few as tell all of them apart: "-TB1" of "=G1+C2-TB1", "TB1" of "feed_left_TB1". Empty where
 * none is long, or where only long ones tell them apart.
 */
export function shortTails(designations: readonly string[]): ReadonlyMap<string, string> {
  const whole = [...new Set(designations)];
  if (whole.every(({ length }) => length <= longestPlain)) return new Map();
  for (let parts = 1; parts <= mostParts; parts += 1) {
    const tails = whole.map((name) =>
      name
        .split(/(?=[=+-])|(?<=[_\s])/)
        .slice(-parts)
        .join(''),
    );
    const isGood = tails.every((tail) => tail.length > 1 && tail.length <= longestPlain) && new Set(tails).size === tails.length;
    if (isGood) return new Map(whole.map((name, index) => [name, tails[index] ?? name]));
  }
  return new Map();
}

/** Names without what all of them have in common, or else by their last parts. */
export function shortNames(topology: Topology, names: Names): ShortNames {
  const { content } = topology;
  const named: readonly string[] = [
    ...(content.controller === undefined ? [] : [content.controller]),
    ...(content.units ?? []),
    ...(content.links ?? []),
    ...(content.leads ?? []),
    ...(content.feedbacks ?? []),
  ].flatMap((record: { readonly designation?: string | undefined }) => record.designation?.trim() || []);
  const prefix = named.length < 2 ? '' : commonPrefix(named);
  const tails = prefix === '' ? shortTails(named) : new Map(named.map((name) => [name, name.slice(prefix.length)]));
  if (tails.size === 0) return { topology, names, prefix, beginnings: [] };
  const units = (content.units ?? []).flatMap(({ designation }) => designation?.trim() || []);
  const short = buildTopology(renamed(content, tails)).topology;
  return {
    topology: short,
    names: makeNames(short),
    prefix,
    beginnings: prefix === '' ? beginningsOf(units, tails) : [],
  };
}

function beginningsOf(units: readonly string[], tails: ReadonlyMap<string, string>): readonly Beginning[] {
  const found = new Map<string, string[]>();
  for (const unit of units) {
    const tail = tails.get(unit) ?? unit;
    const before = unit.slice(0, unit.length - tail.length);
    if (before !== '') found.set(before, [...(found.get(before) ?? []), tail]);
  }
  return [...found].map(([prefix, own]) => ({ prefix, tails: own }));
}

function renamed(content: CabinetContent, tails: ReadonlyMap<string, string>): CabinetContent {
  const cut = <R extends { readonly designation?: string | undefined }>(record: R): R => {
    const tail = tails.get(record.designation?.trim() ?? '');
    return tail === undefined ? record : { ...record, designation: tail };
  };
  return {
    ...content,
    ...(content.controller === undefined ? {} : { controller: cut(content.controller) }),
    ...(content.units === undefined ? {} : { units: content.units.map(cut) }),
    ...(content.links === undefined ? {} : { links: content.links.map(cut) }),
    ...(content.leads === undefined ? {} : { leads: content.leads.map(cut) }),
    ...(content.feedbacks === undefined ? {} : { feedbacks: content.feedbacks.map(cut) }),
  };
}

/** What was left out of the designations, so that nobody takes one for another. */
export function inFull({ prefix, beginnings }: ShortNames): readonly RichText[] {
  if (prefix !== '') return [[{ text: doorSheetWords.prefix }, { text: prefix, face: 'bold' }]];
  if (beginnings.length === 0) return [];
  return [
    beginnings.flatMap(({ prefix: before, tails }, index) => [
      { text: index === 0 ? doorSheetWords.beginnings : '; ' },
      { text: before, face: 'bold' as const },
      { text: ` ${doorSheetWords.beginBefore(tails)}` },
    ]),
  ];
}
