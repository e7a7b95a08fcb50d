import type { FieldForm, FieldValue } from '../../engine/edit/index.ts';
import { editWords } from '../../engine/messages/index.ts';

/** What was typed into a field: a value, nothing (the field is emptied), or what is wrong with it, in words. */
export type ReadValue = { readonly ok: true; readonly value: FieldValue | null } | { readonly ok: false; readonly trouble: string };

const numberForms: readonly FieldForm[] = ['amount', 'level', 'whole', 'share'];

export function isNumberForm(form: FieldForm): boolean {
  return numberForms.includes(form);
}

/** Reads what was typed, by the form of the field. Numbers may have a decimal comma; whether they fit is for the engine to say. */
export function readValue(form: FieldForm, typed: string): ReadValue {
  const text = typed.trim();
  if (text === '') return { ok: true, value: null };
  if (form === 'flag') return { ok: true, value: text === 'yes' };
  if (!isNumberForm(form)) return { ok: true, value: text };
  const plain = text.replace(',', '.').replace('−', '-');
  if (!/^[+-]?(?:\d{1,12}(?:\.\d*)?|\.\d+)$/.test(plain)) return { ok: false, trouble: editWords.inspector.notANumber };
  const value = Number(plain);
  if (form === 'whole' && !Number.isInteger(value)) return { ok: false, trouble: editWords.inspector.notWhole };
  return { ok: true, value };
}

/** A value as it is typed. */
export function typedText(value: unknown): string {
  if (value === undefined || value === null) return '';
  if (typeof value === 'boolean') return value ? 'yes' : 'no';
  return String(value);
}
