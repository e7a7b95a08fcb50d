import { useStore } from 'zustand';
import {
  type Debrief,
  type DebriefStep,
  type Game,
  type GameStep,
  makeResult,
  type PlanStep,
  type Share,
} from '../../engine/exercise/index.ts';
import {
  cautionWords,
  debriefWords,
  exercisePaperWords,
  makeNames,
  type Names,
  playEndWords,
  practiceWords,
  startSentence,
  unsafeWords,
  windowTexts,
  wordAnswerKey,
  wordExerciseOutcome,
  wordExerciseStep,
  wordGuess,
  wordList,
  wordLookedBack,
  wordNeeded,
  wordProbability,
  wordRuledOut,
} from '../../engine/messages/index.ts';
import { Words } from '../marks/Words.tsx';
import { useDispatch } from '../state/useWorkbench.ts';
import { ProjectorButton } from './ProjectorButton.tsx';
import { leaveDebrief, leaveExercise, makePaper, mayGoOn, nextExercise, practiceStore, startExercise } from './practiceStore.ts';

interface Parts {
  readonly game: Game;
  readonly debrief: Debrief;
  readonly names: Names;
}

/** The way that was gone beside the best plan, step by step. */
export function DebriefScreen() {
  const game = useStore(practiceStore, (state) => state.game);
  const debrief = useStore(practiceStore, (state) => state.debrief);
  if (game === null || debrief === null) return null;
  const names = makeNames(game.cabinet);
  const sayAnswer = (key: string) => wordAnswerKey(names, game.cabinet, key);
  const wrong = debrief.named !== null && debrief.named !== debrief.trueAnswer ? sayAnswer(debrief.named) : null;
  const answer = sayAnswer(debrief.trueAnswer);
  return (
    <div className="practice-debrief">
      <header>
        <div>
          <h1>
            <Words>{practiceWords.verdict(playEndWords[debrief.end].label, wrong === null ? startSentence(answer) : answer, wrong)}</Words>
          </h1>
          <p>
            {wordNeeded(debrief)} {wordGuess(debrief)} {!debrief.exact && practiceWords.notProved} <Words>{debrief.story ?? ''}</Words>
          </p>
        </div>
        <Actions game={game} debrief={debrief} />
      </header>
      <section className="practice-picture">
        <h2>{practiceWords.evidence}</h2>
        <Ways game={game} debrief={debrief} names={names} />
        {debrief.lesson !== null && (
          <>
            <h2>{practiceWords.lesson}</h2>
            <p className="practice-lesson">{debrief.lesson}</p>
          </>
        )}
      </section>
      <section className="practice-side">
        <h2>{practiceWords.result}</h2>
        <p className="practice-figures">
          <span>
            <b>{practiceWords.minutes(debrief.minutes)}</b> {practiceWords.taken}
          </span>
          <span>
            <b>
              {debrief.predictionsRight}/{debrief.predictions}
            </b>{' '}
            {practiceWords.predictionsRight}
          </span>
          <span data-unsafe={debrief.unsafe.length > 0}>
            <b>{debrief.unsafe.length}</b> {practiceWords.unsafe}
          </span>
        </p>
        <h2>{practiceWords.yourSteps}</h2>
        {debrief.steps.length === 0 && <p>{debriefWords.noSteps}</p>}
        <ol className="practice-looked">
          {debrief.steps.map((one) => (
            <StepLine key={one.until} game={game} names={names} one={one} />
          ))}
        </ol>
        <h2>{debriefWords.planSteps}</h2>
        <PlanLines game={game} debrief={debrief} names={names} />
      </section>
    </div>
  );
}

function Actions({ game, debrief }: Omit<Parts, 'names'>) {
  const { moves, startedAt, endedAt, code, leaving } = useStore(practiceStore);
  const dispatch = useDispatch();
  const save = () => {
    const head = { code, startedAt: new Date(startedAt).toISOString(), seconds: Math.round((endedAt - startedAt) / 1000) };
    const onSaved = () => practiceStore.setState({ savedCode: code.trim(), leaving: null });
    dispatch('save-result', { result: makeResult(game.exercise, moves, debrief, head), onSaved });
  };
  const print = async () => {
    const { bytes } = await makePaper({ kind: 'debrief-paper', moves, code }, 'pdf', new Date());
    if (bytes !== null) dispatch('save-paper', { name: `${game.exercise.name} ${code} ${exercisePaperWords.debriefId}`, bytes, as: 'pdf' });
  };
  return (
    <div className="practice-actions">
      <label>
        {practiceWords.code} <input value={code} maxLength={40} onChange={({ target }) => practiceStore.setState({ code: target.value })} />
      </label>
      <button type="button" className="button" disabled={code.trim() === ''} onClick={save}>
        {practiceWords.save}
      </button>
      <button type="button" className="button" onClick={() => void print()}>
        {practiceWords.printDebrief}
      </button>
      <button type="button" className="button" onClick={() => leaveDebrief(() => startExercise(game.exercise))}>
        {practiceWords.again}
      </button>
      <button type="button" className="button" onClick={() => leaveDebrief(leaveExercise)}>
        {practiceWords.back}
      </button>
      <ProjectorButton />
      {leaving !== null && (
        <p role="alert" className="practice-leaving">
          <b>{debriefWords.notSaved}</b>
          <button type="button" className="button small" onClick={leaving}>
            {debriefWords.leave}
          </button>
        </p>
      )}
      {mayGoOn() && (
        <button type="button" className="button primary" onClick={() => leaveDebrief(nextExercise)}>
          {windowTexts.commands.practiceNext}
        </button>
      )}
    </div>
  );
}

