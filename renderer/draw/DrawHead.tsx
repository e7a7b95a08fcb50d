import { drawWords } from '../../engine/messages/index.ts';
import { Zoomer } from '../canvas/Zoomer.tsx';
import { useApp, useDispatch } from '../state/useWorkbench.ts';
import { drawViews } from './drawState.ts';

/** What stands in the cabinet in one line, and how it is looked at. */
export function DrawHead() {
  const dispatch = useDispatch();
  const summary = useApp(({ checked: { topology } }) =>
    drawWords.summary(topology.chains.length, topology.units.size - topology.supplies.length, topology.supplies.length),
  );
  const { view, arrangement } = useApp((state) => state.draw);
  return (
    <div className="canvas-head">
      <p className="canvas-title">
        <b>{drawWords.title}</b> <span className="quiet-text">{summary}</span>
      </p>
      <div className="canvas-tools">
        <fieldset className="segments">
          <legend className="screen-reader">{drawWords.views.label}</legend>
          {drawViews.map((one) => (
            <button key={one} type="button" aria-pressed={one === view} onClick={() => dispatch('set-draw-view', { view: one })}>
              {drawWords.views[one]}
            </button>
          ))}
        </fieldset>
        {view === 'drawing' && (
          <>
            <fieldset className="segments">
              <legend className="screen-reader">{drawWords.arrangements.label}</legend>
              {(['chain', 'mounting'] as const).map((one) => (
                <button
                  key={one}
                  type="button"
                  aria-pressed={one === arrangement}
                  onClick={() => one !== arrangement && dispatch('toggle-arrangement')}
                >
                  {drawWords.arrangements[one]}
                </button>
              ))}
            </fieldset>
            <Zoomer />
          </>
        )}
      </div>
    </div>
  );
}
