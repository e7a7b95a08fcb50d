import { useEffect } from 'react';
import { useStore } from 'zustand';
import {
  levelWords,
  practiceWords,
  sealSays,
  solvedWords,
  startSentence,
  wordFigures,
  wordLevel,
  wordProblem,
} from '../../engine/messages/index.ts';
import type { ExerciseFigures } from '../../engine/schema/index.ts';
import { useApp, useDispatch } from '../state/useWorkbench.ts';
import { ClassScreen } from './ClassScreen.tsx';
import { DebriefScreen } from './DebriefScreen.tsx';
import { GenerateScreen } from './GenerateScreen.tsx';
import { MakeScreen } from './MakeScreen.tsx';
import { PlayScreen } from './PlayScreen.tsx';
import { PracticeTabs } from './PracticeTabs.tsx';
import { PrintScreen } from './PrintScreen.tsx';
import { ProjectorButton } from './ProjectorButton.tsx';
import {
  choosePrint,
  forgetLeft,
  forgetResumed,
  leaveDebrief,
  leaveExercise,
  loadReady,
  type PracticeState,
  practiceStore,
  resumePlay,
  startExercise,
} from './practiceStore.ts';
import { focusHeadingIfLost, useFocusKept } from './useFocusKept.ts';
import './practice.css';

/** Practice: an exercise is chosen, played, and looked back on. */
export function PracticeWorkspace() {
  const phase = useStore(practiceStore, (state) => state.phase);
  const screen = useApp((state) => state.practice);
  const listAsked = useApp((state) => state.practiceListAsked);
  // For a whole class before one screen, which decides together.
  const isLarge = useApp((state) => state.practiceLarge);
  useEffect(() => {
    void loadReady();
  }, []);
  useFocusKept('practice');
  // What comes next is read from its beginning, wherever the one before was scrolled to.
  useEffect(() => {
    if (phase !== 'opening') document.getElementById('practice')?.scrollTo(0, 0);
  }, [phase]);
  // What led to a screen may be gone with the one before.
  // biome-ignore lint/correctness/useExhaustiveDependencies: each change of what is shown
  useEffect(() => focusHeadingIfLost('practice'), [phase, screen]);
  useEffect(() => {
    if (listAsked > 0) leaveDebrief(leaveExercise);
  }, [listAsked]);
  return (
    <main
      id="practice"
      tabIndex={-1}
      className={['practice', isLarge && screen === 'exercises' && 'practice-large', screen === 'make' && 'practice-split']
        .filter(Boolean)
        .join(' ')}
      aria-label={practiceWords.region}
    >
      {(screen !== 'exercises' || phase === 'list') && <PracticeTabs />}
      {screen === 'make' && <MakeScreen />}
      {screen === 'generate' && <GenerateScreen />}
      {screen === 'class' && <ClassScreen />}
      {screen === 'exercises' && <Exercises phase={phase} />}
    </main>
  );
}

function Exercises({ phase }: { readonly phase: PracticeState['phase'] }) {
  return (
    <>
      {phase === 'list' && <ExerciseList />}
      {phase === 'opening' && (
        <p className="practice-wait" role="status">
          {practiceWords.opening}
        </p>
      )}
      {phase === 'closed' && <Closed />}
      {phase === 'playing' && <PlayScreen />}
      {phase === 'ended' && <DebriefScreen />}
      {phase === 'printing' && <PrintScreen />}
    </>
  );
}

function ExerciseList() {
  const ready = useStore(practiceStore, (state) => state.ready);
  const dispatch = useDispatch();
  return (
    <div className="practice-list">
      <header>
        <div>
          <h1>{practiceWords.title}</h1>
          <p>{practiceWords.intro}</p>
        </div>
        <p className="practice-buttons">
          <ProjectorButton />
          <button type="button" className="button" onClick={() => dispatch('open-file')}>
            {practiceWords.open}
          </button>
        </p>
      </header>
      <Left />
      <h2>{practiceWords.ready}</h2>
      <ol>
        {ready.map((exercise) => (
          <li key={exercise.id}>
            <h3>{exercise.name}</h3>
            <p>{exercise.task}</p>
            {exercise.figures !== undefined && <Level figures={exercise.figures} />}
            <p className="practice-small">{startSentence(solvedWords[exercise.solved].label)}</p>
            <p className="practice-buttons">
              <button
                type="button"
                className="button"
                aria-label={`${practiceWords.start}: ${exercise.name}`}
                onClick={() => startExercise(exercise)}
              >
                {practiceWords.start}
              </button>
              <button
                type="button"
                className="button small"
                aria-label={`${practiceWords.print}: ${exercise.name}`}
                onClick={() => choosePrint(exercise)}
              >
                {practiceWords.print}
              </button>
            </p>
          </li>
        ))}
      </ol>
      <p className="practice-small">{sealSays}</p>
    </div>
  );
}

