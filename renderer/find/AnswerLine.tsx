import { isUnread } from '../../engine/diagnosis/index.ts';
import {
  endReasonWords,
  endStateWords,
  endTexts,
  machineStateWords,
  quickWords,
  riskWords,
  stepCardTexts,
  stepTexts,
  touchedTexts,
  windowTexts,
  wordActsDone,
  wordAgainstShort,
  wordCodesToLookUp,
  wordMending,
  wordProbability,
  wordStep,
  wordTimeSpan,
} from '../../engine/messages/index.ts';
import { type Displaced, putBack } from '../../engine/plan/index.ts';
import type { Fault } from '../../engine/schema/index.ts';
import { inReadingOrder } from '../canvas/projectFrame.ts';
import { Sign } from '../marks/Sign.tsx';
import { Words } from '../marks/Words.tsx';
import type { AppState } from '../state/appState.ts';
import { countRead, currentSnapshot, hasObservations, runsSinceHandled } from '../state/evidence.ts';
import { namesOf } from '../state/names.ts';
import { useApp, useDispatch, useWindow } from '../state/useWorkbench.ts';
import { useCandidateWords } from './candidateWords.ts';
import { type FindModel, selectFindModel } from './findModel.ts';
import { minutesOf, selectBestStep, selectPlan, worstRisk } from './stepModel.ts';
import { selectTouched } from './touched.ts';
import { useSharedFeed } from './useSharedFeed.ts';
import './answer.css';

const words = windowTexts.answer;

/** The first line: what to do next, and how sure that is; the button beside it does the first half of it. */
export function AnswerLine() {
  const model = useApp(selectFindModel);
  const failed = useApp((state) => state.diagnosis.state === 'failed');
  const sound = useApp((state) => state.checked.cabinet !== null);
  const anything = useApp((state) => hasObservations(state.caseRecord));
  return (
    <section id="answer" className="answer" aria-label={words.region} tabIndex={-1}>
      {!sound ? (
        <Unsound />
      ) : failed ? (
        <Say head={words.failed} why={words.failedWhy} />
      ) : !anything ? (
        <Begin />
      ) : (
        <Answered model={model} />
      )}
    </section>
  );
}

/** Signs of a head that go into one line beside the button in a small window, the share behind it included. */
const longHead = 68;

function Say({ head, why, children }: { readonly head: string; readonly why: string; readonly children?: React.ReactNode }) {
  return (
    <div className={head.length > longHead ? 'say long' : 'say'}>
      <h1>
        <b>
          <Words>{head}</Words>
        </b>
        {children}
      </h1>
      <p>
        {why} <Remind />
      </p>
      <Progress />
    </div>
  );
}

/** As long as something does not stand in its place, the first line says so. */
function Remind() {
  const count = useApp((state) => selectTouched(state).displaced.length);
  if (count === 0) return null;
  return (
    <button type="button" className="text-button remind" onClick={() => document.getElementById('touched')?.focus()}>
      {touchedTexts.remind(count)}
    </button>
  );
}

interface ActProps {
  readonly what: string;
  /** The key that does the same. */
  readonly shortcut?: string;
  readonly where: string;
  readonly onPress: () => void;
}

/** The black button: what to do next. */
function Act({ what, shortcut, where, onPress }: ActProps) {
  return (
    <button type="button" className="button primary act" onClick={onPress}>
      <span className="act-what">
        <Words>{what}</Words> {shortcut !== undefined && <kbd>{shortcut}</kbd>}
      </span>
      <span className="act-where">{where}</span>
    </button>
  );
}

interface AskProps {
  readonly head: string;
  readonly why: string;
  readonly answers: readonly { readonly label: string; readonly take: () => void }[];
}

/** A question on which more hangs than on any look: it takes the place of the answer, a button for each reply. */
function Ask({ head, why, answers }: AskProps) {
  return (
    <>
      <Say head={head} why={why} />
      <fieldset className="act asks">
        <legend className="screen-reader">{head}</legend>
        {answers.map(({ label, take }) => (
          <button key={label} type="button" className="button primary" onClick={take}>
            {label}
          </button>
        ))}
      </fieldset>
    </>
  );
}

function Unsound() {
  const errors = useApp((state) => state.checked.problems.filter(({ severity }) => severity === 'error').length);
  return <Say head={words.unsound} why={words.unsoundWhy(errors)} />;
}

function Begin() {
  const dispatch = useDispatch();
  return (
    <>
      <Say head={words.noteFirst} why={words.noteFirstWhy} />
      <Act what={words.enter} shortcut="E" where={words.enterWhy} onPress={() => dispatch('walk-displays')} />
    </>
  );
}

