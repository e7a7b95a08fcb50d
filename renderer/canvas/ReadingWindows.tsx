import { DisplayMark, toneOf } from '../marks/DisplayMark.tsx';
import { Sign } from '../marks/Sign.tsx';
import type { ReadingView } from './views.ts';

/** The dark glass with what was seen. A fact is solid. */
export function SeenWindow({
  reading,
  size,
  words = true,
}: {
  readonly reading: ReadingView;
  readonly size: number;
  readonly words?: boolean;
}) {
  const { seen, code } = reading;
  return (
    <span className={`window seen tone-${toneOf(seen.mark)}`} data-mark={seen.mark}>
      <DisplayMark name={seen.mark} size={size} />
      {words && <span className="words">{seen.words}</span>}
      {code !== null && words && <span className="code raw">{code}</span>}
    </span>
  );
}

/** The dashed window with what the chosen candidate predicts, and whether it agrees. An assumption is drawn, never filled. */
export function PredictedWindow({
  reading,
  size,
  words = true,
}: {
  readonly reading: ReadingView;
  readonly size: number;
  readonly words?: boolean;
}) {
  const { predicted, agreement } = reading;
  if (!predicted) return null;
  return (
    <span
      className={`window predicted tone-${toneOf(predicted.mark)} ${agreement ?? ''}`}
      data-mark={predicted.mark}
      data-agreement={agreement}
    >
      <DisplayMark name={predicted.mark} size={size} />
      {words && <span className="words">{predicted.words}</span>}
      {agreement && (
        <span className={`agreement ${agreement}`}>
          <Sign name={agreement} size={12} />
        </span>
      )}
    </span>
  );
}
