import { useCallback, useRef } from 'react';
import { ReactFlow, ReactFlowProvider, ViewportPortal } from 'reactflow';
import { injectWords, windowTexts } from '../../engine/messages/index.ts';
import { beginWalk } from '../find/entryWalk.ts';
import { InjectHead } from '../inject/InjectHead.tsx';
import { SimControllerNode } from '../inject/SimControllerNode.tsx';
import { SimLeadEdge } from '../inject/SimLeadEdge.tsx';
import { SimLinkEdge } from '../inject/SimLinkEdge.tsx';
import { SimUnitNode } from '../inject/SimUnitNode.tsx';
import { useInjectKeys } from '../inject/useInjectKeys.ts';
import { useInjectProjection } from '../inject/useInjectProjection.ts';
import { QuickChain } from '../quick/QuickChain.tsx';
import { useApp, useWindow } from '../state/useWorkbench.ts';
import { flowBasics } from './flowBasics.ts';
import 'reactflow/dist/style.css';
import './canvas.css';
import './modules.css';
import '../inject/simCanvas.css';
import { Beyond } from './Beyond.tsx';
import { CanvasHead } from './CanvasHead.tsx';
import { Captions } from './Captions.tsx';
import { ControllerNode } from './ControllerNode.tsx';
import { DetailContext } from './DetailContext.ts';
import { foldableChains } from './foldableChains.ts';
import { narrowMetrics, wideMetrics } from './geometry.ts';
import { LeadEdge } from './LeadEdge.tsx';
import { LinkEdge } from './LinkEdge.tsx';
import { UnitNode } from './UnitNode.tsx';
import { unitElementId } from './unitElement.ts';
import { useCabinetKeys } from './useCabinetKeys.ts';
import { useCabinetView } from './useCabinetView.ts';
import { useProjection } from './useProjection.ts';
import { useSize } from './useSize.ts';

const nodeTypes = { unit: UnitNode, controller: ControllerNode, 'sim-unit': SimUnitNode, 'sim-controller': SimControllerNode };
const edgeTypes = { link: LinkEdge, lead: LeadEdge, 'sim-link': SimLinkEdge, 'sim-lead': SimLeadEdge };
const metrics = { narrow: narrowMetrics, wide: wideMetrics };

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
  const wrap = useApp((state) => state.foldChains);
  const foldable = useApp(foldableChains);
  const walkDisplays = useWalkDisplays();
  const view = useCabinetView(frame, size, { metrics, foldable, wrap, shareAbove: 0.5, walkDisplays });
  const seen = useProjection(view.placement, view.detail);
  const simulated = useInjectProjection(view.placement, view.detail);
  const { nodes, edges, captions } = simulated ?? seen;
  const keysOfFind = useCabinetKeys();
  const keysOfInject = useInjectKeys();
  const hasUnits = useApp((state) => state.checked.topology.units.size > 0);
  const region = simulated ? injectWords.cabinetRegion : windowTexts.cabinet.region;
  const noop = useCallback(() => undefined, []);
  return (
    <DetailContext value={view.detail}>
      <section
        ref={frame}
        id="cabinet"
        className="cabinet"
        tabIndex={-1}
        aria-label={region}
        onKeyDown={simulated ? keysOfInject : keysOfFind}
        onFocus={view.onFocus}
        data-roomy={view.roomy}
      >
        {simulated ? <InjectHead /> : <CanvasHead />}
        {size !== null && (
          <ReactFlow
            // The library makes it an application, which it is to a screen reader: arrows move along the chain.
            aria-label={region}
            nodes={nodes}
            edges={edges}
            nodeTypes={nodeTypes}
            edgeTypes={edgeTypes}
            onNodesChange={noop}
            onMove={view.onMove}
            {...flowBasics}
          >
            <ViewportPortal>
              <Captions captions={captions} />
            </ViewportPortal>
            <Beyond drawn={view.placement} />
          </ReactFlow>
        )}
        {!hasUnits && <QuickChain />}
      </section>
    </DetailContext>
  );
}

/** Begins the walk at the first display that nobody has read. */
function useWalkDisplays() {
  const { store, dispatch } = useWindow();
  return useCallback(() => {
    const next = beginWalk(store.getState());
    if (next === null) return;
    document.getElementById(unitElementId(next))?.focus({ preventScroll: true });
    dispatch('open-entry', { entry: { kind: 'display', unit: next, walking: true } });
  }, [store, dispatch]);
}
