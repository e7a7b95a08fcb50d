import type { FaultChoice } from '../search/index.ts';
import type { Evaluator } from './evaluator.ts';

/** A mode with its prior odds. */
export interface Member {
  readonly choice: FaultChoice;
  readonly odds: number;
}

/** The modes of every effect (with presence), in the order of elements and modes: they are predicted alike in any company. */
export function membersByEffect(evaluator: Evaluator): ReadonlyMap<string, readonly Member[]> {
  const members = new Map<string, Member[]>();
  evaluator.book.elements.forEach((element, e) => {
    element.modes.forEach(({ odds }, m) => {
      const choice = { element: e, mode: m };
      const effect = evaluator.effectOf(choice);
      const list = members.get(effect);
      if (list === undefined) {
        members.set(effect, [{ choice, odds }]);
      } else {
        list.push({ choice, odds });
      }
    });
  });
  return members;
}
