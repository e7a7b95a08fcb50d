import { Syringe } from 'lucide-react';
import { injectWords } from '../../engine/messages/index.ts';
import { Zoomer } from '../canvas/Zoomer.tsx';

/** Over the simulated picture: the badge that says what it is, what the lines mean, and the zoom. */
export function InjectHead() {
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
        <Zoomer />
      </div>
    </div>
  );
}
