import { sumsPageWords, wordTermValue } from '../../engine/messages/index.ts';
import type { SumTerm } from '../../engine/sums/index.ts';

/** Where the rating stands on the bar; what is over it reaches beyond, as far as there is room. */
const ratingAt = 80;
const most = 1.25;

interface Props {
  readonly load: SumTerm;
  readonly rated: SumTerm;
  readonly share: number | null;
  readonly over: boolean;
}

/** A load as a bar against the line of its rating; the words below say the same. */
export function LoadBar({ load, rated, share, over }: Props) {
  return (
    <div className="load-bar" data-over={over} data-open={load.bound !== null}>
      <svg viewBox="0 0 100 12" preserveAspectRatio="none" aria-hidden="true">
        <path className="window" d={`M0 1H${ratingAt}V11H0Z`} />
        {share !== null && <path className="load" d={`M0 3H${Math.min(share, most) * ratingAt}V9H0Z`} />}
        <path className="limit" d={`M${ratingAt} 0V12`} />
      </svg>
      <span>
        {sumsPageWords.ofRated(wordTermValue(load), wordTermValue(rated))}
        {over && <b className="bad-word"> {sumsPageWords.over}</b>}
      </span>
    </div>
  );
}
