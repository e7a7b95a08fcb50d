import type { CabinetContent, UnitRecord } from '../schema/index.ts';
import type { Change, OfThing } from './changes.ts';
import type { Matching } from './matching.ts';
import { type EditedList, editedLists } from './types.ts';

type Values = ReadonlyMap<string, unknown>;

/** Told by changes of their own, or no field at all. */
const elsewhere: Readonly<Record<string, readonly string[]>> = {
  units: ['id', 'row', 'slot'],
  links: ['id', 'upper', 'lower'],
  leads: ['id', 'from', 'to'],
};

/** Fields that hold the id of something, and of which list. */
const references: Readonly<Record<string, EditedList>> = {
  type: 'types',
  fibre: 'fibres',
  legend: 'legends',
  defaultLegend: 'legends',
  dcLinkSupply: 'units',
  unit: 'units',
};

/** Fields that differ, of everything that both cabinets have; and boards and units that sit elsewhere now, by serial number. */
export function compareFields(before: CabinetContent, after: CabinetContent, matching: Matching): readonly Change[] {
  const exchanged = findExchanged(before, after, matching);
  // A serial number that changed is told by the exchange, unless one of the two numbers came from or went to nowhere.
  const byExchange = (change: Change) => change.kind === 'changed' && change.of.list === 'units' && isTold(change, exchanged);
  return [
    ...exchanged,
    ...editedLists.flatMap((list) => ofList(list, before, after, matching)).filter((change) => !byExchange(change)),
    ...ofRecord({ list: 'cabinet', before: before.id, after: after.id }, bare(before), bare(after), matching),
    ...ofController(before, after, matching),
  ];
}

type Exchanged = Extract<Change, { kind: 'exchanged' }>;

/** A serial number that was in another unit before. */
function findExchanged(before: CabinetContent, after: CabinetContent, matching: Matching): readonly Exchanged[] {
  return (['board', 'unit'] as const).flatMap((part) => {
    const serialOf = (unit: UnitRecord) => (part === 'board' ? unit.board?.serial : unit.serial)?.trim() || undefined;
    const was = onlyHolders(before.units ?? [], serialOf);
    const is = onlyHolders(after.units ?? [], serialOf);
    return [...is].flatMap(([serial, to]): Exchanged[] => {
      const from = was.get(serial);
      const there = from === undefined ? undefined : matching.units.toAfter.get(from);
      const here = matching.units.toBefore.get(to);
      if (from === undefined || there === to || there === undefined || here === undefined) return [];
      return [{ kind: 'exchanged', of: { list: 'units', before: here, after: to }, part, serial, was: from, is: to }];
    });
  });
}

/** Serial numbers that one unit alone bears, with that unit. */
function onlyHolders(units: readonly UnitRecord[], serialOf: (unit: UnitRecord) => string | undefined): ReadonlyMap<string, string> {
  const holders = new Map<string, string>();
  const doubled = new Set<string>();
  for (const unit of units) {
    const serial = serialOf(unit);
    if (serial === undefined) continue;
    if (holders.has(serial)) doubled.add(serial);
    holders.set(serial, unit.id);
  }
  for (const serial of doubled) holders.delete(serial);
  return holders;
}

/** Whether what a unit bore before and what it bears now are both told by exchanges. */
function isTold(change: Extract<Change, { kind: 'changed' }>, exchanged: readonly Exchanged[]): boolean {
  const part = change.path === 'board.serial' ? 'board' : change.path === 'serial' ? 'unit' : null;
  const gave = exchanged.some((one) => one.part === part && one.was === change.of.before && one.serial === change.was);
  const got = exchanged.some((one) => one.part === part && one.is === change.of.after && one.serial === change.is);
  return (gave || change.was === undefined) && (got || change.is === undefined) && (gave || got);
}

function ofList(list: EditedList, before: CabinetContent, after: CabinetContent, matching: Matching): readonly Change[] {
  const records = new Map((after[list] ?? []).map((record) => [record.id, record as object]));
  return (before[list] ?? []).flatMap((record) => {
    const id = matching[list].toAfter.get(record.id);
    const other = id === undefined ? undefined : records.get(id);
    return id === undefined || other === undefined || other === record
      ? []
      : ofRecord({ list, before: record.id, after: id }, record, other, matching);
  });
}

function ofController(before: CabinetContent, after: CabinetContent, matching: Matching): readonly Change[] {
  const of: OfThing = { list: 'controller', before: before.controller?.id ?? null, after: after.controller?.id ?? null };
  if (before.controller === undefined && after.controller === undefined) return [];
  if (after.controller === undefined) return [{ kind: 'removed', of }];
  if (before.controller === undefined) return [{ kind: 'added', of }];
  return ofRecord(of, before.controller, after.controller, matching);
}

function ofRecord(of: OfThing, before: object, after: object, matching: Matching): readonly Change[] {
  const skipped = elsewhere[of.list] ?? (of.list === 'cabinet' ? [] : ['id']);
  const was = leaves(before, skipped);
  const is = leaves(after, skipped);
  return [...new Set([...was.keys(), ...is.keys()])].flatMap((path): Change[] => {
    const [from, to] = [was.get(path), is.get(path)];
    const list = references[path];
    const same =
      list !== undefined && typeof from === 'string'
        ? matching[list].toAfter.get(from) === to
        : isPictures(path)
          ? samePictures(from, to, matching)
          : equal(from, to);
    return same ? [] : [{ kind: 'changed', of, path, was: from, is: to }];
  });
}

const isPictures = (path: string) => path === 'photos' || path === 'cabinetPhotos';

function samePictures(was: unknown, is: unknown, { photos }: Matching): boolean {
  const list = (value: unknown) => (Array.isArray(value) ? value.map(String) : []);
  return equal(
    list(was).map((id) => photos.toAfter.get(id) ?? '?'),
    list(is),
  );
}

/** The members of a cabinet that are no lists of things. */
function bare(content: CabinetContent): object {
  const lists: readonly string[] = [...editedLists, 'controller'];
  return Object.fromEntries(Object.entries(content).filter(([key]) => !lists.includes(key)));
}

/** Every value of a record by its path; lists are values as they stand. */
function leaves(record: object, skipped: readonly string[]): Values {
  const found = new Map<string, unknown>();
  const walk = (value: unknown, path: string) => {
    if (typeof value === 'object' && value !== null && !Array.isArray(value) && path !== 'extra') {
      for (const [key, member] of Object.entries(value)) walk(member, path === '' ? key : `${path}.${key}`);
    } else if (value !== undefined && !skipped.includes(path)) found.set(path, value);
  };
  for (const [key, value] of Object.entries(record)) if (!skipped.includes(key)) walk(value, key);
  return found;
}

/** Whether two values of a file are the same, whatever the order of their members. */
function equal(a: unknown, b: unknown): boolean {
  if (a === b) return true;
  if (typeof a !== 'object' || typeof b !== 'object' || a === null || b === null) return false;
  if (Array.isArray(a) !== Array.isArray(b)) return false;
  const keys = new Set([...Object.keys(a), ...Object.keys(b)]);
  const [left, right] = [a, b] as readonly Readonly<Record<string, unknown>>[];
  return [...keys].every((key) => equal(left?.[key], right?.[key]));
}
