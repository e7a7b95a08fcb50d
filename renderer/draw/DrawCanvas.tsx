import { useCallback, useMemo, useRef } from 'react';
import { ReactFlow, ViewportPortal } from 'reactflow';
import { drawWords } from '../../engine/messages/index.ts';
import { Captions } from '../canvas/Captions.tsx';
import { DetailContext } from '../canvas/DetailContext.ts';
import { flowBasics } from '../canvas/flowBasics.ts';
import type { Metrics } from '../canvas/geometry.ts';
import { useCabinetView } from '../canvas/useCabinetView.ts';
import { useSize } from '../canvas/useSize.ts';
import { QuickChain } from '../quick/QuickChain.tsx';
import { useApp } from '../state/useWorkbench.ts';
import 'reactflow/dist/style.css';
import '../canvas/canvas.css';
import '../canvas/modules.css';
import { DrawBar } from './DrawBar.tsx';
import { DrawContextMenu, OfferMenu, useContextMenu } from './DrawContextMenu.tsx';
import { DrawControllerNode } from './DrawControllerNode.tsx';
import { DrawHead } from './DrawHead.tsx';
import { useGesture } from './DrawingContext.ts';
import { DrawLeadEdge } from './DrawLeadEdge.tsx';
import { DrawLinkEdge } from './DrawLinkEdge.tsx';
import { DrawUnitNode } from './DrawUnitNode.tsx';
import { CarriedGhost, GestureLayer } from './GestureLayer.tsx';
import { LooseLayer } from './LooseLayer.tsx';
import { useSpokenGestures } from './speakGestures.ts';
import { useDrawKeys, useFocusChosen } from './useDrawKeys.ts';
import { useDrawProjection } from './useDrawProjection.ts';
import { useGestures } from './useGestures.ts';

const nodeTypes = { 'draw-unit': DrawUnitNode, 'draw-controller': DrawControllerNode };
const edgeTypes = { 'draw-link': DrawLinkEdge, 'draw-lead': DrawLeadEdge };

/** Height of the feedback cables, and of the tags of changes, on the upper edge of the modules. */
const feedbackRoom = 22;

/** The drawing stands above the middle: what is built next goes below. */
const shareAbove = 0.3;
/** Height of the bar that says what a gesture does, or why something was refused. */
const barRoom = 92;

/** Panels at both sides leave less room than in Find, and there are no windows to show: the modules are smaller. */
const metrics: { readonly narrow: Metrics; readonly wide: Metrics } = {
  narrow: { module: 92, gap: 44, controller: 80, height: 166, port: 118 },
  wide: { module: 106, gap: 46, controller: 88, height: 166, port: 118 },
};

/** The cabinet as a drawing that is edited. */
export function DrawCanvas() {
  const frame = useRef<HTMLElement>(null);
  const size = useSize(frame);
  const arrangement = useApp((state) => state.draw.arrangement);
  const feedbackShown = useApp((state) => state.draw.feedbackShown);
  const comparing = useApp((state) => state.comparison !== null);
  const opening = useGesture((gesture) =>
    gesture.kind === 'carry' && !gesture.preview?.refusal ? (gesture.target?.opening ?? null) : null,
  );
  const view = useCabinetView(frame, size, {
    metrics,
    foldable: '',
    wrap: true,
    goDown: true,
    arrangement,
    opening,
    shareAbove,
    spare: barRoom,
    above: feedbackShown || comparing ? feedbackRoom : 0,
  });
  const shown = useShownGesture();
  const { nodes, edges, captions, loose } = useDrawProjection(view.placement, view.detail, shown);
  const gestures = useGestures({ frame, placement: view.still });
  const onKeyDown = useDrawKeys(view.still);
  useFocusChosen(frame);
  useSpokenGestures();
  const menu = useContextMenu(gestures.cancel);
  const hasUnits = useApp((state) => state.checked.topology.units.size > 0);
  const pulling = useGesture((gesture) => gesture.kind === 'pull');
  const noop = useCallback(() => undefined, []);
  return (
    <DetailContext value={view.detail}>
      <section
        ref={frame}
        id="cabinet"
        className="cabinet draw-canvas"
        tabIndex={-1}
        aria-label={drawWords.region}
        onFocus={view.onFocus}
        onKeyDown={(event) => {
          menu.onMenuKey(event);
          if (!event.defaultPrevented) onKeyDown(event);
        }}
        onContextMenu={menu.onContextMenu}
        onPointerDown={(event) => {
          gestures.onPointerDown(event);
          menu.onPointerDown(event);
        }}
        onPointerMove={gestures.onPointerMove}
        data-roomy={view.roomy}
        data-pulling={pulling}
      >
        <DrawHead />
        {size !== null && (
          <ReactFlow
            aria-label={drawWords.region}
            nodes={nodes}
            edges={edges}
            nodeTypes={nodeTypes}
            edgeTypes={edgeTypes}
            onNodesChange={noop}
            onMove={view.onMove}
            {...flowBasics}
            panOnDrag={[1]}
          >
            <ViewportPortal>
              <Captions captions={captions} />
            </ViewportPortal>
            <LooseLayer cables={loose} />
            <GestureLayer opening={view.placement.opening} />
          </ReactFlow>
        )}
        {!hasUnits && <QuickChain />}
        <DrawBar />
        <DrawContextMenu at={menu.at} onClose={menu.close} />
        <OfferMenu />
        <CarriedGhost />
      </section>
    </DetailContext>
  );
}

const nobody: ReadonlySet<string> = new Set();

/** What the modules and cables themselves show of a gesture; the same object as long as that is the same. */
function useShownGesture() {
  const carried = useGesture((gesture) => (gesture.kind === 'carry' && gesture.carried.kind === 'move' ? gesture.carried : null));
  const target = useGesture((gesture) => (gesture.kind === 'carry' && !gesture.preview?.refusal ? gesture.target : null));
  const joinable = useGesture((gesture) => (gesture.kind === 'pull' ? gesture.joinable : null));
  return useMemo(() => ({ carried: carried ? new Set(carried.units) : nobody, target, joinable }), [carried, target, joinable]);
}
