import { memo } from 'react';
import { type Edge, EdgeLabelRenderer, type EdgeProps } from 'reactflow';
import { useDetail } from '../canvas/DetailContext.ts';
import { Fibres } from '../canvas/Fibres.tsx';
import { fibrePath, linkMiddle } from '../canvas/fibrePath.ts';
import { port, strip } from '../canvas/geometry.ts';
import { ChangeTag } from '../compare/ChangeTag.tsx';
import { useDispatch } from '../state/useWorkbench.ts';
import type { DrawLinkView } from './drawViews.ts';
import { linkElementId } from './elements.ts';

export type DrawLinkEdgeType = Edge<{ readonly view: DrawLinkView }, 'draw-link'>;

/** One duplex cable in Draw: chosen and pulled by its line. */
export const DrawLinkEdge = memo(function DrawLinkEdge({ data }: EdgeProps<DrawLinkEdgeType>) {
  const detail = useDetail();
  const dispatch = useDispatch();
  if (!data) return null;
  const { view } = data;
  const { from, to, turnY } = view;
  const middle = linkMiddle(view);
  const between = Math.max(10, to.x - from.x - port.width);
  const width =
    detail === 'strip'
      ? `calc(${Math.max(0, to.x - from.x)}px - ${strip.width + 4}px / var(--zoom))`
      : `${turnY === null ? between : 24}px`;
  return (
    <>
      <g className={`link drawn-link${view.chosen === 'no' ? '' : ' chosen-thing'}${view.target ? ' target' : ''} detail-${detail}`}>
        {view.chosen !== 'no' && <path className="link-ring" d={fibrePath(view, 0)} />}
        <Fibres line={view} detail={detail} />
        <path className="link-grip nopan" d={fibrePath(view, 0)} data-thing={view.id} />
      </g>
      <EdgeLabelRenderer>
        <div
          className={`link-labels${detail === 'full' ? '' : ' small'}${detail === 'strip' ? ' strip' : ''}`}
          style={{ transform: `translate(-50%, -50%) translate(${middle.x}px, ${middle.y}px)` }}
        >
          <button
            type="button"
            id={linkElementId(view.id)}
            tabIndex={-1}
            className="gap nopan"
            style={{ width }}
            aria-label={view.name}
            data-link={view.id}
            onClick={(event) =>
              dispatch('choose', { ids: [view.id], how: event.shiftKey || event.ctrlKey || event.metaKey ? 'toggle' : 'only' })
            }
          />
          {detail === 'full' && view.designation !== '' && (
            <span className="link-name designation" aria-hidden="true">
              {view.designation}
            </span>
          )}
          <ChangeTag id={view.id} bare />
          {detail === 'full' && view.length !== '' && (
            <span className="link-length" aria-hidden="true">
              {view.length}
            </span>
          )}
        </div>
      </EdgeLabelRenderer>
    </>
  );
});
