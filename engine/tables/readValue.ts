import { readKind } from '../quick/index.ts';
import { type CabinetContent, positionKeeping, type UnitRecord, unitKinds } from '../schema/index.ts';
import type { Column } from './columns.ts';
import { readDecimal } from './csv.ts';
import type { TableWords } from './makeTable.ts';
import { indexNames } from './nameIndex.ts';

/** Why a cell cannot be taken. */
export type DoubtCode =
  | 'not-a-number'
  | 'word-unknown'
  | 'name-unknown'
  | 'name-of-several'
  | 'value-refused'
  | 'designation-missing'
  | 'kind-missing'
  | 'unit-missing'
  | 'record-of-several'
  | 'never-on-chain'
  | 'position-taken'
  | 'position-gap'
  | 'port-taken'
  | 'row-doubled';

/** A value that was read, or why it was not. */
export type ReadValue = { readonly ok: true; readonly value: unknown } | { readonly ok: false; readonly code: DoubtCode };

const took = (value: unknown): ReadValue => ({ ok: true, value });
const doubted = (code: DoubtCode): ReadValue => ({ ok: false, code });
const plain = (text: string): string => text.trim().toLowerCase();

/** Reads a cell that is not empty by the form of its column. Names are looked up in the content as it is so far. */
export function readValue(
  content: CabinetContent,
  { form }: Pick<Column, 'form'>,
  text: string,
  words: TableWords,
  before: unknown,
): ReadValue {
  switch (form) {
    case 'number':
    case 'count': {
      const number = readDecimal(text);
      return number === null || (form === 'count' && !Number.isInteger(number)) ? doubted('not-a-number') : took(number);
    }
    case 'yes-no':
      return readYesNo(text, words);
    case 'kind': {
      const word = readWord(text, unitKinds, words.kinds);
      const kind = word.ok ? null : readKind(text);
      return kind === null ? word : took(kind);
    }
    case 'position-kept':
      return readWord(text, positionKeeping, words.positionKept);
    case 'conductor':
      return readWord(text, ['class-1-2', 'class-5', 'class-5-tinned'] as const, words.conductors);
    case 'unit':
      return findOne(content.units ?? [], text, ({ designation }) => designation);
    case 'type':
      return findOne(content.types ?? [], text, ({ name }) => name);
    case 'fibre':
      return findOne(content.fibres ?? [], text, ({ name }) => name);
    case 'chain-or-unit': {
      const chain = (content.chains ?? []).find(({ id, number }) => id === text.trim() || plain(words.chainPort(number)) === plain(text));
      if (chain !== undefined) return took({ chain: chain.id });
      const unit = findOne(content.units ?? [], text, ({ designation }) => designation);
      return unit.ok ? took({ unit: unit.value }) : unit;
    }
    case 'axes':
      return took(readAxes(text, before));
    default:
      return took(form === 'line' ? text.trim() : text);
  }
}

function readYesNo(text: string, words: TableWords): ReadValue {
  const word = plain(text);
  if (word === plain(words.yes) || word === 'true' || word === '1' || word === 'x') return took(true);
  return word === plain(words.no) || word === 'false' || word === '0' ? took(false) : doubted('word-unknown');
}

function readWord<V extends string>(text: string, values: readonly V[], labels: Readonly<Record<V, string>>): ReadValue {
  const found = values.find((value) => value === text.trim() || plain(labels[value]) === plain(text));
  return found === undefined ? doubted('word-unknown') : took(found);
}

/** An id wins over a name; a name that several bear finds none of them. */
function findOne<R extends { readonly id: string }>(list: readonly R[], text: string, nameOf: (record: R) => string): ReadValue {
  const wanted = text.trim();
  const { byId, byName, byPlainName } = indexNames(list, nameOf);
  const found = byId.get(wanted);
  if (found !== undefined) return took(found.id);
  const named = byName.get(wanted) ?? byPlainName.get(plain(wanted)) ?? [];
  const [only] = named;
  if (only === undefined) return doubted('name-unknown');
  return named.length > 1 ? doubted('name-of-several') : took(only.id);
}

/** Names parted by commas; an axis of that name keeps what else is known of it. */
function readAxes(text: string, before: unknown): NonNullable<UnitRecord['axes']> {
  const known = (Array.isArray(before) ? before : []) as NonNullable<UnitRecord['axes']>; // the record's own axes
  return text
    .split(/[,;]/)
    .map((name) => name.trim())
    .filter((name) => name !== '')
    .map((name) => known.find((axis) => axis.name === name) ?? { name });
}
