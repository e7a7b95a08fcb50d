import { useEffect, useRef } from 'react';
import { Popover } from 'react-aria-components';
import { injectWords, type Names, startSentence, wordItem, wordMode } from '../../engine/messages/index.ts';
import type { Fault } from '../../engine/schema/index.ts';
import { modeKey } from '../../engine/simulation/index.ts';
import { EntryDialog } from '../find/EntryDialog.tsx';
import { targetName } from './targetName.ts';
import '../find/entry.css';
import { namesOf } from '../state/names.ts';
import { useApp, useDispatch } from '../state/useWorkbench.ts';
import { focusTarget, targetElementId } from './elements.ts';
import { type ChoiceGroup, listChoices } from './faultChoices.ts';
import type { InjectTarget } from './injectState.ts';
import './choose.css';

/** Asks what is wrong with one thing of the picture: every fault that it can have, in words. */
export function InjectPopover({ target }: { readonly target: InjectTarget }) {
  const dispatch = useDispatch();
  const topology = useApp((state) => state.checked.topology);
  const faults = useApp((state) => state.inject.faults);
  const anchor = useRef<Element | null>(null);
  anchor.current = document.getElementById(targetElementId(target));
  const list = useRef<HTMLDivElement>(null);
  useEffect(() => {
    const buttons = [...(list.current?.querySelectorAll('button') ?? [])];
    (buttons.find((button) => button.getAttribute('aria-pressed') === 'true') ?? buttons[0])?.focus({ preventScroll: true });
  }, []);
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
    <Popover
      triggerRef={anchor}
      isOpen
      isNonModal
      onOpenChange={(open) => !open && close()}
      placement="bottom start"
      offset={8}
      className="inject-popover"
    >
      <EntryDialog label={label} onKeyDown={onKeyDown}>
        <p className="entry-head">
          <b>{label}</b>
        </p>
        <div ref={list} className={`fault-groups${groups.length > 1 ? ' wide' : ''}`}>
          {groups.map((group) => (
            <Group key={group.key} group={group} names={names} injected={faults} onTake={take} />
          ))}
        </div>
        <p className="entry-hint quiet-text">{injectWords.chooseHint}</p>
      </EntryDialog>
    </Popover>
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
