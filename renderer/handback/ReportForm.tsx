import { useState } from 'react';
import { wordProblem, handBackTexts as words } from '../../engine/messages/index.ts';
import type { EndState } from '../../engine/plan/index.ts';
import { Sign } from '../marks/Sign.tsx';
import { useApp, useDispatch } from '../state/useWorkbench.ts';
import type { ResultChange } from './handBackCommands.ts';

interface Props {
  readonly end: EndState;
  /** How many points of the checklist are not ticked, of how many. */
  readonly open: number;
  readonly of: number;
}

/** Who hands the machine back, a remark, and the report as a file; what nobody confirmed is said before it is saved, and stands in it. */
export function ReportForm({ end, open, of }: Props) {
  const dispatch = useDispatch();
  const by = useApp((state) => state.caseRecord.result?.by ?? '');
  const note = useApp((state) => state.caseRecord.result?.note ?? '');
  const report = useApp((state) => state.handBack.report);
  const photos = useApp((state) => state.cabinet.photos?.length ?? 0);
  const [withPhotos, setWithPhotos] = useState(false);
  const isMaking = report.state === 'making';
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
      {photos > 0 && (
        <label className="report-photos">
          <input type="checkbox" checked={withPhotos} onChange={() => setWithPhotos(!withPhotos)} /> {words.withPhotos(photos)}
        </label>
      )}
      {open > 0 && (
        <p className="not-confirmed">
          <Sign name="abnormal" size={15} /> <span id="not-confirmed">{words.notConfirmed(open, of)}</span>
        </p>
      )}
      <p className="report-ends">
        <button
          type="button"
          className="button primary"
          aria-disabled={isMaking}
          aria-describedby={open > 0 ? 'not-confirmed' : undefined}
          onClick={() => dispatch('make-report', { kind: 'pdf', withPhotos })}
        >
          {words.pdf}
        </button>
        <button
          type="button"
          className="button"
          aria-disabled={isMaking}
          onClick={() => dispatch('make-report', { kind: 'html', withPhotos })}
        >
          {words.html}
        </button>
      </p>
      <div role="status">
        {isMaking && (
          <p className="report-making">
            <progress aria-label={words.making} /> {words.making}
            <button type="button" className="text-button" onClick={() => dispatch('cancel-report')}>
              {words.stop}
            </button>
          </p>
        )}
        {report.state === 'saved' &&
          [words.saved(report.name), ...(open > 0 ? [words.savedOpen(open)] : []), ...report.remarks].map((line) => (
            <p key={line}>{line}</p>
          ))}
      </div>
      {report.state === 'not-made' && (
        <p role="alert" className="report-failed">
          {words.notMade(report.detail)}
        </p>
      )}
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
