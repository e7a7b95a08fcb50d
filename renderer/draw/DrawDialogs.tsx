import { useMemo } from 'react';
import { drawWords, unitKindWords } from '../../engine/messages/index.ts';
import type { AppState } from '../state/appState.ts';
import { namesOf } from '../state/names.ts';
import { useApp, useDispatch, useWindow } from '../state/useWorkbench.ts';
import { Chooser } from './Chooser.tsx';
import { connectChoices } from './connectChoices.ts';
import { PasteRows } from './PasteRows.tsx';

/** The dialogs of Draw, one at a time. */
export function DrawDialogs() {
  const dialog = useApp((state) => state.draw.dialog);
  if (dialog === 'connect-to') return <ConnectTo />;
  if (dialog === 'find-thing') return <FindThing />;
  return dialog === 'paste-rows' ? <PasteRows /> : null;
}

/** What is chosen, and everything to which it can be connected. */
function ConnectTo() {
  const { store } = useWindow();
  const dispatch = useDispatch();
  const choices = useMemo(() => connectChoices(store.getState()), [store]);
  const words = drawWords.chooser.connect;
  return (
    <Chooser
      title={words.title}
      label={words.label}
      empty={words.empty}
      choices={choices.map(({ key, words: what }) => ({ id: key, words: what }))}
      onChoose={(id) => {
        const choice = choices.find(({ key }) => key === id);
        if (choice?.command === 'join-ports') dispatch('join-ports', choice.args);
        if (choice?.command === 'replug-end') dispatch('replug-end', choice.args);
        if (choice?.command === 'feed-units') dispatch('feed-units', choice.args);
      }}
      onClose={() => dispatch('close-draw-dialog')}
    />
  );
}

/** Everything of the cabinet, found by any word that is written of it; what is chosen comes into view. */
function FindThing() {
  const { store } = useWindow();
  const dispatch = useDispatch();
  const choices = useMemo(() => listThings(store.getState()), [store]);
  const words = drawWords.chooser.find;
  return (
    <Chooser
      title={words.title}
      label={words.label}
      empty={words.empty}
      choices={choices}
      onChoose={(id) => {
        dispatch('choose', { ids: [id], how: 'only' });
        dispatch('show-on-cabinet', { subject: id });
      }}
      onClose={() => dispatch('close-draw-dialog')}
    />
  );
}

function listThings({ cabinet, checked: { topology } }: AppState) {
  const names = namesOf(topology);
  const units = (cabinet.units ?? []).map((unit) => ({
    id: unit.id,
    words: names.unit(unit.id),
    detail: [unitKindWords[unit.kind], (unit.axes ?? []).map(({ name }) => name).join(' '), names.place(unit.id)]
      .filter((part) => part !== '')
      .join(', '),
    also: [unit.model, unit.partNumber, unit.serial, unit.board?.partNumber, unit.board?.serial].join(' '),
  }));
  const cables = (cabinet.links ?? []).map((link) => ({
    id: link.id,
    words: names.link(link.id),
    detail: drawWords.chooser.find.leadsTo(link.lower ? names.unit(link.lower.unit) : null),
    also: [link.partNumber, link.serial, link.labelUpper, link.labelLower, link.route].join(' '),
  }));
  const leads = (cabinet.leads ?? []).map((lead) => ({
    id: lead.id,
    words: names.lead(lead.id),
    detail: drawWords.chooser.find.leadsTo(lead.to ? names.unit(lead.to.unit) : null),
    also: [lead.fuse, lead.partNumber].join(' '),
  }));
  const chains = topology.chains.map(({ id, units: own }) => ({
    id,
    words: names.chain(id),
    detail: drawWords.chooser.find.units(own.length),
  }));
  return [...units, ...cables, ...leads, ...chains];
}
