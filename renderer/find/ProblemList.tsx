import { windowTexts, wordProblem } from '../../engine/messages/index.ts';
import { Words } from '../marks/Words.tsx';
import { useApp, useDispatch } from '../state/useWorkbench.ts';
import { selectProblems } from '../sums/selectSums.ts';

const mostListed = 12;

/** What stands in the way of working with the cabinet, each with what to do about it. */
export function ProblemList() {
  const problems = useApp(selectProblems);
  const dispatch = useDispatch();
  const errors = problems.filter(({ severity }) => severity === 'error');
  return (
    <ul className="problems">
      {errors.slice(0, mostListed).map((problem) => {
        const { title, explanation, whatToDo } = wordProblem(problem);
        const [subject] = problem.subjects;
        return (
          <li key={`${problem.code} ${problem.where} ${problem.subjects.join(' ')}`}>
            <b>
              <Words>{title}</Words>
            </b>{' '}
            <Words>{`${explanation} ${whatToDo}`}</Words>{' '}
            {subject !== undefined && (
              <button type="button" className="text-button" onClick={() => dispatch('show-on-cabinet', { subject })}>
                {windowTexts.commands.showOnCabinet}
              </button>
            )}
          </li>
        );
      })}
      {errors.length > mostListed && <li>{windowTexts.moreProblems(errors.length - mostListed)}</li>}
    </ul>
  );
}
