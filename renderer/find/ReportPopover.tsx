import { useRef, useState } from 'react';
import { Popover } from 'react-aria-components';
import { groupWords, windowTexts, wordGap, wordGaps } from '../../engine/messages/index.ts';
import { type OrdinalGroup, ordinalGroups } from '../../engine/schema/index.ts';
import type { ChainTopology } from '../../engine/topology/index.ts';
import { chainElementId } from '../canvas/unitElement.ts';
import { currentSnapshot, findReport } from '../state/evidence.ts';
import { namesOf } from '../state/names.ts';
import { useApp, useDispatch } from '../state/useWorkbench.ts';
import { EntryDialog } from './EntryDialog.tsx';
import './entry.css';

/** Asks what the controller reports of one chain: nothing lost, or the gap by the ordinals it names. */
export function ReportPopover({ chain: chainId }: { readonly chain: string }) {
  const dispatch = useDispatch();
  const topology = useApp((state) => state.checked.topology);
  const gaps = useApp((state) => findReport(currentSnapshot(state.caseRecord), chainId)?.gaps);
  const anchor = useRef<Element | null>(null);
  // Under the controller, so that the units that light up can be seen.
  anchor.current = document.getElementById(chainElementId(chainId))?.closest('.controller') ?? null;
  const names = namesOf(topology);
  const chain = topology.chains.find(({ id }) => id === chainId);
  if (!chain) return null;

  const close = () => {
    dispatch('close-entry');
    document.getElementById(chainElementId(chainId))?.focus({ preventScroll: true });
  };
  const enter = (entered: readonly (number | 'none')[]) => {
    dispatch('enter-report', { chain: chainId, gaps: entered, at: new Date().toISOString() });
    dispatch('announce', { text: windowTexts.report.entered(`${names.chain(chainId)} ${wordGaps(names, chainId, entered)}`) });
  };
  const withdraw = () => {
    dispatch('withdraw-report', { chain: chainId });
    close();
  };
  return (
    <Popover
      triggerRef={anchor}
      isOpen
      isNonModal
      onOpenChange={(open) => !open && close()}
      placement="bottom start"
      offset={6}
      className="entry-popover"
      // A click on a gap of the picture is an answer too.
      shouldCloseOnInteractOutside={(element) => !element.closest('.cabinet')}
    >
      <EntryDialog className="report" label={windowTexts.report.title(names.chain(chainId))}>
        <p className="entry-head">
          <b>{windowTexts.report.title(names.chain(chainId))}</b>
        </p>
        <div className="report-answers">
          <button
            type="button"
            className="button"
            aria-pressed={gaps?.length === 1 && gaps[0] === 'none'}
            onClick={() => {
              enter(['none']);
              close();
            }}
          >
            {windowTexts.report.none}
          </button>
          <button type="button" className="button" aria-pressed={gaps === undefined} onClick={withdraw}>
            {windowTexts.report.notEntered}
          </button>
        </div>
        {chain.units.length > 0 && <GapByOrdinals chain={chain} gaps={gaps} onEnter={enter} onDone={close} />}
      </EntryDialog>
    </Popover>
  );
}

interface Counted {
  readonly group: OrdinalGroup | 'controller';
  readonly ordinal: string;
}

