import { X } from 'lucide-react';
import { useState } from 'react';
import { sumsPageWords, wordFigureChange, wordNumber, wordTriedFigure } from '../../engine/messages/index.ts';
import { type ThingFigure, thingFigures } from '../../engine/sums/index.ts';
import { namesOf } from '../state/names.ts';
import { useApp, useWindow } from '../state/useWorkbench.ts';
import { changeKey } from './sumsState.ts';
import { TryField } from './TryField.tsx';
import { type TriedFigure, type TriedThing, writtenValue } from './tryable.ts';

/** What is tried, and a way to try any figure; nothing of it is in the document until it is taken over. */
export function TriedPane() {
  const tried = useApp((state) => state.sums.tried);
  const topology = useApp((state) => state.checked.topology);
  const { dispatch, announce } = useWindow();
  const takeOver = () => {
    dispatch('take-over-tried', { changes: tried });
    dispatch('drop-tried', { change: 'all' });
    announce(sumsPageWords.takenOver(tried.length));
  };
  return (
    <section className="pane tried-pane" data-tried={tried.length > 0} aria-label={sumsPageWords.whatIf}>
      <h2 className="section-head">
        <span>
          {sumsPageWords.whatIf} <small>{tried.length === 0 ? sumsPageWords.nothingTried : sumsPageWords.tried}</small>
        </span>
      </h2>
      <dl className="always-tried">
        {(['ambient', 'reserve'] as const).map((figure) => (
          <div key={figure}>
            <dt>{wordTriedFigure(figure).label}</dt>
            <dd>
              <TryField figure={{ figure }} what={wordTriedFigure(figure).label} />
            </dd>
          </div>
        ))}
      </dl>
      <AnotherFigure />
      <p className="sum-hint">{sumsPageWords.whatIfHint}</p>
      {tried.length > 0 && (
        <>
          <ul className="tried-list">
            {tried.map((change) => {
              const words = wordFigureChange(namesOf(topology), change);
              const before = writtenValue(topology, change);
              return (
                <li key={changeKey(change)}>
                  <span>
                    <b>{words}</b>{' '}
                    <small>
                      {before === undefined
                        ? sumsPageWords.notWritten
                        : sumsPageWords.atDocument(`${wordNumber(before, 6)} ${wordTriedFigure(change.figure).unit}`.trim())}
                    </small>
                  </span>
                  <button
                    type="button"
                    className="icon-button"
                    aria-label={sumsPageWords.putBack(words)}
                    title={sumsPageWords.putBack(words)}
                    onClick={() => dispatch('drop-tried', { change })}
                  >
                    <X size={16} aria-hidden="true" />
                  </button>
                </li>
              );
            })}
          </ul>
          <p className="tried-buttons">
            <button type="button" className="button primary" onClick={takeOver}>
              {sumsPageWords.takeOver}
            </button>
            <button type="button" className="button" onClick={() => dispatch('drop-tried', { change: 'all' })}>
              {sumsPageWords.putAllBack}
            </button>
          </p>
          <p className="sum-hint">{sumsPageWords.takeOverHint}</p>
        </>
      )}
    </section>
  );
}

// Object.keys is typed as string[]; these are the figures of things.
const figures = Object.keys(thingFigures) as ThingFigure[];

/** Any figure of any thing: chosen by figure, then by thing. */
function AnotherFigure() {
  const topology = useApp((state) => state.checked.topology);
  const [figure, setFigure] = useState<ThingFigure | ''>('');
  const [id, setId] = useState('');
  const names = namesOf(topology);
  const things: readonly TriedThing[] = figure === '' ? [] : thingFigures[figure];
  const candidates = [
    ...(things.includes('cable') ? [...topology.links.keys()].map((one) => [one as string, names.link(one)] as const) : []),
    ...(things.includes('lead') ? [...topology.leads.keys()].map((one) => [one as string, names.lead(one)] as const) : []),
    ...[...topology.units].flatMap(([one, { kind }]) =>
      things.includes(kind === 'supply' ? 'supply' : 'unit') ? [[one as string, names.unit(one)] as const] : [],
    ),
  ];
  const chosen = candidates.some(([one]) => one === id) ? id : '';
  const tried: TriedFigure | null = figure === '' || chosen === '' ? null : { figure, id: chosen };
  return (
    <fieldset className="another-figure">
      <legend>{sumsPageWords.anotherFigure}</legend>
      <label>
        <span>{sumsPageWords.figure}</span>
        <select value={figure} onChange={(event) => setFigure(figures.find((one) => one === event.target.value) ?? '')}>
          <option value="">{sumsPageWords.chooseFigure}</option>
          {figures.map((one) => (
            <option key={one} value={one}>
              {wordTriedFigure(one).label}
            </option>
          ))}
        </select>
      </label>
      <label>
        <span>{sumsPageWords.ofThing}</span>
        <select value={chosen} disabled={figure === ''} onChange={(event) => setId(event.target.value)}>
          <option value="">{sumsPageWords.chooseFigure}</option>
          {candidates.map(([one, name]) => (
            <option key={one} value={one}>
              {name}
            </option>
          ))}
        </select>
      </label>
      {tried !== null && (
        <p className="new-value">
          <span>{sumsPageWords.newValue}</span>
          <TryField key={`${figure}/${chosen}`} figure={tried} what={`${wordTriedFigure(tried.figure).label}, ${names.thing(chosen)}`} />
        </p>
      )}
    </fieldset>
  );
}
