import type { DisplayMeaning, LinkEnd, Onset } from '../../engine/schema/index.ts';

/** What of the equipment is open: a type, a legend, a staged break, or nothing yet. */
export type EquipmentPage =
  | { readonly kind: 'none' }
  | { readonly kind: 'type'; readonly type: string }
  | { readonly kind: 'legend'; readonly legend: string }
  | { readonly kind: 'staged'; readonly type: string };

/** One staged break as far as it is entered. `displays` by unit, `light` by end of the link. */
export interface StagedEntry {
  /** Tells the entries of a draft apart. */
  readonly id: number;
  readonly link: string;
  readonly end: LinkEnd;
  readonly onset: Onset;
  readonly pluggedAgain: boolean;
  readonly displays: readonly { readonly unit: string; readonly meanings: readonly DisplayMeaning[] }[];
  readonly gap: number | 'none' | null;
  readonly light: { readonly [End in LinkEnd]: 'none' | 'bright' | null };
}

/** The staged breaks that are being entered. */
export interface StagedDraft {
  readonly breaks: readonly StagedEntry[];
  /** Which of them is being filled in. */
  readonly at: number;
  readonly confirmed: boolean;
  /** Documented parameters are tested too. */
  readonly thoroughly: boolean;
}

/** What the window shows of equipment types; of the sitting. */
export interface EquipmentState {
  readonly page: EquipmentPage | null;
  readonly staged: StagedDraft | null;
  /** What a changed legend made of codes that were read before. */
  readonly notice: string;
}

export const closedEquipment: EquipmentState = { page: null, staged: null, notice: '' };
