import { type SearchElement, type SearchObservation, type SearchProblem, type SearchResult, search } from '../../../engine/search/index.ts';

/** Small helpers with which textbook problems are put to the very search that diagnoses cabinets. */

/** An element that is either whole or broken in one way, with prior probability p. */
export function breakable(id: string, p: number): SearchElement {
  return { id, modes: [{ id: 'broken', odds: p / (1 - p) }] };
}

/** An observation that only excludes: 1 where the prediction allows it, else 0. */
export function allows<P>(id: string, allowed: (prediction: P) => boolean): SearchObservation<P> {
  return { id, likelihood: (prediction) => (allowed(prediction) ? 1 : 0) };
}

/** A result that must be there, since nothing gives the search up. */
export function solve<P>(problem: SearchProblem<P>): SearchResult {
  const result = search(problem);
  if (result === null) throw new Error('the search was given up');
  return result;
}

/** The hypotheses with a likelihood above zero, each as its element (and mode) names, sorted: `A2+M2`. */
export function namesOf<P>(problem: SearchProblem<P>, result: SearchResult, withMode = false): readonly string[] {
  return result.hypotheses
    .filter((hypothesis) => hypothesis.likelihood > 0)
    .map((hypothesis) =>
      hypothesis.faults
        .map(({ element, mode }) => {
          const at = problem.elements[element];
          return withMode ? `${at?.id}/${at?.modes[mode]?.id}` : `${at?.id}`;
        })
        .sort()
        .join('+'),
    )
    .sort();
}
