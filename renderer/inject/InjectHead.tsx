import { Maximize, Minus, Plus, Syringe } from 'lucide-react';
import { injectWords, windowTexts } from '../../engine/messages/index.ts';
import { useDispatch } from '../state/useWorkbench.ts';

/** Over the simulated picture: the badge that says what it is, what the lines mean, and the zoom. */
export function InjectHead() {
  const dispatch = useDispatch();
  return (
    <div className="canvas-head simulated">
      <p className="sim-badge">
        <Syringe size={16} aria-hidden="true" />
        <b>{injectWords.mode}</b> <span>{injectWords.badge}</span>
      </p>
      <div className="canvas-tools">
        <ul className="lane-legend">
          {(['light', 'dark', 'silent'] as const).map((kind) => (
            <li key={kind}>
              <i className={`lane-${kind}`} aria-hidden="true" /> {injectWords.legend[kind]}
            </li>
          ))}
        </ul>
        <fieldset className="zoomer">
          <legend className="screen-reader">{windowTexts.cabinet.zoom}</legend>
          <button type="button" className="icon-button" aria-label={windowTexts.commands.zoomOut} onClick={() => dispatch('zoom-out')}>
            <Minus size={16} aria-hidden="true" />
          </button>
          <button type="button" className="icon-button" aria-label={windowTexts.commands.zoomToFit} onClick={() => dispatch('zoom-to-fit')}>
            <Maximize size={16} aria-hidden="true" />
          </button>
          <button type="button" className="icon-button" aria-label={windowTexts.commands.zoomIn} onClick={() => dispatch('zoom-in')}>
            <Plus size={16} aria-hidden="true" />
          </button>
        </fieldset>
      </div>
    </div>
  );
}
