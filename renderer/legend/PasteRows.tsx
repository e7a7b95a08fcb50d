import { useState } from 'react';
import { legendWords } from '../../engine/messages/index.ts';
import { type CodeRow, mergeRows, mostCodes, readPastedRows } from './codeRows.ts';

const words = legendWords.legend;

/** Many codes at once, from a table that somebody has already: what cannot be read is said with its row. */
export function PasteRows({ codes, onTake }: { readonly codes: readonly CodeRow[]; readonly onTake: (codes: readonly CodeRow[]) => void }) {
  const [text, setText] = useState('');
  const { rows, troubles } = readPastedRows(text);
  const merged = mergeRows(codes, rows);
  const tooMany = merged.length > mostCodes;
  const replaced = codes.length + rows.length - merged.length;
  return (
    <details className="paste">
      <summary>{words.paste}</summary>
      <p className="quiet-text">{words.pasteHow}</p>
      <label>
        <span className="screen-reader">{words.pasteField}</span>
        <textarea
          rows={5}
          value={text}
          placeholder={words.pasteExample}
          spellCheck={false}
          onChange={(event) => setText(event.target.value)}
        />
      </label>
      <ul className="paste-troubles" aria-live="polite">
        {troubles.slice(0, 8).map(({ row, trouble, word }) => (
          <li key={row}>{words.inRow(row, word === undefined ? words.trouble[trouble] : words.troubleWithMeaning(word))}</li>
        ))}
        {tooMany && <li>{words.trouble['too-many']}</li>}
        {replaced > 0 && <li className="quiet-text">{words.replaces(replaced)}</li>}
      </ul>
      <button
        type="button"
        className="button small"
        disabled={rows.length === 0 || tooMany}
        onClick={() => {
          onTake(merged);
          // What could not be read stays in the field, to be mended.
          const lines = text.split(/\r\n|\r|\n/);
          setText(troubles.map(({ row }) => lines[row - 1] ?? '').join('\n'));
        }}
      >
        {words.take(rows.length)}
      </button>
    </details>
  );
}
