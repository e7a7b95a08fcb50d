import type { Problem } from '../../engine/base/index.ts';
import {
  addFeedback,
  addPicture,
  addRecord,
  applyFix,
  type FeedSource,
  type FieldEdit,
  type FieldOwner,
  type FieldTable,
  type NewPicture,
  type Numbering,
  type PictureField,
  type PlainList,
  type Port,
  reconnectLead,
  removePicture,
  removeShared,
  renumber,
  replugEnd,
  setFields,
} from '../../engine/edit/index.ts';
import { editWords, fieldTableWords } from '../../engine/messages/index.ts';
import type { LinkEnd } from '../../engine/schema/index.ts';
import type { AppState } from '../state/appState.ts';
import { viewCommand } from '../state/command.ts';
import { editCommand } from '../state/editCommand.ts';
import { namesOf } from '../state/names.ts';

/*
 * Commands of editing by fields: the inspector, the lists and the problems run these.
 */

/** The id of what a field belongs to. */
export function ownerId(state: AppState, of: FieldOwner): string {
  if ('id' in of) return of.id;
  return of.in === 'cabinet' ? state.cabinet.id : (state.cabinet.controller?.id ?? '');
}

export function ownerName(state: AppState, of: FieldOwner): string {
  const names = namesOf(state.checked.topology);
  if (of.in === 'cabinet') return state.cabinet.name;
  if (of.in === 'controller') return names.controller();
  return of.in === 'types' ? names.type(of.id) : names.thing(of.id);
}

export const editCommands = {
  'set-fields': editCommand<{ readonly edits: readonly FieldEdit[] }>({
    label: 'setFields',
    name: (state, { edits }) => {
      const owners = new Map(edits.map(({ of }) => [ownerId(state, of), of]));
      const tables = new Set([...owners.values()].map((of) => of.in));
      const [table] = tables;
      const many = tables.size === 1 && table !== undefined ? (fieldTableWords[table as FieldTable]?.many ?? '') : '';
      return editWords.steps.fields(
        edits.map(({ path }) => path.join('.')),
        [...owners.values()].map((of) => ownerName(state, of)),
        many || editWords.things,
      );
    },
    subject: ({ edits: [first] }) => (first !== undefined && 'id' in first.of ? first.of.id : null),
    edit: (cabinet, { edits }) => setFields(cabinet, edits),
  }),

  'fix-problem': editCommand<{ readonly problem: Problem; readonly what: string }>({
    label: 'fixProblem',
    name: (_state, { what }) => editWords.steps.fix(what),
    subject: ({ problem: { subjects } }) => subjects[0] ?? null,
    edit: (cabinet, { problem }) => applyFix(cabinet, problem),
  }),

  'add-picture': editCommand<{ readonly of: FieldOwner; readonly field: PictureField; readonly picture: NewPicture }>({
    label: 'addPicture',
    name: (state, { of }) => editWords.steps.addPicture(ownerName(state, of)),
    subject: ({ of }) => ('id' in of ? of.id : null),
    edit: (cabinet, { of, field, picture }) => addPicture(cabinet, of, field, picture),
  }),
  'remove-picture': editCommand<{
    readonly of: FieldOwner;
    readonly field: PictureField;
    readonly photo: string;
    readonly keep: boolean;
  }>({
    label: 'removePicture',
    name: (state, { of }) => editWords.steps.removePicture(ownerName(state, of)),
    subject: ({ of }) => ('id' in of ? of.id : null),
    edit: (cabinet, { of, field, photo, keep }) => removePicture(cabinet, of, field, photo, keep),
  }),

  renumber: editCommand<{ readonly ids: readonly string[]; readonly numbering?: Numbering }>({
    label: 'renumber',
    name: (_state, { ids }) => editWords.steps.renumber(ids.length),
    subject: ({ ids: [first] }) => first ?? null,
    edit: (cabinet, { ids, numbering }) => renumber(cabinet, ids, numbering),
  }),

  'reconnect-lead': editCommand<{ readonly lead: string; readonly from?: FeedSource | null; readonly to?: string | null }>({
    label: 'reconnectLead',
    name: (state, { lead }) => editWords.steps.reconnect(namesOf(state.checked.topology).thing(lead)),
    subject: ({ lead }) => lead,
    edit: (cabinet, { lead, ...ends }) => reconnectLead(cabinet, lead, ends),
  }),

  'plug-end': editCommand<{ readonly link: string; readonly end: LinkEnd; readonly port: Port | null }>({
    label: 'replugEnd',
    name: (state, { link }) => editWords.steps.reconnect(namesOf(state.checked.topology).thing(link)),
    subject: ({ link }) => link,
    edit: (cabinet, { link, end, port }) => replugEnd(cabinet, link, end, port),
  }),

  'add-feedback': editCommand<{ readonly unit: string }>({
    label: 'addFeedback',
    name: (state, { unit }) => editWords.steps.addFeedback(namesOf(state.checked.topology).unit(unit)),
    subject: ({ unit }) => unit,
    edit: (cabinet, { unit }) => addFeedback(cabinet, { unit }),
  }),

  'add-record': editCommand<{ readonly list: PlainList }>({
    label: 'addRecord',
    name: (_state, { list }) => editWords.steps.addRecord(fieldTableWords[list].one),
    edit: (cabinet, { list }) => addRecord(cabinet, list, editWords.lists.newName[list]),
  }),

  'remove-record': editCommand<{ readonly list: 'fibres' | 'types'; readonly id: string; readonly name: string }>({
    label: 'removeRecord',
    name: (_state, { name }) => editWords.steps.removeRecord(name),
    edit: (cabinet, { list, id }) => removeShared(cabinet, list, id),
  }),

  'show-problem': viewCommand<{ readonly subjects: readonly string[] }>({
    label: 'showOnCabinet',
    isEnabled: () => true,
    run: (state, { subjects: [subject, ...others] }) =>
      subject === undefined
        ? {}
        : {
            draw: { ...state.draw, chosen: [...others, subject] },
            spotlight: { subject, number: (state.spotlight?.number ?? 0) + 1 },
          },
  }),
} as const;
