import { lookOutcomes } from '../../engine/diagnosis/index.ts';
import { wordOutcomes } from '../../engine/messages/index.ts';
import { directions, linkEnds } from '../../engine/schema/index.ts';
import type { Look } from '../../engine/simulation/index.ts';
import type { Topology } from '../../engine/topology/index.ts';
import { inReadingOrder } from '../canvas/projectFrame.ts';

/** Cables and units at which something besides a display can be looked at, in the order in which one walks along them. */
export function thingsToCheck(topology: Topology): { readonly links: readonly string[]; readonly units: readonly string[] } {
  return {
    links: topology.chains.flatMap(({ links }) => links),
    units: inReadingOrder(topology).filter((unit) => topology.units.get(unit)?.kind !== 'supply'),
  };
}

/** Every look at one of them. */
export function looksAt(topology: Topology, thing: string): readonly Look[] {
  const { units } = thingsToCheck(topology);
  if (units.includes(thing)) {
    return [
      { look: 'voltage', unit: thing },
      { look: 'compare-plugs', unit: thing },
    ];
  }
  return [
    ...linkEnds.map((end) => ({ look: 'light-at-plug', link: thing, end }) as const),
    ...linkEnds.map((end) => ({ look: 'light-at-port', link: thing, end }) as const),
    ...directions.map((fibre) => ({ look: 'lamp', link: thing, fibre }) as const),
    { look: 'compare-fibres', link: thing },
  ];
}

/** The cable or unit at which a look is taken. */
export const thingOf = (look: Look): string => ('link' in look ? look.link : look.unit);

/** One answer to "what did it show", with the digit that gives it. */
export interface CheckChoice {
  readonly key: string;
  /** Empty: it was not looked at. */
  readonly outcomes: readonly string[];
  readonly words: string;
}

/** Neighbours on a scale that the eye may not tell apart, with their digits; a digit means the same at every look. */
const unsure = [
  { key: '5', outcomes: ['none', 'weak'] },
  { key: '6', outcomes: ['weak', 'bright'] },
  { key: '6', outcomes: ['weak', 'clear'] },
] as const;

/** Every outcome that such a look can have, whatever anybody expects, and what fits somebody who is not sure. */
export function checkChoices(look: Look, notLookedAt: string): readonly CheckChoice[] {
  const all: readonly string[] = lookOutcomes(look);
  return [
    ...all.map((outcome, index) => ({ key: String(index + 1), outcomes: [outcome], words: wordOutcomes(look.look, [outcome]) })),
    ...unsure
      .filter(({ outcomes }) => outcomes.every((outcome) => all.includes(outcome)))
      .map(({ key, outcomes }) => ({ key, outcomes, words: wordOutcomes(look.look, outcomes) })),
    { key: '0', outcomes: [], words: notLookedAt },
  ];
}
