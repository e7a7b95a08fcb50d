import { useEffect, useRef, useState } from 'react';
import { entryWords, groupWords, windowTexts, wordGap } from '../../engine/messages/index.ts';
import type { ChainTopology } from '../../engine/topology/index.ts';
import { namesOf } from '../state/names.ts';
import { useApp } from '../state/useWorkbench.ts';
import { meantKey } from './entryKeys.ts';
import { blankField, type CountedField, fieldsOf, type Gaps, groupsOf, readGaps } from './reportPlaces.ts';

const words = windowTexts.report;

interface GapFormProps {
  readonly chain: ChainTopology;
  readonly gaps: Gaps | undefined;
  readonly onEnter: (gaps: Gaps) => void;
  readonly onDone: () => void;
  /** Backspace with nothing left to take back. */
  readonly onBack: () => void;
}

/** The gap by the ordinals that the controller names; the units light up on the picture while they are typed. */
export function GapForm({ chain, gaps, onEnter, onDone, onBack }: GapFormProps) {
  const topology = useApp((state) => state.checked.topology);
  const names = namesOf(topology);
  const [[reached, missing], setFields] = useState(() => fieldsOf(topology, chain, gaps));
  const first = useRef<HTMLInputElement>(null);
  const second = useRef<HTMLInputElement>(null);
  const typed = useRef(keyOf(gaps));
  const [asked, setAsked] = useState(false);
  useEffect(() => {
    // A click on the picture, or an undo: the fields follow. What was typed here stands as it was typed.
    if (keyOf(gaps) === typed.current) return;
    typed.current = keyOf(gaps);
    setFields(fieldsOf(topology, chain, gaps));
  }, [gaps, topology, chain]);

  const change = (last: CountedField, next: CountedField) => {
    setFields([last, next]);
    const read = readGaps(topology, chain, last, next);
    if (read.kind !== 'gaps') return;
    typed.current = keyOf(read.gaps);
    onEnter(read.gaps);
  };
  const read = readGaps(topology, chain, reached, missing);
  const groups = groupsOf(topology, chain);
  const said = () => {
    switch (read.kind) {
      case 'unknown-place':
        return words.unknownPlace(
          `${read.place.group === 'controller' ? words.controller : groupWords[read.place.group]} ${read.place.ordinal}`.trim(),
        );
      case 'wrong-order':
        return words.wrongOrder;
      case 'gaps':
        return read.gaps[0] === 'none' ? `${words.none}.` : words.gapIs(read.gaps.map((gap) => wordGap(names, chain.id, gap)).join(', '));
      case 'nothing':
        return asked ? words.nothingTyped : '';
    }
  };
  return (
    <form
      className="gap-form"
      onSubmit={(event) => {
        event.preventDefault();
        // Struck out of habit, as behind a number in the chain before: nothing is passed over unseen.
        if (read.kind === 'nothing' && gaps === undefined && !asked) setAsked(true);
        else onDone();
      }}
    >
      <PlaceField
        label={words.reached}
        groups={['controller', ...groups]}
        value={reached}
        input={first}
        onChange={(value) => change(value, missing)}
        onNext={() => second.current?.focus()}
        onBack={onBack}
      />
      <PlaceField
        label={words.missing}
        groups={groups}
        value={missing}
        input={second}
        onChange={(value) => change(reached, value)}
        onNext={() => first.current?.focus()}
        onBack={() => first.current?.focus()}
      />
      <output className="gap-answer" data-wrong={read.kind === 'unknown-place' || read.kind === 'wrong-order'}>
        {said()}
      </output>
      <div className="gap-end">
        <p className="entry-hint quiet-text">
          {words.hint} {entryWords.report.keys}
        </p>
        <button type="submit" className="button primary">
          {words.done} <kbd>⏎</kbd>
        </button>
      </div>
    </form>
  );
}

const keyOf = (gaps: Gaps | undefined) => gaps?.join(' ') ?? '';

interface PlaceFieldProps {
  readonly label: string;
  readonly groups: readonly CountedField['group'][];
  readonly value: CountedField;
  readonly input: React.RefObject<HTMLInputElement | null>;
  readonly onChange: (value: CountedField) => void;
  readonly onNext: () => void;
  readonly onBack: () => void;
}

/** Figures of an ordinal. */
const mostFigures = 4;

/** One unit by group and number. Letters choose the group while the hand stays where it is. */
function PlaceField({ label, groups, value, input, onChange, onNext, onBack }: PlaceFieldProps) {
  const isGroup = (text: string): text is CountedField['group'] => groups.some((group) => group === text);
  const choose = (group: CountedField['group']) => {
    if (groups.includes(group)) onChange({ group, ordinal: group === 'controller' ? '' : value.ordinal });
  };
  const type = (ordinal: string) =>
    onChange({ group: value.group === 'controller' && ordinal !== '' ? 'drive' : value.group, ordinal: ordinal.slice(0, mostFigures) });
  const onKeyDown = (event: React.KeyboardEvent) => {
    if (event.ctrlKey || event.metaKey || event.altKey) return;
    const key = meantKey(event);
    // A figure that the field does not take by itself: the number pad with NumLock off.
    if (/^\d$/.test(key) && key !== event.key) {
      event.preventDefault();
      if (key !== '0' || value.ordinal !== '') return type(value.ordinal + key);
    }
    const act = actOf(key === '.' ? ',' : key, value);
    if (!act) return;
    event.preventDefault();
    if (act === 'next') onNext();
    else if (act === 'back') onBack();
    else if (act === 'clear') onChange(blankField);
    else choose(act);
  };
  return (
    <fieldset className="place-field">
      <legend>{label}</legend>
      <select
        aria-label={label}
        value={value.group}
        onChange={(event) => {
          if (isGroup(event.target.value)) choose(event.target.value);
        }}
      >
        {groups.map((group) => (
          <option key={group} value={group}>
            {group === 'controller' ? words.controller : groupWords[group]}
          </option>
        ))}
      </select>
      <input
        ref={input}
        aria-label={`${label}, ${words.ordinal}`}
        inputMode="numeric"
        maxLength={mostFigures}
        autoComplete="off"
        placeholder={value.group === 'controller' ? '–' : ''}
        value={value.ordinal}
        onKeyDown={onKeyDown}
        onChange={(event) => type(event.target.value.replace(/\D/g, ''))}
      />
    </fieldset>
  );
}

/** What a key does in the field besides typing a digit. */
function actOf(key: string, { group, ordinal }: CountedField): CountedField['group'] | 'next' | 'back' | 'clear' | null {
  switch (key.toLowerCase()) {
    case 'e':
      return 'encoder-interface';
    case 'd':
      return 'drive';
    case 'c':
      return 'controller';
    case '0':
      // No unit has the number 0; the controller stands before the first.
      return ordinal === '' ? 'controller' : null;
    case '-':
    case ',':
    case ' ':
      return 'next';
    case 'backspace':
      if (ordinal !== '') return null;
      return group === 'drive' ? 'back' : 'clear';
    default:
      return null;
  }
}
