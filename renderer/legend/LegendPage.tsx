import { Trash2 } from 'lucide-react';
import { useState } from 'react';
import { legendWords, meaningWords } from '../../engine/messages/index.ts';
import { type DisplayMeaning, displayMeanings, type LegendRecord } from '../../engine/schema/index.ts';
import { DisplayMark } from '../marks/DisplayMark.tsx';
import { useApp } from '../state/useWorkbench.ts';
import { CheckedField } from './CheckedField.tsx';
import { type CodeRow, codeTrouble, mostCodes } from './codeRows.ts';
import { KeepOrRemove } from './KeepOrRemove.tsx';
import { PasteRows } from './PasteRows.tsx';
import { useEquipmentDispatch } from './useEquipment.ts';

const words = legendWords.legend;

/** One legend: the codes of some equipment, and what each can mean. */
export function LegendPage({ legend }: { readonly legend: LegendRecord }) {
  const dispatch = useEquipmentDispatch();
  const cabinet = useApp((state) => state.cabinet);
  const nameTrouble = (name: string) => {
    if (name.trim() === '') return words.nameEmpty;
    return cabinet.legends?.some((other) => other.id !== legend.id && other.name === name.trim()) ? words.nameTaken : null;
  };
  const rename = (name: string, source: string) => dispatch('rename-legend', { legend: legend.id, name, source });
  const setCodes = (codes: readonly CodeRow[]) => dispatch('set-legend-codes', { legend: legend.id, codes });
  const change = (index: number, row: CodeRow) => setCodes(legend.codes.map((one, at) => (at === index ? row : one)));
  return (
    <article className="equipment-page" aria-label={words.region(legend.name)}>
      <div className="page-head">
        <CheckedField
          key={legend.id}
          label={words.name}
          value={legend.name}
          check={nameTrouble}
          maxLength={200}
          className="wide"
          onTake={(name) => rename(name, legend.source ?? '')}
        />
        <CheckedField
          key={`source ${legend.id}`}
          label={words.source}
          value={legend.source ?? ''}
          check={() => null}
          maxLength={200}
          className="wide"
          onTake={(source) => rename(legend.name, source)}
        />
        <KeepOrRemove kind="legend" record={legend} />
      </div>
      <p className="quiet-text">
        {words.usedBy((cabinet.types ?? []).filter((type) => type.legend === legend.id).map(({ name }) => name))}{' '}
        <label className="usual-legend">
          <input
            type="checkbox"
            checked={cabinet.defaultLegend === legend.id}
            onChange={(event) => dispatch('set-default-legend', { legend: event.target.checked ? legend.id : null })}
          />
          {words.usual}
        </label>{' '}
        {words.usualHow}
      </p>
      {legend.codes.length === 0 && <p className="empty">{words.noCodes}</p>}
      <table className="codes">
        <thead>
          <tr>
            <th scope="col">{words.code}</th>
            {displayMeanings.map((meaning) => (
              <th key={meaning} scope="col" className="meaning-head">
                <DisplayMark name={meaning} size={18} />
                {meaningWords[meaning].label}
              </th>
            ))}
            <th scope="col">{words.note}</th>
            <th scope="col" aria-label={words.removeHead} />
          </tr>
        </thead>
        <tbody>
          {legend.codes.map((row, index) => (
            <CodeRowCells
              key={row.code}
              row={row}
              others={legend.codes.filter((one) => one !== row)}
              onChange={(changed) => change(index, changed)}
              onRemove={() => setCodes(legend.codes.filter((one) => one !== row))}
            />
          ))}
          <NewCode key={legend.codes.length} codes={legend.codes} onAdd={(row) => setCodes([...legend.codes, row])} />
        </tbody>
      </table>
      <PasteRows key={`paste ${legend.id}`} codes={legend.codes} onTake={setCodes} />
    </article>
  );
}

