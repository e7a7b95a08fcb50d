import type { ChainPosition, Change, ChangeKind, FeedSource, OfThing, PlugPlace } from '../edit/index.ts';
import type { CabinetContent } from '../schema/index.ts';
import { wordFieldValue } from './fieldChoices.ts';
import { wordField } from './fields.ts';
import type { Names } from './names.ts';
import { wordCount, wordList } from './numbers.ts';

/*
 * What differs between two cabinets, in words.
 */

/** One cabinet of a comparison, with its names. */
export interface ComparedSide {
  readonly content: CabinetContent;
  readonly names: Names;
}

/** A change as the cells of a table. `was` and `is` are empty where one of the two cabinets does not have the thing. */
export interface ChangeWords {
  readonly kind: string;
  readonly thing: string;
  /** What of the thing: a field with its unit, an end, a board. */
  readonly what: string;
  readonly was: string;
  readonly is: string;
}

export const changeKindWords: { readonly [K in ChangeKind]: string } = {
  added: 'added',
  removed: 'removed',
  exchanged: 'exchanged',
  'moved-in-chain': 'moved in the chain',
  'moved-in-row': 'moved in the rows',
  shifted: 'shifted',
  replugged: 're-plugged',
  reconnected: 'connected elsewhere',
  changed: 'changed',
};

const ends = { upper: 'upper plug', lower: 'lower plug', from: 'from', to: 'to' } as const;
const nothing = 'nothing';
const onNoChain = 'on no chain';
const noPlace = 'no place';

/** Words of one change; each side is named as its own cabinet names it. */
export function wordChange(change: Change, before: ComparedSide, after: ComparedSide): ChangeWords {
  const head = { kind: changeKindWords[change.kind], thing: thingOf(change.of, before, after) };
  switch (change.kind) {
    case 'added':
    case 'removed':
      return { ...head, what: '', was: '', is: '' };
    case 'moved-in-chain':
      return { ...head, what: 'place in the chain', was: chainPlace(change.was, before), is: chainPlace(change.is, after) };
    case 'moved-in-row':
    case 'shifted':
      return { ...head, what: 'place in the cabinet', was: rowPlace(change.was), is: rowPlace(change.is) };
    case 'exchanged': {
      const what = `${change.part === 'board' ? 'board' : 'unit'} with serial number ${change.serial}`;
      return { ...head, what, was: `in ${before.names.unit(change.was)}`, is: `in ${after.names.unit(change.is)}` };
    }
    case 'replugged':
      return { ...head, what: ends[change.end], was: plugPlace(change.was, before), is: plugPlace(change.is, after) };
    case 'reconnected':
      return { ...head, what: ends[change.end], was: feedPlace(change.was, before), is: feedPlace(change.is, after) };
    case 'changed': {
      const { label, unit } = wordField(change.path);
      const value = (one: unknown, side: ComparedSide) => (one === undefined ? '–' : named(change.path, one, side));
      const what = unit === undefined ? label : `${label}, ${unit}`;
      return { ...head, what, was: value(change.was, before), is: value(change.is, after) };
    }
  }
}

function thingOf({ list, before: a, after: b }: OfThing, before: ComparedSide, after: ComparedSide): string {
  const [id, side] = b === null ? [a ?? '', before] : [b, after];
  if (list === 'cabinet') return 'the cabinet';
  if (list === 'controller') return side.names.controller();
  if (list === 'types') return `type ${side.names.type(id)}`;
  if (list === 'legends' || list === 'fibres') {
    const name = side.content[list]?.find((record) => record.id === id)?.name.trim() || id;
    return `${list === 'legends' ? 'legend' : 'fibre'} ${name}`;
  }
  if (list === 'photos') return `picture ${side.content.photos?.find((photo) => photo.id === id)?.caption?.trim() || id}`;
  if (list === 'spares') return `spare ${side.content.spares?.find((spare) => spare.id === id)?.designation?.trim() || id}`;
  return side.names.thing(id);
}

function chainPlace(place: ChainPosition | null, { names }: ComparedSide): string {
  return place === null ? onNoChain : `${names.chain(place.chain)}, position ${place.position}`;
}

function rowPlace(place: { readonly row: number; readonly slot: number } | null): string {
  return place === null ? noPlace : `row ${place.row}, slot ${place.slot}`;
}

function plugPlace(place: PlugPlace | null, { names }: ComparedSide): string {
  if (place === null) return nothing;
  return 'chain' in place ? `the controller’s ${names.chain(place.chain)}` : names.unit(place.unit);
}

function feedPlace(place: FeedSource | null, { names, content }: ComparedSide): string {
  if (place === null) return nothing;
  const output = content.units?.find(({ id }) => id === place.unit)?.supply?.outputs?.find(({ id }) => id === place.output)?.name;
  return output === undefined ? names.unit(place.unit) : `${names.unit(place.unit)}, ${output}`;
}

/** A value of a field; ids of types, fibres and legends by their names. */
function named(path: string, value: unknown, { content, names }: ComparedSide): string {
  const list = { type: content.types, fibre: content.fibres, legend: content.legends, defaultLegend: content.legends }[path];
  const record = typeof value === 'string' ? list?.find(({ id }) => id === value) : undefined;
  if (record !== undefined) return record.name;
  if (typeof value === 'string' && (path === 'dcLinkSupply' || path === 'unit')) return names.unit(value);
  return wordFieldValue(path, value);
}

export const comparisonWords = {
  title: 'Compare',
  same: 'No differences.',
  /** "2 units added, 1 cable re-plugged, …" in short: how many changes of each kind. */
  summary: (counts: readonly { readonly kind: ChangeKind; readonly count: number }[]) =>
    wordList(counts.map(({ kind, count }) => `${count} ${changeKindWords[kind]}`)),
  differences: (count: number) => wordCount(count, 'difference'),
  with: (kind: 'saved' | 'file', name: string) =>
    kind === 'file' ? `with ${name}` : name === '' ? 'with what it was at first' : `with what was last saved in ${name}`,
  which: 'Which changes are listed',
  all: 'all',
  close: 'Stop comparing',
  machine: {
    title: 'New machine from this design',
    about: (design: string) =>
      `Everything of “${design}” comes along, but for serial numbers, measured losses and the revision. The new cabinet says on which design it is based, so that the two can be compared.`,
    name: 'Name of the cabinet',
    number: 'Machine number',
    make: 'Make the machine',
    cancel: 'Cancel',
  },
  heads: { kind: 'Change', thing: 'Thing', what: 'What', was: 'Before', is: 'Now' },
} as const;
