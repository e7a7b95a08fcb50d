import { type Port, whyNotFeed } from '../../engine/edit/index.ts';
import { drawWords } from '../../engine/messages/index.ts';
import type { AppState } from '../state/appState.ts';
import type { CommandArgs } from '../state/commands.ts';
import { namesOf } from '../state/names.ts';
import { chosenThings } from './chosen.ts';
import type { Pulled } from './gesture.ts';
import { allSockets, pulledOut, whyNotInto } from './pulling.ts';

/** One thing to which what is chosen can be connected. */
export type ConnectChoice = { readonly key: string; readonly words: string } & (
  | { readonly command: 'join-ports'; readonly args: CommandArgs<'join-ports'> }
  | { readonly command: 'replug-end'; readonly args: CommandArgs<'replug-end'> }
  | { readonly command: 'feed-units'; readonly args: CommandArgs<'feed-units'> }
);

/** Everything to which what is chosen can be connected: a port of it with other ports, the ends of a cable, units with a source of 24 V. */
export function connectChoices(state: AppState): readonly ConnectChoice[] {
  const ids = chosenThings(state);
  const { topology } = state.checked;
  const maps: { readonly units: ReadonlyMap<string, unknown>; readonly links: ReadonlyMap<string, unknown> } = topology;
  const units = ids.filter((id) => maps.units.has(id));
  const [only] = ids;
  if (units.length === ids.length && units.length > 1) return [...joinsBetween(state, units), ...feeds(state, units)];
  if (only === undefined || ids.length > 1) return [];
  if (maps.links.has(only))
    return [...ends(state, { kind: 'plug', link: only, end: 'upper' }), ...ends(state, { kind: 'plug', link: only, end: 'lower' })];
  if (!maps.units.has(only)) return ends(state, pulledOut(state.cabinet, { chain: only }));
  const sides = (['down', 'up'] as const).flatMap((side) => ends(state, pulledOut(state.cabinet, { unit: only, side })));
  return [...sides, ...feeds(state, units)];
}

/** Where one end could go. */
function ends(state: AppState, pulled: Pulled): readonly ConnectChoice[] {
  const names = namesOf(state.checked.topology);
  const portName = (port: Port) => ('chain' in port ? names.chain(port.chain) : `${names.unit(port.unit)} ${port.side}`);
  return allSockets(state.cabinet).flatMap((socket): ConnectChoice[] => {
    if (socket.kind !== 'port' || (pulled.kind !== 'plug' && pulled.kind !== 'port')) return [];
    if (whyNotInto(state.cabinet, pulled, socket) !== null) return [];
    const to = portName(socket.port);
    if (pulled.kind === 'plug') {
      const { link, end } = pulled;
      const words = drawWords.drop.plugInto(names.link(link), to);
      return [{ key: `${link} ${end} ${to}`, words, command: 'replug-end', args: { link, end, port: socket.port } }];
    }
    const words = drawWords.drop.join(portName(pulled.port), to);
    return [{ key: words, words, command: 'join-ports', args: { a: pulled.port, b: socket.port } }];
  });
}

/** Two chosen units: one behind the other. */
function joinsBetween(state: AppState, [a, b, more]: readonly string[]): readonly ConnectChoice[] {
  if (a === undefined || b === undefined || more !== undefined) return [];
  return [
    [a, b],
    [b, a],
  ].flatMap(([upper = '', lower = '']) =>
    ends(state, { kind: 'port', port: { unit: upper, side: 'down' } }).filter(
      ({ command, args }) => command === 'join-ports' && 'b' in args && 'unit' in args.b && args.b.unit === lower,
    ),
  );
}

/** Every source of 24 V for the chosen units: outputs of supplies, and other units that pass it on. */
function feeds(state: AppState, chosen: readonly string[]): readonly ConnectChoice[] {
  const names = namesOf(state.checked.topology);
  const all = state.cabinet.units ?? [];
  const units = chosen.filter((id) => all.some((unit) => unit.id === id && unit.kind !== 'supply'));
  if (units.length === 0) return [];
  const sources = [
    ...all
      .filter(({ kind }) => kind === 'supply')
      .flatMap(({ id, supply }) => [
        ...(supply?.outputs ?? []).map((output) => ({ unit: id, output: output.id, name: `${names.unit(id)} ${output.name}` })),
        ...((supply?.outputs ?? []).length === 0 ? [{ unit: id, name: names.unit(id) }] : []),
      ]),
    ...all.filter(({ id, kind }) => kind !== 'supply' && !units.includes(id)).map(({ id }) => ({ unit: id, name: names.unit(id) })),
  ];
  return sources.flatMap(({ name, ...from }): ConnectChoice[] => {
    const fits = units.filter((unit) => whyNotFeed(state.cabinet, from, unit) === null);
    if (fits.length < units.length) return [];
    const words = drawWords.drop.feedFrom(drawWords.things(units.map((id) => names.unit(id))), name);
    return [{ key: words, words, command: 'feed-units', args: { from, units } }];
  });
}
