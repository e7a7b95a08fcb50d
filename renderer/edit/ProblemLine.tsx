import { useState } from 'react';
import type { Problem } from '../../engine/base/index.ts';
import { fixOf } from '../../engine/edit/index.ts';
import { editWords, severityWords, startSentence, wordProblem } from '../../engine/messages/index.ts';
import { Sign } from '../marks/Sign.tsx';
import { severitySigns } from '../marks/severitySigns.ts';
import { useApp, useDispatch } from '../state/useWorkbench.ts';

/** One problem: how bad, what it is, a way there, and what mends it. Why and what to do unfold below it. */
export function ProblemLine({ problem, short = false }: { readonly problem: Problem; readonly short?: boolean }) {
  const dispatch = useDispatch();
  const cabinet = useApp((state) => state.cabinet);
  const [open, setOpen] = useState(false);
  const { title, explanation, whatToDo } = wordProblem(problem);
  const fix = fixOf(cabinet, problem);
  const fixLabel = fix === null ? null : editWords.fixes[fix.name](fix.facts);
  const [subject] = problem.subjects;
  return (
    <li className={`problem-line ${problem.severity}${short ? ' short' : ''}`}>
      <Sign name={severitySigns[problem.severity]} size={16} />
      {!short && <span className="problem-severity">{severityWords[problem.severity].label}</span>}
      <button type="button" className="problem-title" aria-expanded={open} title={editWords.problems.more} onClick={() => setOpen(!open)}>
        {short && <span className="screen-reader">{severityWords[problem.severity].label}: </span>}
        {title}
      </button>
      <span className="problem-deeds">
        {!short && subject !== undefined && (
          <button
            type="button"
            className="link-button"
            aria-label={editWords.problems.showOf(title)}
            onClick={() => dispatch('show-problem', { subjects: problem.subjects })}
          >
            {editWords.problems.show}
          </button>
        )}
        {fixLabel !== null && (
          <button type="button" className="button small" onClick={() => dispatch('fix-problem', { problem, what: fixLabel })}>
            {startSentence(fixLabel)}
          </button>
        )}
      </span>
      {open && (
        <p className="problem-more">
          {explanation} {whatToDo}
        </p>
      )}
    </li>
  );
}
