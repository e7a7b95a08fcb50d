import { fail, makeProblem, ok, type Result } from '../base/index.ts';
import { parseCabinetFile, serializeCabinet } from '../cabinet/index.ts';
import type { CabinetContent, LinkRecord } from '../schema/index.ts';

/** Text on the clipboard above this size is not looked at, in signs. */
export const maximumClipSigns = 8_000_000;

/**
 * Copies things as a text for the clipboard: a small cabinet file. Of units everything comes along that belongs to them: cables,
 * leads and feedback cables between units that are copied, and the types, legends, fibres and pictures that they name. Cables and
 * leads whose other end stays behind are left out. Null when nothing of `ids` can be copied.
 */
export function copyThings(content: CabinetContent, ids: readonly string[]): string | null {
  const clip = cutOut(content, ids);
  return clip === null ? null : serializeCabinet(clip);
}

/** Reads what was copied, as a cabinet. Any cabinet file is taken; anything else is refused as it would be in a file. */
export function readClip(text: string): Result<CabinetContent> {
  if (text.length > maximumClipSigns) {
    return fail(makeProblem('clip-too-large', 'refused', { facts: { limitMegabytes: maximumClipSigns / 1_000_000 } }));
  }
  // Most of what lies on a clipboard is plain text: that is said once, and not as damage to a file.
  if (!/^\s*\{/.test(text)) return fail(makeProblem('clip-foreign', 'refused'));
  const read = parseCabinetFile(text);
  if (!read.ok) return read;
  return (read.value.units ?? []).length === 0 ? fail(makeProblem('clip-empty', 'refused')) : ok(read.value);
}

/** The part of a cabinet that some things make, as a cabinet of its own; null where no unit is among them. */
export function cutOut(content: CabinetContent, ids: readonly string[]): CabinetContent | null {
  const wanted = new Set(ids);
  const units = (content.units ?? []).filter(({ id }) => wanted.has(id));
  if (units.length === 0) return null;
  const inside = new Set(units.map(({ id }) => id));
  const chains = (content.chains ?? []).filter(({ id }) => wanted.has(id));
  const fromInside = ({ upper }: LinkRecord) =>
    upper !== undefined && ('unit' in upper ? inside.has(upper.unit) : chains.some(({ id }) => id === upper.chain));
  const links = (content.links ?? []).filter((link) => fromInside(link) && link.lower !== undefined && inside.has(link.lower.unit));
  const leads = (content.leads ?? []).filter(({ from, to }) => from && to && inside.has(from.unit) && inside.has(to.unit));
  const feedbacks = (content.feedbacks ?? []).filter(({ unit }) => inside.has(unit));
  const types = (content.types ?? []).filter(({ id }) => units.some(({ type }) => type === id));
  const legends = (content.legends ?? []).filter(({ id }) => types.some(({ legend }) => legend === id));
  const fibres = (content.fibres ?? []).filter(({ id }) => links.some(({ fibre }) => fibre === id));
  const photos = (content.photos ?? []).filter(({ id }) => units.some((unit) => unit.photos?.includes(id)));
  return {
    id: content.id,
    name: content.name,
    ...(content.designationEdition === undefined ? {} : { designationEdition: content.designationEdition }),
    ...some('chains', chains),
    units: units.map((unit) => withoutOutside(unit, inside)),
    ...some('links', links),
    ...some('leads', leads),
    ...some('feedbacks', feedbacks),
    ...some('types', types),
    ...some('legends', legends),
    ...some('fibres', fibres),
    ...some('photos', photos),
  };
}

type Unit = NonNullable<CabinetContent['units']>[number];

function withoutOutside(unit: Unit, inside: ReadonlySet<string>): Unit {
  if (unit.dcLinkSupply === undefined || inside.has(unit.dcLinkSupply)) return unit;
  const { dcLinkSupply: _outside, ...rest } = unit;
  return rest;
}

function some<K extends keyof CabinetContent>(key: K, list: readonly unknown[]): Partial<Pick<CabinetContent, K>> {
  // Only called with a list of this key's own records.
  return list.length === 0 ? {} : ({ [key]: list } as unknown as Pick<CabinetContent, K>);
}
