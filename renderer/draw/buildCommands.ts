import {
  addChain,
  type ChainSpot,
  duplicateThings,
  type EditResult,
  type FeedSource,
  feedUnits,
  insertUnits,
  joinPorts,
  layCable,
  moveInChain,
  moveToPlace,
  type NewUnit,
  type PasteTarget,
  type Place,
  type Port,
  pasteClip,
  pasteRows,
  removeThings,
  replugEnd,
  takeOffChain,
} from '../../engine/edit/index.ts';
import { drawWords, unitKindWords } from '../../engine/messages/index.ts';
import type { CabinetContent, LinkEnd } from '../../engine/schema/index.ts';
import type { AppState } from '../state/appState.ts';
import { editCommand } from '../state/editCommand.ts';
import { namesOf } from '../state/names.ts';

/*
 * The commands of Draw that change the cabinet. Each is one undo step; what the engine refuses is told, and nothing is done.
 */

/** Where units go: a spot of a chain, a chain of their own, or beside the chains. */
export type Spot = ChainSpot | 'new-chain' | 'apart';

const { steps } = drawWords;
const name = ({ checked }: AppState, id: string) => namesOf(checked.topology).thing(id);
const nameMany = (state: AppState, ids: readonly string[]) => drawWords.things(ids.map((id) => name(state, id)));
const namePort = (state: AppState, port: Port) => ('chain' in port ? name(state, port.chain) : `${name(state, port.unit)} ${port.side}`);

/** Makes a chain first, and goes on with its end. */
function onNewChain(cabinet: CabinetContent, edit: (cabinet: CabinetContent, at: ChainSpot) => EditResult): EditResult {
  const made = addChain(cabinet);
  if (!made.ok) return made;
  const [chain = ''] = made.value.added.filter((id) => made.value.cabinet.chains?.some((one) => one.id === id));
  return edit(made.value.cabinet, { endOf: chain });
}

export interface InsertArgs {
  readonly units: readonly NewUnit[];
  readonly spot: Spot;
  readonly place?: Place;
}

/** What inserting makes of a cabinet; for the command and for the words of what would happen alike. */
export function insertAt(cabinet: CabinetContent, { units, spot, place }: InsertArgs): EditResult {
  const insert = (content: CabinetContent, at: ChainSpot | null) =>
    insertUnits(content, { units, at, ...(place === undefined ? {} : { place }) });
  return spot === 'new-chain' ? onNewChain(cabinet, insert) : insert(cabinet, spot === 'apart' ? null : spot);
}

/** Where units that are there can be moved: along the chains, off them, or to a place in the cabinet. */
export type MoveTo = Spot | Place;

export function moveAt(cabinet: CabinetContent, ids: readonly string[], to: MoveTo): EditResult {
  if (to === 'new-chain') return onNewChain(cabinet, (content, at) => moveInChain(content, ids, at));
  if (to === 'apart') return takeOffChain(cabinet, ids);
  return 'row' in to ? moveToPlace(cabinet, ids, to) : moveInChain(cabinet, ids, to);
}

export const buildCommands = {
  'insert-units': editCommand<InsertArgs>({
    label: 'insertUnits',
    name: (_state, { units }) => steps.insert(units.map(({ kind }) => unitKindWords[kind])),
    edit: insertAt,
  }),
  'add-chain': editCommand<undefined>({ label: 'addChain', name: () => steps.addChain, edit: (cabinet) => addChain(cabinet) }),

  'remove-things': editCommand<{ readonly ids: readonly string[] }>({
    label: 'removeThings',
    name: (state, { ids }) => steps.remove(nameMany(state, ids)),
    subject: ({ ids }) => ids[0] ?? null,
    edit: (cabinet, { ids }) => removeThings(cabinet, ids),
  }),
  'cut-things': editCommand<{ readonly ids: readonly string[] }>({
    label: 'cut',
    name: (state, { ids }) => steps.cut(nameMany(state, ids)),
    subject: ({ ids }) => ids[0] ?? null,
    edit: (cabinet, { ids }) => removeThings(cabinet, ids),
  }),

  'move-units': editCommand<{ readonly ids: readonly string[]; readonly to: MoveTo }>({
    label: 'moveUnits',
    name: (state, { ids, to }) => (to === 'apart' ? steps.takeOff : steps.move)(nameMany(state, ids)),
    subject: ({ ids }) => ids[0] ?? null,
    edit: (cabinet, { ids, to }) => moveAt(cabinet, ids, to),
  }),

  'join-ports': editCommand<{ readonly a: Port; readonly b: Port }>({
    label: 'joinPorts',
    name: (state, { a, b }) => steps.join(namePort(state, a), namePort(state, b)),
    subject: ({ b }) => ('unit' in b ? b.unit : null),
    edit: (cabinet, { a, b }) => joinPorts(cabinet, a, b),
  }),
  /** `port: null`: both ends hang loose, and it stands on the shelf. */
  'lay-cable': editCommand<{ readonly port: Port | null } | undefined>({
    label: 'layCable',
    name: () => steps.layCable,
    edit: (cabinet, args) => layCable(cabinet, args?.port ?? null),
  }),
  /** `port: null`: the end hangs loose. */
  'replug-end': editCommand<{ readonly link: string; readonly end: LinkEnd; readonly port: Port | null }>({
    label: 'replugEnd',
    name: (state, { link, end, port }) =>
      port === null ? steps.unplug(end, name(state, link)) : steps.replug(name(state, link), namePort(state, port)),
    subject: ({ link }) => link,
    edit: (cabinet, { link, end, port }) => replugEnd(cabinet, link, end, port),
  }),
  'feed-units': editCommand<{ readonly from: FeedSource; readonly units: readonly string[] }>({
    label: 'feedUnits',
    name: (state, { from, units }) => steps.feed(nameMany(state, units), name(state, from.unit)),
    subject: ({ units }) => units[0] ?? null,
    edit: (cabinet, { from, units }) => feedUnits(cabinet, from, units, 'each'),
  }),

  'paste-clip': editCommand<{ readonly text: string; readonly target: PasteTarget }>({
    label: 'paste',
    name: () => steps.paste,
    edit: (cabinet, { text, target }) => pasteClip(cabinet, text, target),
  }),
  'paste-row-text': editCommand<{ readonly text: string }>({
    label: 'pasteRows',
    name: () => steps.pasteRows,
    edit: (cabinet, { text }) => pasteRows(cabinet, text),
  }),
  'duplicate-things': editCommand<{ readonly ids: readonly string[]; readonly target: PasteTarget }>({
    label: 'duplicate',
    name: (state, { ids }) => steps.duplicate(nameMany(state, ids)),
    edit: (cabinet, { ids, target }) => duplicateThings(cabinet, ids, target),
  }),
} as const;
