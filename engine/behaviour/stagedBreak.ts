import type { ChainId, LinkId, TypeId, UnitId } from '../base/index.ts';
import { displayLogFactors, lookLogFactors, lookOutcomes, reportLogFactors } from '../diagnosis/index.ts';
import { type Behaviour, type BehaviourParameter, behaviourValues, type DisplayMeaning, displayMeanings } from '../schema/index.ts';
import { type Look, predictLook, type Simulation, type SimulationInput, simulate } from '../simulation/index.ts';
import type { Cabinet } from '../topology/index.ts';
import { askParameters, behaviourBy, type Combination, canMatter, inputFor, listCombinations } from './combinations.ts';
import type { AskedParameter, ParameterFinding, StagedBreak, StagedFinding } from './types.ts';

/** Shares that differ by less are the same share. */
const alike = 1e-9;

/** How one part of the combinations meets what was read: `log` of the likelihood, and whether every display and look is as predicted. */
interface Met {
  readonly log: number;
  readonly fits: boolean;
}

/** The values of one type's own parameters, with how they meet what was read at units of that type. */
interface OwnFit extends Met {
  readonly values: Combination;
}

/** What all types share: which ports fall silent. Given that, what is read at a unit depends on its own type alone. */
interface Share extends Met {
  readonly values: Combination;
  /** By type, in the order of `Split.types`. */
  readonly own: readonly (readonly OwnFit[])[];
}

interface Split {
  readonly shared: readonly AskedParameter[];
  readonly types: readonly { readonly type: TypeId; readonly parameters: readonly AskedParameter[] }[];
  readonly shares: readonly Share[];
}

/**
 * Which values of the asked parameters fit what staged breaks showed. All combinations are alike before; displays, reports and looks
 * weigh as in the diagnosis (domain section 6); a report may err, so it excludes nothing. `thoroughly`: a type of which documented
 * parameters are asked as well.
 */
export function findBehaviour(cabinet: Cabinet, breaks: readonly StagedBreak[], thoroughly?: TypeId): StagedFinding {
  const links = breaks.map(({ link }) => link);
  const { asked, setToDefault } = askParameters(cabinet, links, thoroughly);
  const withLight = breaks.some(({ looks }) => looks.length > 0);
  const split = splitUp(
    cabinet,
    breaks,
    asked.filter(({ parameter }) => canMatter(parameter, breaks, withLight)),
  );
  const count = (of: (list: readonly OwnFit[]) => number, share: Share) => share.own.reduce((product, list) => product * of(list), 1);
  const combinations = split.shares.reduce((sum, share) => sum + count((list) => list.length, share), 0);
  const fitting = split.shares.reduce(
    (sum, share) => sum + (share.fits ? count((list) => list.filter(({ fits }) => fits).length, share) : 0),
    0,
  );
  const contradicted = fitting === 0;
  return {
    parameters: asked.map((one) => findingOf(one, split, contradicted)),
    combinations,
    fitting,
    contradicted,
    unexplained: contradicted ? findUnexplained(cabinet, breaks, split) : [],
    reportsElsewhere: findReportsElsewhere(cabinet, breaks),
    setToDefault,
  };
}

/**
 * Weighs the parameters in two layers (domain section 5): what a unit hears depends on nothing but which ports fall silent, and what
 * it then shows on its own type. So types need not be combined with each other, only each with the silent ports.
 */
function splitUp(cabinet: Cabinet, breaks: readonly StagedBreak[], compared: readonly AskedParameter[]): Split {
  const shared = compared.filter(({ parameter }) => parameter === 'onReceiveLoss');
  const types = [...new Set(compared.map(({ type }) => type))].map((type) => ({
    type,
    parameters: compared.filter((one) => one.type === type && one.parameter !== 'onReceiveLoss'),
  }));
  const shares = listCombinations(shared).map((values): Share => {
    const meetAt = (parameters: readonly AskedParameter[], own: Combination, isOurs: (unit: UnitId | null) => boolean): Met => {
      const behaviourOf = behaviourBy(cabinet, [...shared, ...parameters], [...values, ...own]);
      return meetAll(cabinet, breaks, behaviourOf, isOurs);
    };
    const typeOf = (unit: UnitId | null) => (unit === null ? undefined : cabinet.units.get(unit)?.type);
    return {
      values,
      ...meetAt([], [], (unit) => !types.some(({ type }) => type === typeOf(unit))),
      own: types.map(({ type, parameters }) =>
        listCombinations(parameters).map((own) => ({ values: own, ...meetAt(parameters, own, (unit) => typeOf(unit) === type) })),
      ),
    };
  });
  return { shared, types, shares };
}

/** How what was read meets one behaviour, at the units asked for. Reports and the controller's ports belong to `null`. */
function meetAll(
  cabinet: Cabinet,
  breaks: readonly StagedBreak[],
  behaviourOf: (unit: UnitId) => Behaviour,
  isOurs: (unit: UnitId | null) => boolean,
): Met {
  let log = 0;
  let fits = true;
  for (const one of breaks) {
    const input = inputFor(cabinet, one, behaviourOf);
    const met = meet(cabinet, one, input, simulate(input), isOurs);
    log += met.log;
    fits &&= met.fits;
  }
  return { log, fits };
}

