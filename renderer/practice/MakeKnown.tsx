import { useStore } from 'zustand';
import { circumstanceWords, meaningWords, type Names, wordGaps, makeWords as words } from '../../engine/messages/index.ts';
import { circumstanceKinds } from '../../engine/schema/index.ts';
import type { Simulation } from '../../engine/simulation/index.ts';
import { DisplayMark } from '../marks/DisplayMark.tsx';
import { knownOf, type Shown } from './makeDraft.ts';
import { changeDraft, makeStore } from './makeStore.ts';

const presets = ['complaining', 'all', 'none'] as const;

/** What everybody knows before the first step: displays, reports, circumstances. */
export function MakeKnown({ shown, names }: { readonly shown: Simulation | null; readonly names: Names }) {
  const draft = useStore(makeStore, (state) => state.draft);
  const { circumstances } = draft;
  const known = shown === null ? null : knownOf(draft, shown);
  const toggle = (list: readonly string[], id: string) => (list.includes(id) ? list.filter((one) => one !== id) : [...list, id]);
  return (
    <section aria-label={words.known}>
      <div className="section-head">
        <h2>{words.known}</h2>
      </div>
      {shown === null || known === null ? (
        <p className="practice-small">{words.knownWaiting}</p>
      ) : (
        <>
          <fieldset>
            <legend>{words.displays}</legend>
            <Presets name="displays" now={draft.displays} onChoose={(displays) => changeDraft({ displays })} />
            <div className="make-shown">
              {[...shown.displays.values()].map(({ unit, meaning }) => (
                <label key={unit}>
                  <input
                    type="checkbox"
                    checked={known.displays.includes(unit)}
                    onChange={() => changeDraft({ displays: toggle(known.displays, unit) })}
                  />
                  <b className="designation">{names.unit(unit)}</b> <DisplayMark name={meaning} size={16} /> {meaningWords[meaning].label}
                </label>
              ))}
            </div>
          </fieldset>
          <fieldset>
            <legend>{words.reports}</legend>
            <Presets name="reports" now={draft.reports} onChoose={(reports) => changeDraft({ reports })} />
            <div className="make-shown reports">
              {[...shown.reports.values()].map(({ chain, gap }) => (
                <label key={chain}>
                  <input
                    type="checkbox"
                    checked={known.reports.includes(chain)}
                    onChange={() => changeDraft({ reports: toggle(known.reports, chain) })}
                  />
                  <b className="designation">{names.chain(chain)}</b> {wordGaps(names, chain, [gap])}
                </label>
              ))}
            </div>
          </fieldset>
        </>
      )}
      <fieldset>
        <legend>{words.circumstances}</legend>
        <p className="practice-small">{words.circumstancesWhy}</p>
        <div className="make-shown">
          {circumstanceKinds.map((kind) => (
            <label key={kind} title={circumstanceWords[kind].meaning}>
              <input
                type="checkbox"
                checked={circumstances.includes(kind)}
                onChange={() =>
                  changeDraft({
                    circumstances: circumstances.includes(kind) ? circumstances.filter((one) => one !== kind) : [...circumstances, kind],
                  })
                }
              />
              {circumstanceWords[kind].label}
            </label>
          ))}
        </div>
      </fieldset>
    </section>
  );
}

function Presets({ name, now, onChoose }: { readonly name: string; readonly now: Shown; readonly onChoose: (shown: Shown) => void }) {
  return (
    <div className="make-presets">
      {presets.map((preset) => (
        <label key={preset}>
          <input type="radio" name={`make-${name}`} checked={now === preset} onChange={() => onChoose(preset)} />
          {words.presets[preset]}
        </label>
      ))}
      {typeof now !== 'string' && (
        <label>
          <input type="radio" name={`make-${name}`} checked readOnly />
          {words.presets.these}
        </label>
      )}
    </div>
  );
}
