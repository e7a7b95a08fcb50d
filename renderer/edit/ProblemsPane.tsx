import { ChevronDown, ChevronUp } from 'lucide-react';
import { useMemo, useState } from 'react';
import { sharedFeeds } from '../../engine/edit/index.ts';
import { editWords } from '../../engine/messages/index.ts';
import { useApp, useDispatch } from '../state/useWorkbench.ts';
import { ProblemLine } from './ProblemLine.tsx';
import { allProblems } from './problems.ts';
import './edit.css';

/** What is wrong with the cabinet, live, with a way there and a fix where one exists. */
export function ProblemsPane() {
  const checked = useApp((state) => state.checked);
  const cabinet = useApp((state) => state.cabinet);
  const dispatch = useDispatch();
  const [shown, setShown] = useState(true);
  const problems = allProblems(checked);
  const nameless = (cabinet.links ?? []).filter(({ designation = '' }) => designation.trim() === '').map(({ id }) => id);
  const feeds = useMemo(() => sharedFeeds(cabinet, allProblems(checked)), [cabinet, checked]);
  const count = (severity: string) => problems.filter((problem) => problem.severity === severity).length;
  const summary = editWords.problems.count(count('error'), count('incomplete'), count('warning'));
  return (
    <section className="problem-strip" id="problems" tabIndex={-1} aria-label={editWords.problems.region}>
      <h2 className="section-head">
        {editWords.problems.region} <small>{problems.length === 0 ? editWords.problems.none : summary}</small>
        {feeds.map(({ supply, from, units }) => (
          <button
            key={supply}
            type="button"
            className="button small"
            onClick={() => dispatch('feed-units', { from: { unit: supply }, units })}
          >
            {editWords.problems.feedSeveral(units.length, from)}
          </button>
        ))}
        {nameless.length > 0 && (
          <button type="button" className="button small" onClick={() => dispatch('renumber', { ids: nameless })}>
            {editWords.problems.numberCables(nameless.length)}
          </button>
        )}
        {problems.length > 0 && (
          <button
            type="button"
            className="icon-button"
            aria-expanded={shown}
            aria-label={editWords.problems.fold(shown)}
            onClick={() => setShown(!shown)}
          >
            {shown ? <ChevronDown size={16} aria-hidden="true" /> : <ChevronUp size={16} aria-hidden="true" />}
          </button>
        )}
      </h2>
      {shown && problems.length > 0 && (
        <ul className="problem-lines">
          {problems.map((problem) => (
            <ProblemLine key={`${problem.code} ${problem.where} ${problem.subjects.join()}`} problem={problem} />
          ))}
        </ul>
      )}
    </section>
  );
}
