import { makeNames, type Names } from '../messages/index.ts';
import type { CabinetContent } from '../schema/index.ts';
import { buildTopology, type Topology } from '../topology/index.ts';

/** Names for a sheet on which a common beginning of all designations is said once. */
export interface ShortNames {
  readonly names: Names;
  /** What all designations begin with; empty: they have nothing in common, and stand in full. */
  readonly prefix: string;
}

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

/** Names without what all of them have in common. */
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
  if (prefix === '') return { names, prefix };
  return { names: makeNames(buildTopology(without(content, prefix)).topology), prefix };
}

function without(content: CabinetContent, prefix: string): CabinetContent {
  const cut = <R extends { readonly designation?: string | undefined }>(record: R): R =>
    record.designation?.trim().startsWith(prefix) ? { ...record, designation: record.designation.trim().slice(prefix.length) } : record;
  return {
    ...content,
    ...(content.controller === undefined ? {} : { controller: cut(content.controller) }),
    ...(content.units === undefined ? {} : { units: content.units.map(cut) }),
    ...(content.links === undefined ? {} : { links: content.links.map(cut) }),
    ...(content.leads === undefined ? {} : { leads: content.leads.map(cut) }),
    ...(content.feedbacks === undefined ? {} : { feedbacks: content.feedbacks.map(cut) }),
  };
}
