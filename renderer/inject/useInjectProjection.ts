import { useMemo, useState } from 'react';
import type { Edge, Node } from 'reactflow';
import { injectWords } from '../../engine/messages/index.ts';
import type { Detail } from '../canvas/geometry.ts';
import type { Placement } from '../canvas/placement.ts';
import { makeProjectionCache } from '../canvas/projectionCache.ts';
import { projectCaptions } from '../canvas/projectLinks.ts';
import type { Sources } from '../canvas/projectUnits.ts';
import type { CaptionView } from '../canvas/views.ts';
import { namesOf } from '../state/names.ts';
import { useApp } from '../state/useWorkbench.ts';
import { selectInjectModel } from './injectModel.ts';
import type { SimControllerNodeType } from './SimControllerNode.tsx';
import type { SimLeadEdgeType } from './SimLeadEdge.tsx';
import type { SimLinkEdgeType } from './SimLinkEdge.tsx';
import type { SimUnitNodeType } from './SimUnitNode.tsx';
import {
  type SimControllerView,
  type SimLeadView,
  type SimLinkView,
  type SimUnitView,
  simController,
  simLeads,
  simLinks,
  simSources,
  simUnits,
} from './simViews.ts';

const controllerNodeId = 'controller';
const nodeId = (unit: string) => `unit/${unit}`;
const still = { draggable: false, selectable: false, connectable: false, focusable: false } as const;

export interface Projection {
  readonly nodes: Node[];
  readonly edges: Edge[];
  readonly captions: readonly CaptionView[];
}

/** Nodes and edges of the drawing while a fault is simulated; null while it is off. */
export function useInjectProjection(placement: Placement, detail: Detail): Projection | null {
  const model = useApp(selectInjectModel);
  const target = useApp(({ inject }) => (inject.target?.kind === 'unit' ? inject.target.unit : null));
  const [caches] = useState(makeCaches);
  return useMemo(() => {
    if (!model) return null;
    const topology = model.cabinet;
    const sources = simSources(model, { topology, names: namesOf(topology), placement, detail }, target);
    const controller = simController(model, sources);
    const boxOf = (id: string) => [...placement.units].find(([unit]) => unit === id)?.[1];
    const nodes = [
      ...caches.controller(
        controller && placement.controller ? [{ view: controller, at: placement.controller }] : [],
        () => controllerNodeId,
      ),
      ...caches.units(
        simUnits(model, sources).flatMap((view) => {
          const box = boxOf(view.id);
          return box ? [{ view, at: { x: box.x, y: box.y, width: box.width, height: box.height } }] : [];
        }),
        ({ view }) => nodeId(view.id),
      ),
    ];
    const edges: Edge[] = [
      ...caches.leads(
        simLeads(model, sources).flatMap((view) => {
          const feed = topology.feeds.find(({ lead }) => lead === view.id);
          return feed ? [{ view, from: nodeId(feed.from), to: nodeId(feed.to) }] : [];
        }),
        ({ view }) => `lead/${view.id}`,
      ),
      ...caches.links(
        simLinks(model, sources).flatMap((view) => {
          const units = topology.chains.find(({ id }) => id === view.chain)?.units ?? [];
          const to = units[view.gap - 1];
          const from = view.gap > 1 ? units[view.gap - 2] : undefined;
          return to ? [{ view, from: from ? nodeId(from) : controllerNodeId, to: nodeId(to) }] : [];
        }),
        ({ view }) => `link/${view.id}`,
      ),
    ];
    return { nodes, edges, captions: captionsOf(sources, model.hop !== null) };
  }, [model, target, placement, detail, caches]);
}

/** Rails keep their names; what stands beside the windows is now the display and its reason. */
function captionsOf(sources: Sources, stepping: boolean): readonly CaptionView[] {
  // The numbers of the hops stand where the names of the lines would.
  const all = projectCaptions(sources).filter(({ kind }) => kind === 'rail' || !stepping);
  return all.map((caption) =>
    caption.kind === 'rail'
      ? caption
      : { ...caption, kind: 'predicted', words: caption.kind === 'seen' ? injectWords.shows : injectWords.why },
  );
}

type At = { readonly x: number; readonly y: number; readonly width: number; readonly height: number };

function makeCaches() {
  return {
    units: makeProjectionCache(
      ({ view, at }: { view: SimUnitView; at: At }): SimUnitNodeType => ({
        id: nodeId(view.id),
        type: 'sim-unit',
        ...boxed(at),
        ...still,
        data: { view },
      }),
    ),
    controller: makeProjectionCache(
      ({ view, at }: { view: SimControllerView; at: At }): SimControllerNodeType => ({
        id: controllerNodeId,
        type: 'sim-controller',
        ...boxed(at),
        ...still,
        data: { view },
      }),
    ),
    links: makeProjectionCache(
      ({ view, from, to }: { view: SimLinkView; from: string; to: string }): SimLinkEdgeType => ({
        id: `link/${view.id}`,
        type: 'sim-link',
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
      ({ view, from, to }: { view: SimLeadView; from: string; to: string }): SimLeadEdgeType => ({
        id: `lead/${view.id}`,
        type: 'sim-lead',
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
