import type { LinkRecord } from '../schema/index.ts';
import type { Topology } from '../topology/index.ts';
import { groupWords, unitKindWords } from './words.ts';

/**
 * How the things of one cabinet are called: by designation, and where that is missing by where they are. A designation that two
 * things share is followed by the id, so that a name always means one thing. Ids that do not occur are named by themselves.
 */
export interface Names {
  /** "-TB2"; without a designation "servo drive u7". */
  unit(id: string): string;
  /** "-KF1"; "the controller" when the cabinet names none. */
  controller(): string;
  /** "chain 1". */
  chain(id: string): string;
  /** "cable -WH3", or "cable between -TB2 and -TB3". */
  link(id: string): string;
  /** "lead -WD4", or "lead from -TB9 to -TB2". */
  lead(id: string): string;
  /** "fuse -FC22": what protects a lead, where the file names it; else empty. */
  leadFuse(id: string): string;
  /** "feedback cable -WG1", or "feedback cable of -TB2". */
  feedback(id: string): string;
  /** Whatever bears this id: a unit, link, lead, feedback cable, chain or the controller. */
  thing(id: string): string;
  /** The name of a type of equipment. */
  type(id: string): string;
  /** "chain 1, position 3, drive 2"; "not on a chain" for what is fed only. */
  place(unitId: string): string;
  /** "drive 2", counted in its group on its chain; empty for a unit that is on no chain. */
  ordinal(unitId: string): string;
  /** The unit at a position of a chain; 0 is the controller: "drive 2 (-TB2)", "the controller". */
  position(chainId: string, position: number): string;
  /** The two that a gap lies between, in as few words as there are: "-TB3 | -KE2"; "none" where all units are reached. */
  gap(chainId: string, gap: number | 'none'): string;
}

/** Makes the names of a cabinet. Works for an unsound one too. */
export function makeNames(topology: Topology): Names {
  const { content } = topology;
  const controllerName = content.controller?.designation.trim() ?? '';
  const units = designations([...topology.units.values()]);
  const links = designations([...topology.links.values()]);
  const leads = designations([...topology.leads.values()]);
  const feedbacks = designations([...topology.feedbacks.values()]);
  const types = designations([...topology.types.values()].map(({ id, name }) => ({ id, designation: name })));
  const chains = designations((content.chains ?? []).map(({ id, number }) => ({ id, designation: `chain ${number}` })));
  // Maps are read by ids that come from files and answers alike; an id that does not occur simply is not found.
  const find = <V>(map: ReadonlyMap<string, V>, id: string): V | undefined => map.get(id);

  const controller = () => controllerName || 'the controller';
  const chain = (id: string) => chains.get(id) ?? `chain ${id}`;
  const unit = (id: string) => units.get(id) ?? nameless(find(topology.units, id)?.kind, id);
  const upperEnd = (upper: LinkRecord['upper']) => {
    if (!upper) return 'an open end';
    return 'chain' in upper ? `the controller’s ${chain(upper.chain)}` : unit(upper.unit);
  };
  const link = (id: string) => {
    const name = links.get(id);
    if (name) return `cable ${name}`;
    const record = find(topology.links, id);
    return record ? `cable between ${upperEnd(record.upper)} and ${record.lower ? unit(record.lower.unit) : 'an open end'}` : `cable ${id}`;
  };
  const lead = (id: string) => {
    const name = leads.get(id);
    if (name) return `lead ${name}`;
    const record = find(topology.leads, id);
    if (!record) return `lead ${id}`;
    return `lead from ${record.from ? unit(record.from.unit) : 'an open end'} to ${record.to ? unit(record.to.unit) : 'an open end'}`;
  };
  const leadFuse = (id: string) => {
    const fuse = find(topology.leads, id)?.fuse?.trim();
    return fuse ? `fuse ${fuse}` : '';
  };
  const feedback = (id: string) => {
    const name = feedbacks.get(id);
    if (name) return `feedback cable ${name}`;
    const record = find(topology.feedbacks, id);
    if (!record) return `feedback cable ${id}`;
    const axis = record.axis?.trim();
    return axis ? `feedback cable of ${unit(record.unit)}, axis ${axis}` : `feedback cable of ${unit(record.unit)}`;
  };
  const ordinal = (unitId: string) => {
    const place = find(topology.placeOf, unitId);
    return place ? `${groupWords[place.group]} ${place.ordinal}` : '';
  };
  const place = (unitId: string) => {
    const at = find(topology.placeOf, unitId);
    if (at) return `${chain(at.chain)}, position ${at.position}, ${ordinal(unitId)}`;
    const record = find(topology.units, unitId);
    if (record?.kind === 'supply') return 'supply';
    return record?.onChain === false ? 'not on a chain' : 'reached by no chain';
  };
  const position = (chainId: string, at: number) => {
    if (at === 0) return controller();
    const unitId = find(topology.chainById, chainId)?.units[at - 1];
    return unitId ? `${ordinal(unitId)} (${unit(unitId)})` : `position ${at}`;
  };
  const besideGap = (chainId: string, at: number) => {
    const unitId = find(topology.chainById, chainId)?.units[at - 1];
    if (at === 0) return controllerName || 'controller';
    return unitId ? unit(unitId) : String(at);
  };
  const gap = (chainId: string, at: number | 'none') =>
    at === 'none' ? 'none' : `${besideGap(chainId, at - 1)} | ${besideGap(chainId, at)}`;
  const thing = (id: string) => {
    if (topology.content.controller?.id === id) return controller();
    // Maps with branded keys, asked for any id.
    const has = (map: ReadonlyMap<string, unknown>) => map.has(id);
    if (has(topology.links)) return link(id);
    if (has(topology.leads)) return lead(id);
    if (has(topology.feedbacks)) return feedback(id);
    return has(topology.units) || !has(topology.chainById) ? unit(id) : chain(id);
  };
  return {
    unit,
    controller,
    chain,
    link,
    lead,
    leadFuse,
    feedback,
    thing,
    type: (id) => types.get(id) ?? id,
    place,
    ordinal,
    position,
    gap,
  };
}

/** Designation by id, with the id added where the same designation stands more than once; no entry without a designation. */
function designations(records: readonly { readonly id: string; readonly designation?: string | undefined }[]): ReadonlyMap<string, string> {
  const counts = new Map<string, number>();
  for (const { designation } of records) {
    const name = designation?.trim();
    if (name) counts.set(name, (counts.get(name) ?? 0) + 1);
  }
  const names = new Map<string, string>();
  for (const { id, designation } of records) {
    const name = designation?.trim();
    if (name) names.set(id, counts.get(name) === 1 ? name : `${name} (id ${id})`);
  }
  return names;
}

function nameless(kind: keyof typeof unitKindWords | undefined, id: string): string {
  return kind ? `${unitKindWords[kind]} ${id}` : `unit ${id}`;
}

/** A cable by its sign alone where it bears one ("-WH3", "+S1-WH3", as in IEC 81346); else as it was named. */
export const withoutCable = (name: string): string => name.replace(/^cable (?=[=+-])/, '');
