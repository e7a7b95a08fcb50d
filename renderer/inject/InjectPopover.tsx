import { useRef } from 'react';
import { injectWords, type Names, startSentence, wordItem, wordMode } from '../../engine/messages/index.ts';
import type { Fault } from '../../engine/schema/index.ts';
import { modeKey } from '../../engine/simulation/index.ts';
import { EntryFrame } from '../find/EntryFrame.tsx';
import { namesOf } from '../state/names.ts';
import { useApp, useDispatch } from '../state/useWorkbench.ts';
import { focusTarget, targetElementId } from './elements.ts';
import { type ChoiceGroup, listChoices } from './faultChoices.ts';
import type { InjectTarget } from './injectState.ts';
import { targetName } from './targetName.ts';
import './choose.css';

/** Asks what is wrong with one thing of the picture: every fault that it can have, in words. */
export function InjectPopover({ target }: { readonly target: InjectTarget }) {
  const dispatch = useDispatch();
  const topology = useApp((state) => state.checked.topology);
  const faults = useApp((state) => state.inject.faults);
  const list = useRef<HTMLDivElement>(null);
  const names = namesOf(topology);
  const groups = listChoices(topology, target);
  const close = () => {
    dispatch('close-injection');
    focusTarget(target);
  };
  const take = (fault: Fault, chosen: boolean) => {
    if (chosen) dispatch('remove-fault', { key: modeKey(fault) });
    else dispatch('inject-fault', { fault });
    focusTarget(target);
  };
  const onKeyDown = (event: React.KeyboardEvent) => {
    const step = event.key === 'ArrowDown' ? 1 : event.key === 'ArrowUp' ? -1 : 0;
    if (step === 0) return;
    event.preventDefault();
    const buttons = [...(list.current?.querySelectorAll('button') ?? [])];
    const at = buttons.findIndex((button) => button.matches(':focus'));
    buttons[(at + step + buttons.length) % buttons.length]?.focus();
  };
  const label = injectWords.choose(targetName(names, target));
  return (
    <EntryFrame
      label={label}
      anchor={document.getElementById(targetElementId(target))}
      placement="bottom start"
      className="inject-popover"
      first={(dialog) => dialog.querySelector<HTMLElement>('button[aria-pressed="true"]') ?? dialog.querySelector('button')}
      onClose={close}
      onKeyDown={onKeyDown}
    >
      <div ref={list} className={`fault-groups${groups.length > 1 ? ' wide' : ''}`}>
        {groups.map((group) => (
          <Group key={group.key} group={group} names={names} injected={faults} onTake={take} />
        ))}
      </div>
      <p className="entry-hint quiet-text">{injectWords.chooseHint}</p>
    </EntryFrame>
  );
}

function Group({
  group,
  names,
  injected,
  onTake,
}: {
  readonly group: ChoiceGroup;
  readonly names: Names;
  readonly injected: readonly Fault[];
  readonly onTake: (fault: Fault, chosen: boolean) => void;
}) {
  const [first] = group.faults;
  if (!first) return null;
  return (
    <fieldset className="fault-group">
      <legend>{startSentence(wordItem(names, first))}</legend>
      {group.faults.map((fault) => {
        const chosen = injected.some((other) => modeKey(other) === modeKey(fault));
        return (
          <button key={fault.mode} type="button" className="fault-choice" aria-pressed={chosen} onClick={() => onTake(fault, chosen)}>
            {wordMode(fault.item, fault.mode)}
          </button>
        );
      })}
    </fieldset>
  );
}
