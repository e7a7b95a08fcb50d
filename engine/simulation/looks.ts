import type { ChainId, LinkId, UnitId } from '../base/index.ts';
import { documentedPortBehaviour } from '../cabinet/index.ts';
import type { Behaviour, Direction, LinkEnd, LookObservation } from '../schema/index.ts';
import { arrangedChains, endKey, otherEnd } from './arrangement.ts';
import { type Moment, stateOf } from './moment.ts';
import { layOut } from './simulate.ts';
import type { SimulationInput } from './types.ts';

/** What a look shows; one of the outcomes that its kind of look can have. */
export type LookOutcome = LookObservation['outcomes'][number];
/** A look without what was seen. */
export type Look = LookObservation extends infer L
  ? L extends LookObservation
    ? Omit<L, 'outcomes' | 'note' | 'photo' | 'at'>
    : never
  : never;

/** The transmitter at one end of a link, as its plug really sits. `unit: null` is the controller's port of that chain. */
interface Transmitter {
  readonly chain: ChainId;
  readonly unit: UnitId | null;
  readonly port: 'up' | 'down';
}

/**
 * What a look shows now (domain section 5, step 8; section 7). For light, the link looked at counts as unplugged and everything
 * else stays as it is. Null when the look names nothing on a chain.
 */
export function predictLook(look: Look, input: SimulationInput): LookOutcome | null {
  return outcomeAt(look, layOut(input).now);
}

/** The same from a moment that is already laid out. */
export function outcomeAt(look: Look, now: Moment): LookOutcome | null {
  switch (look.look) {
    case 'light-at-plug':
      return lightAtPlug(now, look.link as LinkId, look.end);
    case 'light-at-port':
      return lightAtPort(now, look.link as LinkId, look.end);
    case 'lamp':
      return lampThrough(now, look.link as LinkId, look.fibre);
    case 'voltage':
      return voltageAt(now, look.unit as UnitId);
    case 'compare-plugs':
      return now.placed.some(({ effect }) => effect.at === 'wiring' && effect.unit === look.unit) ? 'differs' : 'same';
    case 'compare-fibres':
      return now.placed.some(({ effect }) => effect.at === 'holes' && effect.link === look.link) ? 'differs' : 'same';
  }
}

/** Whether "no light" at this end is also what a healthy link shows, so that the look proves nothing. */
export function isNoLightNormal(look: Look, input: SimulationInput): boolean {
  if (look.look !== 'light-at-plug' && look.look !== 'light-at-port') {
    return false;
  }
  return predictLook(look, { ...input, faults: [] }) === 'none';
}

/** The 24 V of a unit: it sags where the sums leave less than the unit needs, and more than nothing. */
function voltageAt(now: Moment, unit: UnitId): LookOutcome {
  const state = stateOf(now).units.get(unit);
  if (state?.powered === true) {
    return 'steady';
  }
  return state?.causes.some((cause) => cause.code === 'voltage-too-low' && cause.volts > 0) === true ? 'sags' : 'absent';
}

function lightAtPlug(now: Moment, link: LinkId, end: LinkEnd): LookOutcome | null {
  const far = findTransmitter(now, link, otherEnd(end));
  if (far === null) {
    return null;
  }
  const direction: Direction = end === 'upper' ? 'return' : 'outbound';
  const isBlocked = now.placed.some(
    ({ effect }) =>
      (effect.at === 'fibre' && effect.link === link && effect.direction === direction && effect.is === 'cut') ||
      (effect.at === 'plug' && effect.link === link && effect.end === otherEnd(end) && effect.is === 'loose'),
  );
  if (!givesLight(now, far) || isBlocked || now.arrangement.unplugged.has(endKey(link, otherEnd(end)))) {
    return 'none';
  }
  if (now.placed.some(({ effect }) => effect.at === 'holes' && effect.link === link)) {
    return 'wrong-hole';
  }
  const isWeak = now.placed.some(
    ({ effect }) =>
      (effect.at === 'fibre' && effect.link === link && effect.direction === direction && effect.is !== 'cut') ||
      (effect.at === 'route' && effect.link === link) ||
      (effect.at === 'plug' && effect.link === link && effect.is === 'fouled'),
  );
  return isWeak ? 'weak' : 'bright';
}

function lightAtPort(now: Moment, link: LinkId, end: LinkEnd): LookOutcome | null {
  const own = findTransmitter(now, link, end);
  return own === null ? null : givesLight(now, own) ? 'bright' : 'none';
}

function lampThrough(now: Moment, link: LinkId, fibre: Direction): LookOutcome {
  const on = now.placed.map(({ effect }) => effect);
  if (on.some((effect) => effect.at === 'fibre' && effect.link === link && effect.direction === fibre && effect.is === 'cut')) {
    return 'none';
  }
  const isWeak = on.some(
    (effect) =>
      (effect.at === 'fibre' && effect.link === link && effect.direction === fibre) ||
      (effect.at === 'plug' && effect.link === link && effect.is === 'fouled'),
  );
  return isWeak ? 'weak' : 'clear';
}

/** The transmitter that lights an end of a link. With the plugs of the unit exchanged it is that of the unit's other port. */
function findTransmitter(now: Moment, link: LinkId, end: LinkEnd): Transmitter | null {
  for (const chain of arrangedChains(now.cabinet, now.arrangement)) {
    const index = chain.links.indexOf(link);
    if (index < 0) {
      continue;
    }
    const unit = end === 'upper' ? (chain.units[index - 1] ?? null) : (chain.units[index] ?? null);
    const documented = end === 'upper' ? 'down' : 'up';
    const isCrossed = unit !== null && now.placed.some(({ effect }) => effect.at === 'wiring' && effect.unit === unit);
    return { chain: chain.id, unit, port: isCrossed ? otherPort(documented) : documented };
  }
  return null;
}

function otherPort(port: 'up' | 'down'): 'up' | 'down' {
  return port === 'up' ? 'down' : 'up';
}

/** A transmitter whose own link is unplugged hears nothing: it gives light if it goes on sending, or has idle light. */
function givesLight(now: Moment, { chain, unit, port }: Transmitter): boolean {
  if (unit === null) {
    const isDead = now.placed.some(({ effect }) => effect.at === 'chain-port' && effect.chain === chain);
    return !isDead && now.cabinet.content.controller?.powered !== false && lightsWhenDeaf(documentedPortBehaviour(now.cabinet, chain));
  }
  const isDead = now.placed.some(
    ({ effect }) => effect.at === 'port' && effect.unit === unit && effect.port === port && effect.is === 'tx-dead',
  );
  return !isDead && stateOf(now).units.get(unit)?.alive === true && lightsWhenDeaf(now.behaviourOf(unit));
}

function lightsWhenDeaf(behaviour: Pick<Behaviour, 'onReceiveLoss' | 'idleLight'>): boolean {
  return behaviour.onReceiveLoss === 'keep' || behaviour.idleLight === 'yes';
}
