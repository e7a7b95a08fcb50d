/**
 * A diagnosis problem of any kind: things that can be at fault, how each can be at fault, what follows, and what was observed.
 * Cabinets, digital circuits and hitting sets are all put to the same `search`.
 */
export interface SearchProblem<Prediction> {
  readonly elements: readonly SearchElement[];
  /** Pairs of element indices of which at most one can be at fault (besides the rule of one mode per element). */
  readonly excludes?: readonly (readonly [number, number])[];
  /** How many elements may be at fault at once. All combinations up to this size are visited. */
  readonly maxFaults: number;
  /**
   * What follows from a set of faults (empty: all is well). The answer is only read before the next call, so it may be a buffer
   * that is used again. The order of `faults` carries no meaning.
   */
  readonly predict: (faults: readonly FaultChoice[]) => Prediction;
  readonly observations: readonly SearchObservation<Prediction>[];
  /**
   * Writes to `likelihoods[k]`, for every k from `start` on, the likelihood of all observations for `first` together with
   * `seconds[k]`: the same as by `predict`, for where that goes faster. The list is the same at every call. Optional.
   */
  readonly weighRow?: (first: FaultChoice, seconds: readonly FaultChoice[], start: number, likelihoods: Float64Array) => void;
  /** Keep only hypotheses that fit and of which no proper subset fits. Needs unmerged modes. */
  readonly minimalOnly?: boolean;
  /** How many of the most probable hypotheses to list. Default 200; all of them beyond two faults or with `minimalOnly`. */
  readonly keep?: number;
  /** Called now and then during a long search of up to two faults; answering `false` gives it up (`search` then returns null). */
  readonly onProgress?: (share: number) => boolean;
}

/** One thing that can be at fault, in at most one of its modes. */
export interface SearchElement {
  readonly id: string;
  readonly modes: readonly SearchMode[];
}

/** One way in which an element can be at fault. */
export interface SearchMode {
  readonly id: string;
  /** Prior odds p / (1 − p) of this mode; 0 is never visited. */
  readonly odds: number;
  /**
   * Modes with equal effect, in any elements, are predicted alike whatever else is at fault; they are searched as one and their
   * probability is shared out by prior afterwards. Left out: like no other. Effects are only allowed with `maxFaults` ≤ 2.
   */
  readonly effect?: string;
}

/** A mode chosen for an element, by index. */
export interface FaultChoice {
  readonly element: number;
  readonly mode: number;
}

/** One observation: how probable it is under a prediction (0: excluded by it). */
export interface SearchObservation<Prediction> {
  readonly id: string;
  readonly likelihood: (prediction: Prediction) => number;
}

/** One visited hypothesis. */
export interface SearchHypothesis {
  readonly faults: readonly FaultChoice[];
  /** Product of the prior odds of its faults; 1 for the empty set. */
  readonly odds: number;
  readonly likelihood: number;
  /** odds · likelihood / total. */
  readonly probability: number;
}

/** Hypotheses of one combination of effects: predicted alike. `example` stands for all of them. */
export interface SearchClass {
  readonly example: readonly FaultChoice[];
  readonly likelihood: number;
  readonly probability: number;
}

/** What a search found. Ties are broken by the order of elements and modes, so equal problems give equal answers. */
export interface SearchResult {
  /** Σ odds · likelihood over everything visited. Zero: the observations exclude every visited hypothesis. */
  readonly total: number;
  /** Σ odds over the visited non-empty hypotheses. */
  readonly visitedOdds: number;
  /** Σ odds over all combinations that were not visited (more faults than `maxFaults`). */
  readonly unvisitedOdds: number;
  /** Number of hypotheses visited, the empty one included. */
  readonly visited: number;
  /** Probability that nothing is at fault. */
  readonly nothing: number;
  /** Per element and mode, the summed probability of the hypotheses that contain it. */
  readonly modes: readonly (readonly number[])[];
  /** The most probable hypotheses, best first. */
  readonly hypotheses: readonly SearchHypothesis[];
  /** The most probable combinations of effects, best first; all single ones that fit are among them. */
  readonly classes: readonly SearchClass[];
}
