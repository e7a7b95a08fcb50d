import { classLettersOf, type DesignatedKind, designationTrouble, type FieldForm, type FieldTable } from '../../engine/edit/index.ts';
import { editWords, wordFieldValue } from '../../engine/messages/index.ts';
import type { CabinetContent } from '../../engine/schema/index.ts';

export interface Option {
  readonly value: string;
  readonly label: string;
}

/** What can be chosen in a field; null for fields that are typed. */
export function optionsOf(content: CabinetContent, path: string, form: FieldForm): readonly Option[] | null {
  if (form === 'flag') {
    return [
      { value: 'yes', label: editWords.inspector.yes },
      { value: 'no', label: editWords.inspector.no },
    ];
  }
  if (typeof form !== 'object' || 'rows' in form) return null;
  if ('choice' in form) return form.choice.map((value) => ({ value, label: wordFieldValue(path, value) }));
  const units = content.units ?? [];
  switch (form.record) {
    case 'supplies':
      return units.filter(({ kind }) => kind === 'supply').map(({ id, designation }) => ({ value: id, label: designation || id }));
    case 'consumers':
      return units.filter(({ kind }) => kind !== 'supply').map(({ id, designation }) => ({ value: id, label: designation || id }));
    case 'types':
    case 'legends':
    case 'fibres':
      return (content[form.record] ?? []).map(({ id, name }) => ({ value: id, label: name || id }));
  }
}

const kindsOfTables: { readonly [T in FieldTable]?: DesignatedKind } = {
  controller: 'controller',
  links: 'link',
  leads: 'lead',
  feedbacks: 'feedback',
};

/** What is unusual about a designation, as a hint beside its field; null when nothing is. */
export function designationHint(content: CabinetContent, table: FieldTable, record: object, text: string): string | null {
  const kind = table === 'units' && 'kind' in record ? (record.kind as DesignatedKind) : kindsOfTables[table]; // a unit's kind is one
  if (kind === undefined) return null;
  const edition = content.designationEdition ?? '2019';
  const trouble = designationTrouble(text, kind, edition);
  if (trouble === null) return null;
  const words = editWords.inspector.designation;
  return trouble === 'other-class' ? words['other-class'](classLettersOf(kind, edition), edition) : words[trouble];
}
