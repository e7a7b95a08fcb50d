import { type FormEvent, useState } from 'react';
import { useStore } from 'zustand';
import type { Problem } from '../../engine/base/index.ts';
import { exercisePaperWords, wordProblem, practiceWords as words } from '../../engine/messages/index.ts';
import { useDispatch } from '../state/useWorkbench.ts';
import { leaveExercise, makePaper, practiceStore } from './practiceStore.ts';

type Form = 'pdf' | 'html';
type State = { readonly is: 'idle' | 'making' } | { readonly is: 'refused'; readonly problems: readonly Problem[] };

/** Prints an exercise, and apart from it its answer sheet, which needs the passphrase of the seal. */
export function PrintScreen() {
  const exercise = useStore(practiceStore, (state) => state.exercise);
  const isReady = useStore(practiceStore, (state) => state.ready.some(({ id }) => id === exercise?.id));
  const dispatch = useDispatch();
  const [form, setForm] = useState<Form>('pdf');
  const [state, setState] = useState<State>({ is: 'idle' });
  if (exercise === null) return null;
  const save = async (wanted: Parameters<typeof makePaper>[0], id: string) => {
    setState({ is: 'making' });
    const { bytes, problems } = await makePaper(wanted, form, new Date());
    setState(bytes === null ? { is: 'refused', problems } : { is: 'idle' });
    if (bytes !== null) dispatch('save-paper', { name: `${exercise.name} ${id}`, bytes, as: form });
  };
  const saveAnswer = (event: FormEvent<HTMLFormElement>) => {
    event.preventDefault();
    const typed = new FormData(event.currentTarget).get('passphrase');
    void save({ kind: 'answer-sheet', exercise, passphrase: typeof typed === 'string' ? typed : '' }, exercisePaperWords.answerId);
  };
  return (
    <div className="practice-list practice-print">
      <h1>{words.printTitle(exercise.name)}</h1>
      <fieldset className="practice-row">
        <legend>{words.printForm}</legend>
        {(['pdf', 'html'] as const).map((one) => (
          <label key={one}>
            <input type="radio" name="form" checked={form === one} onChange={() => setForm(one)} /> {words.printForms[one]}
          </label>
        ))}
      </fieldset>
      <p>{words.printIntro}</p>
      <button
        type="button"
        className="button primary"
        disabled={state.is === 'making'}
        onClick={() => void save({ kind: 'sheet', exercise }, exercisePaperWords.sheetId)}
      >
        {words.printSheet}
      </button>
      <form onSubmit={saveAnswer}>
        <p>{words.printAnswerIntro}</p>
        <label>
          {words.passphrase} <input name="passphrase" type="password" autoComplete="off" />
        </label>{' '}
        <button type="submit" className="button" disabled={state.is === 'making'}>
          {words.printAnswer}
        </button>
        {isReady && <p className="practice-small">{words.printReadyHint}</p>}
      </form>
      <div role="status">
        {state.is === 'making' && words.printing}
        {state.is === 'refused' &&
          state.problems.map((problem) => {
            const { title, whatToDo } = wordProblem(problem);
            return (
              <p key={problem.code}>
                <b>{title}.</b> {whatToDo}
              </p>
            );
          })}
      </div>
      <button type="button" className="button" onClick={leaveExercise}>
        {words.back}
      </button>
    </div>
  );
}
