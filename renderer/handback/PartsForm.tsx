import { useState } from 'react';
import { startSentence, wordPartOwner, handBackTexts as words } from '../../engine/messages/index.ts';
import { listReplaced, type NewPart, type ReplacedPart } from '../../engine/repair/index.ts';
import { Words } from '../marks/Words.tsx';
import { namesOf } from '../state/names.ts';
import { useApp, useDispatch } from '../state/useWorkbench.ts';

const keyOf = ({ owner }: { readonly owner: NewPart['owner'] }) => `${owner.kind}/${owner.id}`;

/** The parts that were put in, with their numbers; they go into the cabinet as one step. */
export function PartsForm() {
  const dispatch = useDispatch();
  const content = useApp((state) => state.cabinet);
  const evidence = useApp((state) => state.caseRecord.evidence);
  const parts = listReplaced(content, evidence);
  const [typed, setTyped] = useState<ReadonlyMap<string, Partial<Pick<NewPart, 'partNumber' | 'serial'>>>>(new Map());
  const numbersOf = (part: ReplacedPart) => ({ ...part.proposed, ...typed.get(keyOf(part)) });
  const isWritten = parts.every((part) => {
    const { partNumber, serial } = numbersOf(part);
    return part.before.partNumber === partNumber && part.before.serial === serial && part.spare === null;
  });
  // A part whose serial number nobody entered may have one.
  const isComplete = isWritten && parts.every((part) => part.owner.kind === 'fuse' || numbersOf(part).serial !== '');
  const write = () =>
    dispatch('record-parts', { parts: parts.map((part) => ({ owner: part.owner, spare: part.spare, ...numbersOf(part) })) });
  return (
    <section aria-label={words.parts}>
      <h3>{words.parts}</h3>
      {parts.length === 0 ? (
        <p className="quiet-text">{words.noParts}</p>
      ) : (
        <form
          onSubmit={(event) => {
            event.preventDefault();
            write();
          }}
        >
          {parts.map((part) => (
            <PartFields
              key={keyOf(part)}
              part={part}
              value={numbersOf(part)}
              onType={(change) => setTyped(new Map(typed).set(keyOf(part), { ...typed.get(keyOf(part)), ...change }))}
            />
          ))}
          <p className="part-end">
            <button type="submit" className="button" disabled={isWritten}>
              {words.write}
            </button>
            {isComplete && <span className="quiet-text">{words.written}</span>}
          </p>
        </form>
      )}
    </section>
  );
}

function PartFields({
  part,
  value,
  onType,
}: {
  readonly part: ReplacedPart;
  readonly value: Pick<NewPart, 'partNumber' | 'serial'>;
  readonly onType: (change: Partial<Pick<NewPart, 'partNumber' | 'serial'>>) => void;
}) {
  const names = useApp((state) => namesOf(state.checked.topology));
  const { before, owner } = part;
  return (
    <fieldset className="part">
      <legend>
        <Words>{startSentence(wordPartOwner(names, owner))}</Words>
      </legend>
      <label>
        {words.partNumber}
        <input value={value.partNumber} maxLength={200} onChange={(event) => onType({ partNumber: event.target.value })} />
      </label>
      {owner.kind !== 'fuse' && (
        <label>
          {words.serial} {before.serial !== '' && <small>{words.before(before.serial)}</small>}
          <input value={value.serial} maxLength={200} onChange={(event) => onType({ serial: event.target.value })} />
        </label>
      )}
    </fieldset>
  );
}
