import { sumsPageWords } from '../../engine/messages/index.ts';
import type { SumTerm } from '../../engine/sums/index.ts';

/** Where the rating stands on the bar; what is over it reaches beyond, as far as there is room. */
const ratingAt = 80;
const most = 1.25;

interface Props {
  readonly load: SumTerm;
  readonly share: number | null;
  readonly over: boolean;
}

/** A load as a bar against the line of its rating; the numbers beside it say the same. */
export function LoadBar({ load, share, over }: Props) {
  return (
    <div className="load-bar" data-over={over} data-open={load.bound !== null}>
      <svg viewBox="0 0 100 12" preserveAspectRatio="none" aria-hidden="true">
        <path className="window-box" d={`M0 1H${ratingAt}V11H0Z`} />
        {share !== null && <path className="load-fill" d={`M0 3H${Math.min(share, most) * ratingAt}V9H0Z`} />}
        <path className="edge-line" d={`M${ratingAt} 0V12`} />
      </svg>
      {over && <b className="bad-word">{sumsPageWords.over}</b>}
    </div>
  );
}
