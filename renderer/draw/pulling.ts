import type { Problem } from '../../engine/base/index.ts';
import { type ChainSpot, type FeedSource, type Port, whyNotFeed, whyNotJoin, whyNotLay, whyNotReplug } from '../../engine/edit/index.ts';
import { drawWords } from '../../engine/messages/index.ts';
import type { CabinetContent, LinkEnd } from '../../engine/schema/index.ts';
import type { Topology } from '../../engine/topology/index.ts';
import type { AppState } from '../state/appState.ts';
import { namesOf } from '../state/names.ts';
import { type Gesture, type Pulled, type Socket, socketKey } from './gesture.ts';

/** What is pulled out of a port: its plug where one sits there, else the end of a new cable. */
export function pulledOut({ links }: CabinetContent, port: Port): Pulled {
  const there = (links ?? []).find(({ upper, lower }) => {
    if ('chain' in port) return upper && 'chain' in upper && upper.chain === port.chain;
    return port.side === 'up' ? lower?.unit === port.unit : upper && 'unit' in upper && upper.unit === port.unit;
  });
  if (!there) return { kind: 'port', port };
  return { kind: 'plug', link: there.id, end: endInto(port) };
}

/** Why a pulled end does not go into a socket; null when it does. */
export function whyNotInto(content: CabinetContent, pulled: Pulled, socket: Socket): Problem | null | 'other-kind' {
  if (pulled.kind === 'feed') {
    if (socket.kind !== 'feed') return 'other-kind';
    const { from, to } = feedEnds(content, pulled.unit, socket.unit);
    return whyNotFeed(content, { unit: from }, to);
  }
  if (socket.kind !== 'port') return 'other-kind';
  if (pulled.kind === 'plug') return whyNotReplug(content, pulled.link, pulled.end, socket.port);
  if (pulled.kind === 'new') return whyNotLay(content, socket.port);
  if (pulled.kind === 'cable') return whyNotReplug(content, pulled.link, endInto(socket.port), socket.port);
  return whyNotJoin(content, pulled.port, socket.port);
}

/** The end of a cable that fits into a port. */
export function endInto(port: Port): LinkEnd {
  return 'unit' in port && port.side === 'up' ? 'lower' : 'upper';
}

/** Where a new unit goes that a cable, pulled out of a port, shall lead to. */
export function spotAtPort(port: Port): ChainSpot {
  if ('chain' in port) return { chain: port.chain, position: 1 };
  return port.side === 'down' ? { afterUnit: port.unit } : { beforeUnit: port.unit };
}

/** A lead may be pulled from either end: a supply is always the one that feeds. */
export function feedEnds({ units }: CabinetContent, a: string, b: string): { readonly from: string; readonly to: string } {
  const isSupply = (id: string) => units?.some((unit) => unit.id === id && unit.kind === 'supply') ?? false;
  return isSupply(b) && !isSupply(a) ? { from: b, to: a } : { from: a, to: b };
}

/** The output of a supply on which a unit is hung: the one that feeds most of its chain, else the first. */
export function pickSource(topology: Topology, from: string, to: string): FeedSource {
  const outputs = [...topology.units.values()].find(({ id }) => id === from)?.supply?.outputs ?? [];
  const [first] = outputs;
  if (!first) return { unit: from };
  const places: ReadonlyMap<string, { readonly chain: string }> = topology.placeOf;
  const chain = places.get(to)?.chain;
  const counts = new Map<string, number>();
  for (const feed of topology.feeds) {
    const output = topology.leads.get(feed.lead)?.from?.output;
    if (feed.from === from && output !== undefined && places.get(feed.to)?.chain === chain)
      counts.set(output, (counts.get(output) ?? 0) + 1);
  }
  const best = [...counts].sort(([, a], [, b]) => b - a)[0]?.[0];
  return { unit: from, output: best ?? first.id };
}

/** Every socket of a cabinet. */
export function allSockets({ chains, units }: CabinetContent): readonly Socket[] {
  return [
    ...(chains ?? []).map(({ id }): Socket => ({ kind: 'port', port: { chain: id } })),
    ...(units ?? []).flatMap(({ id }): Socket[] => [
      { kind: 'port', port: { unit: id, side: 'up' } },
      { kind: 'port', port: { unit: id, side: 'down' } },
      { kind: 'feed', unit: id },
    ]),
  ];
}

/** Keys of the sockets that would take what is pulled. */
export function joinableSockets(content: CabinetContent, pulled: Pulled): ReadonlySet<string> {
  return new Set(
    allSockets(content)
      .filter((socket) => whyNotInto(content, pulled, socket) === null)
      .map(socketKey),
  );
}

type PullGesture = Pick<Gesture & { readonly kind: 'pull' }, 'pulled' | 'over' | 'bare'>;

/** What letting go over a socket would do, in words. */
export function wordPull({ checked: { topology } }: Pick<AppState, 'checked'>, { pulled, over, bare }: PullGesture): string {
  const names = namesOf(topology);
  const words = drawWords.drop;
  const portName = (port: Port) => ('chain' in port ? names.chain(port.chain) : `${names.unit(port.unit)} ${port.side}`);
  if (pulled.kind === 'feed') {
    if (over?.kind !== 'feed') return words.feed;
    const { from, to } = feedEnds(topology.content, pulled.unit, over.unit);
    return words.feedFrom(names.unit(to), names.unit(from));
  }
  if (over?.kind !== 'port') {
    if (pulled.kind === 'port') return bare ? words.newUnit : words.plug;
    if (pulled.kind === 'new') return bare ? words.layLoose : words.plugEnd;
    return bare && pulled.kind === 'plug' ? words.letHang(names.link(pulled.link)) : words.plugEnd;
  }
  if (pulled.kind === 'new') return words.plugInto(drawWords.shelf.newCable, portName(over.port));
  return pulled.kind !== 'port'
    ? words.plugInto(names.link(pulled.link), portName(over.port))
    : words.join(portName(pulled.port), portName(over.port));
}
