import type { Fault, Onset } from '../../engine/schema/index.ts';
import type { MomentName } from '../../engine/simulation/index.ts';

/** A thing of the picture on which a fault can be put. */
export type InjectTarget =
  | { readonly kind: 'unit'; readonly unit: string }
  | { readonly kind: 'link'; readonly link: string }
  | { readonly kind: 'chain'; readonly chain: string }
  | { readonly kind: 'lead'; readonly lead: string };

/** What is being tried out. It belongs to the sitting: never to the document, never saved, never undone. */
export interface InjectState {
  /** The window shows the simulation instead of what was seen. */
  readonly on: boolean;
  /** Kept when the simulation is left, so that it can be looked at again. */
  readonly faults: readonly Fault[];
  readonly onset: Onset;
  /** Which of the two moments the picture shows. */
  readonly moment: MomentName;
  /** The chain along which the light is followed; null: that of the last fault, else the first. */
  readonly chain: string | null;
  /** The hop that is looked at; null: the whole picture at once. */
  readonly hop: number | null;
  /** What the list of possible faults is open for. */
  readonly target: InjectTarget | null;
  /** The question which of the pattern goes into the case is open. */
  readonly taking: boolean;
}

export const nothingInjected: InjectState = {
  on: false,
  faults: [],
  onset: 'while-running',
  moment: 'now',
  chain: null,
  hop: null,
  target: null,
  taking: false,
};
