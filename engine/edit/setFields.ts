import { fail, makeProblem, ok, type Problem, type Result } from '../base/index.ts';
import { shapeProblems } from '../cabinet/index.ts';
import { type CabinetContent, type ControllerRecord, cabinetContent, recordSchemas, type UnitRecord } from '../schema/index.ts';
import { chainName, unitName } from '../topology/index.ts';
import { unplug } from './chainWork.ts';
import type { EditedList, EditResult, RecordOf } from './types.ts';
import { unknownThing, Work } from './work.ts';

/** Where a field stands: in a record of a list, in the controller, or in the cabinet itself. */
export type FieldOwner = { readonly in: EditedList; readonly id: string } | { readonly in: 'controller' } | { readonly in: 'cabinet' };

/** A value as it stands in a file. */
export type FieldValue = string | number | boolean | readonly unknown[] | { readonly [name: string]: unknown };

/** One field and its new value. `path`: names from the record inwards, such as `['control24', 'loadA']`. Null empties the field. */
export interface FieldEdit {
  readonly of: FieldOwner;
  readonly path: readonly string[];
  readonly value: FieldValue | null;
}

/** How things hang together is changed by joining, moving and feeding, and an id by nothing. */
const fixedFields: readonly string[] = ['id', 'upper', 'lower', 'from', 'to'];
/** Texts that a record must have: emptied they are empty texts. */
const neededTexts: readonly string[] = ['designation', 'name'];

/**
 * Sets fields of one or several things, all or none. Every record is checked against the schema of the file, and what it names must
 * be there. Groups that are left empty are left out. A unit that is marked as not on a chain is taken out of it, and the gap closed.
 */
export function setFields(content: CabinetContent, edits: readonly FieldEdit[]): EditResult {
  const work = new Work(content);
  const problems: Problem[] = [];
  for (const edit of edits) {
    const done = setField(work, edit);
    if (!done.ok) problems.push(...done.problems);
  }
  return problems.length > 0 ? fail(...problems) : ok(work.finish());
}

/** What is wrong with a value for a field, without setting it; nothing when it can be set. */
export function checkField(content: CabinetContent, edit: FieldEdit): readonly Problem[] {
  const answer = setFields(content, [edit]);
  return answer.ok ? [] : answer.problems;
}

function setField(work: Work, { of, path, value }: FieldEdit): Result<null> {
  const [first = ''] = path;
  if (fixedFields.includes(first)) {
    return fail(makeProblem('edit-field-fixed', 'refused', { subjects: 'id' in of ? [of.id] : [], facts: { field: path.join('.') } }));
  }
  if (of.in === 'cabinet') return setOfCabinet(work, path, value);
  if (of.in === 'controller') return setOfController(work, path, value);
  const record = work.get(of.in, of.id);
  if (record === undefined) return fail(unknownThing(of.id));
  const changed = withField(record, path, value);
  const parsed = recordSchemas[of.in].safeParse(changed);
  if (!parsed.success)
    return fail(...shapeProblems(parsed.error.issues, changed, '').map((problem) => ({ ...problem, subjects: [of.id] })));
  const why = whyNotThis(work, of.in, parsed.data as RecordOf<typeof of.in>);
  if (why !== null) return fail(why);
  // The schema of this list took it, so it is a record of this list.
  const next = changed as RecordOf<typeof of.in>;
  if (of.in === 'units' && (next as UnitRecord).onChain === false && (record as UnitRecord).onChain !== false) unplug(work, of.id);
  work.put(of.in, next);
  if (of.in === 'units') forgetOutputs(work, next as UnitRecord);
  return ok(null);
}

function setOfCabinet(work: Work, path: readonly string[], value: FieldValue | null): Result<null> {
  const lists = Object.keys(recordSchemas);
  const [first = ''] = path;
  if (lists.includes(first)) return fail(makeProblem('edit-field-fixed', 'refused', { facts: { field: first } }));
  // A cabinet without its lists is checked, so that one field costs no more in a large cabinet.
  const bare = Object.fromEntries(Object.entries(work.rest).filter(([key]) => !lists.includes(key)));
  const changed = withField({ ...bare, id: work.rest.id }, path, value);
  const parsed = cabinetContent.safeParse(changed);
  if (!parsed.success) return fail(...shapeProblems(parsed.error.issues, changed, ''));
  if (first === 'defaultLegend' && typeof value === 'string' && work.get('legends', value) === undefined) {
    return fail(unknownReference(work.rest.name, first, value, work.rest.id));
  }
  const photos: unknown = changed['cabinetPhotos'];
  const missing = Array.isArray(photos) ? photos.find((photo) => work.get('photos', String(photo)) === undefined) : undefined;
  if (missing !== undefined) return fail(unknownReference(work.rest.name, 'cabinetPhotos', String(missing), work.rest.id));
  // The schema took it: the member is one of the cabinet's own, or is left out.
  work.setRest({ [first]: changed[first] } as Partial<CabinetContent>, work.rest.id);
  return ok(null);
}

