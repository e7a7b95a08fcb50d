import type { Draft } from 'immer';
import { legendWords } from '../../engine/messages/index.ts';
import type { BehaviourParameter, CabinetContent, TypeRecord } from '../../engine/schema/index.ts';
import type { AppState, DocumentState } from '../state/appState.ts';
import { documentCommand, viewCommand } from '../state/command.ts';
import { namesOf } from '../state/names.ts';
import type { CodeRow } from './codeRows.ts';
import { closedEquipment, type EquipmentPage, type StagedDraft } from './equipmentState.ts';
import { dropFromLibrary, freeId, keepInLibrary } from './library.ts';
import { rereadings } from './reread.ts';

/*
 * Commands on equipment types and legends. Each that changes what a code means reads the codes of the case anew in the same step, so
 * that undo takes both back.
 */

const always = () => true;
const { steps } = legendWords;

const typeName = (cabinet: CabinetContent, id: string) => cabinet.types?.find((type) => type.id === id)?.name ?? id;
const legendName = (cabinet: CabinetContent, id: string) => cabinet.legends?.find((legend) => legend.id === id)?.name ?? id;
const findType = (draft: Draft<DocumentState>, id: string) => draft.cabinet.types?.find((type) => type.id === id);
const findLegendById = (draft: Draft<DocumentState>, id: string) => draft.cabinet.legends?.find((legend) => legend.id === id);

/** Writes into the case what its codes mean by the legends as they are now. */
function reread(draft: Draft<DocumentState>): void {
  for (const { snapshot, unit, meanings } of rereadings(draft.cabinet, draft.caseRecord)) {
    const display = draft.caseRecord.evidence.snapshots[snapshot]?.displays?.find((one) => one.unit === unit);
    if (display) display.meanings = [...meanings];
  }
}

/** What of a type a staged break has settled. */
export interface Verified {
  readonly type: string;
  readonly behaviour: NonNullable<TypeRecord['behaviour']>;
  /** ISO date. */
  readonly on: string;
  readonly how: string;
}

