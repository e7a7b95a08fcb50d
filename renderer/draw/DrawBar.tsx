import { X } from 'lucide-react';
import { drawWords, wordProblem } from '../../engine/messages/index.ts';
import type { AppState } from '../state/appState.ts';
import { useApp, useDispatch, useWindow } from '../state/useWorkbench.ts';
import { useGesture } from './DrawingContext.ts';
import { wordPull } from './pulling.ts';

/** What would happen if it were let go now, or why the last thing was not done. It stands where nobody drops anything. */
export function DrawBar() {
  const gesture = useGesture((one) => one);
  const { store } = useWindow();
  const held = useApp((state) => state.draw.held);
  const refusal = useApp((state) => state.refusal);
  if (gesture.kind === 'carry' && gesture.preview) {
    const { title, detail, refusal: why } = gesture.preview;
    return (
      <Bar
        title={why ? drawWords.drop.cannot : title}
        detail={why ? wordProblem(why).title : detail}
        refused={why !== null}
        keys={['esc', 'alt']}
        alt={gesture.carried.kind === 'new' ? drawWords.drop.beside : drawWords.drop.copy}
      />
    );
  }
  if (gesture.kind === 'pull') {
    const title = wordPull(store.getState(), gesture);
    const why = gesture.refusal;
    return (
      <Bar
        title={why ? drawWords.drop.cannot : title}
        detail={why ? `${wordProblem(why).title}. ${wordProblem(why).whatToDo}` : ''}
        refused={why !== null}
        keys={['esc']}
      />
    );
  }
  if (held !== null)
    return <Bar title={drawWords.shelf.held(drawWords.shelf.kinds[held].toLowerCase())} detail="" refused={false} keys={['esc']} />;
  return refusal === null ? null : <Refusal refusal={refusal} />;
}

function Bar({
  title,
  detail,
  refused,
  keys,
  alt = '',
}: {
  readonly title: string;
  readonly detail: string;
  readonly refused: boolean;
  readonly keys: readonly ('esc' | 'alt')[];
  /** What Alt does. */
  readonly alt?: string;
}) {
  return (
    <div className={`draw-bar${refused ? ' refused' : ''}`}>
      <p className="draw-bar-title">
        <b>{title}</b>
        <span className="draw-bar-keys">
          {keys.includes('esc') && (
            <>
              <kbd>Esc</kbd> {drawWords.drop.putBack}
            </>
          )}
          {keys.includes('alt') && (
            <>
              <kbd>Alt</kbd> {alt}
            </>
          )}
        </span>
      </p>
      {detail !== '' && <p>{detail}</p>}
    </div>
  );
}

/** Why something was not done, until something else is. */
function Refusal({ refusal }: { readonly refusal: NonNullable<AppState['refusal']> }) {
  const dispatch = useDispatch();
  const [first] = refusal.problems;
  if (!first) return null;
  const { title, explanation, whatToDo } = wordProblem(first);
  return (
    <div className="draw-bar refused" data-refusal={refusal.number}>
      <p className="draw-bar-title">
        <b>{title}</b>
        <button type="button" className="icon-button" aria-label={drawWords.closeRefusal} onClick={() => dispatch('close-refusal')}>
          <X size={16} aria-hidden="true" />
        </button>
      </p>
      <p>
        {explanation} {whatToDo}
      </p>
    </div>
  );
}
