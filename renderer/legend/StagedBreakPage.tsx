import { legendWords, wordGap } from '../../engine/messages/index.ts';
import { linkEnds, onsets, type TypeRecord } from '../../engine/schema/index.ts';
import type { Cabinet } from '../../engine/topology/index.ts';
import { Sign } from '../marks/Sign.tsx';
import { namesOf } from '../state/names.ts';
import { useApp, useDispatch } from '../state/useWorkbench.ts';
import type { StagedDraft, StagedEntry } from './equipmentState.ts';
import { StagedDisplays } from './StagedDisplays.tsx';
import { StagedFindings } from './StagedFindings.tsx';
import { chainOf, emptyEntry, freshDraft, linksOfType } from './stagedDraft.ts';

const words = legendWords.staged;

/** On a healthy machine one plug is pulled and the displays are read: what follows for the behaviour of the types on that chain. */
export function StagedBreakPage({ type }: { readonly type: TypeRecord }) {
  const dispatch = useDispatch();
  const cabinet = useApp((state) => state.checked.cabinet);
  const kept = useApp((state) => state.equipment.staged);
  const draft = kept ?? (cabinet && freshDraft(cabinet, type.id));
  const back = (
    <button type="button" className="button small" onClick={() => dispatch('open-equipment', { page: { kind: 'type', type: type.id } })}>
      {words.back}
    </button>
  );
  if (!cabinet || !draft) {
    return (
      <article className="equipment-page" aria-label={words.region}>
        <p className="empty">{words.noLinks}</p>
        {back}
      </article>
    );
  }
  const set = (staged: StagedDraft) => dispatch('stage-break', { staged });
  return (
    <article className="equipment-page staged" aria-label={words.region}>
      <div className="page-head">
        <h3>
          {words.region}: {type.name}
        </h3>
        {back}
      </div>
      <section className="staged-caution" aria-label={words.caution}>
        <h4>
          <Sign name="abnormal" /> {words.caution}
        </h4>
        <ul>
          {words.cautions.map((caution) => (
            <li key={caution}>{caution}</li>
          ))}
        </ul>
        <label className="confirm">
          <input type="checkbox" checked={draft.confirmed} onChange={(event) => set({ ...draft, confirmed: event.target.checked })} />
          <b>{words.confirm}</b>
        </label>
      </section>
      {draft.confirmed && <Breaks cabinet={cabinet} type={type} draft={draft} set={set} />}
    </article>
  );
}

interface Parts {
  readonly cabinet: Cabinet;
  readonly type: TypeRecord;
  readonly draft: StagedDraft;
  readonly set: (draft: StagedDraft) => void;
}

function Breaks({ cabinet, type, draft, set }: Parts) {
  const entry = draft.breaks[draft.at] ?? draft.breaks[0];
  if (!entry) return null;
  const setEntry = (changed: StagedEntry) =>
    set({ ...draft, breaks: draft.breaks.map((one, index) => (index === draft.at ? changed : one)) });
  const add = (next: StagedEntry) => {
    const id = Math.max(...draft.breaks.map((one) => one.id)) + 1;
    set({ ...draft, breaks: [...draft.breaks, { ...next, id }], at: draft.breaks.length });
  };
  return (
    <>
      <div className="break-tabs" role="toolbar" aria-label={words.region}>
        {draft.breaks.map((one, index) => (
          <button
            key={one.id}
            type="button"
            className="button small"
            aria-pressed={index === draft.at}
            onClick={() => set({ ...draft, at: index })}
          >
            {words.breakNumber(index + 1)}
          </button>
        ))}
        <button type="button" className="button small" onClick={() => add(emptyEntry(entry.link))}>
          {words.addBreak}
        </button>
        {draft.breaks.length > 1 && (
          <button
            type="button"
            className="text-button"
            onClick={() => set({ ...draft, breaks: draft.breaks.filter((_, index) => index !== draft.at), at: 0 })}
          >
            {words.dropBreak(draft.at + 1)}
          </button>
        )}
      </div>
      <ActFields cabinet={cabinet} type={type} entry={entry} onChange={setEntry} />
      <StagedDisplays cabinet={cabinet} entry={entry} onChange={setEntry} />
      <ReportAndLight cabinet={cabinet} entry={entry} onChange={setEntry} />
      <StagedFindings cabinet={cabinet} type={type} draft={draft} set={set} onStage={add} />
    </>
  );
}

interface EntryParts {
  readonly cabinet: Cabinet;
  readonly entry: StagedEntry;
  readonly onChange: (entry: StagedEntry) => void;
}

function ActFields({ cabinet, type, entry, onChange }: EntryParts & { readonly type: TypeRecord }) {
  const names = namesOf(cabinet);
  return (
    <fieldset className="staged-act">
      <legend>{words.which}</legend>
      <label>
        {words.link}
        <select value={entry.link} onChange={(event) => onChange({ ...entry, link: event.target.value, displays: [], gap: null })}>
          {linksOfType(cabinet, type.id).map((link) => (
            <option key={link} value={link}>
              {names.link(link)}
            </option>
          ))}
        </select>
      </label>
      <label>
        {words.end}
        <select
          value={entry.end}
          onChange={(event) => onChange({ ...entry, end: linkEnds.find((end) => end === event.target.value) ?? 'lower' })}
        >
          {linkEnds.map((end) => (
            <option key={end} value={end}>
              {words.ends[end].label}
            </option>
          ))}
        </select>
      </label>
      <label>
        {words.when}
        <select
          value={entry.onset}
          onChange={(event) => onChange({ ...entry, onset: onsets.find((onset) => onset === event.target.value) ?? 'while-running' })}
        >
          {onsets.map((onset) => (
            <option key={onset} value={onset}>
              {words.onsets[onset]}
            </option>
          ))}
        </select>
      </label>
      <label>
        {words.again}
        <select
          value={entry.pluggedAgain ? 'yes' : 'no'}
          onChange={(event) => onChange({ ...entry, pluggedAgain: event.target.value === 'yes' })}
        >
          <option value="no">{words.agains.no}</option>
          <option value="yes">{words.agains.yes}</option>
        </select>
      </label>
    </fieldset>
  );
}

function ReportAndLight({ cabinet, entry, onChange }: EntryParts) {
  const names = namesOf(cabinet);
  const chain = chainOf(cabinet, entry.link);
  if (!chain) return null;
  const gaps = chain.links.map((_, index) => index + 1);
  return (
    <div className="staged-act">
      <label>
        {words.report}
        <select
          value={entry.gap === null ? '' : String(entry.gap)}
          onChange={({ target: { value } }) => onChange({ ...entry, gap: value === '' ? null : value === 'none' ? 'none' : Number(value) })}
        >
          <option value="">{words.lightOutcomes['not-looked']}</option>
          {(['none', ...gaps] as const).map((gap) => (
            <option key={gap} value={gap}>
              {wordGap(names, chain.id, gap)}
            </option>
          ))}
        </select>
      </label>
      {linkEnds.map((end) => (
        <label key={end}>
          {words.light}, {words.ends[end].label}
          <select
            value={entry.light[end] ?? ''}
            onChange={({ target: { value } }) =>
              onChange({ ...entry, light: { ...entry.light, [end]: value === 'none' || value === 'bright' ? value : null } })
            }
          >
            <option value="">{words.lightOutcomes['not-looked']}</option>
            <option value="none">{words.lightOutcomes.none}</option>
            <option value="bright">{words.lightOutcomes.bright}</option>
          </select>
        </label>
      ))}
    </div>
  );
}
