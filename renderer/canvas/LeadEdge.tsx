import { memo } from 'react';
import { type Edge, EdgeLabelRenderer, type EdgeProps } from 'reactflow';
import type { LeadView } from './views.ts';

export type LeadEdgeType = Edge<{ readonly view: LeadView }, 'lead'>;

/** A 24 V lead: quieter than the light, a thin line along the rail under its row. */
export const LeadEdge = memo(function LeadEdge({ data }: EdgeProps<LeadEdgeType>) {
  if (!data) return null;
  const { view } = data;
  const [first, ...rest] = view.points;
  // On the rail and left of the drop: beside it stands the name of the rail, above it the unit's footer.
  const [, label] = view.points;
  if (!first) return null;
  const path = `M${first.x} ${first.y}${rest.map(({ x, y }) => `L${x} ${y}`).join('')}`;
  return (
    <>
      <path className={`lead${view.chosen ? ' chosen' : ''}`} d={path} data-lead={view.id} />
      {view.share !== null && label && (
        <EdgeLabelRenderer>
          <span
            className={`tag lead-share${view.chosen ? '' : ' outlined'}`}
            style={{ transform: `translate(-85%, -40%) translate(${label.x}px, ${label.y}px)` }}
          >
            {view.share}
          </span>
        </EdgeLabelRenderer>
      )}
    </>
  );
});
