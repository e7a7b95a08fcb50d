import type { CabinetContent } from '../../engine/schema/index.ts';

/** With what the cabinet in the window is compared: an earlier state of it, or another cabinet. */
export interface ComparedWith {
  readonly kind: 'saved' | 'file';
  readonly name: string;
  readonly content: CabinetContent;
}
