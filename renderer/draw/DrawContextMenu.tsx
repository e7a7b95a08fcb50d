import { useCallback, useRef, useState } from 'react';
import { Menu, MenuItem, MenuSection, Popover } from 'react-aria-components';
import { drawWords, windowTexts } from '../../engine/messages/index.ts';
import type { Point } from '../canvas/views.ts';
import { wordKeys } from '../shell/shortcuts.ts';
import { type CommandId, commands } from '../state/commands.ts';
import { useApp, useDispatch, useWindow } from '../state/useWorkbench.ts';
import { chosenThings } from './chosen.ts';
import { useDrawing, useGesture } from './DrawingContext.ts';
import { thingOf } from './elements.ts';
import { noGesture } from './gesture.ts';
import { swallowClick } from './gestureTargets.ts';

const onThings = ['connect-to', 'cut', 'copy', 'duplicate', 'remove-chosen'] as const;
const onCable = ['insert-servo', 'insert-spindle', 'insert-encoder', 'connect-to', 'remove-chosen'] as const;
const onUnits = ['choose-chain', 'choose-upstream', 'choose-downstream', 'move-back', 'move-on', 'take-off-chain'] as const;
/** What a new cable can lead to, that was let go over the bare drawing. */
const offered = [
  ['insert-servo', 'servo-drive'],
  ['insert-spindle', 'spindle-drive'],
  ['insert-encoder', 'encoder-interface'],
] as const;
const onNothing = ['insert-servo', 'insert-spindle', 'insert-encoder', 'insert-supply', 'new-chain'] as const;
const always = ['paste', 'paste-rows', 'choose-all', 'zoom-to-fit'] as const;
type MenuCommand =
  | (typeof onThings)[number]
  | (typeof onCable)[number]
  | (typeof onUnits)[number]
  | (typeof onNothing)[number]
  | (typeof always)[number];

/** So long a finger rests on something until the menu opens, milliseconds; it may tremble by so many pixels. */
const longPress = { after: 550, within: 10 } as const;

/** Where the menu is open, on the screen; and how it is opened over a thing, which is chosen first. `cancel` ends a gesture that was begun. */
export function useContextMenu(cancel: () => void) {
  const { store, dispatch } = useWindow();
  const [at, setAt] = useState<Point | null>(null);
  const openOver = useCallback(
    (target: EventTarget, pointer: Point | null) => {
      if (!(target instanceof Element)) return;
      const element = target.closest<HTMLElement>('[data-unit], [data-link], [data-chain], [data-controller], [data-thing]');
      const id = element ? (element.dataset['thing'] ?? thingOf(element)) : null;
      const chosen = chosenThings(store.getState());
      if (id !== null && !chosen.includes(id)) dispatch('choose', { ids: [id], how: 'only' });
      if (id === null && pointer) dispatch('choose', { ids: [], how: 'only' });
      const box = (element ?? target).getBoundingClientRect();
      setAt(pointer ?? { x: box.left + box.width / 2, y: box.top + box.height / 2 });
    },
    [store, dispatch],
  );
  const onContextMenu = useCallback(
    (event: React.MouseEvent) => {
      event.preventDefault();
      openOver(event.target, { x: event.clientX, y: event.clientY });
    },
    [openOver],
  );
  /** A finger that rests. What it began by touching is not done. */
  const onPointerDown = useCallback(
    (event: React.PointerEvent) => {
      if (event.pointerType === 'mouse' || !event.isPrimary) return;
      const { target, clientX: x, clientY: y } = event;
      const stop = new AbortController();
      const options = { signal: stop.signal, capture: true };
      const timer = window.setTimeout(() => {
        stop.abort();
        cancel();
        swallowClick();
        openOver(target, { x, y });
      }, longPress.after);
      const end = () => {
        window.clearTimeout(timer);
        stop.abort();
      };
      const moved = (move: PointerEvent) => {
        if (Math.hypot(move.clientX - x, move.clientY - y) > longPress.within) end();
      };
      window.addEventListener('pointermove', moved, options);
      for (const ended of ['pointerup', 'pointercancel', 'contextmenu', 'pointerdown']) window.addEventListener(ended, end, options);
    },
    [openOver, cancel],
  );
  /** The keys for it: there is no place of the pointer then, so it opens over the thing itself. */
  const onMenuKey = useCallback(
    (event: React.KeyboardEvent) => {
      if (event.key !== 'ContextMenu' && !(event.key === 'F10' && event.shiftKey)) return;
      event.preventDefault();
      openOver(event.target, null);
    },
    [openOver],
  );
  return { at, onContextMenu, onPointerDown, onMenuKey, close: () => setAt(null) };
}

