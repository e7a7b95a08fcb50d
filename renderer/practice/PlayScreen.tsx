import { useState } from 'react';
import { useStore } from 'zustand';
import {
  asksCautions,
  type Game,
  joinParts,
  type Play,
  partsOf,
  stepMinutes,
  suspectsOf,
  thinkableOutcomes,
  whyNot,
} from '../../engine/exercise/index.ts';
import {
  cautionWords,
  exerciseWords,
  type Names,
  namesForPlay,
  practiceWords,
  refusedWords,
  wordAnswerKey,
  wordExerciseOutcome,
  wordExerciseStep,
  wordGiven,
  wordPossible,
} from '../../engine/messages/index.ts';
import { PlayCabinet } from './PlayCabinet.tsx';
import { ProjectorButton } from './ProjectorButton.tsx';
import { leaveExercise, makeMove, practiceStore } from './practiceStore.ts';

/** The play: what is known on the left, what can be done on the right. Only what was paid for is shown. */
export function PlayScreen() {
  const game = useStore(practiceStore, (state) => state.game);
  const play = useStore(practiceStore, (state) => state.play);
  if (game === null || play === null) return null;
  const names = namesForPlay(game);
  return (
    <div className="practice-play">
      <section className="practice-known">
        <h1>{game.exercise.name}</h1>
        <p>{game.exercise.task}</p>
        <p className="practice-spent" role="status">
          {practiceWords.spent(play.minutes)}
        </p>
        <Known game={game} play={play} names={names} />
        <Done game={game} play={play} names={names} />
      </section>
      <section className="practice-next">
        <NextStep key={play.steps.length} game={game} play={play} names={names} />
        <Finish game={game} play={play} names={names} />
      </section>
    </div>
  );
}

interface Parts {
  readonly game: Game;
  readonly play: Play;
  readonly names: Names;
}

function Known({ game, play, names }: Parts) {
  const { given } = game.exercise;
  // Switching off erased what the report said, and the displays stand in the picture.
  const kept = { ...given, displays: [], reports: play.stand.trip === 0 ? given.reports : [] };
  return (
    <>
      <h2>{practiceWords.known}</h2>
      <ul className="practice-given">
        {wordGiven(names, { ...game, exercise: { ...game.exercise, given: kept } }).map((line) => (
          <li key={line}>{line}</li>
        ))}
        {play.stand.trip > 0 && <li>{practiceWords.erased}</li>}
      </ul>
      <PlayCabinet game={game} play={play} names={names} />
    </>
  );
}

function Done({ game, play, names }: Parts) {
  return (
    <>
      <h2>{practiceWords.done}</h2>
      {play.steps.length === 0 && play.hints.length === 0 && <p className="practice-small">{practiceWords.nothingDone}</p>}
      <ol className="practice-done" aria-live="polite">
        {play.steps.map(({ move, step: id, outcome, minutes }) => {
          const step = game.steps.find((one) => one.id === id);
          return step === undefined ? null : (
            <li key={move}>
              {wordExerciseStep(names, step)}: <b>{wordExerciseOutcome(names, step, outcome)}</b> ({practiceWords.minutes(minutes)})
            </li>
          );
        })}
      </ol>
      {play.hints.map((hint) => (
        <p key={hint} className="practice-hint">
          {hint}
        </p>
      ))}
    </>
  );
}

const cautionCodes = [
  'live-cabinet',
  'all-feeds',
  'lock-out',
  'dc-link',
  'reference-position',
  'hanging-axes',
  'fibre-light',
  'esd',
] as const;

/** More outcomes than this are chosen from a list that unfolds. */
const mostInSight = 10;

