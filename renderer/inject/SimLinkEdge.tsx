import { memo } from 'react';
import { type Edge, EdgeLabelRenderer, type EdgeProps } from 'reactflow';
import { useDetail } from '../canvas/DetailContext.ts';
import { fibrePath, linkMiddle } from '../canvas/fibrePath.ts';
import { type Detail, fibreOffset, port, strip } from '../canvas/geometry.ts';
import type { Point } from '../canvas/views.ts';
import { useDispatch } from '../state/useWorkbench.ts';
import { linkElementId } from './elements.ts';
import type { LaneView, SimLinkView } from './simViews.ts';

export type SimLinkEdgeType = Edge<{ readonly view: SimLinkView }, 'sim-link'>;

/** One duplex cable while a fault is simulated: where light runs, where it ends, where nothing is sent. */
export const SimLinkEdge = memo(function SimLinkEdge({ data }: EdgeProps<SimLinkEdgeType>) {
  const detail = useDetail();
  if (!data) return null;
  const { view } = data;
  const { turnY } = view;
  const middle = linkMiddle(view);
  return (
    <>
      <g className={`link sim detail-${detail}`} data-link={view.id}>
        <Lane view={view} lane={view.outbound} direction="outbound" shifts={[-fibreOffset]} detail={detail} />
        <Lane view={view} lane={view.back} direction="return" shifts={[fibreOffset - 1.5, fibreOffset + 1.5]} detail={detail} />
        {detail !== 'strip' && turnY === null && view.plugs.map((end) => <PlugMark key={end} end={end} view={view} />)}
      </g>
      <EdgeLabelRenderer>
        <LinkLabels view={view} at={middle} detail={detail} />
      </EdgeLabelRenderer>
    </>
  );
});

/** One fibre: the lit part solid, the rest dotted; all of it in long dashes where nothing is sent. */
function Lane({
  view,
  lane,
  direction,
  shifts,
  detail,
}: {
  readonly view: SimLinkView;
  readonly lane: LaneView;
  readonly direction: 'outbound' | 'return';
  readonly shifts: readonly number[];
  readonly detail: Detail;
}) {
  const { from, to, turnY } = view;
  const start = from.x + port.width / 2;
  const end = to.x - port.width / 2;
  const at = start + (end - start) * (lane.breakAt ?? (direction === 'outbound' ? 1 : 0));
  const [litFrom, litTo] = direction === 'outbound' ? [start, at] : [at, end];
  const straight = (x1: number, x2: number, shift: number) => (x2 - x1 > 1 ? `M${x1} ${from.y + shift}H${x2}` : '');
  const whole = (shift: number) => (turnY === null ? straight(start, end, shift) : fibrePath(view, shift));
  const kind = !lane.sent ? 'silent' : lane.breakAt === null ? 'light' : 'split';
  const classes = `lane ${direction} ${kind}${lane.thin ? ' thin' : ''} hop-${lane.hop}`;
  const y = (from.y + to.y) / 2 + (direction === 'outbound' ? -fibreOffset : fibreOffset);
  const arrow = direction === 'outbound' ? 'M-6 -6.6L7 0L-6 6.6Z' : 'M7 -6.6L-6 0L7 6.6Z';
  const middle = (start + end) / 2;
  return (
    <g className={classes}>
      {lane.hop === 'now' && <path className="now-band" d={whole(direction === 'outbound' ? -fibreOffset : fibreOffset)} />}
      {shifts.map((shift) =>
        kind === 'split' && turnY === null ? (
          <g key={shift}>
            <path className="sent-part" d={straight(litFrom, litTo, shift)} />
            <path className="dark-part" d={direction === 'outbound' ? straight(at, end, shift) : straight(start, at, shift)} />
          </g>
        ) : (
          <path key={shift} className={kind === 'split' ? 'dark-part' : 'sent-part'} d={whole(shift)} />
        ),
      )}
      {detail !== 'strip' && turnY === null && !lane.cut && (
        <path className={direction === 'outbound' ? 'arrow-out' : 'arrow-back'} d={arrow} transform={`translate(${middle} ${y})`} />
      )}
      {lane.cut && turnY === null && (
        <path className="cut-mark" d={`M${middle - 5} ${y + 6}L${middle - 1} ${y - 6}M${middle + 1} ${y + 6}L${middle + 5} ${y - 6}`} />
      )}
    </g>
  );
}

/** A bar across the end of the cable: this plug is not as it should be. */
function PlugMark({ end, view: { from, to } }: { readonly end: 'upper' | 'lower'; readonly view: SimLinkView }) {
  const x = end === 'upper' ? from.x + port.width / 2 + 5 : to.x - port.width / 2 - 5;
  return <path className="plug-mark" d={`M${x} ${from.y - 15}V${from.y + 15}`} />;
}

function LinkLabels({ view, at, detail }: { readonly view: SimLinkView; readonly at: Point; readonly detail: Detail }) {
  const dispatch = useDispatch();
  const small = detail !== 'full';
  const between = Math.max(0, view.to.x - view.from.x);
  const width = detail === 'strip' ? `calc(${between}px - ${strip.width + 4}px / var(--zoom))` : `${Math.max(24, between - port.width)}px`;
  return (
    <div
      className={`link-labels sim${view.folded ? ' folded' : ''}${small ? ' small' : ''}${detail === 'strip' ? ' strip' : ''}`}
      style={{ transform: `translate(-50%, -50%) translate(${at.x}px, ${at.y}px)` }}
    >
      <button
        type="button"
        id={linkElementId(view.id)}
        className="gap"
        style={{ width }}
        aria-label={view.name}
        title={view.name}
        data-link={view.id}
        onClick={() => dispatch('open-injection', { target: { kind: 'link', link: view.id } })}
      />
      {!small && view.designation !== '' && (
        <span className="link-name designation" aria-hidden="true">
          {view.designation}
        </span>
      )}
      {view.faultTag !== null && (
        <span className="fault-tag" aria-hidden="true">
          {view.faultTag}
        </span>
      )}
      <HopNumber lane={view.outbound} side="above" raised={view.faultTag !== null} />
      <HopNumber lane={view.back} side="below" raised={false} />
    </div>
  );
}

function HopNumber({ lane, side, raised }: { readonly lane: LaneView; readonly side: 'above' | 'below'; readonly raised: boolean }) {
  if (lane.number === null) return null;
  return (
    <span className={`hop-number ${side}${raised ? ' raised' : ''}${lane.hop === 'now' ? ' now' : ''}`} aria-hidden="true">
      {lane.number}
    </span>
  );
}
