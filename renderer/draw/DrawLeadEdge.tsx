import { memo } from 'react';
import { type Edge, EdgeLabelRenderer, type EdgeProps } from 'reactflow';
import { ChangeTag } from '../compare/ChangeTag.tsx';
import type { DrawLeadView } from './drawViews.ts';

export type DrawLeadEdgeType = Edge<{ readonly view: DrawLeadView }, 'draw-lead'>;

/** A 24 V lead in Draw: quieter than the light. It is chosen by its line; with the keyboard at the unit that it feeds. */
export const DrawLeadEdge = memo(function DrawLeadEdge({ data }: EdgeProps<DrawLeadEdgeType>) {
  if (!data) return null;
  const { view } = data;
  const [first, ...rest] = view.points;
  if (!first) return null;
  const path = `M${first.x} ${first.y}${rest.map(({ x, y }) => `L${x} ${y}`).join('')}`;
  return (
    <g className={`drawn-lead${view.chosen === 'no' ? '' : ' chosen-thing'}`}>
      <path className="lead" d={path} data-lead={view.id} />
      {/* Only the part that is its own, at the unit that it feeds: the rail belongs to several. */}
      <path className="lead-grip nopan" d={`M${first.x} ${first.y}L${rest[0]?.x ?? first.x} ${rest[0]?.y ?? first.y}`} data-thing={view.id}>
        <title>{view.name}</title>
      </path>
      <EdgeLabelRenderer>
        <span className="lead-change" style={{ transform: `translate(${first.x}px, ${first.y}px)` }}>
          <ChangeTag id={view.id} bare />
        </span>
      </EdgeLabelRenderer>
    </g>
  );
});
