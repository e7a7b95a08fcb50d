import { startSentence, sumsPageWords, termBasisWords, termStatusWords, termWords, wordTermValue } from '../../engine/messages/index.ts';
import type { SumTerm } from '../../engine/sums/index.ts';
import { namesOf } from '../state/names.ts';
import { useApp } from '../state/useWorkbench.ts';
import { StatusMark } from './StatusMark.tsx';
import { changeKey } from './sumsState.ts';
import { TryField } from './TryField.tsx';
import { triedFigureOf, withValue } from './tryable.ts';

interface Props {
  readonly term: SumTerm;
  /** What the number is about: terms about the same thing do not name it again. */
  readonly about: string | null;
  readonly depth?: number;
}

/** One term with everything that is to be said of it, and below it the terms that it was worked out from. */
export function TermTree({ term, about, depth = 0 }: Props) {
  const topology = useApp((state) => state.checked.topology);
  const names = namesOf(topology);
  const { code, of, status, basis, source, from } = term;
  const whose = of === null || of === about ? '' : names.thing(of);
  const figure = triedFigureOf(topology, term);
  const isTried = useApp(({ sums }) => figure !== null && sums.tried.some((one) => changeKey(one) === changeKey(withValue(figure, 0))));
  const what = of === null ? termWords[code] : `${termWords[code]}, ${names.thing(of)}`;
  return (
    <li>
      <div className="sum-term" style={{ '--depth': depth } as React.CSSProperties /* a property of our own */}>
        <span className="term-name">
          {startSentence(termWords[code])} {whose !== '' && <small className="unbroken">{whose}</small>}
        </span>
        <span className="term-value">{figure === null ? <b>{wordTermValue(term)}</b> : <TryField figure={figure} what={what} />}</span>
        <span className="term-status" title={isTried ? sumsPageWords.whatIfOn : termStatusWords[status].meaning} data-tried={isTried}>
          {!isTried && <StatusMark status={status} />}
          {isTried ? sumsPageWords.tried : termStatusWords[status].label}
        </span>
        <span className="term-why">
          {basis !== null && termBasisWords[basis]}
          {basis !== null && source !== null && '; '}
          {source !== null && sumsPageWords.source(source)}
        </span>
      </div>
      {from.length > 0 && (
        <ul>
          {from.map((one, index) => (
            // Terms of one sum have no other key than their place in it.
            // biome-ignore lint/suspicious/noArrayIndexKey: the list of terms of a sum never changes its order
            <TermTree key={`${index} ${one.code} ${one.of ?? ''}`} term={one} about={of ?? about} depth={depth + 1} />
          ))}
        </ul>
      )}
    </li>
  );
}
