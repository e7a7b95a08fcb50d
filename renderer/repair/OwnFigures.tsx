import { useId } from 'react';
import { startSentence, wordActKind, repairTableWords as words } from '../../engine/messages/index.ts';
import { type ActRow, actsOfThing, type Figure, repairTable, type TableEdit } from '../../engine/repair/index.ts';
import { type ActKind, longestLine } from '../../engine/schema/index.ts';
import { TypedLine } from '../shell/TypedLine.tsx';
import { namesOf } from '../state/names.ts';
import { useApp, useDispatch } from '../state/useWorkbench.ts';
import { FigureInput } from './FigureInput.tsx';
import './repairTable.css';

/** What repairs of one thing take, where that differs from the usual: minutes, worth of the part, and where it was read. */
export function OwnFigures({ id }: { readonly id: string }) {
  const content = useApp((state) => state.cabinet);
  const acts = actsOfThing(content, id);
  const table = repairTable(content);
  const rowFor = (act: ActKind) => table.acts.find((row) => row.act === act && (row.subject === id || row.subject === null));
  if (acts.length === 0) return null;
  const hasOwn = table.acts.some(({ subject }) => subject === id);
  return (
    <section className="inspector-group own-figures" aria-label={words.ownTitle}>
      {/* Rare: it opens by itself only where there is something to see. */}
      <details open={hasOwn}>
        <summary>
          <h3>{words.ownTitle}</h3>
        </summary>
        <p className="quiet-text">{words.ownIntro}</p>
        {acts.map((act) => {
          const row = rowFor(act);
          return row === undefined ? null : <OwnAct key={act} id={id} row={row} source={sourceOf(content.repair?.acts, act, id)} />;
        })}
      </details>
    </section>
  );
}

type OwnActs = NonNullable<NonNullable<Parameters<typeof repairTable>[0]['repair']>['acts']>;

const sourceOf = (acts: OwnActs | undefined, act: ActKind, id: string): string =>
  acts?.find((row) => row.act === act && row.subject === id)?.source ?? '';

function OwnAct({ id, row, source }: { readonly id: string; readonly row: ActRow; readonly source: string }) {
  const dispatch = useDispatch();
  const name = useApp((state) => namesOf(state.checked.topology).thing(id));
  const { act, minutes, partMinutes } = row;
  const isOwn = row.subject === id;
  const what = words.onlyFor(wordActKind(act), name);
  const key = { act, subject: id };
  return (
    <fieldset className="own-act">
      <legend>{startSentence(wordActKind(act))}</legend>
      <OwnFigure
        label={words.heads.minutes}
        name={words.field(what, words.heads.minutes)}
        figure={minutes}
        edit={(value) => ({ of: 'act', ...key, field: 'minutes', value })}
      />
      <OwnFigure
        label={words.heads.parts}
        name={words.field(what, words.heads.parts)}
        figure={partMinutes}
        edit={(value) => ({ of: 'act', ...key, field: 'partMinutes', value })}
      />
      {isOwn && (
        <>
          <SourceField
            name={words.field(what, words.heads.origin)}
            source={source}
            onSet={(value) => dispatch('edit-repair-table', { edit: { of: 'act-source', ...key, value }, what })}
          />
          <button
            type="button"
            className="button small"
            onClick={() => dispatch('edit-repair-table', { edit: { of: 'act-usual', ...key }, what })}
          >
            {words.usualAgain}
            <span className="screen-reader">: {what}</span>
          </button>
        </>
      )}
    </fieldset>
  );
}

function OwnFigure({
  label,
  name,
  figure,
  edit,
}: {
  readonly label: string;
  readonly name: string;
  readonly figure: Figure;
  readonly edit: (value: number | null) => TableEdit;
}) {
  return (
    <div className="own-figure">
      <span aria-hidden="true">{label}</span>
      <FigureInput figure={figure} name={name} edit={edit} />
    </div>
  );
}

/** Where the figures of one thing come from, as one types it; taken when one leaves it. */
function SourceField({
  name,
  source,
  onSet,
}: {
  readonly name: string;
  readonly source: string;
  readonly onSet: (value: string | null) => void;
}) {
  const id = useId();
  return (
    <div className="own-figure">
      <label htmlFor={id}>{words.heads.origin}</label>
      <TypedLine id={id} value={source} name={name} placeholder={words.cabinet} maxLength={longestLine} onSet={onSet} />
    </div>
  );
}
