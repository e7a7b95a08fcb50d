import type { Problem } from '../../engine/base/index.ts';
import { severityWords, sumsPageWords, wordProblem } from '../../engine/messages/index.ts';
import { Sign, type SignName } from '../marks/Sign.tsx';
import { Words } from '../marks/Words.tsx';
import { useApp, useWindow } from '../state/useWorkbench.ts';
import { selectProblems, selectTried } from './selectSums.ts';

const signs: { readonly [S in Problem['severity']]: SignName } = {
  refused: 'never',
  error: 'never',
  warning: 'abnormal',
  incomplete: 'open',
};
const keyOf = (problem: Problem) =>
  `${problem.code} ${problem.where} ${problem.subjects.join(' ')} ${JSON.stringify(problem.facts['direction'] ?? '')}`;
const mostShown = 8;

/** Everything wrong with the cabinet, by its checks and its sums; with figures tried, also what they would bring and what mend. */
export function ProblemsPane() {
  const problems = useApp(selectProblems);
  const tried = useApp(selectTried);
  const written = new Set(problems.map(keyOf));
  const withTried = new Set((tried?.problems ?? problems).map(keyOf));
  const brought = (tried?.problems ?? []).filter((one) => !written.has(keyOf(one)));
  const all = [...brought, ...problems];
  return (
    <section className="pane" aria-label={sumsPageWords.problems}>
      <h2 className="section-head">
        <span>
          {sumsPageWords.problems} <small>{problems.length}</small>
        </span>
      </h2>
      {all.length === 0 ? (
        <p className="empty">{sumsPageWords.noProblems}</p>
      ) : (
        <ul className="sum-problems">
          {all.slice(0, mostShown).map((problem) => (
            <ProblemItem
              key={`${brought.includes(problem)} ${keyOf(problem)}`}
              problem={problem}
              note={
                brought.includes(problem) ? sumsPageWords.onlyTried : withTried.has(keyOf(problem)) ? null : sumsPageWords.goneWhenTried
              }
            />
          ))}
          {all.length > mostShown && <li className="quiet-text">{sumsPageWords.moreProblems(all.length - mostShown)}</li>}
        </ul>
      )}
    </section>
  );
}

function ProblemItem({ problem, note }: { readonly problem: Problem; readonly note: string | null }) {
  const { dispatch } = useWindow();
  const { title, explanation, whatToDo } = wordProblem(problem);
  const [subject] = problem.subjects;
  return (
    <li data-severity={problem.severity} data-tried={note !== null}>
      <Sign name={signs[problem.severity]} size={15} />
      <div>
        <b>
          <Words>{title}</Words>
        </b>
        <p>
          <small className="sum-severity">{severityWords[problem.severity].label}</small> <Words>{explanation}</Words>
        </p>
        <p className="quiet-text">
          <Words>{whatToDo}</Words>
        </p>
        {note !== null && <small className="sum-chip">{note}</small>}
        {subject !== undefined && note === null && (
          <button
            type="button"
            className="text-button"
            onClick={() => {
              dispatch('toggle-sums');
              dispatch('show-on-cabinet', { subject });
            }}
          >
            {sumsPageWords.show}
          </button>
        )}
      </div>
    </li>
  );
}
