import { countsAs } from '../../engine/experience/index.ts';
import { wordProbability, wordProblem, confirmedWords as words } from '../../engine/messages/index.ts';
import type { EndState } from '../../engine/plan/index.ts';
import type { CaseContent } from '../../engine/schema/index.ts';
import { shortcutsOf } from '../shell/shortcuts.ts';
import { useApp, useDispatch } from '../state/useWorkbench.ts';
import { keptIdOf } from './ownRates.ts';

const nothingWritten: Pick<NonNullable<CaseContent['result']>, 'item' | 'mode'> = {};

function whyKeep({ end, mayComeBack }: EndState, { item, mode }: typeof nothingWritten): string {
  if (end === 'proved') return words.keepWhy;
  return item === undefined && mode === undefined ? words.keepHandled(wordProbability(1 - mayComeBack)) : words.keepSeen;
}

/** Offers to keep a finished repair that counts, never by itself: one key, or the button. */
export function KeepCase({ end }: { readonly end: EndState }) {
  const dispatch = useDispatch();
  const id = useApp((state) => keptIdOf(state));
  const kept = useApp((state) => state.confirmed.cases.some(({ content }) => content.id === id));
  const isSample = useApp((state) => state.source.kind === 'sample');
  const isSimulated = useApp((state) => state.caseRecord.evidence.snapshots.some(({ simulated }) => simulated === true));
  const trouble = useApp((state) => state.confirmed.trouble);
  const result = useApp((state) => state.caseRecord.result ?? nothingWritten);
  const hasRun = useApp((state) => state.caseRecord.result?.checked?.includes('ran') === true);
  if (end.end !== 'proved' && end.end !== 'not-proved') return null;
  const counts = countsAs(end, result);
  const [key] = shortcutsOf('keep-case');
  return (
    <section aria-label={words.keepHead} className="keep-case">
      <h3>{words.keepHead}</h3>
      {isSample || isSimulated || !counts ? (
        <p className="quiet-text">
          {isSample ? words.sample : isSimulated ? words.simulated : words.keepNot(wordProbability(end.mayComeBack))}
        </p>
      ) : (
        <>
          <p>{kept ? words.keptAlready : whyKeep(end, result)}</p>
          {!kept && !hasRun && <p className="quiet-text">{words.keepLater}</p>}
          <p className="part-end">
            <button type="button" className={kept ? 'button' : 'button primary'} onClick={() => dispatch('keep-case')}>
              {kept ? words.keepAgain : words.keep} {key !== undefined && <kbd>{key}</kbd>}
            </button>{' '}
            <button type="button" className="text-button" onClick={() => dispatch('confirmed-cases')}>
              {words.show}
            </button>
          </p>
        </>
      )}
      {trouble.map((problem) => {
        const { title, explanation, whatToDo } = wordProblem(problem);
        return (
          <p key={problem.code} role="alert" className="report-failed">
            <b>{title}.</b> {explanation} {whatToDo}
          </p>
        );
      })}
    </section>
  );
}