function GapByOrdinals({
  chain,
  gaps,
  onEnter,
  onDone,
}: {
  readonly chain: ChainTopology;
  readonly gaps: readonly (number | 'none')[] | undefined;
  readonly onEnter: (gaps: readonly number[]) => void;
  readonly onDone: () => void;
}) {
  const topology = useApp((state) => state.checked.topology);
  const names = namesOf(topology);
  const placeAt = (position: number): Counted => {
    const unit = chain.units[position - 1];
    const place = unit && topology.placeOf.get(unit);
    return place ? { group: place.group, ordinal: String(place.ordinal) } : { group: 'controller', ordinal: '' };
  };
  const positionOf = ({ group, ordinal }: Counted): number | null => {
    if (group === 'controller') return 0;
    const index = chain.units.findIndex((unit) => {
      const place = topology.placeOf.get(unit);
      return place?.group === group && String(place.ordinal) === ordinal.trim();
    });
    return index < 0 ? null : index + 1;
  };
  const known = (gaps ?? []).filter((gap) => gap !== 'none');
  const blank: Counted = { group: 'drive', ordinal: '' };
  const [reached, setReached] = useState<Counted>(known[0] === undefined ? blank : placeAt(known[0] - 1));
  const [missing, setMissing] = useState<Counted>(known.length === 0 ? blank : placeAt(known[known.length - 1] ?? 1));
  const groups = ordinalGroups.filter((group) => chain.units.some((unit) => topology.placeOf.get(unit)?.group === group));

  /** The gaps between the two; where only one is named, the gap beside it. */
  const gapsOf = (last: Counted, first: Counted): readonly number[] | null => {
    const lastBlank = last.group !== 'controller' && last.ordinal.trim() === '';
    const firstBlank = first.ordinal.trim() === '';
    const from = lastBlank ? null : positionOf(last);
    const to = firstBlank ? null : positionOf(first);
    if ((lastBlank && firstBlank) || (!lastBlank && from === null) || (!firstBlank && to === null)) return null;
    if (from === null) return to === null ? null : [to];
    if (to === null) return from < chain.units.length ? [from + 1] : null;
    return to > from ? Array.from({ length: to - from }, (_, index) => from + 1 + index) : null;
  };
  const change = (last: Counted, first: Counted) => {
    setReached(last);
    setMissing(first);
    const found = gapsOf(last, first);
    if (found) onEnter(found);
  };
  const found = gapsOf(reached, missing);
  const problem = complaintOf(reached, missing, positionOf);
  return (
    <form
      className="gap-form"
      onSubmit={(event) => {
        event.preventDefault();
        onDone();
      }}
    >
      <PlaceField
        label={windowTexts.report.reached}
        groups={['controller', ...groups]}
        value={reached}
        onChange={(value) => change(value, missing)}
        autoFocus
      />
      <PlaceField label={windowTexts.report.missing} groups={groups} value={missing} onChange={(value) => change(reached, value)} />
      <output className="gap-answer">
        {problem ?? (found ? windowTexts.report.gapIs(found.map((gap) => wordGap(names, chain.id, gap)).join(', ')) : '')}
      </output>
      <p className="entry-hint quiet-text">{windowTexts.report.hint}</p>
      <button type="submit" className="button small">
        {windowTexts.report.done}
      </button>
    </form>
  );
}

function complaintOf(reached: Counted, missing: Counted, positionOf: (place: Counted) => number | null): string | null {
  for (const place of [reached, missing]) {
    if (place.group !== 'controller' && place.ordinal.trim() !== '' && positionOf(place) === null) {
      return windowTexts.report.unknownPlace(`${groupWords[place.group]} ${place.ordinal.trim()}`);
    }
  }
  const from = reached.group !== 'controller' && reached.ordinal.trim() === '' ? null : positionOf(reached);
  const to = missing.ordinal.trim() === '' ? null : positionOf(missing);
  return from !== null && to !== null && to <= from ? windowTexts.report.wrongOrder : null;
}

function PlaceField({
  label,
  groups,
  value,
  onChange,
  autoFocus = false,
}: {
  readonly label: string;
  readonly groups: readonly Counted['group'][];
  readonly value: Counted;
  readonly onChange: (value: Counted) => void;
  readonly autoFocus?: boolean;
}) {
  const isGroup = (text: string): text is Counted['group'] => groups.some((group) => group === text);
  return (
    <fieldset className="place-field">
      <legend>{label}</legend>
      <select
        aria-label={label}
        value={value.group}
        onChange={(event) => {
          if (isGroup(event.target.value)) onChange({ ...value, group: event.target.value });
        }}
      >
        {groups.map((group) => (
          <option key={group} value={group}>
            {group === 'controller' ? windowTexts.report.controller : groupWords[group]}
          </option>
        ))}
      </select>
      {value.group !== 'controller' && (
        <input
          aria-label={`${label}, ${windowTexts.report.ordinal}`}
          inputMode="numeric"
          maxLength={4}
          // The answer is one number: the pop-up opens to have it typed.
          // biome-ignore lint/a11y/noAutofocus: a dialog must take the focus, and this is its first field
          autoFocus={autoFocus}
          value={value.ordinal}
          onChange={(event) => onChange({ ...value, ordinal: event.target.value.replace(/\D/g, '') })}
        />
      )}
    </fieldset>
  );
}
