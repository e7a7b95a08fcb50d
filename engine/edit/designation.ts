import type { CabinetContent, UnitKind } from '../schema/index.ts';
import type { Designations } from './designations.ts';
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

/** Designations that things of a kind share a set with: units and the controller are compared, cables of a kind among themselves. */
export function designationsBeside(work: Work, kind: DesignatedKind): Designations {
  return work.designations(kind === 'link' ? 'links' : kind === 'lead' ? 'leads' : kind === 'feedback' ? 'feedbacks' : 'units');
}

/**
 * The next designation for a new thing of a kind. It goes on as its like are numbered: with the stem that most things of these class
 * letters bear ("=A1-TB"), else with "-" and the letters; the number is the first free one after the greatest of that stem.
 */
export function nextDesignation(work: Work, kind: DesignatedKind): string {
  const letters = classLettersOf(kind, work.rest.designationEdition);
  const taken = designationsBeside(work, kind);
  return taken.next(taken.commonStem(letters) ?? `-${letters}`);
}
