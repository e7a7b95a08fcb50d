import { assertNever, fail, makeProblem, ok, type Problem } from '../base/index.ts';
import type { CabinetContent, LinkEnd, LinkRecord, UnitRecord } from '../schema/index.ts';
import { cableName, chainName, unitName } from '../topology/index.ts';
import { nextDesignation } from './designation.ts';
import type { EditResult, FeedSource, Port, Refusal } from './types.ts';
import { samePort, unknownThing, Work } from './work.ts';

const mostLinks = 5000;

/** The two ends of a cable that joins two ports. */
interface Joined {
  readonly upper: NonNullable<LinkRecord['upper']>;
  readonly lower: NonNullable<LinkRecord['lower']>;
}

/**
 * Why two optical ports cannot be joined by a cable, in either order; null when they can. A cable leads from the controller's port
 * of a chain, or from the `down` port of a unit, to the `up` port of another; each port takes one plug; no chain runs in a loop.
 *
 * @param except id of a cable that is taken to be unplugged at both ends
 */
export function whyNotJoin(content: CabinetContent, a: Port, b: Port, except?: string): Refusal {
  return refuseJoin(new Work(content), a, b, except);
}

/** `whyNotJoin` in the midst of an edit. */
export function refuseJoin(work: Work, a: Port, b: Port, except?: string): Refusal {
  const pair = sortEnds(work, a, b);
  return 'code' in pair ? pair : taken(work, pair, except);
}

/** Joins two ports with a new cable. Refused for the reasons of `whyNotJoin`. */
export function joinPorts(content: CabinetContent, a: Port, b: Port): EditResult {
  const work = new Work(content);
  const pair = sortEnds(work, a, b);
  if ('code' in pair) return fail(pair);
  const why = taken(work, pair, undefined) ?? tooMany(content.links, 'links', mostLinks);
  if (why !== null) return fail(why);
  work.put('links', { id: work.freshId('w'), designation: nextDesignation(work, 'link'), ...pair });
  return ok(work.finish());
}

/** Why an end of a cable cannot be plugged into a port; null when it can. */
export function whyNotReplug(content: CabinetContent, link: string, end: LinkEnd, port: Port): Refusal {
  const record = content.links?.find(({ id }) => id === link);
  if (record === undefined) return unknownThing(link);
  const work = new Work(content);
  const owner = ownerOf(work, port);
  if ('code' in owner) return owner;
  if (sideOf(port) !== end) {
    const code = end === 'upper' ? 'join-upper-plug' : 'join-lower-plug';
    return makeProblem(code, 'refused', { subjects: [link], facts: { cable: cableName(record) } });
  }
  const other: Port | null = end === 'upper' ? portOf(record.lower, 'up') : portOf(record.upper, 'down');
  return other === null ? plugTaken(work, port, link) : whyNotJoin(content, port, other, link);
}

/** Plugs an end of a cable into another port, or out (`null`). The cable stays the one it is. */
export function replugEnd(content: CabinetContent, link: string, end: LinkEnd, port: Port | null): EditResult {
  const work = new Work(content);
  const record = work.get('links', link);
  if (record === undefined) return fail(unknownThing(link));
  if (port === null) {
    const { [end]: _out, ...rest } = record;
    work.put('links', rest);
    return ok(work.finish());
  }
  const why = whyNotReplug(content, link, end, port);
  if (why !== null) return fail(why);
  if (end === 'upper') work.put('links', { ...record, upper: 'chain' in port ? { chain: port.chain } : { unit: port.unit } });
  else if ('unit' in port) work.put('links', { ...record, lower: { unit: port.unit } });
  return ok(work.finish());
}

/** Why a new cable cannot be plugged into a port with one end; null when it can. */
export function whyNotLay(content: CabinetContent, port: Port): Refusal {
  const work = new Work(content);
  const owner = ownerOf(work, port);
  return 'code' in owner ? owner : plugTaken(work, port, undefined);
}

