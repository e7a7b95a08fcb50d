import type { Fault } from '../../engine/schema/index.ts';
import { faultModes } from '../../engine/schema/index.ts';
import { itemKey, modeKey } from '../../engine/simulation/index.ts';
import type { Topology } from '../../engine/topology/index.ts';
import type { InjectTarget } from './injectState.ts';

/** The faults of one item or place, as they are offered together. */
export interface ChoiceGroup {
  readonly key: string;
  readonly faults: readonly Fault[];
}

const group = (faults: readonly Fault[]): readonly ChoiceGroup[] => {
  const [first] = faults;
  return first ? [{ key: itemKey(first), faults }] : [];
};

/** What can be wrong at a thing of the picture, item by item. What has no effect anywhere (an unused port) is not offered. */
export function listChoices(topology: Topology, target: InjectTarget): readonly ChoiceGroup[] {
  switch (target.kind) {
    case 'unit':
      return unitChoices(topology, target.unit);
    case 'link':
      return linkChoices(target.link);
    case 'lead':
      return leadChoices(target.lead);
    case 'chain':
      return [
        ...group(faultModes['controller-port'].map((mode) => ({ item: 'controller-port', chain: target.chain, mode }))),
        ...group(faultModes.controller.map((mode) => ({ item: 'controller', mode }))),
      ];
  }
}

const linkChoices = (link: string): readonly ChoiceGroup[] => [
  ...group(faultModes.cable.map((mode) => ({ item: 'cable', link, mode }))),
  ...(['upper', 'lower'] as const).flatMap((end) => group(faultModes.plug.map((mode) => ({ item: 'plug', link, end, mode })))),
  ...group(faultModes.route.map((mode) => ({ item: 'route', link, mode }))),
];

const leadChoices = (lead: string) => group(faultModes.lead.map((mode) => ({ item: 'lead', lead, mode })));

function unitChoices(topology: Topology, unit: string): readonly ChoiceGroup[] {
  const record = [...topology.units.values()].find(({ id }) => id === unit);
  if (!record) return [];
  if (record.kind === 'supply') {
    return [
      ...group(faultModes.supply.map((mode) => ({ item: 'supply', unit, mode }))),
      ...topology.feeds.filter(({ from }) => from === unit).flatMap(({ lead }) => leadChoices(lead)),
    ];
  }
  const chain = topology.chains.find(({ units }) => units.some((id) => id === unit));
  const isLast = chain?.units[chain.units.length - 1] === unit;
  const boardModes = chain ? faultModes.board.filter((mode) => !(isLast && mode.startsWith('down-'))) : [];
  const feedbacks = [...topology.feedbacks.values()].filter((one) => one.unit === unit && one.plugged !== false);
  return [
    ...group(boardModes.map((mode) => ({ item: 'board', unit, mode }))),
    ...group(faultModes.fuse.map((mode) => ({ item: 'fuse', unit, mode }))),
    ...group(faultModes.place.map((mode) => ({ item: 'place', unit, mode }))),
    ...(chain ? group(faultModes.wiring.map((mode) => ({ item: 'wiring', unit, mode }))) : []),
    ...feedbacks.flatMap(({ id }) => group(faultModes.feedback.map((mode) => ({ item: 'feedback', feedback: id, mode })))),
    ...topology.feeds.filter(({ to }) => to === unit).flatMap(({ lead }) => leadChoices(lead)),
  ];
}

/** Everything on the picture that a fault can be put on. */
export function listTargets(topology: Topology): readonly InjectTarget[] {
  return [
    ...topology.chains.map(({ id }) => ({ kind: 'chain', chain: id }) as const),
    ...topology.chains.flatMap(({ links }) => links.map((link) => ({ kind: 'link', link }) as const)),
    ...[...topology.units.keys()].map((unit) => ({ kind: 'unit', unit }) as const),
    ...topology.feeds.map(({ lead }) => ({ kind: 'lead', lead }) as const),
  ];
}

const possible = new WeakMap<Topology, ReadonlySet<string>>();

/** The faults that this cabinet can have: one of another cabinet, or of a part that was taken out of the drawing, is left out. */
export function keepPossible(topology: Topology, faults: readonly Fault[]): readonly Fault[] {
  const known =
    possible.get(topology) ??
    new Set(listTargets(topology).flatMap((target) => listChoices(topology, target).flatMap((choice) => choice.faults.map(modeKey))));
  possible.set(topology, known);
  return faults.every((fault) => known.has(modeKey(fault))) ? faults : faults.filter((fault) => known.has(modeKey(fault)));
}

/** Which fibres of its cable a mode is about; both for what concerns the whole. */
function fibresOf({ mode }: Fault): readonly string[] {
  return mode.startsWith('outbound-') ? ['outbound'] : mode.startsWith('return-') ? ['return'] : ['outbound', 'return'];
}

/** At most one mode per item; a cable may have one for each fibre (domain section 4). */
function excludes(a: Fault, b: Fault): boolean {
  if (itemKey(a) !== itemKey(b)) return false;
  return a.item !== 'cable' || fibresOf(a).some((fibre) => fibresOf(b).includes(fibre));
}

/** Adds a fault; it takes the place of those that cannot be there with it. */
export function addFault(faults: readonly Fault[], fault: Fault): readonly Fault[] {
  return [...faults.filter((other) => !excludes(other, fault)), fault];
}

/** There all the time or not at all. */
export function isOnlySteady(fault: Fault): boolean {
  return fault.item === 'fuse' || isWiringMistake(fault);
}

/** Made when the cabinet was wired: a machine that was running cannot have it. */
export function isWiringMistake(fault: Fault): boolean {
  return fault.item === 'wiring' || fault.mode === 'fibres-crossed';
}

/** The chain on which a fault lies, where it lies on one. */
export function chainOf(topology: Topology, fault: Fault): string | null {
  switch (fault.item) {
    case 'cable':
    case 'plug':
    case 'route':
      return topology.chains.find(({ links }) => links.some((link) => link === fault.link))?.id ?? null;
    case 'board':
    case 'fuse':
    case 'place':
    case 'wiring':
      return chainOfUnit(topology, fault.unit);
    case 'controller-port':
      return fault.chain;
    case 'lead':
      return chainOfUnit(topology, topology.feeds.find(({ lead }) => lead === fault.lead)?.to);
    case 'feedback':
      return chainOfUnit(topology, [...topology.feedbacks.values()].find(({ id }) => id === fault.feedback)?.unit);
    case 'supply':
    case 'controller':
      return null;
  }
}

function chainOfUnit(topology: Topology, unit: string | undefined): string | null {
  return topology.chains.find(({ units }) => units.some((id) => id === unit))?.id ?? null;
}
