import type { LinkId, TypeId } from '../base/index.ts';
import { linkEnds, type Onset, onsets } from '../schema/index.ts';
import { predictLook, simulate } from '../simulation/index.ts';
import type { Cabinet } from '../topology/index.ts';
import { askParameters, behaviourBy, type Combination, canMatter, inputFor, listCombinations } from './combinations.ts';
import { findBehaviour } from './stagedBreak.ts';
import type { AskedParameter, NextBreak, StagedAct, StagedBreak } from './types.ts';

/** Links of one type that are tried; more would only repeat what these show. */
const mostLinks = 3;
/** Less information than this, in bits, is none. */
const leastBits = 1e-6;

/**
 * For each parameter that staged breaks left open the further break that tells most of it, in the order of the parameters. A parameter
 * of which no break tells anything has no entry. Other types are taken to be as the breaks make most likely.
 */
export function proposeBreaks(cabinet: Cabinet, breaks: readonly StagedBreak[], thoroughly?: TypeId): readonly NextBreak[] {
  const { parameters } = findBehaviour(cabinet, breaks, thoroughly);
  const { asked } = askParameters(
    cabinet,
    breaks.map(({ link }) => link),
    thoroughly,
  );
  const likeliest: Combination = parameters.map(
    ({ values }) => [...values].sort((a, b) => b.probability - a.probability)[0]?.value ?? 'unknown',
  ) as Combination; // every parameter has values, so the last resort is never taken
  const open = parameters.filter(({ state }) => state !== 'settled');
  const types = [...new Set(open.map(({ type }) => type))];
  return types.flatMap((type) => {
    const own = asked.filter((one) => one.type === type && one.parameter !== 'shortEffect');
    const left = leftOver(cabinet, breaks, asked, own, likeliest);
    const candidates = listActs(cabinet, type, breaks).flatMap((act) => {
      const shown = left.map((full) => showAct(cabinet, act, asked, full));
      return [
        { act, withLight: false, signatures: shown.map(({ displays }) => displays) },
        { act, withLight: true, signatures: shown.map(({ displays, light }) => `${displays} ${light}`) },
      ];
    });
    return open
      .filter((one) => one.type === type)
      .flatMap(({ parameter }): readonly NextBreak[] => {
        const index = asked.findIndex((one) => one.type === type && one.parameter === parameter);
        let best: NextBreak | null = null;
        for (const { act, withLight, signatures } of candidates) {
          if (!canMatter(parameter, [act], withLight)) {
            continue;
          }
          const bits = informationOn(
            left.map((full) => String(full[index])),
            signatures,
          );
          if (bits > (best?.bits ?? 0) + leastBits) {
            best = { type, parameter, act, withLight, bits };
          }
        }
        return best === null ? [] : [best];
      });
  });
}

/** The combinations of one type's parameters that still fit, each with the likeliest values of all others. */
function leftOver(
  cabinet: Cabinet,
  breaks: readonly StagedBreak[],
  asked: readonly AskedParameter[],
  own: readonly AskedParameter[],
  likeliest: Combination,
): readonly Combination[] {
  const full = (values: Combination): Combination =>
    asked.map((one, index) => {
      const at = own.indexOf(one);
      return (at < 0 ? likeliest[index] : values[at]) ?? 'unknown';
    }) as Combination; // both lists have a value for each of their parameters
  const all = listCombinations(own).map(full);
  const fits = all.filter((values) => compareOne(cabinet, breaks, asked, values));
  return fits.length === 0 ? all : fits;
}

function compareOne(cabinet: Cabinet, breaks: readonly StagedBreak[], asked: readonly AskedParameter[], values: Combination): boolean {
  const behaviourOf = behaviourBy(cabinet, asked, values);
  return breaks.every((one) => {
    const predicted = simulate(inputFor(cabinet, one, behaviourOf));
    return one.displays.every(({ unit, meanings }) => {
      const meaning = predicted.displays.get(unit)?.meaning;
      return meaning === undefined || meanings.includes(meaning) || (meanings.includes('other') && meaning !== 'dark');
    });
  });
}

/** Breaks that were not staged yet, on links that a unit of the type has an end of. */
function listActs(cabinet: Cabinet, type: TypeId, done: readonly StagedBreak[]): readonly StagedAct[] {
  const links: LinkId[] = [];
  for (const chain of cabinet.chains) {
    chain.links.forEach((link, index) => {
      const beside = [chain.units[index - 1], chain.units[index]];
      if (beside.some((unit) => unit !== undefined && cabinet.units.get(unit)?.type === type)) {
        links.push(link);
      }
    });
  }
  const isDone = (link: LinkId, onset: Onset, pluggedAgain: boolean) =>
    done.some((one) => one.link === link && one.onset === onset && one.pluggedAgain === pluggedAgain && one.looks.length > 0);
  // Without a power cycle first: that is the gentler way.
  return links
    .slice(0, mostLinks)
    .flatMap((link) =>
      onsets.flatMap((onset) =>
        [false, true]
          .filter((pluggedAgain) => !isDone(link, onset, pluggedAgain))
          .map((pluggedAgain) => ({ link, end: 'lower' as const, onset, pluggedAgain })),
      ),
    );
}

/** What a break shows on all displays, and the light at both ports of its link. */
function showAct(cabinet: Cabinet, act: StagedAct, asked: readonly AskedParameter[], values: Combination) {
  const input = inputFor(cabinet, act, behaviourBy(cabinet, asked, values));
  const displays = [...simulate(input).displays.values()].map(({ meaning }) => meaning).join(' ');
  const light = linkEnds.map((end) => predictLook({ look: 'light-at-port', link: act.link, end }, input)).join(' ');
  return { displays, light };
}

/** Mutual information, bits, between the value of a parameter and what a break shows; combinations weigh alike. */
function informationOn(values: readonly string[], shown: readonly string[]): number {
  const entropy = (keys: readonly string[]) => {
    const counts = new Map<string, number>();
    for (const key of keys) {
      counts.set(key, (counts.get(key) ?? 0) + 1);
    }
    return [...counts.values()].reduce((sum, count) => sum - (count / keys.length) * Math.log2(count / keys.length), 0);
  };
  return entropy(values) + entropy(shown) - entropy(values.map((value, index) => `${value} / ${shown[index]}`));
}
