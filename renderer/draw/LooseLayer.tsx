import { ViewportPortal } from 'reactflow';
import { drawWords } from '../../engine/messages/index.ts';
import { fibreOffset, port } from '../canvas/geometry.ts';
import { ChangeTag } from '../compare/ChangeTag.tsx';
import { useDispatch } from '../state/useWorkbench.ts';
import type { LooseView } from './drawViews.ts';
import { linkElementId } from './elements.ts';

/** Length of what is drawn of a loose cable, and the plug at its end, in flow units. */
const piece = { length: 16, plug: 9, height: 30 } as const;

/** Cables that are plugged in at one end: a short piece out of the port, and the plug that hangs loose. */
export function LooseLayer({ cables }: { readonly cables: readonly LooseView[] }) {
  return (
    <ViewportPortal>
      {cables.map((view) => (
        <Loose key={view.id} view={view} />
      ))}
    </ViewportPortal>
  );
}

/** Taken hold of at its plug like a plug in a port; chosen by a click beside it, by its name. */
function Loose({ view: { id, designation, end, detail, at, chosen, name } }: { readonly view: LooseView }) {
  const dispatch = useDispatch();
  const way = end === 'lower' ? 1 : -1;
  const inset = detail === 'strip' ? 0 : port.width / 2;
  const [from, to] = [way * inset, way * (inset + piece.length)];
  const offset = detail === 'strip' ? 3 : fibreOffset;
  const half = detail === 'strip' ? 7 : piece.height / 2;
  return (
    <div
      className={`loose detail-${detail}${chosen === 'no' ? '' : ' chosen-thing'}`}
      style={{ transform: `translate(${at.x}px, ${at.y}px)` }}
    >
      <svg aria-hidden="true">
        <g className="link">
          <path className="outbound" d={`M${from} ${-offset}H${to}`} />
          <path className="return" d={`M${from} ${offset - 1.5}H${to}`} />
          <path className="return" d={`M${from} ${offset + 1.5}H${to}`} />
          <rect className="loose-plug" x={Math.min(to, to + way * piece.plug)} y={-half} width={piece.plug} height={2 * half} rx="2" />
        </g>
      </svg>
      <button
        type="button"
        id={linkElementId(id)}
        tabIndex={-1}
        className="loose-hit nopan"
        style={{ left: way > 0 ? from - 2 : to - piece.plug - 4 }}
        aria-label={name}
        data-link={id}
        data-loose={`${id} ${end}`}
        onClick={(event) => dispatch('choose', { ids: [id], how: event.shiftKey || event.ctrlKey || event.metaKey ? 'toggle' : 'only' })}
      />
      {detail === 'full' && (
        <span className="loose-words" style={{ left: (from + to) / 2 }} aria-hidden="true">
          <b className="designation">{designation}</b>
          <i>{drawWords.looseEnd}</i>
        </span>
      )}
      <span className="loose-change" style={{ left: (from + to) / 2 }}>
        <ChangeTag id={id} bare />
      </span>
    </div>
  );
}