/** What can be done with what is chosen: the same commands as in the menus. */
export function DrawContextMenu({ at, onClose }: { readonly at: Point | null; readonly onClose: () => void }) {
  const anchor = useRef<HTMLSpanElement>(null);
  const dispatch = useDispatch();
  const kind = useApp((state) => {
    const ids = chosenThings(state);
    const maps: ReadonlyMap<string, unknown> = state.checked.topology.links;
    return ids.length === 0 ? 'nothing' : ids.every((id) => maps.has(id)) ? 'cable' : 'units';
  });
  const groups: readonly (readonly MenuCommand[])[] =
    kind === 'nothing' ? [onNothing, always] : kind === 'cable' ? [onCable, always] : [onThings, onUnits, always];
  return (
    <>
      {at && <span ref={anchor} className="menu-anchor" style={{ left: at.x, top: at.y }} />}
      <Popover
        className="menu-popover"
        aria-label={drawWords.contextMenu}
        triggerRef={anchor}
        isOpen={at !== null}
        placement="bottom start"
        offset={2}
        onOpenChange={(open) => !open && onClose()}
      >
        <Menu
          aria-label={drawWords.contextMenu}
          className="menu"
          onAction={(key) => {
            onClose();
            const id = groups.flat().find((one) => one === key);
            if (id !== undefined) dispatch(id);
          }}
        >
          {groups.map((ids) => (
            <MenuSection key={ids[0]} className="menu-group" aria-label={windowTexts.commands[commands[ids[0] ?? 'paste'].label]}>
              {ids.map((id) => (
                <Item key={id} id={id} />
              ))}
            </MenuSection>
          ))}
        </Menu>
      </Popover>
    </>
  );
}

/** What shall hang on a new cable that was let go over the bare drawing. */
export function OfferMenu() {
  const anchor = useRef<HTMLSpanElement>(null);
  const dispatch = useDispatch();
  const { gestures } = useDrawing();
  const offer = useGesture((gesture) => (gesture.kind === 'offer' ? gesture : null));
  const close = () => gestures.setState({ gesture: noGesture });
  return (
    <>
      {offer && <span ref={anchor} className="menu-anchor" style={{ left: offer.at.x, top: offer.at.y }} />}
      <Popover
        className="menu-popover"
        aria-label={drawWords.drop.offer}
        triggerRef={anchor}
        isOpen={offer !== null}
        placement="bottom start"
        offset={2}
        onOpenChange={(open) => !open && close()}
      >
        <Menu
          aria-label={drawWords.drop.offer}
          className="menu"
          autoFocus="first"
          onAction={(key) => {
            const kind = offered.find(([id]) => id === key)?.[1];
            close();
            if (offer && kind) dispatch('insert-units', { units: [{ kind }], spot: offer.spot });
          }}
        >
          {offered.map(([id]) => (
            <MenuItem key={id} id={id} className="menu-item" textValue={windowTexts.commands[commands[id].label]}>
              <span className="menu-check" />
              <span className="menu-text">{windowTexts.commands[commands[id].label]}</span>
            </MenuItem>
          ))}
        </Menu>
      </Popover>
    </>
  );
}

function Item({ id }: { readonly id: MenuCommand }) {
  const enabled = useApp((state) => commands[id].isEnabled(state));
  const { shortcuts }: { readonly shortcuts?: readonly string[] } = commands[id as CommandId];
  const words = windowTexts.commands[commands[id].label];
  return (
    <MenuItem id={id} className="menu-item" textValue={words} isDisabled={!enabled}>
      <span className="menu-check" />
      <span className="menu-text">{words}</span>
      {shortcuts?.[0] !== undefined && <kbd>{wordKeys(shortcuts[0])}</kbd>}
    </MenuItem>
  );
}