/** Adds a cable that is plugged into one port, or into none (`null`). Its other end hangs loose. */
export function layCable(content: CabinetContent, port: Port | null): EditResult {
  const why = tooMany(content.links, 'links', mostLinks) ?? (port === null ? null : whyNotLay(content, port));
  if (why !== null) return fail(why);
  const work = new Work(content);
  const end =
    port === null
      ? {}
      : 'chain' in port
        ? { upper: { chain: port.chain } }
        : port.side === 'down'
          ? { upper: { unit: port.unit } }
          : { lower: { unit: port.unit } };
  work.put('links', { id: work.freshId('w'), designation: nextDesignation(work, 'link'), ...end });
  return ok(work.finish());
}

/** Why a unit cannot be fed from there by a 24 V lead; null when it can. A second feed, and one passed on by a unit, are allowed. */
export function whyNotFeed(content: CabinetContent, from: FeedSource, to: string): Refusal {
  return whyNoSource(content, from) ?? whyNotFed(content, to) ?? (from.unit === to ? feedsItself(content, to) : null);
}

function whyNoSource(content: CabinetContent, from: FeedSource): Refusal {
  const source = content.units?.find(({ id }) => id === from.unit);
  if (source === undefined) return unknownThing(from.unit);
  const known = from.output === undefined || source.supply?.outputs?.some(({ id }) => id === from.output);
  return known ? null : unknownThing(from.output ?? '');
}

function whyNotFed(content: CabinetContent, to: string): Refusal {
  const fed = content.units?.find(({ id }) => id === to);
  if (fed === undefined) return unknownThing(to);
  return fed.kind === 'supply' ? makeProblem('feed-into-supply', 'refused', { subjects: [to], facts: { unit: unitName(fed) } }) : null;
}

function feedsItself(content: CabinetContent, id: string): Problem {
  const unit = content.units?.find((one) => one.id === id);
  return makeProblem('feed-itself', 'refused', { subjects: [id], facts: { unit: unit === undefined ? id : unitName(unit) } });
}

/** Makes a lead for each unit from one source: to each its own, or passed through from unit to unit in the order given. */
export function feedUnits(content: CabinetContent, from: FeedSource, units: readonly string[], how: 'each' | 'through'): EditResult {
  const work = new Work(content);
  let source = from;
  for (const unit of units) {
    const why = whyNotFeed(content, source, unit);
    if (why !== null) return fail(why);
    work.put('leads', { id: work.freshId('l'), designation: nextDesignation(work, 'lead'), from: source, to: { unit } });
    if (how === 'through') source = { unit };
  }
  const why = tooMany([...work.all('leads')], 'leads', 10_000, 0);
  return why === null ? ok(work.finish()) : fail(why);
}

/** Connects an end of a lead elsewhere, or nowhere (`null`). */
export function reconnectLead(
  content: CabinetContent,
  lead: string,
  ends: { readonly from?: FeedSource | null; readonly to?: string | null },
): EditResult {
  const work = new Work(content);
  const record = work.get('leads', lead);
  if (record === undefined) return fail(unknownThing(lead));
  const from = ends.from === undefined ? record.from : (ends.from ?? undefined);
  const to = ends.to === undefined ? record.to?.unit : (ends.to ?? undefined);
  const why =
    (from === undefined ? null : whyNoSource(content, from)) ??
    (to === undefined ? null : whyNotFed(content, to)) ??
    (from !== undefined && from.unit === to ? feedsItself(content, from.unit) : null);
  if (why !== null) return fail(why);
  const { from: _from, to: _to, ...rest } = record;
  work.put('leads', { ...rest, ...(from === undefined ? {} : { from }), ...(to === undefined ? {} : { to: { unit: to } }) });
  return ok(work.finish());
}

function sortEnds(work: Work, a: Port, b: Port): Joined | Problem {
  const first = ownerOf(work, a);
  if ('code' in first) return first;
  const second = ownerOf(work, b);
  if ('code' in second) return second;
  const [upper, lower] = sideOf(a) === 'upper' ? [a, b] : [b, a];
  if (sideOf(upper) !== 'upper' || sideOf(lower) !== 'lower' || !('unit' in lower)) {
    const about = { subjects: [first.id, second.id], facts: { first: first.name, second: second.name } };
    return makeProblem(sideOf(a) === 'upper' ? 'join-two-down' : 'join-two-up', 'refused', about);
  }
  if ('unit' in upper && upper.unit === lower.unit) {
    return makeProblem('join-itself', 'refused', { subjects: [upper.unit], facts: { unit: first.name } });
  }
  return { upper: 'chain' in upper ? { chain: upper.chain } : { unit: upper.unit }, lower: { unit: lower.unit } };
}