function NextStep({ game, play, names }: Parts) {
  const [chosen, setChosen] = useState<string | null>(null);
  const [suspects, setSuspects] = useState<readonly string[]>([]);
  const [predicted, setPredicted] = useState<string | null>(null);
  const [heeded, setHeeded] = useState<readonly string[]>([]);
  const step = game.steps.find(({ id }) => id === chosen);
  const answers = suspectsOf(game);
  const outcomes = step === undefined ? [] : thinkableOutcomes(game, step);
  const isReady = step !== undefined && suspects.length > 0 && predicted !== null;
  const toggle = (list: readonly string[], one: string) => (list.includes(one) ? list.filter((other) => other !== one) : [...list, one]);
  return (
    <form
      onSubmit={(event) => {
        event.preventDefault();
        if (isReady) makeMove({ do: 'step', step: step.id, suspects: [...suspects], predicted, heeded: [...heeded] });
      }}
    >
      <fieldset className="practice-answers">
        <legend>{practiceWords.suspects}</legend>
        {game.possible.some(({ faults }) => faults.length > 1) && <p className="practice-small">{wordPossible(game)}.</p>}
        {answers.map((answer) => (
          <label key={answer}>
            <input type="checkbox" checked={suspects.includes(answer)} onChange={() => setSuspects(toggle(suspects, answer))} />
            {wordAnswerKey(names, game.cabinet, answer)}
          </label>
        ))}
      </fieldset>
      <fieldset className="practice-steps">
        <legend>{practiceWords.steps}</legend>
        {game.steps.map((one) => {
          const reason = whyNot(game, play.stand, one);
          return (
            <label key={one.id} title={reason === null ? undefined : refusedWords[reason]}>
              <input
                type="radio"
                name="step"
                disabled={reason !== null}
                checked={chosen === one.id}
                onChange={() => {
                  setChosen(one.id);
                  setPredicted(null);
                }}
              />
              <span>{wordExerciseStep(names, one)}</span>
              <span className="practice-minutes">{practiceWords.minutes(stepMinutes(game, play.stand, one))}</span>
            </label>
          );
        })}
      </fieldset>
      {step !== undefined && outcomes.length > mostInSight && (
        <label className="practice-predict">
          {practiceWords.predict}{' '}
          <select value={predicted ?? ''} onChange={({ target }) => setPredicted(target.value === '' ? null : target.value)}>
            <option value="">{practiceWords.chooseAnswer}</option>
            {outcomes.map((outcome) => (
              <option key={outcome} value={outcome}>
                {wordExerciseOutcome(names, step, outcome)}
              </option>
            ))}
          </select>
        </label>
      )}
      {step !== undefined && outcomes.length <= mostInSight && (
        <fieldset className="practice-row">
          <legend>{practiceWords.predict}</legend>
          {outcomes.map((outcome) => (
            <label key={outcome}>
              <input type="radio" name="outcome" checked={predicted === outcome} onChange={() => setPredicted(outcome)} />
              {wordExerciseOutcome(names, step, outcome)}
            </label>
          ))}
        </fieldset>
      )}
      {step !== undefined && asksCautions(play.stand, step) && (
        <fieldset className="practice-row">
          <legend>{practiceWords.cautions}</legend>
          {cautionCodes.map((code) => (
            <label key={code}>
              <input type="checkbox" checked={heeded.includes(code)} onChange={() => setHeeded(toggle(heeded, code))} />
              {cautionWords[code].label}
            </label>
          ))}
        </fieldset>
      )}
      <button type="submit" className="button primary" disabled={!isReady}>
        {practiceWords.doIt}
      </button>
      {!isReady && <p className="practice-small">{practiceWords.chooseFirst}</p>}
    </form>
  );
}

function Finish({ game, play, names }: Parts) {
  const [parts, setParts] = useState<readonly string[]>([]);
  const answers = suspectsOf(game);
  const most = Math.max(...game.possible.map((one) => partsOf(one.answer).length));
  const answer = joinParts(parts.filter((part) => part !== ''));
  const hint = game.exercise.hints?.[play.hints.length];
  return (
    <div className="practice-finish">
      {game.exercise.solved === 'mended' ? (
        <button type="button" className="button" onClick={() => makeMove({ do: 'hand-over' })}>
          {practiceWords.handOver}
        </button>
      ) : (
        <>
          {Array.from({ length: most }, (_, index) => index).map((index) => (
            <label key={index}>
              {practiceWords.answerPart(index)}{' '}
              <select
                value={parts[index] ?? ''}
                onChange={({ target }) =>
                  setParts(Array.from({ length: most }, (_, at) => (at === index ? target.value : (parts[at] ?? ''))))
                }
              >
                <option value="">{practiceWords.chooseAnswer}</option>
                {answers.map((one) => (
                  <option key={one} value={one}>
                    {wordAnswerKey(names, game.cabinet, one)}
                  </option>
                ))}
              </select>
            </label>
          ))}
          <button type="button" className="button" disabled={answer === ''} onClick={() => makeMove({ do: 'name', answer })}>
            {practiceWords.name}
          </button>
        </>
      )}
      {hint !== undefined && (
        <button type="button" className="button" onClick={() => makeMove({ do: 'hint' })}>
          {practiceWords.hint(hint.minutes)}
        </button>
      )}
      <button type="button" className="button" onClick={() => makeMove({ do: 'give-up' })}>
        {practiceWords.giveUp}
      </button>
      <button type="button" className="button" onClick={leaveExercise}>
        {practiceWords.back}
      </button>
      <ProjectorButton />
      <p className="practice-small">
        {exerciseWords.changes(game.exercise.times.openMinutes, game.exercise.times.isolateMinutes, game.exercise.times.bootMinutes)}
      </p>
    </div>
  );
}
