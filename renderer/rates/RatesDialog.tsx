import { isAssumed, isWiringMistake, type ModeKind, ownRate, ratedModes, rateOf, usualRate } from '../../engine/diagnosis/index.ts';
import { startSentence, wordCauseKind, wordFactor, wordNumber, rateTableWords as words } from '../../engine/messages/index.ts';
import { DialogFrame } from '../shell/DialogFrame.tsx';
import { TypedFigure } from '../shell/TypedFigure.tsx';
import { TypedLine } from '../shell/TypedLine.tsx';
import { useApp, useDispatch } from '../state/useWorkbench.ts';
import './rates.css';

const { heads } = words;

/** What a file takes at most, in occurrences per year; a wiring mistake is a probability instead. */
const mostPerYear = 1_000_000;

/** How often each fault comes, and where that figure is from; each can be changed for this cabinet. */
export function RatesDialog() {
  const shown = useApp((state) => state.ratesShown);
  const isSharpened = useApp((state) => state.caseRecord.evidence.rates !== undefined);
  const dispatch = useDispatch();
  if (!shown) return null;
  const close = () => dispatch('close-fault-rates');
  return (
    <DialogFrame title={words.title} close={words.close} onClose={close} name="rates">
      <p className="quiet-text">{words.intro}</p>
      <button
        type="button"
        className="button small"
        onClick={() => {
          close();
          dispatch('confirmed-cases');
        }}
      >
        {words.confirmed}
      </button>
      <table>
        <caption className="screen-reader">{words.caption}</caption>
        <thead>
          <tr>
            <th scope="col">{heads.kind}</th>
            <th scope="col">{heads.rate}</th>
            <th scope="col">{heads.share}</th>
            <th scope="col">{heads.origin}</th>
            {isSharpened && <th scope="col">{heads.inCase}</th>}
          </tr>
        </thead>
        <tbody>
          {ratedModes.map(({ item, mode }) => (
            <RateRow key={`${item} ${mode}`} kind={{ item, mode }} />
          ))}
        </tbody>
      </table>
    </DialogFrame>
  );
}

function RateRow({ kind }: { readonly kind: ModeKind }) {
  const dispatch = useDispatch();
  const content = useApp((state) => state.cabinet);
  const sharpened = useApp((state) => state.caseRecord.evidence.rates);
  const rate = rateOf(kind, content);
  const own = ownRate(kind, content);
  const isMistake = isWiringMistake(kind);
  const what = startSentence(wordCauseKind(kind));
  const now = rateOf(kind, content, sharpened);
  const write = (field: 'perYear' | 'intermittentShare', head: string) => (value: number | null) =>
    dispatch('edit-rate', { edit: { ...kind, field, value }, what: words.field(what, head) });
  return (
    <tr>
      <th scope="row">{what}</th>
      <td>
        <TypedFigure
          value={rate.perYear}
          name={words.field(what, heads.rate)}
          says={isMistake ? words.perRework : ''}
          scale={1000}
          most={isMistake ? 1 : mostPerYear}
          bad={words.badFigure(isMistake ? 1000 : null)}
          onChange={write('perYear', heads.rate)}
        />
      </td>
      <td>
        {usualRate(kind).intermittentShare === 0 ? (
          words.steadyOnly
        ) : (
          <TypedFigure
            value={rate.intermittentShare}
            name={words.field(what, heads.share)}
            says=""
            scale={100}
            most={1}
            bad={words.badFigure(100)}
            onChange={write('intermittentShare', heads.share)}
          />
        )}
      </td>
      <td>{own === undefined ? words.assumed : <Source kind={kind} source={own.source ?? ''} what={what} />}</td>
      {sharpened && (
        <td>
          {isAssumed(rate) && now.perYear !== rate.perYear
            ? words.sharpened(wordFactor(now.perYear / rate.perYear), wordNumber(now.perYear * 1000))
            : '–'}
        </td>
      )}
    </tr>
  );
}

/** Where the cabinet's own figure comes from, in the user's words. */
function Source({ kind, source, what }: { readonly kind: ModeKind; readonly source: string; readonly what: string }) {
  const dispatch = useDispatch();
  return (
    <TypedLine
      className="rate-source"
      value={source}
      name={words.field(what, heads.origin)}
      placeholder={words.cabinet}
      title={words.sourceHint}
      maxLength={200}
      onSet={(value) => dispatch('edit-rate', { edit: { ...kind, field: 'source', value }, what: words.field(what, heads.origin) })}
    />
  );
}
