import { useEffect, useRef, useState } from 'react';
import {
  cannotTellApart,
  rankedByRatesOnly,
  windowTexts,
  wordContradiction,
  wordProbability,
  wordUnvisitedShare,
} from '../../engine/messages/index.ts';
import { lowWindow, useMedia } from '../canvas/useMedia.ts';
import { BehavedNotes } from '../confirmed/BehavedNotes.tsx';
import { RatesBasis } from '../confirmed/RatesBasis.tsx';
import { Sign } from '../marks/Sign.tsx';
import { Words } from '../marks/Words.tsx';
import type { AppState } from '../state/appState.ts';
import { hasObservations } from '../state/evidence.ts';
import { isUnanswered } from '../state/lastDiagnosis.ts';
import { namesOf } from '../state/names.ts';
import { useApp, useDispatch } from '../state/useWorkbench.ts';
import { BusyPane } from './BusyPane.tsx';
import { type CandidateWords, useCandidateWords } from './candidateWords.ts';
import { type Row, selectFindModel } from './findModel.ts';
import { ProblemList } from './ProblemList.tsx';
import { useSharedFeed } from './useSharedFeed.ts';
import './suspects.css';

const words = windowTexts.suspects;

/** Listed with less than this only when the user asks for more, or has chosen it. */
const leastListed = 0.01;

/** Listed at once in a high and in a low window, and below a contradiction: under them stands the step, and its outcomes must be in sight. */
const mostListed = { high: 6, low: 4 } as const;
const mostBelowContradiction = { high: 3, low: 2 } as const;

/** Who is suspected, and how much. Members of an ambiguity group stand behind one double bar. */
export function Suspects() {
  const model = useApp(selectFindModel);
  const all = useApp((state) => state.allCandidates);
  const sound = useApp((state) => state.checked.cabinet !== null);
  const anything = useApp((state) => hasObservations(state.caseRecord));
  const isLow = useMedia(lowWindow);
  const most = (model.diagnosis?.contradiction ? mostBelowContradiction : mostListed)[isLow ? 'low' : 'high'];
  const shown = all
    ? model.rows
    : model.rows.filter(
        (row, index) => (row.candidate.probability >= leastListed && index < most) || row === model.chosen || row === model.rows[0],
      );
  return (
    <BusyPane id="suspects" className="pane suspects" aria-label={sound ? words.region : words.problems} busy={isWorkedOut}>
      <div className="section-head">
        <h2>
          {sound ? words.region : words.problems} <small>{anything && sound && model.stale ? words.stale : ''}</small>
        </h2>
        {anything && sound && <RatesBasis />}
      </div>
      {!sound && <ProblemList />}
      {sound && !anything && (
        <p className="empty">
          {words.none} {words.noneHow}
        </p>
      )}
      {sound && anything && (
        <>
          <Contradicted />
          <Groups rows={shown} />
          <Rest shown={shown} />
          <BehavedNotes />
        </>
      )}
    </BusyPane>
  );
}

const isWorkedOut = (state: AppState) => isUnanswered(state) && hasObservations(state.caseRecord);

function Groups({ rows }: { readonly rows: readonly Row[] }) {
  const { title } = useCandidateWords();
  const names = rows.map(({ candidate }) => title(candidate).text);
  const isTwin = (row: Row) => names.filter((name) => name === names[rows.indexOf(row)]).length > 1;
  const runs: { readonly group: number; readonly letter: string | null; readonly rows: Row[] }[] = [];
  for (const row of rows) {
    const last = runs[runs.length - 1];
    if (last && last.group === row.candidate.group) last.rows.push(row);
    else runs.push({ group: row.candidate.group, letter: row.letter, rows: [row] });
  }
  return (
    <div className="suspect-list">
      {runs.map((run) =>
        run.letter !== null && run.rows.length > 1 ? (
          <fieldset key={run.group} className="alike" title={rankedByRatesOnly}>
            <legend>
              <b>{run.letter}</b> {cannotTellApart}
            </legend>
            {run.rows.map((row) => (
              <Suspect key={row.candidate.key} row={row} isTwin={isTwin(row)} />
            ))}
          </fieldset>
        ) : (
          run.rows.map((row) => <Suspect key={row.candidate.key} row={row} isTwin={isTwin(row)} />)
        ),
      )}
    </div>
  );
}