/** A step with what it showed, and its minutes. */
function StepHead({ names, step, one }: { readonly names: Names; readonly step: GameStep; readonly one: DebriefStep | PlanStep }) {
  return (
    <p className="practice-looked-head">
      <b>
        <Words>{`${wordExerciseStep(names, step)}: ${wordExerciseOutcome(names, step, one.outcome)}`}</Words>
      </b>
      <span className="practice-minutes">{practiceWords.minutes(one.minutes)}</span>
    </p>
  );
}

function StepLine({ game, names, one }: { readonly game: Game; readonly names: Names; readonly one: DebriefStep }) {
  const step = game.steps.find(({ id }) => id === one.step);
  if (step === undefined) return null;
  const { told, predicted, choice } = wordLookedBack(names, game, one);
  return (
    <li>
      <StepHead names={names} step={step} one={one} />
      {[told, predicted].filter(Boolean).map((line) => (
        <p key={line}>
          <Words>{line}</Words>
        </p>
      ))}
      <p className="practice-choice" data-judgement={one.judgement}>
        <Words>{choice}</Words>
      </p>
      {one.forgotten.length > 0 && (
        <p>{debriefWords.forgotten(wordList(one.forgotten.map((code) => cautionWords[code].label.toLowerCase())))}</p>
      )}
      {one.unsafe.map((kind) => (
        <strong key={kind} className="practice-unsafe">
          ⚠ {unsafeWords[kind].label}: {unsafeWords[kind].meaning}
        </strong>
      ))}
    </li>
  );
}

/** The best plan, with what each of its steps told. */
function PlanLines({ game, debrief, names }: Parts) {
  const { plan, start } = debrief;
  if (plan.length === 0) return <p>{debriefWords.noPlan}</p>;
  return (
    <ol className="practice-looked">
      {plan.map((one, index) => {
        const step = game.steps.find(({ id }) => id === one.step);
        return step === undefined ? null : (
          <li key={one.until}>
            <StepHead names={names} step={step} one={one} />
            <p>
              <Words>{wordRuledOut(names, game, plan[index - 1]?.after ?? start, one.after)}</Words>
            </p>
          </li>
        );
      })}
    </ol>
  );
}

function Ways({ game, debrief, names }: Parts) {
  const end = Math.max(1, debrief.minutes, debrief.planMinutes);
  const top = [...debrief.start].slice(0, patterns).map(({ answer }) => answer);
  const both = { start: debrief.start, top, end, game, names };
  return (
    <>
      <p className="practice-key">
        {top.map((answer, index) => (
          <span key={answer}>
            <i className={`share share-${index}`} aria-hidden="true" /> {wordAnswerKey(names, game.cabinet, answer)}
          </span>
        ))}
        {debrief.start.length > patterns && (
          <span>
            <i className="share" aria-hidden="true" /> {practiceWords.others}
          </span>
        )}
      </p>
      <Way {...both} label={practiceWords.yourWay} steps={debrief.steps} none={debriefWords.noSteps} />
      <Way {...both} label={practiceWords.bestPlan} steps={debrief.plan} none={debriefWords.noPlan} />
    </>
  );
}

/** So many answers have a pattern of their own. */
const patterns = 5;

interface WayParts {
  readonly label: string;
  readonly steps: readonly (DebriefStep | PlanStep)[];
  /** Said where there is no step. */
  readonly none: string;
  readonly start: readonly Share[];
  readonly top: readonly string[];
  readonly end: number;
  readonly game: Game;
  readonly names: Names;
}

/** Steps as blocks as wide as they take, and below them what was believed while they were done. */
function Way({ label, steps, none, start, top, end, game, names }: WayParts) {
  const last = steps.at(-1);
  const columns = [
    ...steps.map((one, index) => {
      const { after: shares = start, until: from = 0 } = steps[index - 1] ?? {};
      return { from, until: one.until, shares };
    }),
    ...(last === undefined ? [] : [{ from: last.until, until: last.until + end * 0.06, shares: last.after }]),
  ];
  const width = (minutes: number) => `${(minutes / (end * 1.06)) * 100}%`;
  if (steps.length === 0) {
    return (
      <p className="practice-way">
        <b>{label}:</b> {none}
      </p>
    );
  }
  return (
    <figure className="practice-way">
      <figcaption>
        <b>{label}</b> {practiceWords.minutes(last?.until ?? 0)}
      </figcaption>
      <ol className="practice-blocks">
        {steps.map((one, index) => {
          const step = game.steps.find(({ id }) => id === one.step);
          const taught = !('taught' in one) || one.taught;
          return (
            <li
              key={one.until}
              // A hint that was bought before it took its minutes too.
              style={{ width: width(one.until - one.from), marginLeft: width(one.from - (steps[index - 1]?.until ?? 0)) }}
              data-taught={taught}
              title={step && wordExerciseStep(names, step)}
            >
              {index + 1} <span>{step && wordExerciseStep(names, step)}</span>
            </li>
          );
        })}
      </ol>
      <div className="practice-belief">
        {columns.map(({ from, until, shares }) => (
          <div
            key={from}
            style={{ width: width(until - from) }}
            role="img"
            aria-label={practiceWords.beliefLabel(
              practiceWords.minutes(from),
              shares.map(({ answer, share }) => `${wordAnswerKey(names, game.cabinet, answer)} ${wordProbability(share)}`).join(', '),
            )}
          >
            {shares.map(({ answer, share }) => (
              <span key={answer} className={`share share-${top.indexOf(answer)}`} style={{ height: `${share * 100}%` }}>
                {share > 0.2 && <b>{wordProbability(share)}</b>}
              </span>
            ))}
          </div>
        ))}
      </div>
    </figure>
  );
}
