import type { Agreement } from '../../engine/diagnosis/index.ts';
import type { UnitKind } from '../../engine/schema/index.ts';
import type { MarkName } from '../marks/DisplayMark.tsx';
import type { CalloutPlace } from './callouts.ts';

/*
 * What the drawing shows of each thing, as plain data: projected from document and answer, compared by value, so that a node whose
 * picture has not changed is not drawn again. None of it is an object of the document.
 */

/** One window of a module: its mark and its words. */
export interface WindowView {
  readonly mark: MarkName;
  readonly words: string;
}

/** A seen window and the predicted one beside it. */
export interface ReadingView {
  readonly seen: WindowView;
  /** The raw code, where it was read through a legend. */
  readonly code: string | null;
  readonly predicted: WindowView | null;
  readonly agreement: Agreement | null;
}

/** What every workspace draws of a module. */
export interface FrameView {
  readonly id: string;
  readonly designation: string;
  readonly kind: UnitKind;
  readonly kindWords: string;
  /** Whether its optical ports are drawn. */
  readonly onChain: boolean;
  readonly isLast: boolean;
  readonly folded: boolean;
  readonly portY: number;
  readonly height: number;
  /** "drive 2", or why it is on no chain. */
  readonly footer: string;
  readonly axes: string;
  readonly outputs: readonly string[];
  /** Its position on the chain, for the strip. */
  readonly position: number | null;
}

export interface UnitView extends FrameView {
  readonly reading: ReadingView;
  /** Ports that hear nothing, by what was seen. */
  readonly deafUp: boolean;
  readonly deafDown: boolean;
  /** "9 %": probability that the fault lies in this unit; null when nobody suspects it. */
  readonly share: string | null;
  /** The chosen candidate's fault lies here. */
  readonly chosen: boolean;
  /** Named by the report that is being entered. */
  readonly lit: boolean;
  /** Why it is not as documented: "board of -TB3"; null where it is. */
  readonly displaced: string | null;
  /** What it shows is being entered. */
  readonly entering: boolean;
  /** Its words above a strip; null where they need not be said. */
  readonly callout: CalloutPlace | null;
  /** Whole description for a screen reader. */
  readonly name: string;
}

/** The controller's windows for one chain. */
export interface ChainView {
  readonly chain: string;
  readonly label: string;
  /** From the controller's top. */
  readonly rowY: number;
  readonly portY: number;
  readonly folded: boolean;
  readonly seen: readonly string[] | null;
  readonly seenLost: boolean;
  readonly predicted: readonly string[] | null;
  readonly predictedLost: boolean;
  readonly agreement: Agreement | null;
  readonly share: string | null;
  readonly chosen: boolean;
  readonly empty: boolean;
  readonly name: string;
}

export interface ControllerView {
  readonly designation: string;
  readonly height: number;
  readonly width: number;
  readonly chosen: boolean;
  readonly chains: readonly ChainView[];
}

/** Where a cable is drawn. */
export interface LinkLine {
  readonly id: string;
  readonly designation: string;
  readonly chain: string;
  /** Its number on its chain: the report that a click on it enters. */
  readonly gap: number;
  /** The units at its ends; null: the controller. */
  readonly upper: string | null;
  readonly lower: string;
  readonly from: Point;
  readonly to: Point;
  /** It does not come straight from the left neighbour: the height at which it runs between the rows. */
  readonly turnY: number | null;
  readonly folded: boolean;
  /** What a screen reader hears of it: what it is and what it joins. */
  readonly spoken: string;
}

export interface LinkView extends LinkLine {
  readonly share: string | null;
  readonly chosen: boolean;
  /** The step that was asked for is done here. */
  readonly lit: boolean;
  /** Why it is not as documented: "is -WH9"; null where it is. */
  readonly displaced: string | null;
  /** `here`: the report says so; `perhaps`: one of several gaps that fit the report. */
  readonly lost: 'here' | 'perhaps' | null;
  readonly name: string;
}

/** Where a lead is drawn. */
export interface LeadLine {
  readonly id: string;
  readonly from: string;
  readonly to: string;
  readonly points: readonly Point[];
  /** What a screen reader hears of it. */
  readonly spoken: string;
}

export interface LeadView extends LeadLine {
  readonly share: string | null;
  readonly chosen: boolean;
}

/** Small words on the drawing that belong to no module. */
export interface CaptionView {
  readonly key: string;
  readonly at: Point;
  readonly words: string;
  readonly kind: 'seen' | 'predicted' | 'rail';
}

export interface Point {
  readonly x: number;
  readonly y: number;
}
