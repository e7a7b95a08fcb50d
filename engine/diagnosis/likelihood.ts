import { type DisplayMeaning, displayMeanings, supplyMeanings } from '../schema/index.ts';

/*
 * How probable an observation is under a prediction (domain section 6), as logarithms. All figures are the domain's.
 */

/** ε: how often a display or a look is read wrongly, or a legend entry is wrong. */
export const misreading = 0.02;
/** ρ: how often the controller's report names the gap that follows from the faults. */
const reportTrust = 0.9;

/** log factor of a display observation for each predicted meaning, in the order of `displayMeanings`. */
export function displayLogFactors(observed: readonly DisplayMeaning[], isSupply: boolean): Float64Array {
  const others = (isSupply ? supplyMeanings.length : displayMeanings.length) - 1;
  const size = new Set(observed).size;
  const factors = displayMeanings.map((predicted) => {
    // Some other code than the known ones: any lit unit may show one, whatever the chain does.
    if (observed.includes('other') && predicted !== 'dark') {
      return 1;
    }
    return observed.includes(predicted) ? 1 - misreading : Math.min(1, (misreading * size) / others);
  });
  return Float64Array.from(factors, Math.log);
}

/** log factor of a report for the prediction "none" (index 0) and for each gap 1 … `length`. */
export function reportLogFactors(observed: readonly (number | 'none')[], length: number): Float64Array {
  const gaps = new Set(observed.map((gap) => (gap === 'none' ? 0 : gap)).filter((gap) => gap <= length));
  const factors = Array.from({ length: length + 1 }, (_, predicted) => {
    let sum = 0;
    for (const gap of gaps) {
      sum += gap === predicted ? reportTrust : (1 - reportTrust) / length;
    }
    return Math.min(1, sum);
  });
  return Float64Array.from(factors, Math.log);
}

/** log factor of a look for each of its outcomes. */
export function lookLogFactors<O>(observed: readonly O[], outcomes: readonly O[]): Float64Array {
  const seen = new Set(observed);
  const factors = outcomes.map((predicted) => {
    let sum = 0;
    for (const outcome of seen) {
      sum += outcome === predicted ? 1 - misreading : misreading / (outcomes.length - 1);
    }
    return Math.min(1, sum);
  });
  return Float64Array.from(factors, Math.log);
}
