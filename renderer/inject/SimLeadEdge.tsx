import { memo } from 'react';
import { type Edge, EdgeLabelRenderer, type EdgeProps } from 'reactflow';
import { useDispatch } from '../state/useWorkbench.ts';
import { targetElementId } from './elements.ts';
import type { SimLeadView } from './simViews.ts';

export type SimLeadEdgeType = Edge<{ readonly view: SimLeadView }, 'sim-lead'>;

/** A 24 V lead while a fault is simulated. It is struck at the unit that it feeds, where it runs alone. */
export const SimLeadEdge = memo(function SimLeadEdge({ data }: EdgeProps<SimLeadEdgeType>) {
  const dispatch = useDispatch();
  if (!data) return null;
  const { view } = data;
  const [first, ...rest] = view.points;
  if (!first) return null;
  const path = `M${first.x} ${first.y}${rest.map(({ x, y }) => `L${x} ${y}`).join('')}`;
  const target = { kind: 'lead', lead: view.id } as const;
  return (
    <>
      <path className={`lead sim${view.faultTag === null ? '' : ' faulty'}`} d={path} data-lead={view.id} />
      <EdgeLabelRenderer>
        <div className="lead-labels" style={{ transform: `translate(-50%, 0) translate(${first.x}px, ${first.y}px)` }}>
          {/* With the keyboard a lead is found at the unit that it feeds. */}
          <button
            type="button"
            id={targetElementId(target)}
            tabIndex={-1}
            className="lead-hit"
            aria-label={view.name}
            title={view.name}
            onClick={() => dispatch('open-injection', { target })}
          />
          {view.faultTag !== null && (
            <span className="fault-tag" aria-hidden="true">
              {view.faultTag}
            </span>
          )}
        </div>
      </EdgeLabelRenderer>
    </>
  );
});