function Answered({ model }: { readonly model: FindModel }) {
  const candidateWords = useCandidateWords();
  const basis = useApp(wordBasis);
  const halted = useApp((state) => currentSnapshot(state.caseRecord).halted);
  // A chain that came up by a pulled plug is no end: its cable is still to be mended.
  const ended = useApp(
    ({ caseRecord }) =>
      runsSinceHandled(caseRecord) && !currentSnapshot(caseRecord).interventions?.some(({ do: kind }) => kind === 'pull-feedback'),
  );
  const names = useApp((state) => namesOf(state.checked.topology));
  const sharedFeed = useSharedFeed();
  const askReworked = useApp(asksReworked);
  const { diagnosis, rows, record } = model;
  const [top] = rows;
  if (!diagnosis) return <Say head={`${words.working} …`} why={basis} />;
  if (ended) return <Ended />;
  if (sharedFeed.length > 0) return <AskFeed units={sharedFeed} />;
  if (askReworked) return <AskReworked />;
  if (diagnosis.impossible || !top) return <Say head={words.impossible} why={basis} />;
  const alike = rows.filter((row) => row !== top && row.candidate.group === top.candidate.group).length;
  const why = `${basis} ${alike > 0 ? words.alike(alike) : ''}`.trim();
  if (top.candidate.spots.length === 0) return halted === undefined ? <AskHalted why={why} /> : <NothingBroken why={why} />;
  const what = candidateWords.object(top.candidate);
  const share = wordProbability(top.candidate.probability);
  const lookUp = wordCodesToLookUp(names, record.evidence);
  return (
    <>
      {lookUp && !diagnosis.contradiction ? (
        <Say head={lookUp.head} why={`${lookUp.why} ${words.afterwards(what, share)}`} />
      ) : diagnosis.contradiction ? (
        <Say
          head={words.readAgain(wordAgainstShort(names, record.evidence, diagnosis.contradiction))}
          why={`${words.contradiction(what, share)} ${basis}`}
        />
      ) : (
        <Say head={words.lookFirst(what)} why={why}>
          {' '}
          <span className="share">{share}</span> <span className="likely">{words.likely}</span>
        </Say>
      )}
      <Next />
    </>
  );
}

/** A machine that runs may have stopped before: that look tells what this one cannot. */
function NothingBroken({ why }: { readonly why: string }) {
  const only = useApp((state) => state.caseRecord.evidence.snapshots.length === 1 && currentSnapshot(state.caseRecord).halted === false);
  return (
    <>
      <Say head={words.nothingBroken} why={only ? words.stoppedBefore : why} />
      <Next />
    </>
  );
}

/** Units dark together: what they may have in common is asked before anything is looked at, and before any misreading is thought of. */
function AskFeed({ units }: { readonly units: readonly string[] }) {
  const dispatch = useDispatch();
  const names = useApp((state) => namesOf(state.checked.topology));
  const words = quickWords.sharedFeed;
  const ask = words.ask(units.map((unit) => names.unit(unit)));
  return (
    <Ask
      head={ask}
      why={words.why}
      answers={[
        { label: words.yes, take: () => dispatch('feed-together', { units }) },
        { label: words.no, take: () => dispatch('feed-apart', { units }) },
      ]}
    />
  );
}

/** From this share on mistakes in the wiring change what is to be done. */
const weighty = 0.1;

/** Much hangs on whether anybody wired anything, and nobody has said. */
function asksReworked(state: AppState): boolean {
  const { snapshots, circumstances = [] } = state.caseRecord.evidence;
  const [first] = snapshots;
  if (snapshots.length !== 1 || first?.onset !== 'at-power-up' || first.halted !== true) return false;
  if (circumstances.some(({ kind }) => kind === 'not-reworked' || kind === 'recent-exchange')) return false;
  const items = selectFindModel(state).diagnosis?.items ?? [];
  return items.some(({ item, probability }) => isMistake(item.fault) && probability >= weighty);
}

const isMistake = ({ mode }: Fault) => mode === 'crossed' || mode === 'fibres-crossed';

/** A start that fails may come of a mistake in the wiring, if there was any work: that is asked before plugs are compared or put right. */
function AskReworked() {
  const dispatch = useDispatch();
  const take = (kind: 'not-reworked' | 'recent-exchange') => () => dispatch('set-circumstance', { kind, subjects: [] });
  return (
    <Ask
      head={words.isReworked}
      why={words.isReworkedWhy}
      answers={[
        { label: words.reworkedAnswers.no, take: take('not-reworked') },
        { label: words.reworkedAnswers.yes, take: take('recent-exchange') },
      ]}
    />
  );
}

/** As long as nobody said whether the machine is halted, it may well be whole; nothing weighs more than that one answer. */
function AskHalted({ why }: { readonly why: string }) {
  const dispatch = useDispatch();
  const take = (halted: boolean) => () => dispatch('set-halted', { halted });
  return (
    <Ask
      head={words.isHalted}
      why={`${words.isHaltedWhy} ${why}`}
      answers={[
        { label: words.haltedAnswers.yes, take: take(true) },
        { label: words.haltedAnswers.no, take: take(false) },
      ]}
    />
  );
}

