import { useMemo, useState } from 'react';
import type { Edge } from 'reactflow';
import { selectFindModel } from '../find/findModel.ts';
import { currentSnapshot } from '../state/evidence.ts';
import { namesOf } from '../state/names.ts';
import { useApp } from '../state/useWorkbench.ts';
import type { ControllerNodeType } from './ControllerNode.tsx';
import type { Detail } from './geometry.ts';
import type { LeadEdgeType } from './LeadEdge.tsx';
import type { LinkEdgeType } from './LinkEdge.tsx';
import { litUnits } from './litUnits.ts';
import type { Placement } from './placement.ts';
import { makeProjectionCache } from './projectionCache.ts';
import { projectCaptions, projectController, projectLeads, projectLinks } from './projectLinks.ts';
import { projectUnits, type Sources } from './projectUnits.ts';
import type { UnitNodeType } from './UnitNode.tsx';
import type { ControllerView, LeadView, LinkView, UnitView } from './views.ts';

export const controllerNodeId = 'controller';
const nodeId = (unit: string) => `unit/${unit}`;

const still = { draggable: false, selectable: false, connectable: false, focusable: false } as const;

/** Nodes and edges of the drawing, from caches that give the same object for the same picture. */
export function useProjection(placement: Placement, detail: Detail) {
  const topology = useApp((state) => state.checked.topology);
  const snapshot = useApp((state) => currentSnapshot(state.caseRecord));
  const model = useApp(selectFindModel);
  const lit = useApp(litUnits);
  const entering = useApp(({ entry }) => (entry?.kind === 'display' ? entry.unit : null));
  const [caches] = useState(makeCaches);
  return useMemo(() => {
    const sources: Sources = { topology, names: namesOf(topology), snapshot, model, placement, detail, lit, entering };
    const units = projectUnits(sources).map((view) => ({ view, at: placement.units.get(view.id as never) })); // ids of the same cabinet
    const controller = projectController(sources);
    const nodes = [
      ...caches.controller(
        controller && placement.controller ? [{ view: controller, at: placement.controller }] : [],
        () => controllerNodeId,
      ),
      ...caches.units(
        units.flatMap(({ view, at }) => (at ? [{ view, at: { x: at.x, y: at.y, width: at.width, height: at.height } }] : [])),
        ({ view }) => nodeId(view.id),
      ),
    ];
    const edges: Edge[] = [
      ...caches.leads(
        projectLeads(sources).flatMap((view) => {
          const feed = topology.feeds.find(({ lead }) => lead === view.id);
          return feed ? [{ view, from: nodeId(feed.from), to: nodeId(feed.to) }] : [];
        }),
        ({ view }) => `lead/${view.id}`,
      ),
      ...caches.links(
        projectLinks(sources).flatMap((view) => {
          const units = topology.chains.find(({ id }) => id === view.chain)?.units ?? [];
          const to = units[view.gap - 1];
          const from = view.gap > 1 ? units[view.gap - 2] : undefined;
          return to ? [{ view, from: from ? nodeId(from) : controllerNodeId, to: nodeId(to) }] : [];
        }),
        ({ view }) => `link/${view.id}`,
      ),
    ];
    return { nodes, edges, captions: projectCaptions(sources) };
  }, [topology, snapshot, model, placement, detail, lit, entering, caches]);
}

type At = { readonly x: number; readonly y: number; readonly width: number; readonly height: number };

function makeCaches() {
  return {
    units: makeProjectionCache(
      ({ view, at }: { view: UnitView; at: At }): UnitNodeType => ({
        id: nodeId(view.id),
        type: 'unit',
        ...boxed(at),
        ...still,
        data: { view },
      }),
    ),
    controller: makeProjectionCache(
      ({ view, at }: { view: ControllerView; at: At }): ControllerNodeType => ({
        id: controllerNodeId,
        type: 'controller',
        ...boxed(at),
        ...still,
        data: { view },
      }),
    ),
    links: makeProjectionCache(
      ({ view, from, to }: { view: LinkView; from: string; to: string }): LinkEdgeType => ({
        id: `link/${view.id}`,
        type: 'link',
        source: from,
        target: to,
        sourceHandle: from === controllerNodeId ? view.chain : 'down',
        targetHandle: 'up',
        focusable: false,
        selectable: false,
        data: { view },
      }),
    ),
    leads: makeProjectionCache(
      ({ view, from, to }: { view: LeadView; from: string; to: string }): LeadEdgeType => ({
        id: `lead/${view.id}`,
        type: 'lead',
        source: from,
        target: to,
        sourceHandle: 'feeds',
        targetHandle: 'fed',
        focusable: false,
        selectable: false,
        data: { view },
      }),
    ),
  };
}

/** React Flow is told the size as measured, so that a changed node keeps its ends and is never hidden for a moment. */
function boxed({ x, y, width, height }: At) {
  return { position: { x, y }, width, height, measured: { width, height } };
}
