import { type CabinetContent, type ChainRecord, type LinkRecord, recordSchemas } from '../schema/index.ts';
import { type Column, type ColumnKey, columnsOf, listOfKind, type TableKind } from './columns.ts';
import type { Doubt, FieldChange, RawTable } from './importTypes.ts';
import { isObject, type TableWords, writeValue } from './makeTable.ts';
import type { Mapping } from './mapping.ts';
import { type PlaceWish, placeUnits } from './placeUnits.ts';
import { readValue } from './readValue.ts';
import { type Draft, Records } from './records.ts';

/** How a list is taken in. */
export interface ImportOptions {
  /** Which column of the list is which of ours. */
  readonly mapping: Mapping;
  /** Whether a value that is there already may be replaced by another one. Empty fields are filled in any case. */
  readonly replace: boolean;
  /** Whether units are hung on the chains that the list names, with new cables. Not where a list of the cables comes along. */
  readonly place?: boolean;
}

/** What an import would do with one row. `same`: everything in it is so already. */
export interface ImportRow {
  readonly line: number;
  readonly name: string;
  readonly does: 'add' | 'change' | 'same' | 'doubtful';
  readonly changes: readonly FieldChange[];
  readonly doubts: readonly Doubt[];
}

/** An import as it would go: what each row does, and the content that comes of it. Nothing is done until somebody takes that content. */
export interface ImportPlan {
  readonly kind: TableKind;
  readonly rows: readonly ImportRow[];
  readonly content: CabinetContent;
}

/** Works out what an import would do. The content that is given is not changed; besides this list only chains and cables of placed units. */
export function planImport(
  content: CabinetContent,
  kind: TableKind,
  table: RawTable,
  words: TableWords,
  options: ImportOptions,
): ImportPlan {
  const list = listOfKind[kind];
  const before = new Map<string, Draft>((content[list] ?? []).map((record) => [record.id, record as Draft])); // every record is an object with an id
  const records = new Records(before.values());
  const taken = new Set([...allIds(content)]);
  const seen = new Set<string>();
  const wishes: PlaceWish[] = [];
  const read = table.rows.map((cells, index): ReadRow => {
    const reader = new RowReader(content, kind, cells, words, options, records);
    const row = reader.read(taken, seen);
    if (row.record !== null) {
      records.set(row.record);
      taken.add(row.record.id);
      seen.add(row.record.id);
      const wish = { row: index, unit: row.record.id, chain: reader.cell('chain'), position: reader.cell('position') };
      if (options.place === true && kind === 'units' && `${wish.chain}${wish.position}`.trim() !== '') wishes.push(wish);
    }
    return row;
  });
  // The records went through the schema one by one.
  const withRecords = (): CabinetContent => ({
    ...content,
    [list]: records.list() as unknown as NonNullable<CabinetContent[typeof list]>,
  });
  const newId = (base: string) => {
    const id = freeId(base, taken);
    taken.add(id);
    return id;
  };
  const placed = wishes.length === 0 ? null : placeUnits(withRecords(), wishes, words, newId);
  const rows = read.map((row, index): ImportRow => {
    const line = table.lines[index] ?? index + 2;
    const doubt = placed?.doubts.get(index);
    if (doubt !== undefined && row.record !== null) {
      const was = before.get(row.record.id);
      if (was === undefined) records.delete(row.record.id);
      else records.set(was);
      return { line, name: row.name, does: 'doubtful', changes: [], doubts: [doubt] };
    }
    const more = placed?.changes.get(index) ?? [];
    const does = row.does === 'same' && more.some(({ isTaken }) => isTaken) ? 'change' : row.does;
    return { line, name: row.name, does, changes: [...row.changes, ...more], doubts: row.doubts };
  });
  const isChanged = rows.some(({ does }) => does === 'add' || does === 'change');
  if (!isChanged) return { kind, rows, content };
  const isHung = placed !== null && placed.links.length > (content.links?.length ?? 0);
  return {
    kind,
    rows,
    content: { ...withRecords(), ...(isHung ? { chains: placed.chains as ChainRecord[], links: placed.links as LinkRecord[] } : {}) },
  };
}

interface ReadRow extends Pick<ImportRow, 'name' | 'does' | 'changes' | 'doubts'> {
  readonly record: Draft | null;
}

class RowReader {
  private readonly columns: readonly (Column & { readonly key: ColumnKey })[];

  constructor(
    private readonly content: CabinetContent,
    private readonly kind: TableKind,
    private readonly cells: readonly string[],
    private readonly words: TableWords,
    private readonly options: ImportOptions,
    private readonly records: Records,
  ) {
    this.columns = columnsOf(kind).filter(({ path }) => path.length > 0);
  }