export const legendCommands = {
  'open-equipment': viewCommand<{ readonly page: EquipmentPage }>({
    label: 'openEquipment',
    isEnabled: always,
    run: ({ equipment }, { page }) => ({ equipment: { ...equipment, page, notice: '' } }),
  }),

  'equipment-types': viewCommand({
    label: 'openEquipment',
    isEnabled: always,
    run: ({ equipment, cabinet }) => {
      const [first] = cabinet.types ?? [];
      return { equipment: { ...equipment, page: first ? { kind: 'type', type: first.id } : { kind: 'none' }, notice: '' } };
    },
  }),

  'close-equipment': viewCommand({
    label: 'closeEquipment',
    isEnabled: ({ equipment }) => equipment.page !== null,
    run: () => ({ equipment: closedEquipment }),
  }),

  'tell-reread': viewCommand<{ readonly notice: string }>({
    label: 'tellReread',
    isEnabled: always,
    run: ({ equipment }, { notice }) => ({ equipment: { ...equipment, notice } }),
  }),

  'stage-break': viewCommand<{ readonly staged: StagedDraft | null }>({
    label: 'stageBreak',
    isEnabled: always,
    run: ({ equipment }, { staged }) => ({ equipment: { ...equipment, staged } }),
  }),

  'add-type': documentCommand<{ readonly id: string; readonly name: string }>({
    label: 'addType',
    isEnabled: always,
    undo: 'step',
    name: (_state, { name }) => steps.addType(name),
    run: ({ cabinet }, { id, name }) => {
      cabinet.types = [...(cabinet.types ?? []), { id, name }];
    },
  }),

  'rename-type': documentCommand<{ readonly type: string; readonly name: string }>({
    label: 'renameType',
    isEnabled: always,
    undo: { mergeBy: ({ type }) => `rename-type/${type}` },
    name: (_state, { name }) => steps.renameType(name),
    run: (draft, { type, name }) => {
      const found = findType(draft, type);
      if (found) found.name = name;
    },
  }),

  'remove-type': documentCommand<{ readonly type: string }>({
    label: 'removeType',
    isEnabled: always,
    undo: 'step',
    name: ({ cabinet }, { type }) => steps.removeType(typeName(cabinet, type)),
    run: (draft, { type }) => {
      draft.cabinet.types = (draft.cabinet.types ?? []).filter(({ id }) => id !== type);
      if (draft.cabinet.types.length === 0) delete draft.cabinet.types;
      for (const unit of draft.cabinet.units ?? []) if (unit.type === type) delete unit.type;
      reread(draft);
    },
  }),

  'set-behaviour': documentCommand<{ readonly type: string; readonly parameter: BehaviourParameter; readonly value: string }>({
    label: 'setBehaviour',
    isEnabled: always,
    undo: { mergeBy: ({ type, parameter }) => `behaviour/${type}/${parameter}` },
    name: ({ cabinet }, { type, parameter, value }) => steps.behaviour(typeName(cabinet, type), parameter, value),
    run: (draft, { type, parameter, value }) => {
      const found = findType(draft, type);
      if (!found || found.behaviour?.[parameter] === value) return;
      // The value is one of this parameter's own, or `unknown`: the table that offers it is made from them.
      found.behaviour = { ...found.behaviour, [parameter]: value } as NonNullable<TypeRecord['behaviour']>;
      // Set by hand: it is no longer what was seen on the real thing.
      delete found.behaviourVerified;
    },
  }),

  'assign-type': documentCommand<{ readonly unit: string; readonly type: string | null }>({
    label: 'assignType',
    isEnabled: always,
    undo: 'step',
    name: (state, { unit, type }) =>
      steps.assign(namesOf(state.checked.topology).unit(unit), type === null ? null : typeName(state.cabinet, type)),
    subject: ({ unit }) => unit,
    run: (draft, { unit, type }) => {
      const found = draft.cabinet.units?.find(({ id }) => id === unit);
      if (!found) return;
      if (type === null) delete found.type;
      else found.type = type;
      reread(draft);
    },
  }),

  'set-type-legend': documentCommand<{ readonly type: string; readonly legend: string | null }>({
    label: 'setTypeLegend',
    isEnabled: always,
    undo: 'step',
    name: ({ cabinet }, { type }) => steps.typeLegend(typeName(cabinet, type)),
    run: (draft, { type, legend }) => {
      const found = findType(draft, type);
      if (!found) return;
      if (legend === null) delete found.legend;
      else found.legend = legend;
      reread(draft);
    },
  }),

  'add-legend': documentCommand<{ readonly id: string; readonly name: string }>({
    label: 'addLegend',
    isEnabled: always,
    undo: 'step',
    name: (_state, { name }) => steps.addLegend(name),
    run: ({ cabinet }, { id, name }) => {
      cabinet.legends = [...(cabinet.legends ?? []), { id, name, codes: [] }];
    },
  }),

  'rename-legend': documentCommand<{ readonly legend: string; readonly name: string; readonly source: string }>({
    label: 'renameLegend',
    isEnabled: always,
    undo: { mergeBy: ({ legend }) => `rename-legend/${legend}` },
    name: (_state, { name }) => steps.renameLegend(name),
    run: (draft, { legend, name, source }) => {
      const found = findLegendById(draft, legend);
      if (!found) return;
      found.name = name;
      if (source === '') delete found.source;
      else found.source = source;
    },
  }),

  'remove-legend': documentCommand<{ readonly legend: string }>({
    label: 'removeLegend',
    isEnabled: always,
    undo: 'step',
    name: ({ cabinet }, { legend }) => steps.removeLegend(legendName(cabinet, legend)),
    run: (draft, { legend }) => {
      const { cabinet } = draft;
      cabinet.legends = (cabinet.legends ?? []).filter(({ id }) => id !== legend);
      if (cabinet.legends.length === 0) delete cabinet.legends;
      for (const type of cabinet.types ?? []) if (type.legend === legend) delete type.legend;
      if (cabinet.defaultLegend === legend) delete cabinet.defaultLegend;
      reread(draft);
    },
  }),

  'set-legend-codes': documentCommand<{ readonly legend: string; readonly codes: readonly CodeRow[] }>({
    label: 'setLegendCodes',
    isEnabled: always,
    undo: 'step',
    name: ({ cabinet }, { legend }) => steps.codes(legendName(cabinet, legend)),
    run: (draft, { legend, codes }) => {
      const found = findLegendById(draft, legend);
      if (!found) return;
      found.codes = codes.map((row) => ({ ...row, meanings: [...row.meanings] }));
      reread(draft);
    },
  }),

  'set-default-legend': documentCommand<{ readonly legend: string | null }>({
    label: 'setDefaultLegend',
    isEnabled: always,
    undo: 'step',
    name: () => steps.defaultLegend,
    run: (draft, { legend }) => {
      if (legend === null) delete draft.cabinet.defaultLegend;
      else draft.cabinet.defaultLegend = legend;
      reread(draft);
    },
  }),

  /** Copies a type with its legend, or a legend, out of the library. `id` is what it is called in the cabinet. */
  'take-from-library': documentCommand<{
    readonly kind: 'type' | 'legend';
    readonly record: TypeRecord | LegendCopy;
    readonly legend: LegendCopy | null;
  }>({
    label: 'takeFromLibrary',
    isEnabled: always,
    undo: 'step',
    name: (_state, { record }) => steps.taken(record.name),
    run: ({ cabinet }, { kind, record, legend }) => {
      const legends = cabinet.legends ?? [];
      const addLegend = (copy: LegendCopy): string => {
        const same = legends.find((one) => one.name === copy.name && JSON.stringify(one.codes) === JSON.stringify(copy.codes));
        if (same) return same.id;
        const id = freeId(copy.id, legends);
        cabinet.legends = [...legends, { ...structuredClone(copy), id }] as typeof legends; // a draft takes a plain copy
        return id;
      };
      if (kind === 'legend') {
        addLegend(record as LegendCopy); // `kind` says so
        return;
      }
      const { legend: _own, ...type } = record as TypeRecord; // `kind` says so
      const types = cabinet.types ?? [];
      const copied = { ...structuredClone(type), id: freeId(type.id, types), ...(legend ? { legend: addLegend(legend) } : {}) };
      cabinet.types = [...types, copied];
    },
  }),

  'keep-in-library': viewCommand<{ readonly kind: 'type' | 'legend'; readonly id: string }>({
    label: 'keepInLibrary',
    isEnabled: always,
    run: ({ library, cabinet }, { kind, id }) => ({ library: keepInLibrary(library, cabinet, kind, id) }),
  }),

  'drop-from-library': viewCommand<{ readonly kind: 'type' | 'legend'; readonly id: string }>({
    label: 'dropFromLibrary',
    isEnabled: always,
    run: ({ library }, { kind, id }) => ({ library: dropFromLibrary(library, kind, id) }),
  }),

  'verify-behaviour': documentCommand<{ readonly verified: readonly Verified[] }>({
    label: 'verifyBehaviour',
    isEnabled: always,
    undo: 'step',
    name: ({ cabinet }, { verified }) => steps.verified(verified.map(({ type }) => typeName(cabinet, type))),
    run: (draft, { verified }) => {
      for (const { type, behaviour, on, how } of verified) {
        const found = findType(draft, type);
        if (!found) continue;
        found.behaviour = { ...found.behaviour, ...behaviour };
        found.behaviourVerified = { on, how };
      }
    },
  }),
} as const;

type LegendCopy = NonNullable<AppState['cabinet']['legends']>[number];
