import { useEffect, useState } from 'react';
import { useStore } from 'zustand';
import { windowTexts, makeWords as words } from '../../engine/messages/index.ts';
import { listSamples } from '../samples/sampleCabinets.ts';
import { namesOf } from '../state/names.ts';
import { useApp } from '../state/useWorkbench.ts';
import { MakeAside } from './MakeAside.tsx';
import { MakeHidden } from './MakeHidden.tsx';
import { MakeKnown } from './MakeKnown.tsx';
import { MakeEnd, MakeExtras, MakeTexts } from './MakeRest.tsx';
import { MakeSteps } from './MakeSteps.tsx';
import { shownAtStart } from './makeDraft.ts';
import {
  beginDraft,
  chooseCabinet,
  dropAside,
  followCabinet,
  type LockedDraft,
  makeStore,
  mayTakeUp,
  takeUpDraft,
  unlockDraft,
} from './makeStore.ts';
import './make.css';

/** The form in which an instructor makes an exercise, with what follows from it at its side. */
export function MakeScreen() {
  const open = useApp((state) => state.cabinet);
  useEffect(() => followCabinet(open), [open]);
  const draft = useStore(makeStore, (state) => state.draft);
  const checked = useStore(makeStore, (state) => state.checked);
  if (checked === null) return null;
  const { topology, cabinet } = checked;
  const names = namesOf(topology);
  return (
    <div className="practice-make">
      <div className="make-form">
        <header>
          <div>
            <h1>{words.title}</h1>
            <p>{words.intro}</p>
          </div>
          <button type="button" className="button" onClick={() => beginDraft({ sample: draft.sample })}>
            {words.again}
          </button>
        </header>
        <Locked />
        <Aside />
        <label className="make-field">
          {words.cabinet}
          <select value={draft.sample ?? ''} onChange={({ target }) => void chooseCabinet(target.value === '' ? null : target.value, open)}>
            <option value="">{words.openCabinet(open.name)}</option>
            {listSamples().map(({ name }) => (
              <option key={name} value={name}>
                {words.sample(windowTexts.sampleName(name))}
              </option>
            ))}
          </select>
        </label>
        <MakeHidden topology={topology} names={names} />
        <MakeKnown shown={cabinet === null ? null : shownAtStart(cabinet, draft)} names={names} />
        <MakeEnd />
        <MakeSteps names={names} />
        <MakeExtras />
        <MakeTexts />
      </div>
      <MakeAside topology={topology} names={names} />
    </div>
  );
}

/** Exercises that were saved in this sitting: their passphrase opens them again. */
function Locked() {
  const locked = useStore(makeStore, (state) => state.locked);
  if (locked.length === 0) return null;
  return (
    <section aria-label={words.locked}>
      <div className="section-head">
        <h2>{words.locked}</h2>
      </div>
      <p className="practice-small">{words.lockedWhy}</p>
      <ul className="make-faults make-locked">
        {locked.map((one) => (
          <LockedLine key={one.id} one={one} />
        ))}
      </ul>
    </section>
  );
}

function LockedLine({ one }: { readonly one: LockedDraft }) {
  const open = useApp((state) => state.cabinet);
  const [isWrong, setWrong] = useState(false);
  return (
    <li>
      <span role="status">
        <b>{one.name}</b> <span className="practice-small">{words.savedAs(one.savedAs)}</span>
        {isWrong && <span className="passphrase-trouble"> {words.unlockWrong}</span>}
      </span>
      <form
        className="make-unlock"
        onSubmit={(event) => {
          event.preventDefault();
          const typed = new FormData(event.currentTarget).get('passphrase');
          void unlockDraft(one, typeof typed === 'string' ? typed : '', open).then((opened) => setWrong(!opened));
        }}
      >
        <input
          name="passphrase"
          type="password"
          autoComplete="off"
          aria-label={words.unlockPassphrase(one.name)}
          placeholder={words.passphrase}
        />
        <button type="submit" className="button small">
          {words.unlock}
        </button>
      </form>
    </li>
  );
}

/** Drafts that wait to be taken up again. */
function Aside() {
  const open = useApp((state) => state.cabinet);
  const aside = useStore(makeStore, (state) => state.aside);
  if (aside.length === 0) return null;
  return (
    <section aria-label={words.aside}>
      <div className="section-head">
        <h2>{words.aside}</h2>
      </div>
      <ul className="make-faults">
        {aside.map((kept) => {
          const { draft, cabinet } = kept;
          const mayNow = mayTakeUp(kept, open);
          return (
            <li key={draft.id}>
              <span>
                <b>{draft.name}</b>{' '}
                {cabinet !== null && <span className="practice-small">{(mayNow ? words.asideOf : words.asideWaits)(cabinet.name)}</span>}
              </span>
              <button
                type="button"
                className="button small"
                aria-label={words.takeUpName(draft.name)}
                disabled={!mayNow}
                onClick={() => void takeUpDraft(kept, open)}
              >
                {words.takeUp}
              </button>
              <button
                type="button"
                className="button small"
                aria-label={words.throwAwayName(draft.name)}
                onClick={() => dropAside(draft.id)}
              >
                {words.throwAway}
              </button>
            </li>
          );
        })}
      </ul>
    </section>
  );
}
