import { useStore } from 'zustand';
import { exerciseKindTexts, levelWords, practiceWords, wordLevel, wordList, generateWords as words } from '../../engine/messages/index.ts';
import type { ExerciseContent } from '../../engine/schema/index.ts';
import { useApp, useDispatch } from '../state/useWorkbench.ts';
import {
  changeGenerate,
  type GeneratedExercise,
  generate,
  generateStore,
  markSaved,
  sealGenerated,
  stopGenerating,
} from './generateStore.ts';
import { draftOf } from './makeDraft.ts';
import { beginDraft } from './makeStore.ts';
import { NumberField } from './NumberField.tsx';
import { Passphrase, usePassphrase } from './Passphrase.tsx';
import { SeedField } from './SeedField.tsx';
import './make.css';

/** Exercises by chance, with what makes them hard. */
export function GenerateScreen() {
  const checked = useApp((state) => state.checked);
  const content = useApp((state) => state.cabinet);
  const { seed, count, level, working, made, asked } = useStore(generateStore);
  const typed = usePassphrase();
  return (
    <div className="practice-generate">
      <header>
        <div>
          <h1>{words.title}</h1>
          <p>{words.intro(content.name)}</p>
        </div>
      </header>
      <form
        className="make-row generate-wish"
        onSubmit={(event) => {
          event.preventDefault();
          if (checked.cabinet !== null) generate(content);
        }}
      >
        <SeedField seed={seed} onChange={(next) => changeGenerate({ seed: next })} />
        <NumberField
          shown="before"
          label={words.count}
          value={count}
          whole
          least={1}
          most={40}
          onChange={(next) => changeGenerate({ count: next ?? count })}
        />
        <label>
          {words.level}{' '}
          <select
            value={level ?? ''}
            onChange={({ target }) => changeGenerate({ level: target.value === '' ? null : Number(target.value) })}
          >
            <option value="">{words.anyLevel}</option>
            {levelWords.map((_, index) => (
              <option key={wordLevel(index + 1)} value={index + 1}>
                {wordLevel(index + 1)}
              </option>
            ))}
          </select>
        </label>
        {working ? (
          <button type="button" className="button" onClick={stopGenerating}>
            {words.stop}
          </button>
        ) : (
          <button type="submit" className="button primary" disabled={checked.cabinet === null}>
            {words.generate}
          </button>
        )}
        {working && (
          <progress aria-label={words.working(made.length, asked?.count ?? count)} value={made.length} max={asked?.count ?? count} />
        )}
      </form>
      <p className="practice-small">{words.levelMeaning}</p>
      <p role="status" className="generate-state">
        {working ? words.working(made.length, asked?.count ?? count) : asked === null ? words.none : words.made(made.length)}
      </p>
      <LeftOut />
      {made.length > 0 && (
        <div className="generate-columns">
          <Made passphrase={typed.passphrase} />
          <section className="make-aside">
            <Passphrase {...typed} />
            <SaveAll passphrase={typed.passphrase} />
            <p className="practice-small">{words.answersHidden}</p>
          </section>
        </div>
      )}
    </div>
  );
}

function LeftOut() {
  const { without, asked, made, working } = useStore(generateStore);
  if (asked === null) return null;
  const kinds = wordList(without.map((kind) => exerciseKindTexts[kind].name));
  return (
    <>
      {without.length > 0 && <p>{words.leftOut(kinds, asked.level !== null)}</p>}
      {!working && made.length < asked.count && <p>{words.fewer(made.length, asked.count)}</p>}
    </>
  );
}

function useSave() {
  const dispatch = useDispatch();
  return (exercise: ExerciseContent) =>
    new Promise<void>((resolve) => {
      // The desk does one thing at a time; the next is sealed meanwhile.
      dispatch('save-exercise', { exercise, onSaved: () => markSaved(exercise.id) });
      resolve();
    });
}

function SaveAll({ passphrase }: { readonly passphrase: string | null }) {
  const { made, saved, sealing, working } = useStore(generateStore);
  const save = useSave();
  const left = made.filter(({ exercise }) => !saved.includes(exercise.id));
  return (
    <button
      type="button"
      className="button primary"
      disabled={passphrase === null || sealing || working || left.length === 0}
      onClick={() => {
        if (passphrase !== null) void sealGenerated(left, passphrase, save);
      }}
    >
      {words.saveAll}
    </button>
  );
}

function Made({ passphrase }: { readonly passphrase: string | null }) {
  const { made } = useStore(generateStore);
  const { heads } = words;
  return (
    <table className="practice-table">
      <thead>
        <tr>
          <th scope="col">{heads.name}</th>
          <th scope="col">{heads.level}</th>
          <th scope="col">{heads.group}</th>
          <th scope="col">{heads.minutes}</th>
          <th scope="col">{heads.faults}</th>
          <th scope="col">{heads.misleading}</th>
          <th scope="col">{heads.deeds}</th>
        </tr>
      </thead>
      <tbody>
        {made.map((one) => (
          <Row key={one.exercise.id} one={one} passphrase={passphrase} />
        ))}
      </tbody>
    </table>
  );
}

function Row({ one, passphrase }: { readonly one: GeneratedExercise; readonly passphrase: string | null }) {
  const dispatch = useDispatch();
  const { saved, sealing, working } = useStore(generateStore);
  const save = useSave();
  const { exercise, answer } = one;
  const { figures } = exercise;
  if (figures === undefined) return null;
  return (
    <tr>
      <th scope="row">{exercise.name}</th>
      <td>
        {figures.level} <span className="practice-small">{levelWords[figures.level - 1]}</span>
      </td>
      <td>{figures.firstGroup}</td>
      <td>{practiceWords.minutes(figures.bestMinutes)}</td>
      <td>
        {figures.faults} {figures.intermittent && <span className="practice-small">{words.comesAndGoes}</span>}
      </td>
      <td>{figures.misleading}</td>
      <td className="row-deeds">
        <button
          type="button"
          className="button small"
          aria-label={words.saveName(exercise.name)}
          disabled={passphrase === null || sealing || working || answer === null}
          onClick={() => {
            if (passphrase !== null) void sealGenerated([one], passphrase, save);
          }}
        >
          {words.save}
        </button>
        <button
          type="button"
          className="button small"
          aria-label={words.editName(exercise.name)}
          title={answer === null ? words.editClosed : undefined}
          disabled={answer === null}
          onClick={() => {
            if (answer === null) return;
            beginDraft(draftOf({ exercise, answer }));
            dispatch('practice-make');
          }}
        >
          {words.edit}
        </button>
        {saved.includes(exercise.id) && <span className="practice-small">{words.saved}</span>}
      </td>
    </tr>
  );
}
