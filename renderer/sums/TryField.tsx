import { useId, useState } from 'react';
import { sumsPageWords, wordNumber, wordTriedFigure } from '../../engine/messages/index.ts';
import { useApp, useDispatch } from '../state/useWorkbench.ts';
import { kindOfFigure, readNumber } from './readNumber.ts';
import { changeKey } from './sumsState.ts';
import { type TriedFigure, withValue, writtenValue } from './tryable.ts';

interface Props {
  readonly figure: TriedFigure;
  /** "length of cable -WH3". */
  readonly what: string;
}

/** A figure of the file as a field: another value is tried at once, the one of the file ends the trial. */
export function TryField({ figure, what }: Props) {
  const dispatch = useDispatch();
  const id = useId();
  const written = useApp((state) => writtenValue(state.checked.topology, figure));
  const tried = useApp((state) => state.sums.tried.find((one) => changeKey(one) === changeKey(withValue(figure, 0)))?.value);
  // While somebody types, the field shows what was typed, also where that is no number yet.
  const [typed, setTyped] = useState<string | null>(null);
  const { unit } = wordTriedFigure(figure.figure);
  const kind = kindOfFigure(figure.figure);
  const value = tried ?? written;
  const wrong = typed !== null && typed.trim() !== '' && readNumber(typed, kind) === null;

  const type = (text: string) => {
    setTyped(text);
    const number = readNumber(text, kind);
    const isWritten = number === written || (text.trim() === '' && written !== undefined);
    if (isWritten || text.trim() === '') dispatch('drop-tried', { change: withValue(figure, 0) });
    else if (number !== null) dispatch('try-figure', { change: withValue(figure, number) });
  };

  return (
    <span className="try-field" data-tried={tried !== undefined}>
      <input
        type="text"
        inputMode="decimal"
        value={typed ?? (value === undefined ? '' : plainNumber(value))}
        aria-label={sumsPageWords.tryLabel(what)}
        aria-invalid={wrong}
        {...(wrong ? { 'aria-describedby': id } : {})}
        onChange={(event) => type(event.target.value)}
        onBlur={() => setTyped(null)}
        onFocus={(event) => event.target.select()}
      />
      <span className="sum-unit">{unit}</span>
      {tried !== undefined && (
        <small className="sum-was">
          {sumsPageWords.was(written === undefined ? sumsPageWords.notWritten : `${wordNumber(written, 6)} ${unit}`.trim())}
        </small>
      )}
      {wrong && (
        <span id={id} className="sum-wrong" role="alert">
          {sumsPageWords.wrongNumber[kind]}
        </span>
      )}
    </span>
  );
}

/** A number as it is typed: without digits that only arithmetic put there. */
function plainNumber(value: number): string {
  return String(Number(value.toPrecision(12)));
}