function taken(work: Work, { upper, lower }: Joined, except: string | undefined): Problem | null {
  const port: Port = 'chain' in upper ? upper : { unit: upper.unit, side: 'down' };
  return (
    plugTaken(work, port, except) ??
    plugTaken(work, { unit: lower.unit, side: 'up' }, except) ??
    ('unit' in upper && leadsTo(work, lower.unit, upper.unit, except) ? loop(work, upper.unit) : null)
  );
}

function loop(work: Work, id: string): Problem {
  const unit = work.get('units', id);
  return makeProblem('join-loop', 'refused', { subjects: [id], facts: { unit: unit === undefined ? id : unitName(unit) } });
}

function plugTaken(work: Work, port: Port, except: string | undefined): Problem | null {
  const there = work
    .all('links')
    .find((link) =>
      link.id === except ? false : sideOf(port) === 'upper' ? link.upper && samePort(link.upper, port) : link.lower?.unit === ownerId(port),
    );
  if (there === undefined) return null;
  const owner = ownerOf(work, port);
  const facts = { owner: 'code' in owner ? ownerId(port) : owner.name, cable: cableName(there), side: sideWord(port) };
  return makeProblem('join-port-taken', 'refused', { subjects: [ownerId(port), there.id], facts });
}

/** Whether one comes from a unit to another by following the links outwards. */
function leadsTo(work: Work, from: string, to: string, except: string | undefined): boolean {
  const below = new Map<string, string[]>();
  for (const { id, upper, lower } of work.all('links')) {
    if (id === except || upper === undefined || lower === undefined || 'chain' in upper) continue;
    below.set(upper.unit, [...(below.get(upper.unit) ?? []), lower.unit]);
  }
  const seen = new Set<string>();
  const open = [from];
  for (let unit = open.pop(); unit !== undefined; unit = open.pop()) {
    if (unit === to) return true;
    if (seen.has(unit)) continue;
    seen.add(unit);
    open.push(...(below.get(unit) ?? []));
  }
  return false;
}

function ownerOf(work: Work, port: Port): { readonly id: string; readonly name: string } | Problem {
  if ('chain' in port) {
    const chain = work.get('chains', port.chain);
    return chain === undefined ? unknownThing(port.chain) : { id: chain.id, name: chainName(chain) };
  }
  const unit = work.get('units', port.unit);
  return unit === undefined ? unknownThing(port.unit) : (hasNoPorts(unit) ?? { id: unit.id, name: unitName(unit) });
}

function hasNoPorts(unit: UnitRecord): Problem | null {
  const about = { subjects: [unit.id], facts: { unit: unitName(unit) } };
  switch (unit.kind) {
    case 'supply':
      return makeProblem('join-supply', 'refused', about);
    case 'servo-drive':
    case 'spindle-drive':
    case 'encoder-interface':
      return unit.onChain === false ? makeProblem('join-off-chain', 'refused', about) : null;
    default:
      return assertNever(unit.kind);
  }
}

function ownerId(port: Port): string {
  return 'chain' in port ? port.chain : port.unit;
}

/** The end of a cable that fits into a port. */
function sideOf(port: Port): LinkEnd {
  return 'chain' in port || port.side === 'down' ? 'upper' : 'lower';
}

function sideWord(port: Port): 'chain' | 'up' | 'down' {
  return 'chain' in port ? 'chain' : port.side;
}

function portOf(end: LinkRecord['upper'], side: 'up' | 'down'): Port | null {
  if (end === undefined) return null;
  return 'chain' in end ? end : { unit: end.unit, side };
}

function tooMany(list: readonly unknown[] | undefined, name: string, maximum: number, more = 1): Problem | null {
  if ((list ?? []).length + more <= maximum) return null;
  return makeProblem('edit-too-many', 'refused', { facts: { list: name, maximum } });
}
