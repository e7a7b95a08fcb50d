import type { CabinetContent, UnitKind } from '../schema/index.ts';
import type { Work } from './work.ts';

/** What a designation can stand on. */
export type DesignatedKind = UnitKind | 'controller' | 'link' | 'lead' | 'feedback';
export type DesignationEdition = NonNullable<CabinetContent['designationEdition']>;

/**
 * Class letters by edition of IEC 81346-2. Both columns are from memory: 2009 TA converting with the kind of energy kept (frequency
 * converter), TB between direct and alternating current, KF processing signals, WD low-voltage cable, WG cable for signals, WH
 * optical cable; 2019 TB converting, KE processing electric signals, WD, WG and WH as before.
 */
const classLetters: { readonly [E in DesignationEdition]: { readonly [K in DesignatedKind]: string } } = {
  '2009': {
    'servo-drive': 'TA',
    'spindle-drive': 'TA',
    'encoder-interface': 'KF',
    supply: 'TB',
    controller: 'KF',
    link: 'WH',
    lead: 'WD',
    feedback: 'WG',
  },
  '2019': {
    'servo-drive': 'TB',
    'spindle-drive': 'TB',
    'encoder-interface': 'KE',
    supply: 'TB',
    controller: 'KE',
    link: 'WH',
    lead: 'WD',
    feedback: 'WG',
  },
};

/** The class letters that a kind of thing bears; the edition is the cabinet's, or the newest. */
export function classLettersOf(kind: DesignatedKind, edition: DesignationEdition = '2019'): string {
  return classLetters[edition][kind];
}

/** A designation taken apart: "=A1+K2-TB3" is the beginning "=A1+K2-TB" and the number 3. Null: it does not end with a number. */
export function splitDesignation(designation: string): { readonly stem: string; readonly number: number } | null {
  const found = /^(.*?)([0-9]{1,9})$/.exec(designation.trim());
  return found === null ? null : { stem: found[1] ?? '', number: Number(found[2]) };
}

/** Designations that things of a kind share a set with: units and the controller are compared, cables of a kind among themselves. */
export function designationsBeside(work: Work, kind: DesignatedKind): ReadonlySet<string> {
  const records: readonly { readonly designation?: string | undefined }[] =
    kind === 'link'
      ? work.all('links')
      : kind === 'lead'
        ? work.all('leads')
        : kind === 'feedback'
          ? work.all('feedbacks')
          : [...work.all('units'), ...(work.rest.controller === undefined ? [] : [work.rest.controller])];
  return new Set(records.map(({ designation }) => designation?.trim() ?? '').filter((designation) => designation !== ''));
}

/**
 * The next designation for a new thing of a kind. It goes on as its like are numbered: with the stem that most things of these class
 * letters bear ("=A1-TB"), else with "-" and the letters; the number is the first free one after the greatest of that stem.
 */
export function nextDesignation(work: Work, kind: DesignatedKind): string {
  const letters = classLettersOf(kind, work.rest.designationEdition);
  const taken = designationsBeside(work, kind);
  const stem = commonStem(taken, letters) ?? `-${letters}`;
  return numberOn(stem, taken);
}

/** The stem with the first number after the greatest that bears it. */
export function numberOn(stem: string, taken: ReadonlySet<string>): string {
  const numbers = [...taken].map(splitDesignation).filter((split) => split?.stem === stem);
  return `${stem}${1 + Math.max(0, ...numbers.map((split) => split?.number ?? 0))}`;
}

function commonStem(taken: ReadonlySet<string>, letters: string): string | null {
  const counts = new Map<string, number>();
  for (const designation of taken) {
    const stem = splitDesignation(designation)?.stem;
    if (stem?.endsWith(letters) && !/[A-Za-z]/.test(stem.slice(0, -letters.length).slice(-1))) {
      counts.set(stem, (counts.get(stem) ?? 0) + 1);
    }
  }
  const ranked = [...counts].sort(([a, m], [b, n]) => n - m || (a < b ? -1 : 1));
  return ranked[0]?.[0] ?? null;
}