function setOfController(work: Work, path: readonly string[], value: FieldValue | null): Result<null> {
  const { controller } = work.rest;
  if (controller === undefined) return fail(makeProblem('edit-thing-unknown', 'refused', { facts: { id: 'controller' } }));
  const changed = withField(controller, path, value);
  const parsed = recordSchemas.controller.safeParse(changed);
  if (!parsed.success)
    return fail(...shapeProblems(parsed.error.issues, changed, '').map((problem) => ({ ...problem, subjects: [controller.id] })));
  work.setRest({ controller: changed as ControllerRecord }, controller.id); // its schema took it
  return ok(null);
}

/** The record with one field changed; groups on the way are made, and left out when they become empty. */
function withField(record: object, [first = '', ...rest]: readonly string[], value: FieldValue | null): Readonly<Record<string, unknown>> {
  const members = record as Readonly<Record<string, unknown>>;
  const inner = members[first];
  const group = typeof inner === 'object' && inner !== null && !Array.isArray(inner) ? inner : {};
  const next = rest.length > 0 ? withField(group, rest, value) : value;
  const empty = next === null || next === '' || (rest.length > 0 && Object.keys(next as object).length === 0);
  if (!empty) return { ...members, [first]: next };
  if (neededTexts.includes(first) && typeof inner === 'string') return { ...members, [first]: '' };
  return Object.fromEntries(Object.entries(members).filter(([key]) => key !== first));
}

/** What the schema cannot tell: whether what a record names is there, and whether its kind takes what hangs on it. */
function whyNotThis<L extends EditedList>(work: Work, list: L, record: RecordOf<L>): Problem | null {
  switch (list) {
    case 'units':
      return whyNotUnit(work, record as UnitRecord);
    case 'chains': {
      const { id, number } = record as RecordOf<'chains'>;
      const same = work.all('chains').filter((chain) => chain.id !== id && chain.number === number);
      if (same.length === 0) return null;
      const facts = { number, chains: same.map(chainName).join(', '), count: same.length + 1 };
      return makeProblem('chain-number-doubled', 'refused', { subjects: [id, ...same.map((chain) => chain.id)], facts });
    }
    case 'links': {
      const { id, fibre, designation } = record as RecordOf<'links'>;
      const missing = fibre !== undefined && work.get('fibres', fibre) === undefined;
      return missing ? unknownReference(designation?.trim() || id, 'fibre', fibre, id) : null;
    }
    case 'feedbacks': {
      const { unit } = record as RecordOf<'feedbacks'>;
      const owner = work.get('units', unit);
      if (owner === undefined) return unknownThing(unit);
      return owner.kind === 'supply'
        ? makeProblem('edit-feedback-on-supply', 'refused', { subjects: [unit], facts: { unit: unitName(owner) } })
        : null;
    }
    case 'types': {
      const { id, name, legend } = record as RecordOf<'types'>;
      return legend !== undefined && work.get('legends', legend) === undefined ? unknownReference(name, 'legend', legend, id) : null;
    }
    default:
      return null;
  }
}

function whyNotUnit(work: Work, unit: UnitRecord): Problem | null {
  const { id, kind, type, dcLinkSupply, photos, onChain } = unit;
  const name = unitName(unit);
  if (type !== undefined && work.get('types', type) === undefined) return unknownReference(name, 'type', type, id);
  if (dcLinkSupply !== undefined && work.get('units', dcLinkSupply)?.kind !== 'supply') {
    return unknownReference(name, 'dcLinkSupply', dcLinkSupply, id);
  }
  const photo = photos?.find((one) => work.get('photos', one) === undefined);
  if (photo !== undefined) return unknownReference(name, 'photos', photo, id);
  if (kind === 'encoder-interface' && onChain === false) return makeProblem('edit-encoder-off-chain', 'refused', { subjects: [id] });
  if (kind !== 'supply') return null;
  if (onChain === true) return makeProblem('edit-supply-on-chain', 'refused', { subjects: [id] });
  const linked = work.linkInto(id) !== undefined || work.linkFrom({ unit: id }) !== undefined;
  const fed = work.all('leads').some(({ to }) => to?.unit === id) || work.all('feedbacks').some((feedback) => feedback.unit === id);
  return linked || fed ? makeProblem('edit-kind-in-use', 'refused', { subjects: [id], facts: { unit: name } }) : null;
}

/** Leads that came from an output which is no more come from the supply as a whole. */
function forgetOutputs(work: Work, unit: UnitRecord): void {
  const outputs = new Set((unit.supply?.outputs ?? []).map(({ id }) => id));
  for (const lead of work.all('leads')) {
    if (lead.from?.unit !== unit.id || lead.from.output === undefined || outputs.has(lead.from.output)) continue;
    work.put('leads', { ...lead, from: { unit: unit.id } });
  }
}

function unknownReference(thing: string, field: string, id: string, owner: string): Problem {
  return makeProblem('reference-unknown', 'refused', { subjects: [owner], facts: { thing, field, id } });
}
