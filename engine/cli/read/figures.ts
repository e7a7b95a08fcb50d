import { makeNames, type ThingWord } from '../../messages/index.ts';
import { cabinetFigures, type FigureChange, type ThingFigure, thingFigures } from '../../sums/index.ts';
import type { Topology } from '../../topology/index.ts';
import { findNearest } from '../nearest.ts';
import { type Asked, refused, understood } from './asked.ts';
import { readLead, readLink, readUnit } from './names.ts';
import { readLevel, readNumber } from './values.ts';

type Thing = (typeof thingFigures)[ThingFigure][number];

const allFigures: readonly string[] = [...cabinetFigures, ...Object.keys(thingFigures)];

/**
 * One figure to be tried, as written on the command line: `length:-WH3=12`, `load:-TB2=2.5`, `ambient=55`. A name may hold colons and
 * equals signs: the first colon and the last equals sign part the three.
 */
export function readFigureChange(topology: Topology, text: string): Asked<FigureChange> {
  const trimmed = text.trim();
  const equals = trimmed.lastIndexOf('=');
  const colon = trimmed.indexOf(':');
  if (equals <= 0) return refused('set-malformed', { value: trimmed });
  const hasName = colon >= 0 && colon < equals;
  const word = trimmed
    .slice(0, hasName ? colon : equals)
    .trim()
    .toLowerCase();
  const value = trimmed.slice(equals + 1);
  const ofCabinet = cabinetFigures.find((figure) => figure === word);
  if (ofCabinet !== undefined) {
    if (hasName) return refused('set-malformed', { value: trimmed });
    return withValue(readCabinetFigure(trimmed, ofCabinet, value), (number) => ({ figure: ofCabinet, value: number }));
  }
  // The keys are exactly the figures.
  const figure = (Object.keys(thingFigures) as ThingFigure[]).find((one) => one === word);
  if (figure === undefined)
    return refused('value-not-allowed', { where: trimmed, value: word, allowed: allFigures, near: findNearest(word, allFigures) });
  if (!hasName) return refused('set-malformed', { value: trimmed });
  const id = readThing(topology, thingFigures[figure], trimmed.slice(colon + 1, equals), figure);
  if (!id.ok) return id;
  const number =
    figure === 'conductor-temperature' ? readTemperature(trimmed, value) : readNumber(trimmed, value, 0, figure === 'couplers');
  return withValue(number, (found) => ({ figure, id: id.value, value: found }));
}

/** A figure of the cabinet as a whole, by itself: `--ambient 55`. `where` says where it stood. */
export function readCabinetFigure(where: string, figure: (typeof cabinetFigures)[number], text: string): Asked<number> {
  return figure === 'ambient' ? readTemperature(where, text) : readNumber(where, text, 0);
}

function readTemperature(where: string, text: string): Asked<number> {
  return readLevel(where, text, -60, 200);
}

function withValue<T>(number: Asked<number>, make: (value: number) => T): Asked<T> {
  return number.ok ? understood(make(number.value)) : number;
}

const readers: { readonly [T in Thing]: (topology: Topology, name: string) => Asked<string> } = {
  cable: readLink,
  lead: readLead,
  unit: (topology, name) => readUnit(topology, name),
  supply: (topology, name) => readUnit(topology, name, 'supply'),
};

/** The thing that has the figure: of the kinds that may have it, the first in which the name is found. */
function readThing(topology: Topology, things: readonly Thing[], name: string, figure: ThingFigure): Asked<string> {
  let answer: Asked<string> | null = null;
  for (const thing of things) {
    const asked = readers[thing](topology, name);
    if (!asked.ok) {
      answer ??= asked;
      continue;
    }
    const isSupply = [...topology.units.values()].some(({ id, kind }) => id === asked.value && kind === 'supply');
    if (thing === 'cable' || thing === 'lead' || isSupply === (thing === 'supply')) return asked;
    const allowed: readonly ThingWord[] = things;
    answer = refused('figure-not-of-thing', { name: makeNames(topology).unit(asked.value), figure, allowed });
  }
  return answer ?? refused('set-malformed', { value: name });
}
