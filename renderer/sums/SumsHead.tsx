import { ArrowLeft } from 'lucide-react';
import { directionWords, startSentence, sumsPageWords, wordList, wordTermValue } from '../../engine/messages/index.ts';
import type { Sums } from '../../engine/sums/index.ts';
import { Words } from '../marks/Words.tsx';
import { namesOf } from '../state/names.ts';
import { useApp, useDispatch } from '../state/useWorkbench.ts';

interface Props {
  readonly sums: Sums;
  readonly isTried: boolean;
  /** How many sums do not come out. */
  readonly wrong: number;
}

/** The first line: whether everything comes out, and where it is tightest. */
export function SumsHead({ sums, isTried, wrong }: Props) {
  const dispatch = useDispatch();
  const names = useApp((state) => namesOf(state.checked.topology));
  const tightest = wordTightest(names, sums);
  return (
    <section className="sums-head" id="answer" tabIndex={-1} data-tried={isTried} aria-label={sumsPageWords.region}>
      <div>
        <h1 data-wrong={wrong > 0}>
          {wrong > 0 ? sumsPageWords.findings(wrong) : sums.missing.length > 0 ? sumsPageWords.fitsSoFar : sumsPageWords.allFits}
          {sums.missing.length > 0 && <span> {sumsPageWords.open(sums.missing.length)}</span>}
        </h1>
        <p>
          {isTried && <b className="sum-chip">{sumsPageWords.whatIfOn}</b>}
          {tightest.length > 0 && (
            <span>
              <Words>{`${sumsPageWords.tightest}: ${wordList(tightest)}.`}</Words>
            </span>
          )}
        </p>
      </div>
      <button type="button" className="button" onClick={() => dispatch('toggle-sums')}>
        <ArrowLeft size={16} aria-hidden="true" />
        {sumsPageWords.back}
        <kbd>Esc</kbd>
      </button>
    </section>
  );
}

/** Where the least is left, of light, 24 V and DC link; only of what is worked out. */
function wordTightest(names: ReturnType<typeof namesOf>, { optical, feed, dcLinks }: Sums): readonly string[] {
  const computed = optical.filter(({ margin }) => margin.status === 'computed');
  const [light] = [...computed].sort((a, b) => (a.margin.value ?? 0) - (b.margin.value ?? 0));
  const first = feed.units.find(({ unit }) => unit === feed.firstToFail);
  const [dcLink] = [...dcLinks].filter(({ share }) => share !== null).sort((a, b) => (b.share ?? 0) - (a.share ?? 0));
  return [
    ...(light
      ? [sumsPageWords.leastLight(names.link(light.link), directionWords[light.direction].label, wordTermValue(light.margin))]
      : []),
    ...(first ? [sumsPageWords.leastVolts(names.unit(first.unit), wordTermValue(first.headroom))] : []),
    ...(dcLink ? [startSentence(sumsPageWords.dcShare(names.unit(dcLink.supply), `${Math.round((dcLink.share ?? 0) * 100)} %`))] : []),
  ];
}
