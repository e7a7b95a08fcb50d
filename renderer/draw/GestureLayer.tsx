import { ViewportPortal } from 'reactflow';
import { drawWords, unitKindWords } from '../../engine/messages/index.ts';
import { Fibres } from '../canvas/Fibres.tsx';
import type { Box } from '../canvas/placement.ts';
import { Sign } from '../marks/Sign.tsx';
import { shortUnitName } from '../state/names.ts';
import { useApp } from '../state/useWorkbench.ts';
import { useGesture } from './DrawingContext.ts';
import type { Carried } from './preview.ts';

/** What a gesture shows on the drawing itself: the open slot, the pulled cable, the box. */
export function GestureLayer({ opening }: { readonly opening: Box | null }) {
  const gesture = useGesture((one) => one);
  return (
    <ViewportPortal>
      {opening && (
        <div
          className="open-slot"
          style={{ transform: `translate(${opening.x}px, ${opening.y}px)`, width: opening.width, height: opening.height }}
        />
      )}
      {gesture.kind === 'pull' && (
        <svg className={`pulled-line${gesture.refusal ? ' refused' : gesture.over ? ' fits' : ''}`} aria-hidden="true">
          <g className="link">
            {gesture.pulled.kind === 'feed' ? (
              <path className="pulled-lead" d={`M${gesture.from.x} ${gesture.from.y}L${gesture.to.x} ${gesture.to.y}`} />
            ) : (
              <Fibres line={{ from: gesture.from, to: gesture.to, turnY: null }} detail="strip" />
            )}
          </g>
        </svg>
      )}
      {gesture.kind === 'box' && (
        <div
          className="choosing-box"
          style={{
            transform: `translate(${Math.min(gesture.from.x, gesture.to.x)}px, ${Math.min(gesture.from.y, gesture.to.y)}px)`,
            width: Math.abs(gesture.to.x - gesture.from.x),
            height: Math.abs(gesture.to.y - gesture.from.y),
          }}
        />
      )}
    </ViewportPortal>
  );
}

/** What is carried, at the pointer: lifted off the drawing, the only thing with a shadow. */
export function CarriedGhost() {
  const gesture = useGesture((one) => (one.kind === 'carry' ? one : null));
  if (!gesture) return null;
  const { x, y } = gesture.pointer;
  return (
    <div className={`ghost${gesture.preview?.refusal ? ' refused' : ''}`} style={{ left: x, top: y }} aria-hidden="true">
      <GhostWords carried={gesture.carried} />
    </div>
  );
}

function GhostWords({ carried }: { readonly carried: Carried }) {
  const topology = useApp((state) => state.checked.topology);
  if (carried.kind === 'new') {
    return (
      <>
        <Sign name={carried.unit} />
        <b>{unitKindWords[carried.unit]}</b>
      </>
    );
  }
  const [first] = carried.units;
  const more = carried.units.length - 1;
  const unit = [...topology.units.values()].find(({ id }) => id === first);
  return (
    <>
      {unit && <Sign name={unit.kind} />}
      <b className="designation">{first === undefined ? '' : shortUnitName(topology, first as never)}</b>
      {more > 0 && <span>+{more}</span>}
      {carried.kind === 'copy' && <span>{drawWords.drop.copy}</span>}
    </>
  );
}
