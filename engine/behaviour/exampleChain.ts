import type { LinkId, UnitId } from '../base/index.ts';
import { checkCabinet } from '../cabinet/index.ts';
import type { Behaviour, BehaviourParameter, CabinetContent, Fault, LinkEnd, Onset } from '../schema/index.ts';
import { type LookOutcome, predictLook, type Simulation, simulate } from '../simulation/index.ts';
import type { Cabinet } from '../topology/index.ts';

/** What happens to the example chain, so that a parameter shows. */
export interface ExampleEvent {
  readonly faults: readonly Fault[];
  readonly onset: Onset;
  /** The light at the ports is part of what is shown. */
  readonly withLight: boolean;
}

/** The example chain under one behaviour: four drives in a row, all of the type. */
export interface Example {
  readonly event: ExampleEvent;
  readonly units: readonly UnitId[];
  readonly links: readonly LinkId[];
  readonly simulation: Simulation;
  /** Light at each end of each link, with that link unplugged; empty where light is not shown. */
  readonly light: ReadonlyMap<LinkId, { readonly [End in LinkEnd]: LookOutcome | null }>;
}

const count = 4;
const units = Array.from({ length: count }, (_, index) => `u${index + 1}`);

const content: CabinetContent = {
  id: 'example-chain',
  name: 'Example chain',
  controller: { id: 'nc', designation: 'nc' },
  chains: [{ id: 'chain', number: 1 }],
  units: [...units.map((id) => ({ id, kind: 'servo-drive' as const, designation: id })), { id: 's', kind: 'supply', designation: 's' }],
  links: units.map((id, index) => ({
    id: `w${index + 1}`,
    upper: index === 0 ? { chain: 'chain' } : { unit: `u${index}` },
    lower: { unit: id },
  })),
  leads: units.map((id) => ({ id: `l-${id}`, from: { unit: 's' }, to: { unit: id } })),
  feedbacks: [{ id: 'f', unit: 'u2' }],
};

const cut = (link: string): Fault => ({ item: 'cable', link, mode: 'cut', presence: 'steady' });
const running = (...faults: readonly Fault[]): ExampleEvent => ({ faults, onset: 'while-running', withLight: false });

/** For each parameter the event that shows it best, in the middle of the chain. */
const events: { readonly [P in BehaviourParameter]: ExampleEvent } = {
  lossScope: running(cut('w3')),
  onReceiveLoss: running({ item: 'cable', link: 'w3', mode: 'outbound-cut', presence: 'steady' }),
  idleLight: { ...running(cut('w3')), withLight: true },
  complainsFrom: { ...running(cut('w3')), onset: 'at-power-up' },
  whenBoth: running(cut('w2'), cut('w3')),
  holds: running({ item: 'cable', link: 'w3', mode: 'cut', presence: 'intermittent', absentNow: true }),
  shortEffect: running({ item: 'feedback', feedback: 'f', mode: 'short', presence: 'steady' }),
};

let checked: Cabinet | null = null;

/** The chain is sound as it stands above; it is checked once. */
function exampleCabinet(): Cabinet {
  checked ??= checkCabinet(content).cabinet;
  if (checked === null) {
    throw new Error('the example chain is not sound');
  }
  return checked;
}

/** What the example chain shows when all its units behave so, under the event that shows `parameter`. */
export function showParameter(behaviour: Behaviour, parameter: BehaviourParameter): Example {
  const cabinet = exampleCabinet();
  const event = events[parameter];
  const input = { cabinet, faults: event.faults, onset: event.onset, behaviourOf: () => behaviour };
  const [chain] = cabinet.chains;
  const links = chain?.links ?? [];
  const light = (link: LinkId, end: LinkEnd) => predictLook({ look: 'light-at-port', link, end }, input);
  return {
    event,
    units: chain?.units ?? [],
    links,
    simulation: simulate(input),
    light: new Map(event.withLight ? links.map((link) => [link, { upper: light(link, 'upper'), lower: light(link, 'lower') }]) : []),
  };
}

/** Whether two examples show the same displays and the same light. */
export function isSameShown(a: Example, b: Example): boolean {
  const shown = ({ simulation, light }: Example) =>
    JSON.stringify([[...simulation.displays.values()].map(({ meaning }) => meaning), [...light.values()]]);
  return shown(a) === shown(b);
}
