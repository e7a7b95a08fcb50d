import { startSentence, wordActKind, wordCaution, wordItemModes, repairTableWords as words } from '../../engine/messages/index.ts';
import { actFacts } from '../../engine/plan/index.ts';
import { chanceNames, changeParts, type Figure, isOwnChange, repairTable, type TableEdit, weightNames } from '../../engine/repair/index.ts';
import type { ActKind, MachineState } from '../../engine/schema/index.ts';
import { DialogFrame } from '../shell/DialogFrame.tsx';
import { namesOf } from '../state/names.ts';
import { useApp, useDispatch } from '../state/useWorkbench.ts';
import { FigureInput, wordOrigin } from './FigureInput.tsx';
import './repairTable.css';

const { heads } = words;

/** All figures of repair with where they come from; each can be changed for this cabinet. */
export function RepairTableDialog() {
  const shown = useApp((state) => state.repairTableShown);
  const dispatch = useDispatch();
  if (!shown) return null;
  const close = () => dispatch('close-repair-table');
  return (
    <DialogFrame title={words.title} close={words.close} onClose={close} name="repair-table">
      <p className="quiet-text">{words.intro}</p>
      <Acts />
      <Others />
    </DialogFrame>
  );
}

function Acts() {
  const content = useApp((state) => state.cabinet);
  const names = useApp((state) => namesOf(state.checked.topology));
  const table = repairTable(content).acts;
  // Figures that a cabinet has for a single part.
  const own = table.filter(({ subject }) => subject !== null);
  const rows = table.filter(({ subject }) => subject === null);
  // The cabinet's own rows stand before the usual ones.
  const acts = rows.filter(({ act }, index) => rows.findIndex((other) => other.act === act) === index);
  return (
    <table>
      <caption>{words.acts}</caption>
      <thead>
        <tr>
          <th scope="col">{heads.act}</th>
          <th scope="col">{heads.minutes}</th>
          <th scope="col">{heads.parts}</th>
          <th scope="col">{heads.mends}</th>
          <th scope="col">{heads.effects}</th>
        </tr>
      </thead>
      <tbody>
        {acts.map(({ act, minutes, partMinutes, state }) => {
          const what = wordActKind(act);
          return (
            <tr key={act}>
              <th scope="row">{startSentence(what)}</th>
              <FigureCell
                figure={minutes}
                name={words.field(what, heads.minutes)}
                edit={(value) => ({ of: 'act', act, field: 'minutes', value })}
              />
              <FigureCell
                figure={partMinutes}
                name={words.field(what, heads.parts)}
                edit={(value) => ({ of: 'act', act, field: 'partMinutes', value })}
              />
              <td className="words">{startSentence(wordItemModes(actFacts(act).mends))}</td>
              <td className="words">{startSentence(wordEffects(act, state))}</td>
            </tr>
          );
        })}
        {own.map(({ act, subject, minutes, partMinutes, state }) => (
          <tr key={`${act} ${subject}`}>
            <th scope="row">{startSentence(words.onlyFor(wordActKind(act), names.thing(subject ?? '')))}</th>
            <FigureCell
              figure={minutes}
              name={words.field(words.onlyFor(wordActKind(act), names.thing(subject ?? '')), heads.minutes)}
              edit={(value) => ({ of: 'act', act, subject: subject ?? '', field: 'minutes', value })}
            />
            <FigureCell
              figure={partMinutes}
              name={words.field(words.onlyFor(wordActKind(act), names.thing(subject ?? '')), heads.parts)}
              edit={(value) => ({ of: 'act', act, subject: subject ?? '', field: 'partMinutes', value })}
            />
            <td />
            <td className="words">{startSentence(wordEffects(act, state))}</td>
          </tr>
        ))}
      </tbody>
    </table>
  );
}

/** What an act does besides, and the cautions that concern it; the state it needs where that is not the usual one. */
function wordEffects(act: ActKind, state: MachineState): string {
  const { moves, opensFeed, cautions } = actFacts(act);
  return [
    ...(state === 'isolated' ? [] : [words.states[state]]),
    ...(moves.length === 0 ? [] : [words.moves(wordItemModes(moves))]),
    ...(opensFeed ? [words.opensFeed] : []),
    ...cautions.map((caution) => wordCaution(caution).label.toLowerCase()),
  ].join('; ');
}

function Others() {
  const table = repairTable(useApp((state) => state.cabinet));
  return (
    <>
      <Figures
        caption={words.changesHead}
        head={heads.minutes}
        rows={changeParts.map((part) => ({
          key: part,
          what: words.changes[part],
          figure: table.changes[part],
          edit: isOwnChange(part) ? (value: number | null): TableEdit => ({ of: 'change', part, value }) : null,
        }))}
      />
      <Figures
        caption={words.weightsHead}
        head={heads.minutes}
        rows={weightNames.map((name) => ({
          key: name,
          what: words.weights[name],
          figure: table.weights[name],
          edit: (value: number | null): TableEdit => ({ of: 'weight', name, value }),
        }))}
      />
      <Figures
        caption={words.chancesHead}
        head={heads.chance}
        scale={100}
        rows={chanceNames.map((name) => ({
          key: name,
          what: words.chances[name],
          figure: table.chances[name],
          edit: (value: number | null): TableEdit => ({ of: 'chance', name, value }),
        }))}
      />
    </>
  );
}

interface FigureRow {
  readonly key: string;
  readonly what: string;
  readonly figure: Figure;
  /** Null: a cabinet has no figure of its own for it. */
  readonly edit: ((value: number | null) => TableEdit) | null;
}

function Figures({
  caption,
  head,
  rows,
  scale = 1,
}: {
  readonly caption: string;
  readonly head: string;
  readonly rows: readonly FigureRow[];
  readonly scale?: number;
}) {
  return (
    <table>
      <caption>{caption}</caption>
      <tbody>
        {rows.map(({ key, what, figure, edit }) => (
          <tr key={key}>
            <th scope="row">{startSentence(what)}</th>
            {edit ? (
              <FigureCell figure={figure} name={words.field(what, head)} edit={edit} scale={scale} />
            ) : (
              <td>
                {figure.value} · {wordOrigin(figure)}
              </td>
            )}
          </tr>
        ))}
      </tbody>
    </table>
  );
}

/** A figure in its cell. */
function FigureCell(props: React.ComponentProps<typeof FigureInput>) {
  return (
    <td>
      <FigureInput {...props} />
    </td>
  );
}
