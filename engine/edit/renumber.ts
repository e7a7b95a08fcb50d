import { fail, ok, type Result } from '../base/index.ts';
import type { CabinetContent } from '../schema/index.ts';
import { classLettersOf, type DesignatedKind, type DesignationEdition, designationsBeside, nextDesignation } from './designation.ts';
import type { Edited, EditResult } from './types.ts';
import { unknownThing, Work } from './work.ts';

/** What stands before the class letters, and the first number. */
export interface Numbering {
  /** Left out: "-". Such as "=M1+S2-". */
  readonly prefix?: string;
  /** Left out: 1. */
  readonly first?: number;
}

const cableLists = { links: 'link', leads: 'lead', feedbacks: 'feedback' } as const;

/**
 * Numbers designations anew, in the order given: prefix, the class letters of each kind by the cabinet's edition of IEC 81346-2, and
 * a number that goes on for each letters. Numbers that other things bear already are left out.
 */
export function renumber(content: CabinetContent, ids: readonly string[], { prefix = '-', first = 1 }: Numbering = {}): EditResult {
  const work = new Work(content);
  const wanted = [...new Set(ids)];
  const kinds = new Map<string, DesignatedKind>();
  for (const id of wanted) {
    const kind = kindOf(work, id);
    if (kind === null) return fail(unknownThing(id));
    kinds.set(id, kind);
  }
  // What is numbered anew gives its old designations up first.
  for (const [id, kind] of kinds) write(work, id, kind, '');
  const next = new Map<string, number>();
  for (const [id, kind] of kinds) {
    const letters = classLettersOf(kind, work.rest.designationEdition);
    const taken = designationsBeside(work, kind);
    let number = next.get(letters) ?? first;
    while (taken.has(`${prefix}${letters}${number}`)) number += 1;
    next.set(letters, number + 1);
    write(work, id, kind, `${prefix}${letters}${number}`);
  }
  return ok(work.finish());
}

/** Gives one thing the next free designation of its kind. */
export function renumberOne(content: CabinetContent, id: string): Result<{ readonly designation: string; readonly edited: Edited }> {
  const work = new Work(content);
  const kind = kindOf(work, id);
  if (kind === null) return fail(unknownThing(id));
  const designation = nextDesignation(work, kind);
  write(work, id, kind, designation);
  return ok({ designation, edited: work.finish() });
}

function kindOf(work: Work, id: string): DesignatedKind | null {
  const unit = work.get('units', id);
  if (unit !== undefined) return unit.kind;
  if (work.rest.controller?.id === id) return 'controller';
  for (const list of Object.keys(cableLists) as (keyof typeof cableLists)[]) {
    if (work.get(list, id) !== undefined) return cableLists[list];
  }
  return null;
}

function write(work: Work, id: string, kind: DesignatedKind, designation: string): void {
  if (kind === 'controller') {
    if (work.rest.controller !== undefined) work.setRest({ controller: { ...work.rest.controller, designation } }, id);
  } else if (kind === 'link' || kind === 'lead' || kind === 'feedback') {
    const list = `${kind}s` as const;
    const record = work.get(list, id);
    if (record !== undefined) work.put(list, { ...record, designation });
  } else {
    const unit = work.get('units', id);
    if (unit !== undefined) work.put('units', { ...unit, designation });
  }
}

/** What is unusual about a designation. It is a hint: what stands on the machine counts. */
export type DesignationTrouble = 'no-sign' | 'no-letters' | 'digit-first' | 'other-class';

/**
 * Looks at a designation by the rules of IEC 81346-1 and -2: a prefix sign, letters before the digits of each part, and the class
 * letters of its kind in the edition used. Null: nothing is unusual, or there is nothing to look at.
 */
export function designationTrouble(
  designation: string,
  kind: DesignatedKind,
  edition: DesignationEdition = '2019',
): DesignationTrouble | null {
  const text = designation.trim();
  if (text === '') return null;
  // The minus sign of typography is taken for the hyphen that it looks like.
  const parts = [...text.replace(/[−–]/g, '-').matchAll(/([=+:-]+)([^=+:-]*)/g)];
  if (parts.length === 0 || !/^[=+−–-]/.test(text)) return 'no-sign';
  if (parts.some(([, , name = '']) => /^[0-9]/.test(name))) return 'digit-first';
  const product = parts.filter(([, sign = '']) => sign.startsWith('-')).at(-1)?.[2];
  if (product === undefined) return null;
  const letters = /^[A-Za-z]+/.exec(product)?.[0];
  if (letters === undefined) return 'no-letters';
  const wanted = classLettersOf(kind, edition);
  // The main class alone, one letter, is allowed too.
  return letters === wanted || letters === wanted.charAt(0) ? null : 'other-class';
}
