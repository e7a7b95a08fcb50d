import { useState } from 'react';
import { sumsPageWords } from '../../engine/messages/index.ts';
import type { Sums } from '../../engine/sums/index.ts';
import { Words } from '../marks/Words.tsx';
import { namesOf } from '../state/names.ts';
import { useApp } from '../state/useWorkbench.ts';
import { FigureField } from './FigureField.tsx';
import { missingPlaces } from './missingPlaces.ts';

const few = 6;

/** Figures that nobody wrote down, by the place where each belongs, to be entered at once. */
export function MissingPane({ sums }: { readonly sums: Sums }) {
  const topology = useApp((state) => state.checked.topology);
  const [all, setAll] = useState(false);
  const places = missingPlaces(topology, namesOf(topology), sums.missing);
  const shown = all ? places : places.slice(0, few);
  return (
    <section className="pane missing-pane" aria-label={sumsPageWords.missing}>
      <h2 className="section-head">
        <span>
          {sumsPageWords.missing} <small>{sums.missing.length}</small>
        </span>
      </h2>
      {places.length === 0 ? (
        <p className="empty">{sumsPageWords.allWritten}</p>
      ) : (
        <>
          <p className="sum-hint">{sumsPageWords.missingHint}</p>
          {shown.map(({ key, name, figures }) => (
            <section key={key} className="missing-place">
              <h3>
                <Words>{name}</Words>
              </h3>
              {figures.map((missing) => (
                <FigureField key={`${missing.figure}/${missing.of ?? ''}`} missing={missing} owner={name} />
              ))}
            </section>
          ))}
          {places.length > few && (
            <button type="button" className="text-button" aria-expanded={all} onClick={() => setAll(!all)}>
              {all ? sumsPageWords.fewerMissing : sumsPageWords.moreMissing(places.length - few)}
            </button>
          )}
        </>
      )}
    </section>
  );
}