function meet(
  cabinet: Cabinet,
  seen: StagedBreak,
  input: SimulationInput,
  predicted: Simulation,
  isOurs: (unit: UnitId | null) => boolean,
): Met {
  let log = 0;
  let fits = true;
  for (const { unit, meanings } of seen.displays) {
    const meaning = predicted.displays.get(unit)?.meaning;
    if (meaning !== undefined && isOurs(unit)) {
      const isSupply = cabinet.units.get(unit)?.kind === 'supply';
      log += displayLogFactors(meanings, isSupply)[displayMeanings.indexOf(meaning)] ?? 0;
      fits &&= agrees(meanings, meaning);
    }
  }
  for (const { chain, gaps } of isOurs(null) ? seen.reports : []) {
    const report = predicted.reports.get(chain);
    if (report?.speaks === true && report.length > 0) {
      log += reportLogFactors(gaps, report.length)[report.gap === 'none' ? 0 : report.gap] ?? 0;
    }
  }
  for (const { outcomes, note: _note, photo: _photo, at: _at, ...look } of seen.looks) {
    const outcome = isOurs(lightOf(cabinet, look)) ? predictLook(look, input) : null;
    if (outcome !== null) {
      const all = lookOutcomes(look);
      log += lookLogFactors(outcomes, all)[all.indexOf(outcome)] ?? 0;
      fits &&= outcomes.some((one) => one === outcome);
    }
  }
  return { log, fits };
}

/** The unit whose light a look sees: at the port the one beside it, at the plug the one at the far end. Null: the controller, or none. */
function lightOf(cabinet: Cabinet, look: Look): UnitId | null {
  if (look.look !== 'light-at-port' && look.look !== 'light-at-plug') {
    return null;
  }
  const chain = cabinet.chains.find(({ links }) => links.some((link) => link === look.link));
  const index = chain?.links.indexOf(look.link as LinkId) ?? -1; // the schema has it as plain text
  const isUpper = (look.end === 'upper') === (look.look === 'light-at-port');
  return chain?.units[isUpper ? index - 1 : index] ?? null;
}

/** A set that contains `other` fits whatever is lit: nobody can predict a code that is not ours. */
function agrees(seen: readonly DisplayMeaning[], predicted: DisplayMeaning): boolean {
  return seen.includes(predicted) || (seen.includes('other') && predicted !== 'dark');
}

function findingOf(asked: AskedParameter, split: Split, contradicted: boolean): ParameterFinding {
  const values = behaviourValues[asked.parameter];
  const inShared = split.shared.indexOf(asked);
  const atType = split.types.findIndex(({ parameters }) => parameters.includes(asked));
  const inOwn = split.types[atType]?.parameters.indexOf(asked) ?? -1;
  if (inShared < 0 && atType < 0) {
    return { ...asked, state: 'untouched', values: values.map((value) => ({ value, probability: 1 / values.length, fits: true })) };
  }
  // Logs are taken relative to the largest, so that long chains do not come out as nothing.
  const largest = Math.max(
    ...split.shares.map(({ log, own }) => own.reduce((sum, list) => sum + Math.max(...list.map((one) => one.log)), log)),
  );
  const weigh = (value: Behaviour[BehaviourParameter] | null) => {
    let weight = 0;
    let fits = false;
    for (const share of split.shares) {
      if (value !== null && inShared >= 0 && share.values[inShared] !== value) {
        continue;
      }
      let log = share.log - largest;
      let allFit = share.fits;
      share.own.forEach((list, index) => {
        const ours = value !== null && index === atType ? list.filter((one) => one.values[inOwn] === value) : list;
        const top = Math.max(...ours.map((one) => one.log));
        log += top + Math.log(ours.reduce((sum, one) => sum + Math.exp(one.log - top), 0));
        allFit &&= ours.some((one) => one.fits);
      });
      weight += Math.exp(log);
      fits ||= allFit;
    }
    return { weight, fits };
  };
  const whole = weigh(null).weight;
  const beliefs = values.map((value) => {
    const { weight, fits } = weigh(value);
    return { value, probability: weight / whole, fits: contradicted || fits };
  });
  const first = beliefs[0]?.probability ?? 0;
  const isAlike = beliefs.every((one) => one.fits && Math.abs(one.probability - first) < alike);
  const settled = beliefs.filter((one) => one.fits).length === 1;
  return { ...asked, values: beliefs, state: isAlike ? 'untouched' : settled ? 'settled' : 'open' };
}

/** The units whose display no combination predicts, whatever the others show. */
function findUnexplained(cabinet: Cabinet, breaks: readonly StagedBreak[], { shared, types, shares }: Split): readonly UnitId[] {
  const left = new Set(breaks.flatMap(({ displays }, index) => displays.map(({ unit }) => `${index} ${unit}`)));
  for (const { values } of shares) {
    // Units of no asked type are met by every turn of this loop alike.
    for (const { parameters } of [...types, { parameters: [] }]) {
      for (const own of listCombinations(parameters)) {
        const behaviourOf = behaviourBy(cabinet, [...shared, ...parameters], [...values, ...own]);
        breaks.forEach((one, index) => {
          const predicted = simulate(inputFor(cabinet, one, behaviourOf));
          for (const { unit, meanings } of one.displays) {
            const meaning = predicted.displays.get(unit)?.meaning;
            if (meaning === undefined || agrees(meanings, meaning)) {
              left.delete(`${index} ${unit}`);
            }
          }
        });
      }
    }
  }
  return [
    ...new Set(breaks.flatMap(({ displays }, index) => displays.map(({ unit }) => unit).filter((unit) => left.has(`${index} ${unit}`)))),
  ];
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
