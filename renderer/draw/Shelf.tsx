import { Cable } from 'lucide-react';
import { useMemo } from 'react';
import { MiniMap } from 'reactflow';
import { drawWords } from '../../engine/messages/index.ts';
import { kindLetters } from '../../engine/quick/index.ts';
import { type UnitKind, unitKinds } from '../../engine/schema/index.ts';
import { countAxes } from '../../engine/sums/index.ts';
import type { Topology } from '../../engine/topology/index.ts';
import { Sign } from '../marks/Sign.tsx';
import { namesOf } from '../state/names.ts';
import { useApp, useDispatch } from '../state/useWorkbench.ts';
import { useDrawing } from './DrawingContext.ts';
import { linkElementId } from './elements.ts';
import { looseCables } from './projectDraw.ts';

const commandOf = {
  'servo-drive': 'insert-servo',
  'spindle-drive': 'insert-spindle',
  'encoder-interface': 'insert-encoder',
  supply: 'insert-supply',
} as const;

/** From so many units on the whole is shown small, here where it hides nothing. */
const minimapFrom = 15;

/** The kinds that can stand in a cabinet, and the chains that there are. */
export function Shelf() {
  const dispatch = useDispatch();
  const topology = useApp((state) => state.checked.topology);
  const chosen = useApp((state) => state.draw.chosen);
  const drawn = useApp((state) => state.draw.view === 'drawing');
  return (
    <aside className="shelf" id="shelf" tabIndex={-1} aria-label={drawWords.shelf.region}>
      <h2 className="section-head">{drawWords.shelf.region}</h2>
      {unitKinds.map((kind) => (
        <ShelfKind key={kind} kind={kind} />
      ))}
      <ShelfCable />
      <p className="shelf-hint">{drawWords.shelf.hint}</p>
      <h2 className="section-head">{drawWords.shelf.chains}</h2>
      <ul className="shelf-chains">
        {topology.chains.map((chain) => {
          const { id, record, units } = chain;
          const { axes } = countAxes(topology, chain);
          const { name, what } = drawWords.shelf.chain(record.number, units.length, axes);
          return (
            <li key={id}>
              <button
                type="button"
                aria-pressed={chosen.includes(id)}
                onClick={() => {
                  dispatch('choose', { ids: [id], how: 'only' });
                  dispatch('choose-chain');
                }}
              >
                <b>{name}</b> {what}
              </button>
            </li>
          );
        })}
      </ul>
      <button type="button" className="button small" title={drawWords.shelf.controllerHint} onClick={() => dispatch('new-chain')}>
        {drawWords.shelf.addChain} <kbd>C</kbd>
      </button>
      <LooseCables topology={topology} />
      {drawn && topology.units.size >= minimapFrom && (
        <MiniMap className="minimap" pannable zoomable ariaLabel={drawWords.minimap} nodeBorderRadius={4} nodeStrokeWidth={6} />
      )}
    </aside>
  );
}

/** Cables that are plugged into nothing stand here until they are. */
function LooseCables({ topology }: { readonly topology: Topology }) {
  const dispatch = useDispatch();
  const { pull } = useDrawing();
  const chosen = useApp((state) => state.draw.chosen);
  const cables = useMemo(() => looseCables(topology), [topology]);
  if (cables.length === 0) return null;
  return (
    <>
      <h2 className="section-head">{drawWords.shelf.loose}</h2>
      <ul className="shelf-loose">
        {cables.map((id) => (
          <li key={id}>
            <button
              type="button"
              id={linkElementId(id)}
              aria-pressed={chosen.includes(id)}
              onPointerDown={(event) => event.button === 0 && pull.current?.(event, { kind: 'cable', link: id })}
              onClick={() => dispatch('choose', { ids: [id], how: 'only' })}
            >
              {namesOf(topology).link(id)}
            </button>
          </li>
        ))}
      </ul>
      <p className="shelf-hint">{drawWords.shelf.looseHint}</p>
    </>
  );
}

/** A cable off the shelf: dragged onto a port, or by a click, Enter or its letter a loose one. */
function ShelfCable() {
  const dispatch = useDispatch();
  const { pull } = useDrawing();
  return (
    <button
      type="button"
      className="shelf-kind"
      title={drawWords.shelf.cableHint}
      onPointerDown={(event) => event.button === 0 && pull.current?.(event, { kind: 'new' })}
      onClick={() => dispatch('insert-cable')}
    >
      <Cable size={20} aria-hidden="true" />
      <span>{drawWords.shelf.cable}</span>
      <kbd>L</kbd>
    </button>
  );
}

/** Dragged onto the drawing; held by a click, for the next click there; put in at once by a double click, Enter or its letter. */
function ShelfKind({ kind }: { readonly kind: UnitKind }) {
  const dispatch = useDispatch();
  const { begin } = useDrawing();
  const held = useApp((state) => state.draw.held === kind);
  return (
    <button
      type="button"
      className="shelf-kind"
      aria-pressed={held}
      onPointerDown={(event) => event.button === 0 && begin.current?.(event, { kind: 'new', unit: kind })}
      onClick={(event) => {
        // From the keyboard there is no pointer with which to show the place.
        if (event.detail === 0) dispatch(commandOf[kind]);
        else dispatch('hold', { kind: held ? null : kind });
      }}
      onDoubleClick={() => {
        dispatch('hold', { kind: null });
        dispatch(commandOf[kind]);
      }}
    >
      <Sign name={kind} size={20} />
      <span>{drawWords.shelf.kinds[kind]}</span>
      <kbd>{kindLetters[kind].toUpperCase()}</kbd>
    </button>
  );
}
