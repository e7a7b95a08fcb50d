export { expectedInformation } from './information.ts';
export { search } from './search.ts';
export type {
  FaultChoice,
  SearchClass,
  SearchElement,
  SearchHypothesis,
  SearchMode,
  SearchObservation,
  SearchProblem,
  SearchResult,
} from './types.ts';
