import type { Problem, UnitId } from '../../engine/base/index.ts';
import { duplicateThings, type EditResult, type PasteTarget } from '../../engine/edit/index.ts';
import { drawWords, makeNames, unitKindWords } from '../../engine/messages/index.ts';
import type { UnitKind } from '../../engine/schema/index.ts';
import { buildTopology, type Topology } from '../../engine/topology/index.ts';
import type { AppState } from '../state/appState.ts';
import { namesOf } from '../state/names.ts';
import { insertAt, moveAt } from './buildCommands.ts';
import type { DropTarget } from './spots.ts';

/** What is dragged: a new unit of a kind, units that are there, or a copy of them. */
export type Carried =
  | { readonly kind: 'new'; readonly unit: UnitKind }
  | { readonly kind: 'move' | 'copy'; readonly units: readonly string[] };

/** What would happen if it were let go now, in words; or why it cannot be. */
export interface Preview {
  readonly title: string;
  readonly detail: string;
  readonly refusal: Problem | null;
}

/** Works out what a drop would do, by doing it on the side. */
export function previewDrop(state: Pick<AppState, 'cabinet' | 'checked'>, carried: Carried, target: DropTarget): Preview {
  const answer = tryDrop(state, carried, target);
  const { topology } = state.checked;
  const title = titleOf(topology, carried, target);
  if (!answer.ok) return { title, detail: '', refusal: answer.problems[0] ?? null };
  const after = buildTopology(answer.value.cabinet).topology;
  return { title, detail: detailOf(topology, after, target), refusal: null };
}

export function tryDrop({ cabinet }: Pick<AppState, 'cabinet'>, carried: Carried, { spot, place }: DropTarget): EditResult {
  if (carried.kind === 'new') return insertAt(cabinet, { units: [{ kind: carried.unit }], spot, ...(place === null ? {} : { place }) });
  if (carried.kind === 'copy') return duplicateThings(cabinet, carried.units, copyTarget({ spot, place }));
  return moveAt(cabinet, carried.units, place ?? spot);
}

/** Where a copy goes that is let go there; beside the chains it hangs on nothing. */
export function copyTarget({ spot, place }: Pick<DropTarget, 'spot' | 'place'>): PasteTarget {
  return { at: typeof spot === 'string' ? null : spot, ...(place === null ? {} : { place }) };
}

function titleOf(topology: Topology, carried: Carried, { spot, place, mates }: DropTarget): string {
  const names = namesOf(topology);
  const words = drawWords.drop;
  const units = carried.kind === 'new' ? '' : drawWords.things(carried.units.map((id) => names.unit(id)));
  const what = carried.kind === 'new' ? unitKindWords[carried.unit] : carried.kind === 'copy' ? words.copyOf(units) : units;
  if (place !== null) return words.place(what, place.row, place.slot);
  if (spot === 'apart') return carried.kind === 'move' ? words.takeOff(what) : words.apart(what);
  if (spot === 'new-chain') return words.newChain(what);
  const [first, second] = mates.filter((id) => carried.kind !== 'move' || !carried.units.includes(id)).map((id) => names.unit(id));
  const chain = 'chain' in spot ? names.chain(spot.chain) : '';
  if (first !== undefined && second !== undefined) return words.between(what, first, second);
  const position = 'position' in spot ? spot.position : 1;
  return position === 1 ? words.head(what, chain) : words.end(what, chain);
}

/** What is numbered otherwise then, and which cables are new. */
function detailOf(before: Topology, after: Topology, { link }: DropTarget): string {
  const [old, fresh] = [namesOf(before), makeNames(after)];
  const renumbered = [...before.placeOf].flatMap(([id, place]) => {
    const then = after.placeOf.get(id);
    const same = then?.ordinal === place.ordinal && then.group === place.group && then.chain === place.chain;
    return same || !then ? [] : [{ unit: old.unit(id), now: fresh.ordinal(id), chain: fresh.chain(then.chain) }];
  });
  const made = [...after.links.keys()].filter((id) => !before.links.has(id));
  return drawWords.drop.detail({
    stays: link === null || made.length === 0 ? null : old.link(link),
    gone: [...before.links.keys()].filter((id) => !after.links.has(id)).map((id) => old.link(id)),
    made: made.map((id) => fresh.link(id)),
    leadsTo: made.map((id) => fresh.unit(after.links.get(id)?.lower?.unit ?? '')),
    renumbered,
  });
}

/** Whether every one of these can be dragged: the controller stays where it is. */
export function movable(topology: Topology, ids: readonly string[]): readonly UnitId[] {
  const order = new Map([...topology.chains.flatMap(({ units }) => units), ...topology.units.keys()].map((id, at) => [id, at]));
  return ids
    .filter((id): id is UnitId => topology.units.has(id as UnitId)) // a map asked for any id
    .sort((a, b) => (order.get(a) ?? 0) - (order.get(b) ?? 0));
}