/** The machine runs: how far the cause is proved, and the way to hand it back. */
function Ended() {
  const dispatch = useDispatch();
  const names = useApp((state) => namesOf(state.checked.topology));
  const end = useApp((state) => selectPlan(state)?.end ?? null);
  const out = useApp((state) => selectTouched(state).all.find(isOut));
  if (!end || end.end === 'open') return <Say head={endTexts.runs} why={stepTexts.working} />;
  const after = wordActsDone(names, end.lastActs);
  const because = end.because.map((reason) => endReasonWords[reason]);
  return (
    <>
      <Say head={endTexts.runsAs(endStateWords[end.end].label)} why={endTexts.after(after, because)} />
      {out ? (
        <Act
          what={stepTexts.next(wordMending(names, putBack(out)))}
          where={touchedTexts.displaced}
          onPress={() => document.getElementById('touched')?.focus()}
        />
      ) : (
        <Act what={endTexts.finish} shortcut="H" where={endTexts.finishWhy} onPress={() => dispatch('hand-back')} />
      )}
    </>
  );
}

/** What was taken or pulled out; an exchange may be meant to stay. */
const isOut = ({ kind }: Displaced) => kind === 'feedback-pulled' || kind === 'unplugged' || kind === 'taken-out';

/** Signs of a step that go into two lines of the button. */
const longStep = 72;

/** The first half of what is to be done: leads to the card, where the other half is answered. */
function Next() {
  const dispatch = useDispatch();
  const best = useApp(selectBestStep);
  const plan = useApp(selectPlan);
  const names = useApp((state) => namesOf(state.checked.topology));
  if (!best) {
    // Nothing that is left is worth it: the report is the next thing, for whoever goes on.
    if (plan?.exhausted && plan.stopping === 'get-help')
      return <Act what={endTexts.handOver} shortcut="H" where={endTexts.handOverWhy} onPress={() => dispatch('hand-back')} />;
    return <p className="act no-act">{!plan ? stepTexts.working : plan.exhausted ? stepCardTexts.stopping.watch : stepTexts.none}</p>;
  }
  const what = stepTexts.next(wordStep(names, best.step));
  const risk = worstRisk(best);
  return (
    <button
      type="button"
      className={`button primary act${what.length > longStep ? ' long' : ''}`}
      title={what}
      onClick={() => dispatch('next-step')}
    >
      <span className="act-what">
        <span>
          <Words>{what}</Words>
        </span>{' '}
        <kbd>D</kbd>
      </span>
      <span className="act-where">
        <span>
          <Sign name="clock" size={14} /> {wordTimeSpan(minutesOf(best))}
        </span>
        <span>
          {best.stateNeeded === 'open' && <Sign name="danger" size={14} />} {machineStateWords[best.stateNeeded].label}
        </span>
        {risk && risk.code !== 'live-work' && (
          <span>
            <Sign name="abnormal" size={14} /> {riskWords[risk.code].label}
          </span>
        )}
      </span>
    </button>
  );
}

/** Everything that was seen in all looks at the machine. */
function countAll(snapshots: AppState['caseRecord']['evidence']['snapshots']) {
  const sum = (count: (snapshot: (typeof snapshots)[number]) => number | undefined) =>
    snapshots.reduce((total, snapshot) => total + (count(snapshot) ?? 0), 0);
  return {
    displays: sum(countRead),
    reports: sum(({ reports }) => reports?.length),
    looks: sum(({ looks }) => looks?.length),
    acts: sum(({ interventions }) => interventions?.length),
  };
}

/** "From 7 of 9 displays and the controller’s report, fault came while running." */
function wordBasis(state: AppState): string {
  const snapshot = currentSnapshot(state.caseRecord);
  const units = inReadingOrder(state.checked.topology);
  const noted = new Set((snapshot.displays ?? []).flatMap(({ unit, meanings }) => (isUnread(meanings) ? [] : [unit])));
  const seen = units.filter((unit) => noted.has(unit)).length;
  const { snapshots } = state.caseRecord.evidence;
  if (snapshots.length > 1) return stepTexts.fromSeveral(countAll(snapshots), snapshots.length);
  return `${words.from(seen, units.length, snapshot.reports?.length ?? 0)}, ${words.came(snapshot.onset ?? (snapshot.restarted ? 'at-power-up' : 'unknown'))}.`;
}

/** A search that takes long says so in place of the second line, and can be stopped; the style waits a while before it is seen. */
function Progress() {
  // A short one is never drawn.
  const status = useApp(({ diagnosis }) =>
    diagnosis.state === 'cancelled' || (diagnosis.state === 'working' && diagnosis.late) ? diagnosis : null,
  );
  const { cancelDiagnosis, restartDiagnosis } = useWindow();
  if (status === null) return null;
  if (status.state === 'working') {
    return (
      <div className="working" key={status.revision}>
        <progress aria-label={words.working} value={status.share} max={1} />
        <span>{words.working}</span>
        <button type="button" className="button small" onClick={cancelDiagnosis}>
          {words.cancel}
        </button>
      </div>
    );
  }
  return (
    <div className="working stopped">
      <span>{words.cancelled}</span>
      <button type="button" className="button small" onClick={restartDiagnosis}>
        {words.again}
      </button>
    </div>
  );
}
