import type { ChainId, TypeId, UnitId } from '../base/index.ts';
import { displayLogFactors, lookLogFactors, lookOutcomes, reportLogFactors } from '../diagnosis/index.ts';
import { behaviourValues, type DisplayMeaning, displayMeanings } from '../schema/index.ts';
import { predictLook, type Simulation, type SimulationInput, simulate } from '../simulation/index.ts';
import type { Cabinet } from '../topology/index.ts';
import { askParameters, behaviourBy, type Combination, canMatter, inputFor, listCombinations } from './combinations.ts';
import type { AskedParameter, ParameterFinding, StagedBreak, StagedFinding } from './types.ts';

/** Shares that differ by less are the same share. */
const alike = 1e-9;

/** How one combination meets what was read. */
export interface CombinationFit {
  readonly values: Combination;
  readonly log: number;
  /** Predicts every display and look as read. A report may err (domain section 6), so it excludes nothing. */
  readonly fits: boolean;
}

/**
 * Which values of the asked parameters fit what staged breaks showed. All combinations are alike before; displays, reports and looks
 * weigh as in the diagnosis (domain section 6). `thoroughly`: a type of which documented parameters are asked as well.
 */
export function findBehaviour(cabinet: Cabinet, breaks: readonly StagedBreak[], thoroughly?: TypeId): StagedFinding {
  const links = breaks.map(({ link }) => link);
  const { asked, setToDefault } = askParameters(cabinet, links, thoroughly);
  const withLight = breaks.some(({ looks }) => looks.length > 0);
  const compared = asked.filter(({ parameter }) => canMatter(parameter, breaks, withLight));
  const fits = compareCombinations(cabinet, breaks, compared);
  const fitting = fits.filter((one) => one.fits).length;
  const contradicted = fitting === 0;
  return {
    parameters: asked.map((one) => findingOf(one, compared.indexOf(one), fits, contradicted)),
    combinations: fits.length,
    fitting,
    contradicted,
    unexplained: contradicted ? findUnexplained(cabinet, breaks, compared) : [],
    reportsElsewhere: findReportsElsewhere(cabinet, breaks),
    setToDefault,
  };
}

/** Every combination of the parameters with how likely it makes what was read, as a share of the whole in `log`. */
export function compareCombinations(
  cabinet: Cabinet,
  breaks: readonly StagedBreak[],
  compared: readonly AskedParameter[],
): readonly CombinationFit[] {
  return listCombinations(compared).map((values) => {
    const behaviourOf = behaviourBy(cabinet, compared, values);
    let log = 0;
    let fits = true;
    for (const one of breaks) {
      const input = inputFor(cabinet, one, behaviourOf);
      const met = meet(cabinet, one, input, simulate(input));
      log += met.log;
      fits &&= met.fits;
    }
    return { values, log, fits };
  });
}

function meet(cabinet: Cabinet, seen: StagedBreak, input: SimulationInput, predicted: Simulation): { log: number; fits: boolean } {
  let log = 0;
  let fits = true;
  for (const { unit, meanings } of seen.displays) {
    const meaning = predicted.displays.get(unit)?.meaning;
    if (meaning !== undefined) {
      const isSupply = cabinet.units.get(unit)?.kind === 'supply';
      log += displayLogFactors(meanings, isSupply)[displayMeanings.indexOf(meaning)] ?? 0;
      fits &&= agrees(meanings, meaning);
    }
  }
  for (const { chain, gaps } of seen.reports) {
    const report = predicted.reports.get(chain);
    if (report?.speaks === true && report.length > 0) {
      log += reportLogFactors(gaps, report.length)[report.gap === 'none' ? 0 : report.gap] ?? 0;
    }
  }
  for (const { outcomes, note: _note, photo: _photo, at: _at, ...look } of seen.looks) {
    const outcome = predictLook(look, input);
    if (outcome !== null) {
      const all = lookOutcomes(look);
      log += lookLogFactors(outcomes, all)[all.indexOf(outcome)] ?? 0;
      fits &&= outcomes.some((one) => one === outcome);
    }
  }
  return { log, fits };
}

/** A set that contains `other` fits whatever is lit: nobody can predict a code that is not ours. */
function agrees(seen: readonly DisplayMeaning[], predicted: DisplayMeaning): boolean {
  return seen.includes(predicted) || (seen.includes('other') && predicted !== 'dark');
}

function findingOf(asked: AskedParameter, index: number, fits: readonly CombinationFit[], contradicted: boolean): ParameterFinding {
  const values = behaviourValues[asked.parameter];
  if (index < 0) {
    return { ...asked, state: 'untouched', values: values.map((value) => ({ value, probability: 1 / values.length, fits: true })) };
  }
  const largest = Math.max(...fits.map(({ log }) => log));
  const sum = (list: readonly CombinationFit[]) => list.reduce((total, { log }) => total + Math.exp(log - largest), 0);
  const whole = sum(fits);
  const beliefs = values.map((value) => {
    const own = fits.filter((one) => one.values[index] === value);
    return { value, probability: sum(own) / whole, fits: contradicted || own.some((one) => one.fits) };
  });
  const first = beliefs[0]?.probability ?? 0;
  const isAlike = beliefs.every((one) => one.fits && Math.abs(one.probability - first) < alike);
  const settled = beliefs.filter((one) => one.fits).length === 1;
  return { ...asked, values: beliefs, state: isAlike ? 'untouched' : settled ? 'settled' : 'open' };
}

/** The units whose display no combination predicts, whatever the others show. */
function findUnexplained(cabinet: Cabinet, breaks: readonly StagedBreak[], compared: readonly AskedParameter[]): readonly UnitId[] {
  const open = new Set<UnitId>();
  const explained = new Set<string>();
  const key = (index: number, unit: UnitId) => `${index} ${unit}`;
  for (const values of listCombinations(compared)) {
    const behaviourOf = behaviourBy(cabinet, compared, values);
    breaks.forEach((one, index) => {
      const predicted = simulate(inputFor(cabinet, one, behaviourOf));
      for (const { unit, meanings } of one.displays) {
        const meaning = predicted.displays.get(unit)?.meaning;
        if (meaning !== undefined && agrees(meanings, meaning)) {
          explained.add(key(index, unit));
        }
      }
    });
  }
  breaks.forEach(({ displays }, index) => {
    for (const { unit } of displays) {
      if (!explained.has(key(index, unit))) {
        open.add(unit);
      }
    }
  });
  return [...open];
}

/** A whole machine reports its first unreached unit behind the unplugged link, whatever the behaviour. */
function findReportsElsewhere(cabinet: Cabinet, breaks: readonly StagedBreak[]): readonly ChainId[] {
  const elsewhere = new Set<ChainId>();
  for (const { link, reports } of breaks) {
    for (const { chain, gaps } of reports) {
      const at = cabinet.chainById.get(chain)?.links.indexOf(link) ?? -1;
      const expected = at < 0 ? 'none' : at + 1;
      if (!gaps.includes(expected)) {
        elsewhere.add(chain);
      }
    }
  }
  return [...elsewhere];
}
