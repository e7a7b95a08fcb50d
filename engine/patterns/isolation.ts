import type { Cabinet } from '../topology/index.ts';
import { groupPatterns } from './groupPatterns.ts';
import { simulateSingles } from './simulateSingles.ts';
import type { Patterns } from './types.ts';

/** Faults that cannot be told apart: their rates added up, and how many parts they are. */
export interface RatedGroup {
  readonly ratePerYear: number;
  readonly parts: number;
}

/** How well single faults are found and isolated; shares 0 to 1. Null: nothing is found, so nothing can be isolated. */
export interface Isolation {
  /** Fraction of faults detected: Σλ of the detected / Σλ of all. */
  readonly detected: number | null;
  /** Fraction of faults isolated to at most 1, 2, 3 parts: Σλ of the detected in groups of so few parts / Σλ of the detected. */
  readonly isolated: { readonly one: number | null; readonly two: number | null; readonly three: number | null };
  /** Mean number of parts in a group: Σλ·size / Σλ over the detected. */
  readonly meanParts: number | null;
}

/**
 * Fault detection and isolation by the standard definitions: MIL-HDBK-2165 (Testability Program for Systems and Equipments), IEEE Std
 * 1522-2004; the formulas from memory, checked by a worked example.
 */
export function isolationOf(groups: readonly RatedGroup[], undetectedPerYear: number): Isolation {
  const sum = (list: readonly RatedGroup[]) => list.reduce((total, { ratePerYear }) => total + ratePerYear, 0);
  const detected = sum(groups);
  const all = detected + undetectedPerYear;
  const upTo = (parts: number) => (detected === 0 ? null : sum(groups.filter((group) => group.parts <= parts)) / detected);
  return {
    detected: all === 0 ? null : detected / all,
    isolated: { one: upTo(1), two: upTo(2), three: upTo(3) },
    meanParts: detected === 0 ? null : groups.reduce((total, { ratePerYear, parts }) => total + ratePerYear * parts, 0) / detected,
  };
}

/** How well a cabinet isolates: by the displays alone, with the report, and after it was switched off and on again. */
export interface IsolationFigures {
  readonly displays: Isolation;
  readonly displaysAndReport: Isolation;
  readonly afterSwitchingOff: Isolation;
}

/** The three figures of a sound cabinet, over all its single steady faults weighed by their yearly rates. */
export function isolationFigures(cabinet: Cabinet): IsolationFigures {
  const running = simulateSingles(cabinet, 'while-running');
  const powerUp = simulateSingles(cabinet, 'at-power-up');
  return {
    displays: isolationOfPatterns(groupPatterns(cabinet, running, 'while-running', 'displays')),
    displaysAndReport: isolationOfPatterns(groupPatterns(cabinet, running, 'while-running', 'displays-and-report')),
    afterSwitchingOff: isolationOfPatterns(groupPatterns(cabinet, powerUp, 'at-power-up', 'displays-and-report')),
  };
}

function isolationOfPatterns({ groups, unseen }: Patterns): Isolation {
  return isolationOf(
    groups.map(({ ratePerYear, faults }) => ({ ratePerYear, parts: new Set(faults.map(({ part }) => part)).size })),
    unseen.reduce((sum, { ratePerYear }) => sum + ratePerYear, 0),
  );
}
