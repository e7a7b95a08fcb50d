import { useEffect, useState } from 'react';
import { useStore } from 'zustand';
import { practiceWords, sealSays, solvedWords, wordProblem } from '../../engine/messages/index.ts';
import { chooseByInput } from '../files/downloads.ts';
import { DebriefScreen } from './DebriefScreen.tsx';
import { PlayScreen } from './PlayScreen.tsx';
import { leaveExercise, loadReady, openExerciseFile, practiceStore, startExercise } from './practiceStore.ts';
import './practice.css';

/** Practice: an exercise is chosen, played, and looked back on. */
export function PracticeWorkspace() {
  const phase = useStore(practiceStore, (state) => state.phase);
  // For a whole class before one screen, which decides together.
  const [isLarge, setLarge] = useState(false);
  useEffect(() => {
    void loadReady();
  }, []);
  return (
    <main className={isLarge ? 'practice practice-large' : 'practice'} aria-label={practiceWords.region}>
      <button type="button" className="button small practice-projector" aria-pressed={isLarge} onClick={() => setLarge(!isLarge)}>
        {practiceWords.projector}
      </button>
      {phase === 'list' && <ExerciseList />}
      {phase === 'opening' && (
        <p className="practice-wait" role="status">
          {practiceWords.opening}
        </p>
      )}
      {phase === 'closed' && <Closed />}
      {phase === 'playing' && <PlayScreen />}
      {phase === 'ended' && <DebriefScreen />}
    </main>
  );
}

function ExerciseList() {
  const ready = useStore(practiceStore, (state) => state.ready);
  return (
    <div className="practice-list">
      <header>
        <div>
          <h1>{practiceWords.title}</h1>
          <p>{practiceWords.intro}</p>
        </div>
        <button
          type="button"
          className="button"
          onClick={() => {
            void chooseByInput().then((file) => (file === null ? undefined : openExerciseFile(file)));
          }}
        >
          {practiceWords.open}
        </button>
      </header>
      <h2>{practiceWords.ready}</h2>
      <ol>
        {ready.map((exercise) => (
          <li key={exercise.id}>
            <h3>{exercise.name}</h3>
            <p>{exercise.task}</p>
            <p className="practice-small">
              {exercise.figures !== undefined && `${practiceWords.level(exercise.figures.level)} · `}
              {solvedWords[exercise.solved].label}
            </p>
            <button
              type="button"
              className="button"
              aria-label={`${practiceWords.start}: ${exercise.name}`}
              onClick={() => startExercise(exercise)}
            >
              {practiceWords.start}
            </button>
          </li>
        ))}
      </ol>
      <p className="practice-small">{sealSays}</p>
    </div>
  );
}

function Closed() {
  const problems = useStore(practiceStore, (state) => state.problems);
  const exercise = useStore(practiceStore, (state) => state.exercise);
  const asksPassphrase = exercise !== null && problems.some(({ code }) => code === 'exercise-seal-closed');
  return (
    <div className="practice-list">
      <h1>{practiceWords.refused}</h1>
      {problems.map((problem) => {
        const { title, explanation, whatToDo } = wordProblem(problem);
        return (
          <p key={`${problem.code}${problem.where}`} role="alert">
            <b>{title}.</b> {explanation} {whatToDo}
          </p>
        );
      })}
      {asksPassphrase && (
        <form
          onSubmit={(event) => {
            event.preventDefault();
            const typed = new FormData(event.currentTarget).get('passphrase');
            startExercise(exercise, typeof typed === 'string' ? typed : '');
          }}
        >
          <label>
            {practiceWords.passphrase} <input name="passphrase" type="password" autoComplete="off" />
          </label>{' '}
          <button type="submit" className="button primary">
            {practiceWords.unseal}
          </button>
          <p className="practice-small">{sealSays}</p>
        </form>
      )}
      <button type="button" className="button" onClick={leaveExercise}>
        {practiceWords.back}
      </button>
    </div>
  );
}
