import type { StoreApi } from 'zustand/vanilla';
import { copyThings } from '../../engine/edit/index.ts';
import { drawWords } from '../../engine/messages/index.ts';
import type { UnitKind } from '../../engine/schema/index.ts';
import type { AppState } from '../state/appState.ts';
import type { DrawActions } from '../state/command.ts';
import type { Dispatch } from '../state/dispatcher.ts';
import { namesOf } from '../state/names.ts';
import type { MoveTo, Spot } from './buildCommands.ts';
import { chosenThings } from './chosen.ts';
import { movable } from './preview.ts';
import { placeOneStep, spotBesideChosen, spotOneStep, spotOnOtherChain } from './spots.ts';

interface Bench {
  readonly store: StoreApi<AppState>;
  readonly dispatch: Dispatch;
  readonly announce: (text: string) => void;
}

/** What the keys and menus of Draw do with what is chosen. */
export function makeDrawActions({ store, dispatch, announce }: Bench): DrawActions {
  /** What was copied last in this window: for a paste out of the menu, which the browser does not let read the clipboard. */
  let clip: string | null = null;

  const chosen = () => chosenThings(store.getState());
  const topology = () => store.getState().checked.topology;

  const copy = (): string | null => {
    const ids = chosen();
    const text = copyThings(store.getState().cabinet, ids);
    if (text === null) return null;
    clip = text;
    announce(drawWords.said.copied(drawWords.things(ids.map((id) => namesOf(topology()).thing(id)))));
    return text;
  };

  /** Behind what is chosen; a copy of a chain hangs on nothing until it is joined. */
  const pasteTarget = () => {
    const spot = pasteSpot(store.getState());
    return spot === null ? {} : { at: spot };
  };

  /** A copy from here is a small cabinet file; rows of a spreadsheet have tabs; what is neither is refused by the reader of files. */
  const paste = (text: string) => {
    if (/^[^{]*\t/.test(text)) dispatch('paste-row-text', { text });
    else dispatch('paste-clip', { text, target: pasteTarget() });
  };

  /** What takes the place of what goes: its neighbour in the chain. */
  const neighbourOf = (ids: readonly string[]): string | null => {
    const chain = topology().chains.find(({ units }) => units.some((unit) => ids.includes(unit)));
    if (!chain) return null;
    const at = chain.units.findIndex((unit) => ids.includes(unit));
    const behind = chain.units.slice(at).find((unit) => !ids.includes(unit));
    return behind ?? chain.units[at - 1] ?? null;
  };

  const remove = (id: 'remove-things' | 'cut-things') => {
    const ids = chosen().filter((one) => one !== store.getState().cabinet.controller?.id);
    if (ids.length === 0) return;
    const neighbour = neighbourOf(ids);
    const before = store.getState().cabinet;
    dispatch(id, { ids });
    if (store.getState().cabinet !== before) dispatch('choose', { ids: neighbour === null ? [] : [neighbour], how: 'only' });
  };

  const move = (key: 'left' | 'right' | 'up' | 'down') => {
    const state = store.getState();
    const ids = movable(topology(), chosen());
    const to: MoveTo | null =
      state.draw.arrangement === 'mounting'
        ? placeOneStep(topology(), ids, key)
        : key === 'left' || key === 'right'
          ? spotOneStep(topology(), ids, key === 'left' ? -1 : 1)
          : spotOnOtherChain(topology(), ids, key === 'up' ? -1 : 1);
    if (to === null || ids.length === 0) return;
    dispatch('move-units', { ids, to });
    const [first] = ids;
    if (first !== undefined) announce(drawWords.said.moved(namesOf(topology()).unit(first), namesOf(topology()).place(first)));
  };

  return {
    insert: (kind: UnitKind) => {
      const spot: Spot = spotBesideChosen(topology(), chosen(), kind);
      dispatch('insert-units', { units: [{ kind }], spot });
    },
    remove: () => remove('remove-things'),
    copy,
    cut: () => {
      const text = copy();
      if (text !== null) remove('cut-things');
      return text;
    },
    paste,
    pasteLast: async () => {
      const text = await readClipboard();
      if (text ?? clip) paste(text ?? clip ?? '');
      else announce(drawWords.said.nothingCopied);
    },
    duplicate: () => {
      const ids = chosen();
      if (ids.length > 0) dispatch('duplicate-things', { ids, target: pasteTarget() });
    },
    move,
    takeOff: () => dispatch('move-units', { ids: movable(topology(), chosen()), to: 'apart' }),
    addCable: () => dispatch('lay-cable'),
    addChain: () => dispatch('add-chain', undefined),
    goToInspector: () => document.querySelector<HTMLElement>('#inspector input, #inspector')?.focus(),
  };
}

/** Behind the last chosen unit of a chain, into the chosen cable, or at the end of the chosen chain; null: on no chain. */
function pasteSpot(state: AppState): Exclude<Spot, string> | null {
  const { topology } = state.checked;
  const ids = chosenThings(state);
  if (
    !ids.some(
      (id) =>
        (topology.placeOf as ReadonlyMap<string, unknown>).has(id) ||
        (topology.links as ReadonlyMap<string, unknown>).has(id) ||
        (topology.chainById as ReadonlyMap<string, unknown>).has(id),
    )
  ) {
    return null;
  }
  const ordered = movable(topology, ids);
  const spot = spotBesideChosen(topology, ordered.length > 0 ? ordered : ids, 'servo-drive');
  return typeof spot === 'string' ? null : spot;
}

/** The clipboard of the system, where the page may read it. */
async function readClipboard(): Promise<string | null> {
  try {
    return await navigator.clipboard.readText();
  } catch {
    // Refused, or not there: what was copied in this window is used.
    return null;
  }
}
