import { ChevronDown, ChevronUp } from 'lucide-react';
import { useState } from 'react';
import { editWords } from '../../engine/messages/index.ts';
import { useApp } from '../state/useWorkbench.ts';
import { ProblemLine } from './ProblemLine.tsx';
import { allProblems } from './problems.ts';
import './edit.css';

/** What is wrong with the cabinet, live, with a way there and a fix where one exists. */
export function ProblemsPane() {
  const checked = useApp((state) => state.checked);
  const [shown, setShown] = useState(true);
  const problems = allProblems(checked);
  const count = (severity: string) => problems.filter((problem) => problem.severity === severity).length;
  const summary = editWords.problems.count(count('error'), count('incomplete'), count('warning'));
  return (
    <section className="problem-strip" id="problems" tabIndex={-1} aria-label={editWords.problems.region}>
      <h2 className="section-head">
        {editWords.problems.region} <small>{problems.length === 0 ? editWords.problems.none : summary}</small>
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
