import { type Displaced, type Handling, listDisplaced, listHandlings } from '../../engine/plan/index.ts';
import type { Evidence } from '../../engine/schema/index.ts';
import type { Cabinet } from '../../engine/topology/index.ts';
import type { AppState } from '../state/appState.ts';

/** What was touched, and what of it does not stand in its place. */
export interface Touched {
  /** Two boards or cables that were exchanged are one. */
  readonly displaced: readonly { readonly what: Displaced; readonly isExchange: boolean }[];
  /** Newest first. */
  readonly handlings: readonly Handling[];
  /** Everything that is displaced, both halves of an exchange. */
  readonly all: readonly Displaced[];
}

const nothing: Touched = { displaced: [], handlings: [], all: [] };
let last: { readonly cabinet: Cabinet | null; readonly evidence: Evidence; readonly touched: Touched } | null = null;

/** The same object as long as cabinet and evidence are the same. */
export function selectTouched({ checked: { cabinet }, caseRecord: { evidence } }: AppState): Touched {
  if (last?.cabinet !== cabinet || last.evidence !== evidence) {
    last = { cabinet, evidence, touched: cabinet ? computeTouched(cabinet, evidence) : nothing };
  }
  return last.touched;
}

function computeTouched(cabinet: Cabinet, evidence: Evidence): Touched {
  const all = listDisplaced(cabinet, evidence);
  const displaced = all.flatMap((what, index) => {
    const isCounterpart = (other: Displaced) => isOtherHalf(what, other);
    return all.slice(0, index).some(isCounterpart) ? [] : [{ what, isExchange: all.slice(index + 1).some(isCounterpart) }];
  });
  return { displaced, handlings: listHandlings(evidence), all };
}

function isOtherHalf(a: Displaced, b: Displaced): boolean {
  if (a.kind === 'board' && b.kind === 'board') return a.unit === b.from && a.from === b.unit;
  return a.kind === 'cable' && b.kind === 'cable' && a.link === b.from && a.from === b.link && a.link !== b.link;
}

export const selectDisplaced = (state: AppState): readonly Displaced[] => selectTouched(state).all;

/** What is displaced at a unit or a cable of the drawing; null where everything is as documented. */
export function displacedAt(all: readonly Displaced[], id: string, feedbacks: readonly string[] = []): Displaced | null {
  return (
    all.find((one) => {
      if (one.kind === 'feedback-pulled') return feedbacks.includes(one.feedback);
      return 'unit' in one ? one.unit === id : one.link === id;
    }) ?? null
  );
}
