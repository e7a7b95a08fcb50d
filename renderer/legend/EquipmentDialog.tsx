import { Plus, Redo2, Trash2, Undo2 } from 'lucide-react';
import { legendWords, windowTexts } from '../../engine/messages/index.ts';
import { DialogFrame } from '../shell/DialogFrame.tsx';
import { useApp, useDispatch } from '../state/useWorkbench.ts';
import type { EquipmentPage } from './equipmentState.ts';
import { LegendPage } from './LegendPage.tsx';
import { freeId } from './library.ts';
import { StagedBreakPage } from './StagedBreakPage.tsx';
import { TypePage } from './TypePage.tsx';
import { useEquipmentDispatch } from './useEquipment.ts';
import './legend.css';

const words = legendWords.dialog;

/** Types of equipment and legends of the cabinet, and the user's own library. */
export function EquipmentDialog() {
  const page = useApp((state) => state.equipment.page);
  const notice = useApp((state) => state.equipment.notice);
  const dispatch = useDispatch();
  if (!page) return null;
  return (
    <DialogFrame
      title={words.title}
      close={words.close}
      onClose={() => dispatch('close-equipment')}
      name="equipment"
      isDismissable={false}
      tools={
        <>
          <output className="equipment-notice">{notice}</output>
          <History />
        </>
      }
    >
      <Lists page={page} />
      <Page page={page} />
    </DialogFrame>
  );
}

function History() {
  const dispatch = useEquipmentDispatch();
  const undo = useApp((state) => state.history.past[state.history.past.length - 1]?.name ?? null);
  const redo = useApp((state) => state.history.future[0]?.name ?? null);
  return (
    <>
      <button
        type="button"
        className="icon-button"
        disabled={undo === null}
        aria-label={windowTexts.undoStep(undo)}
        title={windowTexts.undoStep(undo)}
        onClick={() => dispatch('undo')}
      >
        <Undo2 size={18} aria-hidden="true" />
      </button>
      <button
        type="button"
        className="icon-button"
        disabled={redo === null}
        aria-label={windowTexts.redoStep(redo)}
        title={windowTexts.redoStep(redo)}
        onClick={() => dispatch('redo')}
      >
        <Redo2 size={18} aria-hidden="true" />
      </button>
    </>
  );
}

function Page({ page }: { readonly page: EquipmentPage }) {
  const cabinet = useApp((state) => state.cabinet);
  // Undo may have taken away what is open.
  const type = page.kind === 'type' || page.kind === 'staged' ? cabinet.types?.find(({ id }) => id === page.type) : undefined;
  const legend = page.kind === 'legend' ? cabinet.legends?.find(({ id }) => id === page.legend) : undefined;
  if (type && page.kind === 'staged') return <StagedBreakPage type={type} />;
  if (type) return <TypePage type={type} />;
  if (legend) return <LegendPage legend={legend} />;
  return <p className="empty equipment-page">{(cabinet.types ?? []).length === 0 ? words.none : words.choose}</p>;
}

function Lists({ page }: { readonly page: EquipmentPage }) {
  const dispatch = useEquipmentDispatch();
  const cabinet = useApp((state) => state.cabinet);
  const types = cabinet.types ?? [];
  const legends = cabinet.legends ?? [];
  const open = page.kind === 'legend' ? page.legend : page.kind === 'none' ? null : page.type;
  const addType = () => {
    const id = freeId(`type-${types.length + 1}`, types);
    const name = firstFree(words.newType, types);
    dispatch('add-type', { id, name });
    dispatch('open-equipment', { page: { kind: 'type', type: id } });
  };
  const addLegend = () => {
    const id = freeId(`legend-${legends.length + 1}`, legends);
    dispatch('add-legend', { id, name: firstFree(words.newLegend, legends) });
    dispatch('open-equipment', { page: { kind: 'legend', legend: id } });
  };
  return (
    <nav className="equipment-lists" aria-label={words.title}>
      <ListHead label={words.types} add={windowTexts.commands.addType} onAdd={addType} />
      <ul>
        {types.map((type) => {
          const count = (cabinet.units ?? []).filter((unit) => unit.type === type.id).length;
          const unsettled = Object.values(type.behaviour ?? {}).filter((value) => value === 'unknown').length;
          return (
            <li key={type.id}>
              <button
                type="button"
                aria-current={open === type.id && page.kind !== 'legend'}
                onClick={() => dispatch('open-equipment', { page: { kind: 'type', type: type.id } })}
              >
                <b>{type.name}</b>
                <small>{[words.units(count), ...(unsettled > 0 ? [words.unsettled(unsettled)] : [])].join(' · ')}</small>
              </button>
            </li>
          );
        })}
      </ul>
      <ListHead label={words.legends} add={windowTexts.commands.addLegend} onAdd={addLegend} />
      {legends.length === 0 && <p className="empty">{words.noLegends}</p>}
      <ul>
        {legends.map((legend) => (
          <li key={legend.id}>
            <button
              type="button"
              aria-current={open === legend.id && page.kind === 'legend'}
              onClick={() => dispatch('open-equipment', { page: { kind: 'legend', legend: legend.id } })}
            >
              <b>{legend.name}</b>
              <small>{words.codes(legend.codes.length)}</small>
            </button>
          </li>
        ))}
      </ul>
      <LibraryList />
    </nav>
  );
}

function firstFree(name: (number: number) => string, taken: readonly { readonly name: string }[]): string {
  let number = taken.length + 1;
  while (taken.some((one) => one.name === name(number))) number += 1;
  return name(number);
}

function ListHead({ label, add, onAdd }: { readonly label: string; readonly add: string; readonly onAdd: () => void }) {
  return (
    <div className="list-head">
      <h3>{label}</h3>
      <button type="button" className="icon-button" aria-label={add} title={add} onClick={onAdd}>
        <Plus size={16} aria-hidden="true" />
      </button>
    </div>
  );
}

function LibraryList() {
  const dispatch = useEquipmentDispatch();
  const library = useApp((state) => state.library);
  const entries = [
    ...library.types.map((record) => ({ kind: 'type' as const, record })),
    ...library.legends.map((record) => ({ kind: 'legend' as const, record })),
  ];
  return (
    <>
      <div className="list-head">
        <h3>{words.library}</h3>
      </div>
      {entries.length === 0 && <p className="empty">{words.libraryEmpty}</p>}
      <ul>
        {entries.map(({ kind, record }) => (
          <li key={`${kind} ${record.id}`} className="library-entry">
            <button
              type="button"
              title={windowTexts.commands.takeFromLibrary}
              onClick={() => {
                const legend = ('legend' in record && library.legends.find(({ id }) => id === record.legend)) || null;
                dispatch('take-from-library', { kind, record, legend });
                dispatch('announce', { text: legendWords.type.taken(record.name) });
              }}
            >
              <b>{record.name}</b>
              <small>{windowTexts.commands.takeFromLibrary}</small>
            </button>
            <button
              type="button"
              className="icon-button"
              aria-label={`${windowTexts.commands.dropFromLibrary}: ${record.name}`}
              title={windowTexts.commands.dropFromLibrary}
              onClick={() => dispatch('drop-from-library', { kind, id: record.id })}
            >
              <Trash2 size={15} aria-hidden="true" />
            </button>
          </li>
        ))}
      </ul>
    </>
  );
}
