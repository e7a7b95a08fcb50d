import { useStore } from 'zustand';
import type { Problem } from '../../engine/base/index.ts';
import { openExercise } from '../../engine/exercise/index.ts';
import {
  draftProblemWords,
  type Names,
  practiceWords,
  startSentence,
  wordAnswerKey,
  wordExerciseOutcome,
  wordExerciseStep,
  wordFault,
  wordLevel,
  wordList,
  wordNumber,
  wordProbability,
  wordProblem,
  makeWords as words,
} from '../../engine/messages/index.ts';
import { modeKey } from '../../engine/simulation/index.ts';
import type { Topology } from '../../engine/topology/index.ts';
import { Words } from '../marks/Words.tsx';
import { useDispatch } from '../state/useWorkbench.ts';
import { lockSaved, makeStore, sealMade, stopWork, workOut } from './makeStore.ts';
import { Passphrase, usePassphrase } from './Passphrase.tsx';
import { startExercise } from './practiceStore.ts';

interface Parts {
  readonly topology: Topology;
  readonly names: Names;
}

/** What follows from the form: whether it can be decided, at what cost, by which plan; and the seal. */
export function MakeAside(parts: Parts) {
  const draftId = useStore(makeStore, ({ draft }) => draft.id);
  return (
    <aside id="make-plan" className="make-aside" tabIndex={-1} aria-label={words.plan}>
      <Status {...parts} />
      <Seal key={draftId} />
      <Possible {...parts} />
    </aside>
  );
}

function Status({ topology, names }: Parts) {
  const status = useStore(makeStore, (state) => state.status);
  switch (status.state) {
    case 'missing':
      return (
        <section className="make-status" aria-label={words.missing}>
          <h2>{words.missing}</h2>
          <ul>
            {status.problems.map((problem) => (
              <li key={problem}>{draftProblemWords[problem]}</li>
            ))}
          </ul>
        </section>
      );
    case 'working':
      return (
        <section className="make-status">
          <div role="status">
            <h2>{words.working}</h2>
          </div>
          <div className="make-progress">
            <progress aria-label={words.working} value={status.share === 0 ? undefined : status.share} />
            <button type="button" className="button small" onClick={stopWork}>
              {words.stop}
            </button>
          </div>
        </section>
      );
    case 'stopped':
      return (
        <section className="make-status">
          <div role="status">
            <h2>{words.stopped}</h2>
          </div>
          <button type="button" className="button small" onClick={() => workOut()}>
            {words.workOn}
          </button>
        </section>
      );
    case 'refused':
      return (
        <section className="make-status refusal" role="alert" aria-label={words.refused}>
          <h2>{words.refused}</h2>
          {status.problems.map((problem) => {
            const { title, explanation, whatToDo } = wordProblem(inWords(problem, topology, names));
            return (
              <p key={`${problem.code}${problem.where}`}>
                <b>
                  <Words>{title}</Words>.
                </b>{' '}
                {explanation} {whatToDo}
              </p>
            );
          })}
        </section>
      );
    case 'made':
      return <Made topology={topology} names={names} />;
  }
}

/** A problem whose answers are named as everywhere else, instead of by their keys. */
function inWords(problem: Problem, topology: Topology, names: Names): Problem {
  if (!('answers' in problem.facts)) return problem;
  // The count beside them tells of more. Pairs are joined by "and", so that a comma between them would mislead.
  const answers = problem.subjects.slice(0, 10).map((key) => wordAnswerKey(names, topology, key));
  return { ...problem, facts: { ...problem.facts, answers: answers.join('; ') } };
}

