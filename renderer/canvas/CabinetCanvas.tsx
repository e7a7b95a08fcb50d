import { useCallback, useEffect, useMemo, useRef, useState } from 'react';
import { ReactFlow, ReactFlowProvider, ViewportPortal } from 'reactflow';
import { injectWords, windowTexts } from '../../engine/messages/index.ts';
import { InjectHead } from '../inject/InjectHead.tsx';
import { SimControllerNode } from '../inject/SimControllerNode.tsx';
import { SimLeadEdge } from '../inject/SimLeadEdge.tsx';
import { SimLinkEdge } from '../inject/SimLinkEdge.tsx';
import { SimUnitNode } from '../inject/SimUnitNode.tsx';
import { useInjectKeys } from '../inject/useInjectKeys.ts';
import { useInjectProjection } from '../inject/useInjectProjection.ts';
import { QuickChain } from '../quick/QuickChain.tsx';
import { useApp } from '../state/useWorkbench.ts';
import 'reactflow/dist/style.css';
import './canvas.css';
import './modules.css';
import '../inject/simCanvas.css';
import { CanvasHead } from './CanvasHead.tsx';
import { ControllerNode } from './ControllerNode.tsx';
import { DetailContext } from './DetailContext.ts';
import { LeadEdge } from './LeadEdge.tsx';
import { LinkEdge } from './LinkEdge.tsx';
import { UnitNode } from './UnitNode.tsx';
import { useCabinetKeys } from './useCabinetKeys.ts';
import { useCabinetView } from './useCabinetView.ts';
import { useProjection } from './useProjection.ts';
import type { CaptionView } from './views.ts';

const nodeTypes = { unit: UnitNode, controller: ControllerNode, 'sim-unit': SimUnitNode, 'sim-controller': SimControllerNode };
const edgeTypes = { link: LinkEdge, lead: LeadEdge, 'sim-link': SimLinkEdge, 'sim-lead': SimLeadEdge };
const zoomLimits = { least: 0.08, most: 3 } as const;

/** The cabinet as a picture: what was seen, and what the chosen candidate predicts, on the units themselves. */
export function CabinetCanvas() {
  return (
    <ReactFlowProvider>
      <Drawing />
    </ReactFlowProvider>
  );
}

function Drawing() {
  const frame = useRef<HTMLElement>(null);
  const size = useSize(frame);
  const view = useCabinetView(frame, size);
  const seen = useProjection(view.placement, view.detail);
  const simulated = useInjectProjection(view.placement, view.detail);
  const { nodes, edges, captions } = simulated ?? seen;
  const keysOfFind = useCabinetKeys();
  const keysOfInject = useInjectKeys();
  const hasUnits = useApp((state) => state.checked.topology.units.size > 0);
  const noop = useCallback(() => undefined, []);
  return (
    <DetailContext value={view.detail}>
      <section
        ref={frame}
        id="cabinet"
        className="cabinet"
        tabIndex={-1}
        aria-label={simulated ? injectWords.cabinetRegion : windowTexts.cabinet.region}
        onKeyDown={simulated ? keysOfInject : keysOfFind}
        onFocus={view.onFocus}
        data-roomy={view.roomy}
      >
        {simulated ? <InjectHead /> : <CanvasHead />}
        {size !== null && (
          <ReactFlow
            nodes={nodes}
            edges={edges}
            nodeTypes={nodeTypes}
            edgeTypes={edgeTypes}
            onNodesChange={noop}
            onMove={view.onMove}
            minZoom={zoomLimits.least}
            maxZoom={zoomLimits.most}
            nodesDraggable={false}
            nodesConnectable={false}
            nodesFocusable={false}
            edgesFocusable={false}
            elementsSelectable={false}
            panOnScroll
            zoomOnDoubleClick={false}
            deleteKeyCode={null}
            selectionKeyCode={null}
            disableKeyboardA11y
            proOptions={{ hideAttribution: true }}
          >
            <ViewportPortal>
              <Captions captions={captions} />
            </ViewportPortal>
          </ReactFlow>
        )}
        {!hasUnits && <QuickChain />}
      </section>
    </DetailContext>
  );
}

function Captions({ captions }: { readonly captions: readonly CaptionView[] }) {
  return captions.map(({ key, at, words, kind }) => (
    <span key={key} className={`caption ${kind}`} style={{ transform: `translate(${at.x}px, ${at.y}px)` }} aria-hidden={kind !== 'rail'}>
      {words}
    </span>
  ));
}

/** Size of an element in whole pixels, null before it is known. */
function useSize(element: React.RefObject<HTMLElement | null>) {
  const [size, setSize] = useState<{ readonly width: number; readonly height: number } | null>(null);
  useEffect(() => {
    const target = element.current;
    if (!target) return undefined;
    const observer = new ResizeObserver(([entry]) => {
      if (!entry) return;
      const width = Math.round(entry.contentRect.width);
      const height = Math.round(entry.contentRect.height);
      setSize((before) => (before?.width === width && before.height === height ? before : { width, height }));
    });
    observer.observe(target);
    return () => observer.disconnect();
  }, [element]);
  return useMemo(() => size, [size]);
}
