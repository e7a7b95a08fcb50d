import { useState } from 'react';
import { ReactFlowProvider } from 'reactflow';
import { drawWords } from '../../engine/messages/index.ts';
import { ComparisonPane } from '../compare/ComparisonPane.tsx';
import { Inspector } from '../edit/Inspector.tsx';
import { ProblemsPane } from '../edit/ProblemsPane.tsx';
import { ListView } from '../lists/ListView.tsx';
import { useApp } from '../state/useWorkbench.ts';
import { DrawCanvas } from './DrawCanvas.tsx';
import { DrawDialogs } from './DrawDialogs.tsx';
import { DrawHead } from './DrawHead.tsx';
import { type Drawing, DrawingContext } from './DrawingContext.ts';
import { makeGestureStore } from './gesture.ts';
import { Shelf } from './Shelf.tsx';
import { useClipboard } from './useClipboard.ts';
import './draw.css';

const makeDrawing = (): Drawing => ({ gestures: makeGestureStore(), begin: { current: null }, pull: { current: null } });

/** Draw: document the cabinet. Shelf at the left, the drawing or its lists in the middle, the inspector at the right. */
export function DrawWorkspace() {
  const view = useApp((state) => state.draw.view);
  const comparing = useApp((state) => state.comparison !== null);
  const [drawing] = useState(makeDrawing);
  useClipboard();
  return (
    <ReactFlowProvider>
      <DrawingContext value={drawing}>
        <main className="draw">
          <Shelf />
          <div className="draw-middle">
            {view === 'drawing' ? (
              <DrawCanvas />
            ) : (
              <section className="draw-lists" id="cabinet" tabIndex={-1} aria-label={drawWords.views.lists}>
                <DrawHead />
                <ListView />
              </section>
            )}
            {comparing ? <ComparisonPane /> : <ProblemsPane />}
          </div>
          <aside className="side draw-side" id="inspector" tabIndex={-1} aria-label={drawWords.inspector}>
            <Inspector />
          </aside>
        </main>
        <DrawDialogs />
      </DrawingContext>
    </ReactFlowProvider>
  );
}