  read(taken: ReadonlySet<string>, seen: ReadonlySet<string>): ReadRow {
    const name = this.cell('designation') || this.cell('id');
    const found = this.findRecord();
    if (found === 'several') return this.doubtful(name, [{ code: 'record-of-several', key: 'designation', text: name }]);
    if (found !== null && seen.has(found.id)) return this.doubtful(name, [{ code: 'row-doubled', key: null, text: name }]);
    const start: Draft = found ?? { id: this.newId(taken), ...(this.kind === 'units' ? { designation: '' } : {}) };
    const changes: FieldChange[] = [];
    const doubts: Doubt[] = [];
    let record = start;
    for (const column of this.columns) {
      const text = this.cell(column.key);
      if (column.key === 'id' || text.trim() === '') continue;
      const before = valueAt(start, column.path);
      // What names something that is not there stays as it is, if the file says the same.
      if (before !== undefined && writeValue(this.content, column.form, before, this.words) === text) continue;
      const read = readValue(this.content, column, text, this.words, before);
      if (!read.ok) doubts.push({ code: read.code, key: column.key, text });
      else if (!isEqual(before, read.value)) {
        const isTaken = before === undefined || before === '' || this.options.replace;
        changes.push({ key: column.key, before: before === undefined ? '' : showValue(before), after: text, isTaken });
        if (isTaken) record = withValue(record, column.path, read.value);
      }
    }
    if (found === null) doubts.push(...this.missing(record));
    if (doubts.length === 0) doubts.push(...this.refusals(record));
    if (doubts.length > 0) return { ...this.doubtful(name, doubts), changes };
    const does = found === null ? 'add' : changes.some(({ isTaken }) => isTaken) ? 'change' : 'same';
    return { name, does, changes, doubts, record };
  }

  private doubtful(name: string, doubts: readonly Doubt[]): ReadRow {
    return { name, does: 'doubtful', changes: [], doubts, record: null };
  }

  /** What stands in the column that is mapped to a key; empty where none is. */
  cell(key: ColumnKey): string {
    const index = this.options.mapping[key];
    return index === undefined || index < 0 ? '' : (this.cells[index] ?? '');
  }

  /** The record that a row is about: by its id, else by its designation. */
  private findRecord(): Draft | null | 'several' {
    const id = this.cell('id').trim();
    const byId = this.records.get(id);
    if (byId !== undefined) return byId;
    const name = this.cell('designation').trim();
    const nameless = this.kind === 'cables' ? this.findNameless() : null;
    if (name === '' || nameless !== null) return nameless;
    const named = this.records.named(name);
    return named.length > 1 ? 'several' : (named[0] ?? null);
  }

  /** A cable that has no name yet and lies where the row says: a list of units may have brought it. */
  private findNameless(): Draft | null {
    const at = (key: 'upper' | 'lower') => {
      const column = this.columns.find((one) => one.key === key);
      const text = this.cell(key);
      if (column === undefined || text.trim() === '') return null;
      const read = readValue(this.content, column, text, this.words, undefined);
      return read.ok ? read.value : null;
    };
    const lower = at('lower');
    const upper = at('upper');
    return lower === null || upper === null ? null : this.records.nameless(upper, lower);
  }

  /** The file's own id where it can be one, else one made from the designation. */
  private newId(taken: ReadonlySet<string>): string {
    const wanted = this.cell('id').trim();
    if (/^[A-Za-z0-9][A-Za-z0-9._-]{0,63}$/.test(wanted) && !taken.has(wanted)) return wanted;
    return freeId(this.cell('designation'), taken, this.kind);
  }

  /** What a new record cannot do without. */
  private missing(record: Draft): readonly Doubt[] {
    const lacks = (field: string) => record[field] === undefined || record[field] === '';
    if (this.kind === 'units') {
      return [
        ...(lacks('designation') ? [{ code: 'designation-missing', key: 'designation', text: '' } as const] : []),
        ...(lacks('kind') && this.cell('kind') === '' ? [{ code: 'kind-missing', key: 'kind', text: '' } as const] : []),
      ];
    }
    return this.kind === 'feedbacks' && lacks('unit') && this.cell('unit') === '' ? [{ code: 'unit-missing', key: 'unit', text: '' }] : [];
  }

  /** What the schema of the file does not take: too long, negative, too large. */
  private refusals(record: Draft): readonly Doubt[] {
    const parsed = recordSchemas[listOfKind[this.kind]].safeParse(record);
    if (parsed.success) return [];
    return parsed.error.issues.map(({ path }): Doubt => {
      const at = path.map(String);
      const column = this.columns.find((one) => one.path.every((field, index) => at[index] === field));
      return { code: 'value-refused', key: column?.key ?? null, text: column === undefined ? at.join('.') : this.cell(column.key) };
    });
  }
}

/** An id that nothing has yet, made of a name. */
function freeId(name: string, taken: ReadonlySet<string>, otherwise = ''): string {
  const base =
    name
      .replace(/[^A-Za-z0-9._-]+/g, '-')
      .replace(/^[^A-Za-z0-9]+/, '')
      .slice(0, 50) || otherwise;
  for (let number = 1; ; number++) {
    const id = number === 1 ? base : `${base}-${number}`;
    if (!taken.has(id)) return id;
  }
}

const valueAt = (record: unknown, path: readonly string[]): unknown =>
  path.reduce<unknown>((at, field) => (isObject(at) ? at[field] : undefined), record);

function withValue<R extends object>(record: R, [first = '', ...rest]: readonly string[], value: unknown): R {
  const inner = (record as Readonly<Record<string, unknown>>)[first];
  return { ...record, [first]: rest.length === 0 ? value : withValue(isObject(inner) ? inner : {}, rest, value) };
}

const isEqual = (a: unknown, b: unknown): boolean => a === b || (isObject(a) && isObject(b) && JSON.stringify(a) === JSON.stringify(b));

function showValue(value: unknown): string {
  if (Array.isArray(value)) return value.map((one) => (isObject(one) ? String(one['name']) : String(one))).join(', ');
  if (isObject(value)) return Object.values(value).map(String).join(' ');
  return String(value);
}

function* allIds(content: CabinetContent): Generator<string> {
  for (const list of [content.units, content.links, content.leads, content.feedbacks, content.chains, content.spares]) {
    for (const { id } of list ?? []) yield id;
  }
  if (content.controller !== undefined) yield content.controller.id;
}
