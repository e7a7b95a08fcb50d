import {
  checkWords,
  endReasonWords,
  endStateWords,
  meaningWords,
  startSentence,
  touchedTexts,
  windowTexts,
  wordActsDone,
  wordDisplaced,
  wordProbability,
  wordStep,
  handBackTexts as words,
  wordTimeSpan,
} from '../../engine/messages/index.ts';
import { type EndState, endOf, listHandBackChecks } from '../../engine/plan/index.ts';
import type { HandBackCheck } from '../../engine/schema/index.ts';
import { KeepCase } from '../confirmed/KeepCase.tsx';
import { minutesOf, selectBestStep } from '../find/stepModel.ts';
import { selectTouched } from '../find/touched.ts';
import { Sign } from '../marks/Sign.tsx';
import { Words } from '../marks/Words.tsx';
import { DialogFrame } from '../shell/DialogFrame.tsx';
import { lastDiagnosis } from '../state/lastDiagnosis.ts';
import { namesOf } from '../state/names.ts';
import { useApp, useDispatch } from '../state/useWorkbench.ts';
import { FoundCause } from './FoundCause.tsx';
import { PartsForm } from './PartsForm.tsx';
import { ReportForm } from './ReportForm.tsx';
import './handback.css';

/** Below this nothing is said of what may come back. */
const worthSaying = 0.01;
const noChecks: readonly HandBackCheck[] = [];

/** The end of a task: how far the cause is proved, what must show now, parts, checklist, report. */
export function HandBackDialog() {
  const shown = useApp((state) => state.handBack.shown);
  return shown ? <HandBack /> : null;
}

function HandBack() {
  const dispatch = useDispatch();
  const cabinet = useApp((state) => state.checked.cabinet);
  const evidence = useApp((state) => state.caseRecord.evidence);
  const diagnosis = useApp((state) => lastDiagnosis(state.diagnosis));
  const checked = useApp((state) => state.caseRecord.result?.checked ?? noChecks);
  if (!cabinet || !diagnosis) return null;
  const end = endOf(cabinet, evidence, diagnosis);
  const checks = listHandBackChecks(cabinet, evidence, end);
  return (
    <DialogFrame
      title={end.end === 'open' ? words.titleOpen : words.title}
      close={words.close}
      onClose={() => dispatch('close-hand-back')}
      name="hand-back"
    >
      <div className="hand-back-columns">
        <div>
          <Outcome end={end} />
          <Watch end={end} />
          <Expected end={end} />
          <FoundCause end={end} />
          <KeepCase end={end} />
          <PartsForm />
        </div>
        <div>
          <Checks end={end} checks={checks} />
          <ReportForm end={end} open={checks.filter((check) => !checked.includes(check)).length} of={checks.length} />
        </div>
      </div>
      <p className="hand-back-defer">{windowTexts.cautions.defer}</p>
    </DialogFrame>
  );
}

function Outcome({ end }: { readonly end: EndState }) {
  const names = useApp((state) => namesOf(state.checked.topology));
  const { displaced } = useApp(selectTouched);
  const { label, meaning } = endStateWords[end.end];
  return (
    <section aria-label={words.outcome}>
      <h3 className={`end-state ${end.end}`}>{startSentence(label)}</h3>
      <p>{startSentence(meaning)}.</p>
      {end.end !== 'open' && (
        <p>
          <Words>{words.after(wordActsDone(names, end.lastActs))}</Words>
        </p>
      )}
      {end.because.map((reason) => (
        <p key={reason}>{endReasonWords[reason]}</p>
      ))}
      {end.mayComeBack >= worthSaying && end.end !== 'open' && (
        <p>{(end.end === 'proved' ? words.smallDoubt : words.comeBack)(wordProbability(end.mayComeBack))}</p>
      )}
      {displaced.length > 0 && (
        <ul className="hand-back-displaced" aria-label={touchedTexts.displaced}>
          {displaced.map(({ what, isExchange }) => (
            <li key={JSON.stringify(what)}>
              <Sign name="abnormal" size={15} />{' '}
              <span>
                <Words>{startSentence(wordDisplaced(names, what, isExchange))}</Words>
              </span>
            </li>
          ))}
        </ul>
      )}
    </section>
  );
}

/** Where the cause is not proved: what was touched, by name, and what could be done to know more. */
function Watch({ end }: { readonly end: EndState }) {
  const dispatch = useDispatch();
  const names = useApp((state) => namesOf(state.checked.topology));
  const best = useApp(selectBestStep);
  if (end.end !== 'not-proved') return null;
  const touched = [...new Set(end.touched.map(({ act }) => startSentence(wordActsDone(names, [act]))))];
  return (
    <section aria-label={words.watch}>
      <h3>{words.watch}</h3>
      <ul className="expected">
        {touched.map((what) => (
          <li key={what}>
            <Words>{what}</Words>
          </li>
        ))}
      </ul>
      {best && (
        <p className="prove">
          <b>{words.prove}:</b> <Words>{words.proveBy(wordStep(names, best.step), wordTimeSpan(minutesOf(best)))}</Words>{' '}
          <button
            type="button"
            className="text-button"
            onClick={() => {
              dispatch('close-hand-back');
              dispatch('next-step');
            }}
          >
            {words.toStep}
          </button>
        </p>
      )}
    </section>
  );
}

/** What the displays must show now: what is not quiet by name, the rest together. */
function Expected({ end }: { readonly end: EndState }) {
  const names = useApp((state) => namesOf(state.checked.topology));
  if (end.end === 'open') return null;
  const { displays, reports } = end.expected;
  const loud = displays.filter(({ meaning }) => meaning !== 'quiet');
  const quiet = displays.length - loud.length;
  return (
    <section aria-label={words.expected}>
      <h3>{words.expected}</h3>
      <ul className="expected">
        {loud.map(({ unit, meaning }) => (
          <li key={unit}>
            <Words>{words.mustShow(names.unit(unit), meaningWords[meaning].label)}</Words>
          </li>
        ))}
        <li>{loud.length === 0 ? words.allQuiet(quiet) : startSentence(words.otherwiseQuiet(quiet))}</li>
        {reports.length > 0 && <li>{words.reports(reports.length)}</li>}
      </ul>
      <p className="quiet-text">{words.onCabinet}</p>
    </section>
  );
}

function Checks({ end, checks }: { readonly end: EndState; readonly checks: readonly HandBackCheck[] }) {
  const dispatch = useDispatch();
  const checked = useApp((state) => state.caseRecord.result?.checked ?? noChecks);
  const toggle = (check: HandBackCheck) => {
    const others = checked.filter((one) => one !== check);
    const change = { checked: checked.includes(check) ? others : [...others, check] };
    dispatch('write-result', { end: end.end, change, at: new Date().toISOString() });
  };
  const done = checks.filter((check) => checked.includes(check)).length;
  return (
    <section aria-label={words.checks}>
      <h3>
        {words.checks} <small>{words.checked(done, checks.length)}</small>
      </h3>
      <ul className="checks">
        {checks.map((check) => (
          <li key={check}>
            <label>
              <input type="checkbox" checked={checked.includes(check)} onChange={() => toggle(check)} />
              <span>{checkWords[check]}</span>
            </label>
          </li>
        ))}
      </ul>
    </section>
  );
}
