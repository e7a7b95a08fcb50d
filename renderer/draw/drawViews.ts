import type { Severity } from '../../engine/base/index.ts';
import type { LinkEnd } from '../../engine/schema/index.ts';
import type { Detail } from '../canvas/geometry.ts';
import type { FrameView, LeadLine, LinkLine, Point } from '../canvas/views.ts';

/*
 * What the drawing shows of each thing in Draw, as plain data, compared by value.
 */

/** Whether a thing is chosen; of several the first one to act on has a stronger outline. */
export type Chosen = 'no' | 'also' | 'first';

export interface DrawUnitView extends FrameView {
  readonly chosen: Chosen;
  /** The unit beside the place that is held open, at which a cable will be plugged. */
  readonly mate: boolean;
  /** It is being dragged: its place is kept until it is dropped. */
  readonly carried: boolean;
  readonly model: string;
  readonly partNumber: string;
  /** "23.4 V", and whether that is not enough; empty where it is not known. */
  readonly volts: string;
  readonly voltsWrong: boolean;
  /** The worst problem of it. */
  readonly problem: Severity | null;
  /** Its feedback cables, where they are shown. */
  readonly feedbacks: readonly string[];
  /** Ports in which nothing is plugged. */
  readonly upFree: boolean;
  readonly downFree: boolean;
  readonly fed: boolean;
  /** Which of its sockets would take what is pulled; null while nothing is pulled. */
  readonly takes: { readonly up: boolean; readonly down: boolean; readonly feed: boolean } | null;
  readonly name: string;
}

export interface DrawChainView {
  readonly chain: string;
  readonly label: string;
  /** "6 / 16 axes". */
  readonly axes: string;
  /** From the controller's top. */
  readonly rowY: number;
  readonly portY: number;
  readonly empty: boolean;
  /** Whether its port would take what is pulled; null while nothing is pulled. */
  readonly takes: boolean | null;
  readonly chosen: Chosen;
  readonly name: string;
}

export interface DrawControllerView {
  readonly id: string;
  readonly designation: string;
  readonly width: number;
  readonly height: number;
  readonly chosen: Chosen;
  readonly chains: readonly DrawChainView[];
  readonly name: string;
}

export interface DrawLinkView extends LinkLine {
  readonly chosen: Chosen;
  readonly length: string;
  readonly problem: Severity | null;
  /** Something is about to be dropped into it. */
  readonly target: boolean;
  readonly name: string;
}

/** A cable that is plugged in at one end only. */
export interface LooseView {
  readonly id: string;
  readonly designation: string;
  /** The end that hangs loose. */
  readonly end: LinkEnd;
  readonly detail: Detail;
  /** Edge of the port in which the other end sits. */
  readonly at: Point;
  readonly chosen: Chosen;
  readonly name: string;
}

export interface DrawLeadView extends LeadLine {
  readonly chosen: Chosen;
  readonly problem: Severity | null;
  readonly name: string;
}