/** Plays that were left in the middle. */
function Left() {
  const left = useStore(practiceStore, (state) => state.left);
  if (left.length === 0) return null;
  return (
    <>
      <h2>{practiceWords.left}</h2>
      <ul className="practice-left">
        {left.map(({ keptAs, kept }) => (
          <li key={keptAs}>
            <b>{kept.exercise.name}</b>
            <span className="practice-small">{practiceWords.leftSteps(kept.moves.filter((move) => move.do === 'step').length)}</span>
            <button
              type="button"
              className="button small"
              aria-label={practiceWords.goOnWith(kept.exercise.name)}
              onClick={() => resumePlay(keptAs, kept)}
            >
              {practiceWords.goOn}
            </button>
            <button
              type="button"
              className="button small"
              aria-label={practiceWords.forgetLeft(kept.exercise.name)}
              onClick={() => forgetLeft(keptAs)}
            >
              {practiceWords.giveUp}
            </button>
          </li>
        ))}
      </ul>
    </>
  );
}

/** How hard an exercise is: its level, and what was measured. */
function Level({ figures }: { readonly figures: ExerciseFigures }) {
  return (
    <p className="practice-small">
      <span className="level-mark" aria-hidden="true">
        {levelWords.map((word, index) => (
          <i key={word} data-filled={index < figures.level} />
        ))}
      </span>
      <b>{wordLevel(figures.level)}</b>
      <br />
      {wordFigures(figures)}
    </p>
  );
}

function Closed() {
  const problems = useStore(practiceStore, (state) => state.problems);
  const exercise = useStore(practiceStore, (state) => state.exercise);
  const resumed = useStore(practiceStore, (state) => state.resumed);
  const wasTried = useStore(practiceStore, (state) => state.asksPassphrase);
  const isSealed =
    exercise !== null && (problems.some(({ code }) => code === 'exercise-seal-closed') || (resumed !== null && problems.length === 0));
  // Nothing was typed yet: that the seal did not open by itself is no mistake of anybody.
  const told = isSealed && !wasTried ? [] : problems;
  return (
    <div className="practice-list">
      <h1>
        {!isSealed ? practiceWords.refused : resumed === null ? practiceWords.sealedTitle : practiceWords.resumedTitle(exercise.name)}
      </h1>
      {told.map((problem) => {
        const { title, explanation, whatToDo } = wordProblem(problem);
        return (
          <p key={`${problem.code}${problem.where}`} role="alert">
            <b>{title}.</b> {explanation} {whatToDo}
          </p>
        );
      })}
      {isSealed && (
        <form
          className="practice-seal"
          onSubmit={(event) => {
            event.preventDefault();
            const typed = new FormData(event.currentTarget).get('passphrase');
            startExercise(exercise, typeof typed === 'string' ? typed : '');
          }}
        >
          {resumed === null && (
            <p>
              <b>{exercise.name}</b>
            </p>
          )}
          <p>{resumed === null ? practiceWords.sealedText : practiceWords.resumedText}</p>
          <label>
            {practiceWords.passphrase} <input name="passphrase" type="password" autoComplete="off" />
          </label>{' '}
          <button type="submit" className="button primary">
            {practiceWords.unseal}
          </button>
          <p className="practice-small">{sealSays}</p>
        </form>
      )}
      <p className="practice-buttons">
        {resumed !== null && (
          <button type="button" className="button" onClick={forgetResumed}>
            {practiceWords.forget}
          </button>
        )}
        {isSealed && resumed === null && (
          <button type="button" className="button" onClick={() => choosePrint(exercise)}>
            {practiceWords.print}
          </button>
        )}
        <button type="button" className="button" onClick={leaveExercise}>
          {practiceWords.back}
        </button>
      </p>
    </div>
  );
}
