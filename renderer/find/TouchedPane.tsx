import { useState } from 'react';
import { startSentence, touchedTexts, wordActsDone, wordDisplaced, wordMending, wordProbability } from '../../engine/messages/index.ts';
import { type Displaced, type Handling, putBack } from '../../engine/plan/index.ts';
import { Sign } from '../marks/Sign.tsx';
import { Words } from '../marks/Words.tsx';
import { namesOf } from '../state/names.ts';
import { useApp, useDispatch } from '../state/useWorkbench.ts';
import { placesOf, selectPlan } from './stepModel.ts';
import { selectTouched } from './touched.ts';
import './touched.css';

/** As many acts are listed; a case may hold hundreds. */
const mostHandlings = 8;

/** What was touched and what does not stand in its place; it stays here until it is put back. */
export function TouchedPane() {
  const { displaced, handlings } = useApp(selectTouched);
  if (handlings.length === 0) return null;
  return (
    <section id="touched" className="pane touched" aria-label={touchedTexts.region} tabIndex={-1}>
      <div className="section-head">
        <h2>
          {touchedTexts.region} <small>{displaced.length > 0 ? touchedTexts.remind(displaced.length) : handlings.length}</small>
        </h2>
      </div>
      {displaced.length > 0 && (
        <ul className="displaced" aria-label={touchedTexts.displaced}>
          {displaced.map(({ what, isExchange }) => (
            <DisplacedRow key={JSON.stringify(what)} what={what} isExchange={isExchange} />
          ))}
        </ul>
      )}
      <Worse handlings={handlings} />
    </section>
  );
}

function DisplacedRow({ what, isExchange }: { readonly what: Displaced; readonly isExchange: boolean }) {
  const [asking, setAsking] = useState(false);
  const dispatch = useDispatch();
  const names = useApp((state) => namesOf(state.checked.topology));
  const done = (halted: boolean | null) => {
    dispatch('put-back', { displaced: what, halted });
    document.getElementById('step')?.focus();
  };
  return (
    <li>
      <p>
        <Sign name="abnormal" size={15} />{' '}
        <span>
          <Words>{startSentence(wordDisplaced(names, what, isExchange))}</Words>
        </span>
        {!asking && (
          <button type="button" className="button small" onClick={() => setAsking(true)}>
            {touchedTexts.putBack}
          </button>
        )}
      </p>
      {asking && (
        <fieldset className="put-back">
          <legend>{touchedTexts.putBackHow(wordMending(names, putBack(what)))}</legend>
          <button type="button" className="button small" onClick={() => done(false)}>
            {touchedTexts.runs}
          </button>
          <button type="button" className="button small" onClick={() => done(true)}>
            {touchedTexts.halts}
          </button>
          <button type="button" className="button small" onClick={() => done(null)}>
            {touchedTexts.notTried}
          </button>
          <button type="button" className="text-button" onClick={() => setAsking(false)}>
            {touchedTexts.cancel}
          </button>
        </fieldset>
      )}
    </li>
  );
}

/** Everything that was touched, newest first. When it got worse, the last of it is where to begin. */
function Worse({ handlings }: { readonly handlings: readonly Handling[] }) {
  // It got worse after so many things were touched; with the next one that is past.
  const [worseAfter, setWorseAfter] = useState(0);
  const dispatch = useDispatch();
  const names = useApp((state) => namesOf(state.checked.topology));
  const topology = useApp((state) => state.checked.topology);
  const mishap = useApp((state) => selectPlan(state)?.mishap ?? 0);
  const [last] = handlings;
  const listed = handlings.slice(0, mostHandlings).map((handling, index) => ({ key: handlings.length - index, handling }));
  const show = ({ act }: Handling) => {
    const [subject] = placesOf(act, topology);
    if (subject !== undefined) dispatch('show-on-cabinet', { subject });
  };
  const begin = () => {
    setWorseAfter(handlings.length);
    if (last) show(last);
  };
  return (
    <>
      {worseAfter === handlings.length && last ? (
        <div className="worse" role="status">
          <p>
            <b>{touchedTexts.worseTitle}.</b> <Words>{touchedTexts.worseWhy(wordActsDone(names, [last.act]))}</Words>{' '}
            {mishap > 0 && touchedTexts.mishap(wordProbability(mishap))}
          </p>
          <button type="button" className="button small" onClick={() => dispatch('walk-displays')}>
            {touchedTexts.noteAgain}
          </button>
        </div>
      ) : (
        <button type="button" className="button small" onClick={begin}>
          {touchedTexts.worse}
        </button>
      )}
      <ol className="handlings">
        {listed.map(({ key, handling }) => {
          const what = wordActsDone(names, [handling.act]);
          return (
            <li key={key}>
              <button type="button" title={touchedTexts.lightUp(what)} onClick={() => show(handling)}>
                <span className="name">
                  <Words>{startSentence(what)}</Words>
                </span>
                <span className="quiet-text">{touchedTexts.look(handling.snapshot + 1)}</span>
              </button>
            </li>
          );
        })}
      </ol>
    </>
  );
}