function MeaningCells({
  code,
  meanings,
  onChange,
}: {
  readonly code: string;
  readonly meanings: readonly DisplayMeaning[];
  readonly onChange: (meanings: readonly DisplayMeaning[]) => void;
}) {
  return displayMeanings.map((meaning) => (
    <td key={meaning} className="meaning-cell">
      <label>
        <span className="screen-reader">{words.meaningOf(code, meaning)}</span>
        <input
          type="checkbox"
          checked={meanings.includes(meaning)}
          onChange={(event) => onChange(displayMeanings.filter((one) => (one === meaning ? event.target.checked : meanings.includes(one))))}
        />
      </label>
    </td>
  ));
}

function CodeRowCells({
  row,
  others,
  onChange,
  onRemove,
}: {
  readonly row: CodeRow;
  readonly others: readonly CodeRow[];
  readonly onChange: (row: CodeRow) => void;
  readonly onRemove: () => void;
}) {
  const [refused, setRefused] = useState(false);
  const check = (code: string) => {
    const trouble = codeTrouble(code, others);
    return trouble === null ? null : words.trouble[trouble];
  };
  return (
    <tr>
      <td>
        <CheckedField
          label={words.codeField(row.code)}
          hiddenLabel
          value={row.code}
          check={check}
          maxLength={60}
          className="code"
          onTake={(code) => onChange({ ...row, code })}
        />
        {refused && (
          <span className="field-trouble" role="alert">
            {words.trouble['no-meaning']}
          </span>
        )}
      </td>
      <MeaningCells
        code={row.code}
        meanings={row.meanings}
        onChange={(meanings) => {
          setRefused(meanings.length === 0);
          if (meanings.length > 0) onChange({ ...row, meanings: [...meanings] });
        }}
      />
      <td>
        <CheckedField
          label={words.noteField(row.code)}
          hiddenLabel
          value={row.note ?? ''}
          check={() => null}
          maxLength={200}
          onTake={(note) => {
            const { note: _note, ...rest } = row;
            onChange(note === '' ? rest : { ...rest, note });
          }}
        />
      </td>
      <td>
        <button
          type="button"
          className="icon-button"
          aria-label={words.removeCode(row.code)}
          title={words.removeCode(row.code)}
          onClick={onRemove}
        >
          <Trash2 size={16} aria-hidden="true" />
        </button>
      </td>
    </tr>
  );
}

function NewCode({ codes, onAdd }: { readonly codes: readonly CodeRow[]; readonly onAdd: (row: CodeRow) => void }) {
  const [code, setCode] = useState('');
  const [meanings, setMeanings] = useState<readonly DisplayMeaning[]>([]);
  const [note, setNote] = useState('');
  const [tried, setTried] = useState(false);
  const trouble =
    codes.length >= mostCodes
      ? ('too-many' as const)
      : (codeTrouble(code, codes) ?? (meanings.length === 0 ? ('no-meaning' as const) : null));
  const shown = trouble !== null && (tried || trouble === 'doubled' || trouble === 'too-many') ? words.trouble[trouble] : null;
  const add = () => {
    setTried(true);
    if (trouble === null) onAdd({ code: code.trim(), meanings: [...meanings], ...(note.trim() === '' ? {} : { note: note.trim() }) });
  };
  const onEnter = (event: React.KeyboardEvent) => {
    if (event.key === 'Enter') add();
  };
  return (
    <tr className="new-code">
      <td>
        <input
          className="code"
          aria-label={words.newCode}
          value={code}
          maxLength={60}
          autoComplete="off"
          aria-invalid={shown !== null}
          onChange={(event) => setCode(event.target.value)}
          onKeyDown={onEnter}
        />
        {shown !== null && (
          <span className="field-trouble" role="alert">
            {shown}
          </span>
        )}
      </td>
      <MeaningCells code={code} meanings={meanings} onChange={setMeanings} />
      <td>
        <input
          aria-label={words.newNote}
          value={note}
          maxLength={200}
          onChange={(event) => setNote(event.target.value)}
          onKeyDown={onEnter}
        />
      </td>
      <td>
        <button type="button" className="button small" onClick={add}>
          {words.add}
        </button>
      </td>
    </tr>
  );
}