function Made({ names }: Parts) {
  const status = useStore(makeStore, (state) => state.status);
  if (status.state !== 'made') return null;
  const { exercise } = status.made;
  const { figures } = exercise;
  const { game } = openExercise(exercise);
  return (
    <section className="make-status" aria-label={words.holds}>
      <div role="status">
        <h2>{words.holds}</h2>
      </div>
      {figures !== undefined && (
        <>
          <dl className="make-figures">
            <div>
              <dt>{words.expected}</dt>
              <dd>{practiceWords.minutes(figures.bestMinutes)}</dd>
            </div>
            <div>
              <dt>{words.group(figures.firstGroup)}</dt>
              <dd>{wordNumber(figures.firstGroup)}</dd>
            </div>
            <div>
              <dt>{words.misleading(figures.misleading)}</dt>
              <dd>{wordNumber(figures.misleading)}</dd>
            </div>
          </dl>
          <p>
            <b>{wordLevel(figures.level)}.</b> {!figures.exact && words.notProved}
          </p>
        </>
      )}
      <h3>{words.plan}</h3>
      {status.plan.length === 0 ? (
        <p>{words.planNothing}</p>
      ) : (
        <ol className="make-plan">
          {status.plan.map(({ step: id, outcome, minutes, until }) => {
            const step = game?.steps.find((one) => one.id === id);
            return step === undefined ? null : (
              <li key={until}>
                <span>
                  <Words>{words.planLine(wordExerciseStep(names, step), wordExerciseOutcome(names, step, outcome))}</Words>
                </span>
                <span className="practice-minutes">{practiceWords.minutes(minutes)}</span>
              </li>
            );
          })}
        </ol>
      )}
    </section>
  );
}

function Possible({ names }: Parts) {
  const proposal = useStore(makeStore, (state) => state.proposal);
  const { faults: hidden } = useStore(makeStore, (state) => state.draft);
  if (proposal === null) return null;
  const total = proposal.possible.reduce((sum, { weight }) => sum + weight, 0);
  const keyOf = (faults: readonly Parameters<typeof modeKey>[0][]) => faults.map(modeKey).sort().join();
  return (
    <details className="make-possible">
      <summary>{words.possible(proposal.possible.length)}</summary>
      <ul>
        {proposal.possible.map(({ faults, weight }) => {
          const isHidden = keyOf(faults) === keyOf(hidden);
          return (
            <li key={`${keyOf(faults)} ${faults.map(({ presence }) => presence).join()}`}>
              <span>
                <Words>{startSentence(wordList(faults.map((fault) => wordFault(names, fault))))}</Words>
                {isHidden && <b> · {words.hiddenMark}</b>}
              </span>
              <span className="share-of">{wordProbability(weight / total)}</span>
            </li>
          );
        })}
      </ul>
    </details>
  );
}

function Seal() {
  const dispatch = useDispatch();
  const isMade = useStore(makeStore, ({ status }) => status.state === 'made');
  const sealing = useStore(makeStore, (state) => state.sealing);
  const savedAs = useStore(makeStore, (state) => state.savedAs);
  const typed = usePassphrase();
  const { passphrase } = typed;
  const mayNot = !isMade || sealing || passphrase === null;
  return (
    <form
      className="make-seal"
      onSubmit={(event) => {
        event.preventDefault();
        if (mayNot) return;
        const { draft } = makeStore.getState();
        sealMade(passphrase, (exercise) => dispatch('save-exercise', { exercise, onSaved: (name) => lockSaved(draft, passphrase, name) }));
      }}
    >
      <div className="section-head">
        <h2>{words.seal}</h2>
      </div>
      <Passphrase {...typed} />
      <p className="practice-small">{words.keptOpenly}</p>
      <p className="make-deeds">
        <button type="submit" className="button primary" disabled={mayNot}>
          {words.save}
        </button>
        <button
          type="button"
          className="button"
          disabled={mayNot}
          onClick={() => {
            if (passphrase === null) return;
            sealMade(passphrase, (exercise) => {
              startExercise(exercise, passphrase);
              dispatch('practice-exercises', { goesOn: true });
            });
          }}
        >
          {words.tryIt}
        </button>
        <span role="status">{sealing ? words.sealing : savedAs !== null ? words.savedAs(savedAs) : ''}</span>
      </p>
    </form>
  );
}
