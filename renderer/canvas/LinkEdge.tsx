import { memo } from 'react';
import { type Edge, EdgeLabelRenderer, type EdgeProps } from 'reactflow';
import { windowTexts } from '../../engine/messages/index.ts';
import { useDispatch } from '../state/useWorkbench.ts';
import { useDetail } from './DetailContext.ts';
import { Fibres } from './Fibres.tsx';
import { fibrePath, linkMiddle } from './fibrePath.ts';
import { type Detail, port, strip } from './geometry.ts';
import type { LinkView, Point } from './views.ts';

export type LinkEdgeType = Edge<{ readonly view: LinkView }, 'link'>;

/** One duplex cable: outbound a thick line with a solid arrow, return two thin lines with an open one. */
export const LinkEdge = memo(function LinkEdge({ data }: EdgeProps<LinkEdgeType>) {
  const detail = useDetail();
  if (!data) return null;
  const { view } = data;
  const { from, to, turnY } = view;
  const middle = linkMiddle(view);
  const width = Math.max(10, to.x - from.x - port.width);
  return (
    <>
      <g className={`link${view.chosen ? ' chosen' : ''}${view.lost ? ` lost-${view.lost}` : ''} detail-${detail}`} data-link={view.id}>
        {view.chosen && turnY === null && detail !== 'strip' && (
          <rect className="halo" x={middle.x - width / 2 + 1} y={middle.y - 37} width={width - 2} height={76} rx={8} />
        )}
        {view.lit && <path className="lit" d={fibrePath(view, 0)} />}
        <Fibres line={view} detail={detail} />
      </g>
      <EdgeLabelRenderer>
        <LinkLabels view={view} at={middle} width={gapWidth(view, detail)} detail={detail} />
      </EdgeLabelRenderer>
    </>
  );
});

/** Width of the place to click: between the ports; on a strip between the marks, which keep their size on the screen. */
function gapWidth({ from, to }: LinkView, detail: Detail): string {
  const between = Math.max(0, to.x - from.x);
  return detail === 'strip' ? `calc(${between}px - ${strip.width + 4}px / var(--zoom))` : `${Math.max(10, between - port.width)}px`;
}

function LinkLabels({
  view,
  at,
  width,
  detail,
}: {
  readonly view: LinkView;
  readonly at: Point;
  readonly width: string;
  readonly detail: Detail;
}) {
  const dispatch = useDispatch();
  const small = detail !== 'full';
  const enter = () => {
    dispatch('enter-report', { chain: view.chain, gaps: [view.gap], at: new Date().toISOString() });
    dispatch('announce', { text: windowTexts.report.entered(view.name) });
  };
  const place = { transform: `translate(-50%, -50%) translate(${at.x}px, ${at.y}px)` };
  return (
    <div
      className={`link-labels${view.folded ? ' folded' : ''}${view.chosen ? ' chosen' : ''}${small ? ' small' : ''}${detail === 'strip' ? ' strip' : ''}`}
      style={place}
    >
      {/* With the keyboard the report is entered at the controller's window; here it is one click on the gap. */}
      <button
        type="button"
        tabIndex={-1}
        className="gap"
        style={{ width }}
        aria-label={view.name}
        title={view.name}
        onClick={enter}
        data-gap={view.gap}
      />
      {!small && view.designation !== '' && <span className="link-name designation">{view.designation}</span>}
      {view.share !== null && <span className={`tag link-share${view.chosen ? '' : ' outlined'}`}>{view.share}</span>}
      {view.displaced !== null && !small && <span className="moved-tag">{view.displaced}</span>}
      {view.lost !== null && (
        <span className={`lost-tag ${view.lost}`}>
          {view.lost === 'here' ? windowTexts.cabinet.lostHere : windowTexts.cabinet.maybeLostHere}
        </span>
      )}
    </div>
  );
}
