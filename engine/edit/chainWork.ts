import { makeProblem, ok, type Result } from '../base/index.ts';
import type { LinkRecord } from '../schema/index.ts';
import { buildTopology, unitName } from '../topology/index.ts';
import { nextDesignation } from './designation.ts';
import type { ChainSpot } from './types.ts';
import { unknownThing, type Work } from './work.ts';

/*
 * Taking units out of chains and putting them in. A cable stays in the upper port in which it sits; the cable below it is the one
 * that comes and goes.
 */

/** A gap of a chain: the upper port, and the link that sits there; or a link of which only the lower end is plugged in. */
export type Gap = { readonly port: NonNullable<LinkRecord['upper']> } | { readonly above: LinkRecord };

/** Looks up a spot in the cabinet as it is now. */
export function findGap(work: Work, spot: ChainSpot): Result<Gap> {
  if ('onLink' in spot) {
    const link = work.get('links', spot.onLink);
    if (link === undefined) return { ok: false, problems: [unknownThing(spot.onLink)] };
    return gapOfLink(link);
  }
  if ('afterUnit' in spot) return unitGap(work, spot.afterUnit, () => ok({ port: { unit: spot.afterUnit } }));
  if ('beforeUnit' in spot) {
    return unitGap(work, spot.beforeUnit, () => {
      const link = work.linkInto(spot.beforeUnit);
      return link === undefined ? ok({ above: { id: '', lower: { unit: spot.beforeUnit } } }) : gapOfLink(link);
    });
  }
  const chain = 'endOf' in spot ? spot.endOf : spot.chain;
  if (work.get('chains', chain) === undefined) return { ok: false, problems: [unknownThing(chain)] };
  const units = chainUnits(work, chain);
  const before = 'endOf' in spot ? units.length : Math.min(Math.max(Math.trunc(spot.position), 1), units.length + 1) - 1;
  const unit = units[before - 1];
  return ok({ port: unit === undefined ? { chain } : { unit } });
}

/** Units of a chain from the controller outwards; a loop ends the walk. */
export function chainUnits(work: Work, chain: string): readonly string[] {
  const { cabinet } = work.finish();
  // The topology names chains by branded ids; this one comes from the caller and is looked up.
  return buildTopology(cabinet).topology.chains.find(({ id }) => (id as string) === chain)?.units ?? [];
}

/** Puts a unit into a gap. `spare` is the cable to use for the join that comes new; without one a cable is made. */
export function putIn(work: Work, id: string, gap: Gap, spare: LinkRecord | null): void {
  const unit = work.get('units', id);
  if (unit?.onChain === false) {
    const { onChain: _onChain, ...rest } = unit;
    work.put('units', rest);
  }
  if ('above' in gap) {
    const lower = gap.above.lower;
    if (work.get('links', gap.above.id) !== undefined) work.put('links', { ...gap.above, lower: { unit: id } });
    if (lower !== undefined) work.put('links', { ...(spare ?? newLink(work)), upper: { unit: id }, lower });
    return;
  }
  const there = work.linkFrom(gap.port);
  if (there === undefined) {
    work.put('links', { ...(spare ?? newLink(work)), upper: gap.port, lower: { unit: id } });
    return;
  }
  work.put('links', { ...there, lower: { unit: id } });
  if (there.lower !== undefined) work.put('links', { ...(spare ?? newLink(work)), upper: { unit: id }, lower: there.lower });
}

/** Takes a unit out of its chain and joins what was on both sides. Answers the cable that is left over, which lies nowhere now. */
export function takeOut(work: Work, id: string): LinkRecord | null {
  const above = work.linkInto(id);
  const below = work.linkFrom({ unit: id });
  if (above !== undefined && below?.lower !== undefined && below.id !== above.id) {
    const upper = above.upper;
    // In a loop of two nothing is left to be joined.
    if (upper !== undefined && 'unit' in upper && upper.unit === below.lower.unit) free(work, above);
    else work.put('links', { ...above, lower: below.lower });
    return free(work, below);
  }
  const only = above ?? (below?.lower === undefined ? undefined : below);
  return only === undefined ? null : free(work, only);
}

/** Takes a unit out of its chain for good: plugs of loose cables that still sit in its ports come out too. */
export function unplug(work: Work, id: string): void {
  takeOut(work, id);
  for (const link of work.all('links')) {
    const { upper, lower, ...rest } = link;
    const above = lower?.unit === id;
    const below = upper !== undefined && 'unit' in upper && upper.unit === id;
    if (above || below) {
      work.put('links', {
        ...rest,
        ...(upper === undefined || below ? {} : { upper }),
        ...(lower === undefined || above ? {} : { lower }),
      });
    }
  }
}

function free(work: Work, link: LinkRecord): LinkRecord {
  work.drop('links', link.id);
  const { upper: _upper, lower: _lower, ...rest } = link;
  return rest;
}

function newLink(work: Work): LinkRecord {
  return { id: work.freshId('w'), designation: nextDesignation(work, 'link') };
}

function gapOfLink(link: LinkRecord): Result<Gap> {
  return ok(link.upper === undefined ? { above: link } : { port: link.upper });
}

function unitGap(work: Work, id: string, found: () => Result<Gap>): Result<Gap> {
  const unit = work.get('units', id);
  if (unit === undefined) return { ok: false, problems: [unknownThing(id)] };
  if (unit.kind === 'supply') {
    return { ok: false, problems: [makeProblem('join-supply', 'refused', { subjects: [id], facts: { unit: unitName(unit) } })] };
  }
  if (unit.onChain === false) {
    return { ok: false, problems: [makeProblem('join-off-chain', 'refused', { subjects: [id], facts: { unit: unitName(unit) } })] };
  }
  return found();
}
