import { Plus, X } from 'lucide-react';
import { useStore } from 'zustand';
import { exerciseKindTexts, solvedWords, startSentence, makeWords as words } from '../../engine/messages/index.ts';
import { exerciseKinds, solvedBy } from '../../engine/schema/index.ts';
import { freeSpareId, withKind, withSparesOf } from './makeDraft.ts';
import { changeDraft, makeStore } from './makeStore.ts';
import { NumberField } from './NumberField.tsx';

/** When it ends: what counts as solved, limits. */
export function MakeEnd() {
  const { solved, limits } = useStore(makeStore, ({ draft }) => draft);
  return (
    <section aria-label={words.end}>
      <div className="section-head">
        <h2>{words.end}</h2>
      </div>
      <fieldset>
        <legend>{words.solved}</legend>
        {solvedBy.map((one) => (
          <label key={one} className="make-line">
            <input type="radio" name="make-solved" checked={solved === one} onChange={() => changeDraft({ solved: one })} />
            <span>
              <b>{solvedWords[one].label}</b> <span className="practice-small">{solvedWords[one].meaning}</span>
            </span>
          </label>
        ))}
      </fieldset>
      <fieldset className="make-row">
        <legend>{words.limits}</legend>
        <NumberField
          shown="after"
          label={words.limitMinutes}
          value={limits.minutes}
          placeholder={words.unlimited}
          least={1}
          onChange={(minutes) => changeDraft({ limits: { ...limits, minutes } })}
        />
        <NumberField
          shown="after"
          label={words.limitSteps}
          value={limits.steps}
          placeholder={words.unlimited}
          whole
          least={1}
          most={1_000}
          onChange={(steps) => changeDraft({ limits: { ...limits, steps } })}
        />
      </fieldset>
    </section>
  );
}

/** Spares that steps use up, and hints that are sold. */
export function MakeExtras() {
  const { spares, hints } = useStore(makeStore, ({ draft }) => draft);
  const content = useStore(makeStore, (state) => state.content);
  const withCabinets = content === null ? spares : withSparesOf(spares, content);
  return (
    <section aria-label={`${words.hints}, ${words.spares}`}>
      <div className="section-head">
        <h2>{words.hints}</h2>
      </div>
      <ul className="make-list">
        {hints.map((hint, index) => (
          <li key={hint.id}>
            <input
              aria-label={words.hintText(index + 1)}
              value={hint.text}
              onChange={({ target }) => changeDraft({ hints: hints.map((one) => (one === hint ? { ...one, text: target.value } : one)) })}
            />
            <NumberField
              label={words.hintPrice(index + 1)}
              value={hint.minutes}
              onChange={(minutes) => changeDraft({ hints: hints.map((one) => (one === hint ? { ...one, minutes: minutes ?? 0 } : one)) })}
            />{' '}
            {words.price}
            <Remove what={words.hint(index + 1)} onRemove={() => changeDraft({ hints: hints.filter((one) => one !== hint) })} />
          </li>
        ))}
      </ul>
      <button
        type="button"
        className="button small"
        onClick={() => changeDraft({ hints: [...hints, { id: (hints.at(-1)?.id ?? 0) + 1, text: '', minutes: 2 }] })}
      >
        <Plus size={14} aria-hidden="true" /> {words.addHint}
      </button>
      <div className="section-head">
        <h2>{words.spares}</h2>
      </div>
      <ul className="make-list">
        {spares.map((spare, index) => (
          <li key={spare.id}>
            <input
              aria-label={words.spareName(index + 1)}
              value={spare.name}
              maxLength={200}
              onChange={({ target }) =>
                changeDraft({ spares: spares.map((one) => (one === spare ? { ...one, name: target.value } : one)) })
              }
            />
            <NumberField
              label={words.spareCount(index + 1)}
              value={spare.count}
              whole
              least={1}
              most={100}
              onChange={(count) => changeDraft({ spares: spares.map((one) => (one === spare ? { ...one, count: count ?? 1 } : one)) })}
            />{' '}
            {words.pieces}
            <Remove what={words.spare(index + 1)} onRemove={() => changeDraft({ spares: spares.filter((one) => one !== spare) })} />
          </li>
        ))}
      </ul>
      <div className="make-row">
        <button
          type="button"
          className="button small"
          onClick={() => changeDraft({ spares: [...spares, { id: freeSpareId(spares), name: '', count: 1 }] })}
        >
          <Plus size={14} aria-hidden="true" /> {words.addSpare}
        </button>
        {withCabinets.length > spares.length && (
          <button type="button" className="button small" onClick={() => changeDraft({ spares: withCabinets })}>
            <Plus size={14} aria-hidden="true" /> {words.addCabinetSpares}
          </button>
        )}
      </div>
    </section>
  );
}

function Remove({ what, onRemove }: { readonly what: string; readonly onRemove: () => void }) {
  return (
    <button type="button" className="icon-button" aria-label={words.remove(what)} title={words.remove(what)} onClick={onRemove}>
      <X size={16} aria-hidden="true" />
    </button>
  );
}

/** Title and texts; what the kind proposes may be written over. */
export function MakeTexts() {
  const draft = useStore(makeStore, (state) => state.draft);
  return (
    <section aria-label={words.texts}>
      <div className="section-head">
        <h2>{words.texts}</h2>
      </div>
      <label className="make-field">
        {words.kind}
        <select
          value={draft.kind}
          onChange={({ target }) =>
            changeDraft({ ...withKind(draft, exerciseKinds.find((one) => one === target.value) ?? draft.kind), kindChosen: true })
          }
        >
          {exerciseKinds.map((kind) => (
            <option key={kind} value={kind}>
              {startSentence(exerciseKindTexts[kind].name)}
            </option>
          ))}
        </select>
      </label>
      <label className="make-field">
        {words.name}
        <input value={draft.name} maxLength={200} onChange={({ target }) => changeDraft({ name: target.value })} />
      </label>
      {(['task', 'story', 'lesson'] as const).map((field) => (
        <label key={field} className="make-field">
          {words[field]}
          <textarea rows={2} maxLength={2_000} value={draft[field]} onChange={({ target }) => changeDraft({ [field]: target.value })} />
        </label>
      ))}
    </section>
  );
}
