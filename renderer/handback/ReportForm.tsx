import { wordProblem, handBackTexts as words } from '../../engine/messages/index.ts';
import type { EndState } from '../../engine/plan/index.ts';
import { useApp, useDispatch } from '../state/useWorkbench.ts';
import type { ResultChange } from './handBackCommands.ts';

/** Who hands the machine back, a remark, and the report as a file. */
export function ReportForm({ end }: { readonly end: EndState }) {
  const dispatch = useDispatch();
  const by = useApp((state) => state.caseRecord.result?.by ?? '');
  const note = useApp((state) => state.caseRecord.result?.note ?? '');
  const report = useApp((state) => state.handBack.report);
  const change = (changed: ResultChange) => dispatch('write-result', { end: end.end, change: changed, at: new Date().toISOString() });
  return (
    <section aria-label={words.report}>
      <h3>{words.report}</h3>
      <label>
        {words.by}
        <input value={by} maxLength={200} autoComplete="name" onChange={(event) => change({ by: event.target.value })} />
      </label>
      <label>
        {words.note}
        <textarea value={note} rows={2} maxLength={20_000} onChange={(event) => change({ note: event.target.value })} />
      </label>
      <p className="report-ends">
        <button
          type="button"
          className="button primary"
          disabled={report.state === 'making'}
          onClick={() => dispatch('make-report', { kind: 'pdf' })}
        >
          {words.pdf}
        </button>
        <button
          type="button"
          className="button"
          disabled={report.state === 'making'}
          onClick={() => dispatch('make-report', { kind: 'html' })}
        >
          {words.html}
        </button>
      </p>
      <p role="status">
        {report.state === 'making' && words.making}
        {report.state === 'saved' && words.saved(report.name)}
      </p>
      {report.state === 'failed' &&
        report.problems.map((problem) => {
          const { title, explanation, whatToDo } = wordProblem(problem);
          return (
            <p key={problem.code} role="alert" className="report-failed">
              <b>{title}</b> {explanation} {whatToDo}
            </p>
          );
        })}
    </section>
  );
}
