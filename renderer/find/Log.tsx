import { Undo2 } from 'lucide-react';
import { useMemo } from 'react';
import { windowTexts, wordGaps, wordMeanings } from '../../engine/messages/index.ts';
import { currentSnapshot } from '../state/evidence.ts';
import { namesOf } from '../state/names.ts';
import { useApp, useDispatch } from '../state/useWorkbench.ts';
import './log.css';

const words = windowTexts.log;

interface Entry {
  readonly key: string;
  readonly at: string | undefined;
  readonly what: string;
  readonly code: string | null;
  readonly withdraw: () => void;
}

/** What was entered, newest first; everything can be withdrawn. */
export function Log() {
  const dispatch = useDispatch();
  const snapshot = useApp((state) => currentSnapshot(state.caseRecord));
  const names = useApp((state) => namesOf(state.checked.topology));
  const entries = useMemo(() => {
    const displays = (snapshot.displays ?? []).map(
      ({ unit, meanings, code, at }): Entry => ({
        key: `display ${unit}`,
        at,
        what: words.display(names.unit(unit), wordMeanings(meanings)),
        code: code ?? null,
        withdraw: () => dispatch('withdraw-display', { unit }),
      }),
    );
    const reports = (snapshot.reports ?? []).map(
      ({ chain, gaps, at }): Entry => ({
        key: `report ${chain}`,
        at,
        what: words.report(names.chain(chain), wordGaps(names, chain, gaps)),
        code: null,
        withdraw: () => dispatch('withdraw-report', { chain }),
      }),
    );
    // What was entered last stands last in its list; a stable sort keeps that where times are equal or missing.
    return [...displays, ...reports].reverse().sort((a, b) => momentOf(b.at) - momentOf(a.at));
  }, [snapshot, names, dispatch]);
  return (
    <section className="pane log" aria-label={words.region}>
      <div className="section-head">
        <h2>
          {words.region} <small>{entries.length}</small>
        </h2>
      </div>
      {entries.length === 0 ? (
        <p className="empty">{words.empty}</p>
      ) : (
        <ol>
          {entries.map(({ key, at, what, code, withdraw }) => (
            <li key={key}>
              <time dateTime={at}>{clockOf(at)}</time>
              <span className="what" title={what}>
                {what}
                {code !== null && <span className="quiet-text"> {words.byCode(code)}</span>}
              </span>
              <button
                type="button"
                className="icon-button"
                aria-label={words.withdraw(what)}
                title={words.withdraw(what)}
                onClick={withdraw}
              >
                <Undo2 size={15} aria-hidden="true" />
              </button>
            </li>
          ))}
        </ol>
      )}
    </section>
  );
}

function momentOf(at: string | undefined): number {
  const moment = at === undefined ? Number.NaN : Date.parse(at);
  return Number.isNaN(moment) ? 0 : moment;
}

/** Hours and minutes as the clock on the wall shows them here. */
function clockOf(at: string | undefined): string {
  const moment = momentOf(at);
  if (moment === 0) return words.noTime;
  const time = new Date(moment);
  return `${String(time.getHours()).padStart(2, '0')}:${String(time.getMinutes()).padStart(2, '0')}`;
}