/** `isTwin`: another one bears the same name, and what may be wrong with it tells the two apart. */
function Suspect({ row, isTwin }: { readonly row: Row; readonly isTwin: boolean }) {
  const dispatch = useDispatch();
  const chosen = useApp((state) => selectFindModel(state).chosen === row);
  const candidateWords: CandidateWords = useCandidateWords();
  const { candidate } = row;
  const title = candidateWords.title(candidate);
  const parts = isTwin ? candidateWords.modes(candidate) : candidateWords.parts(candidate);
  const share = wordProbability(candidate.probability);
  const line = useRef<HTMLButtonElement>(null);
  // Also where it was chosen from the grid: what is laid over the cabinet stands in sight here.
  useEffect(() => {
    if (chosen && line.current) bringIntoView(line.current);
  }, [chosen]);
  return (
    <button
      ref={line}
      type="button"
      className="suspect-row"
      aria-pressed={chosen}
      onClick={() =>
        dispatch('choose-candidate', { chosen: { by: 'user', key: candidate.key }, subject: candidateWords.subject(candidate) })
      }
    >
      <Sign name={candidateWords.sign(candidate)} size={18} />
      <span className="name">
        <b className="designation">
          <Words>{title.strong}</Words>
        </b>{' '}
        <Words>{title.rest}</Words>
      </span>{' '}
      <span className="bar" style={shareStyle(candidate.probability)} /> <span className="share">{share}</span>{' '}
      {(chosen || isTwin) && parts !== '' && <span className="parts">{parts}</span>}
    </button>
  );
}

/** Scrolls the column, where it scrolls as a whole. `scrollIntoView` would also move the place from which Tab goes on. */
function bringIntoView(row: HTMLElement): void {
  const column = row.closest('.side');
  if (!column) return;
  const { top, bottom } = row.getBoundingClientRect();
  const box = column.getBoundingClientRect();
  if (top < box.top) column.scrollTop -= box.top - top;
  else if (bottom > box.bottom - indexHeight) column.scrollTop += bottom - box.bottom + indexHeight;
}

/** Pixels that the line of what stands below takes from the sight. */
const indexHeight = 34;

/** The length of a bar, as a property of its own: the type of styles does not know those. */
function shareStyle(share: number): React.CSSProperties {
  return { '--share': share } as React.CSSProperties;
}

/** What is not listed: the rest of the probability, and how much was never looked at. */
function Rest({ shown }: { readonly shown: readonly Row[] }) {
  const dispatch = useDispatch();
  const model = useApp(selectFindModel);
  const all = useApp((state) => state.allCandidates);
  const rest = 1 - shown.reduce((sum, { candidate }) => sum + candidate.probability, 0);
  const hidden = model.rows.length - shown.length + model.more;
  const unvisited = model.diagnosis ? wordUnvisitedShare(model.diagnosis.unvisitedShare) : null;
  return (
    <p className="rest">
      {hidden > 0 && words.allElse(wordProbability(Math.max(0, rest)))}{' '}
      {(hidden > 0 || all) && (
        <button type="button" className="text-button" aria-expanded={all} onClick={() => dispatch('toggle-all-candidates')}>
          {all ? words.showFewer : words.showMore(hidden)}
        </button>
      )}
      {unvisited !== null && <span className="unvisited"> {unvisited}</span>}
    </p>
  );
}

/** Sentences that stand there at once; in a low window none, for the first line names what stands against it. */
const mostSaid = 2;

/**
 * What was seen contradicts every likely suspect: that comes before the suspects, for it may be a misreading. Where units may share a
 * feed that is asked in the first line, and nobody is sent to read dark displays again.
 */
function Contradicted() {
  const contradiction = useApp((state) => selectFindModel(state).diagnosis?.contradiction);
  const names = useApp((state) => namesOf(state.checked.topology));
  const { evidence } = useApp((state) => selectFindModel(state).record);
  const isLow = useMedia(lowWindow);
  const [open, setOpen] = useState(false);
  const isFeedAsked = useSharedFeed().length > 0;
  if (!contradiction || isFeedAsked) return null;
  const sentences = wordContradiction(names, evidence, contradiction);
  const most = isLow ? 0 : mostSaid;
  const hidden = sentences.length - most;
  return (
    <div className="contradiction">
      <h3>
        <Sign name="abnormal" size={16} /> {words.contradiction}
        {hidden > 0 && (
          <button type="button" className="text-button" aria-expanded={open} onClick={() => setOpen(!open)}>
            {open ? words.contradictionLess : words.contradictionMore}
          </button>
        )}
      </h3>
      {(open ? sentences : sentences.slice(0, most)).map((sentence) => (
        <p key={sentence}>
          <Words>{sentence}</Words>
        </p>
      ))}
    </div>
  );
}
