import type { CabinetContent, Fault, FaultMode, ItemKind, LinkEnd, Onset, Presence, TypeRecord } from '../../engine/schema/index.ts';

/**
 * The neutral form of the conformance cases and its way into our own: see README.md beside this file. Nothing here knows how the
 * simulation works; it only renames.
 */

interface NeutralUnit {
  readonly onChain: boolean;
  readonly kind: 'servo-drive' | 'spindle-drive' | 'encoder-interface';
  readonly lossScope: 'neighbour' | 'chain';
  readonly onReceiveLoss: 'mute' | 'keep';
  readonly complainsFrom: 'link-up' | 'power-on';
  readonly whenBoth: 'both' | 'upstream' | 'downstream';
  readonly holds: 'until-reset' | 'live';
}

interface NeutralCabinet {
  readonly chains: readonly (readonly string[])[];
  readonly units: Readonly<Record<string, NeutralUnit>>;
  readonly supplies: readonly string[];
  readonly power: Readonly<Record<string, readonly [from: string, to: string]>>;
  /** `"chain/i"` → id of link i, which joins position i−1 and i. */
  readonly links: Readonly<Record<string, string>>;
  readonly feedback: Readonly<Record<string, string>>;
  readonly controller: { readonly onReceiveLoss: 'mute' | 'keep' };
}

interface NeutralFault {
  readonly item: readonly (string | number)[];
  readonly mode: string;
  readonly presence: Presence;
  readonly absentNow: boolean;
}

/** One line of simulation.jsonl. */
export interface NeutralCase {
  readonly seed: number;
  readonly cabinet: NeutralCabinet;
  readonly onset: Onset;
  readonly faults: readonly NeutralFault[];
  readonly displays: Readonly<Record<string, string>>;
  readonly reports: readonly (readonly [number, number] | null)[];
}

/** Id of the chain with this index (0, 1, …) in the mapped cabinet. */
export function chainIdOf(index: number): string {
  return `chain-${index + 1}`;
}

/** The cabinet in our own form: one equipment type per set of behaviours that occurs. */
export function toCabinetContent(seed: number, neutral: NeutralCabinet): CabinetContent {
  const types = new Map<string, TypeRecord>();
  const typeOf = (unit: NeutralUnit): string => {
    const { lossScope, onReceiveLoss, complainsFrom, whenBoth, holds } = unit;
    const key = [lossScope, onReceiveLoss, complainsFrom, whenBoth, holds].join('.');
    types.set(key, {
      id: key,
      name: key,
      behaviour: { lossScope, onReceiveLoss, complainsFrom, whenBoth, holds, shortEffect: 'dark', idleLight: 'yes' },
    });
    return key;
  };
  const units = Object.entries(neutral.units).map(([id, unit]) => ({
    id,
    kind: unit.kind,
    designation: id,
    onChain: unit.onChain,
    type: typeOf(unit),
  }));
  const supplies = neutral.supplies.map((id) => ({ id, kind: 'supply' as const, designation: id }));
  const links = neutral.chains.flatMap((chain, c) =>
    chain.map((unit, i) => {
      const id = neutral.links[`${c}/${i + 1}`];
      if (id === undefined) throw new Error(`case ${seed}: no link ${c}/${i + 1}`);
      const above = chain[i - 1];
      return { id, upper: above === undefined ? { chain: chainIdOf(c) } : { unit: above }, lower: { unit } };
    }),
  );
  return {
    id: `conformance-${seed}`,
    name: `Conformance case ${seed}`,
    controller: { id: 'controller', designation: 'controller' },
    chains: neutral.chains.map((_, c) => ({
      id: chainIdOf(c),
      number: c + 1,
      behaviour: { onReceiveLoss: neutral.controller.onReceiveLoss },
    })),
    units: [...units, ...supplies],
    links,
    leads: Object.entries(neutral.power).map(([id, [from, to]]) => ({ id, from: { unit: from }, to: { unit: to } })),
    feedbacks: Object.entries(neutral.feedback).map(([id, unit]) => ({ id, unit })),
    types: [...types.values()],
  };
}

/** A fault in our own form. */
export function toFault(neutral: NeutralFault): Fault {
  const [kind, first, second] = neutral.item;
  const id = String(first);
  const rest = { presence: neutral.presence, absentNow: neutral.absentNow };
  // The mode names of the neutral form are those of domain.md; the comparison itself would show a foreign one.
  const mode = <K extends ItemKind>() => neutral.mode as FaultMode<K>;
  switch (kind) {
    case 'cable':
      return { item: 'cable', link: id, mode: mode<'cable'>(), ...rest };
    case 'fibre':
      // Two words make one mode of the cable: outbound-cut, return-dim, …
      return { item: 'cable', link: id, mode: `${String(second)}-${neutral.mode}` as FaultMode<'cable'>, ...rest };
    case 'plug':
      return { item: 'plug', link: id, end: second === 'upper' ? 'upper' : ('lower' satisfies LinkEnd), mode: mode<'plug'>(), ...rest };
    case 'route':
      return { item: 'route', link: id, mode: mode<'route'>(), ...rest };
    case 'board':
      return { item: 'board', unit: id, mode: mode<'board'>(), ...rest };
    case 'fuse':
      return { item: 'fuse', unit: id, mode: mode<'fuse'>(), ...rest };
    case 'place':
      return { item: 'place', unit: id, mode: mode<'place'>(), ...rest };
    case 'wiring':
      return { item: 'wiring', unit: id, mode: mode<'wiring'>(), ...rest };
    case 'port':
      return { item: 'controller-port', chain: chainIdOf(Number(first)), mode: mode<'controller-port'>(), ...rest };
    case 'controller':
      return { item: 'controller', mode: mode<'controller'>(), ...rest };
    case 'lead':
      return { item: 'lead', lead: id, mode: mode<'lead'>(), ...rest };
    case 'supply':
      return { item: 'supply', unit: id, mode: mode<'supply'>(), ...rest };
    case 'feedback':
      return { item: 'feedback', feedback: id, mode: mode<'feedback'>(), ...rest };
    default:
      throw new Error(`unknown item kind ${String(kind)}`);
  }
}
