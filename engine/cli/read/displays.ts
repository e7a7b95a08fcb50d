import type { UnitId } from '../../base/index.ts';
import { makeNames } from '../../messages/index.ts';
import { type DisplayMeaning, displayMeanings, type LegendRecord, type Snapshot, supplyMeanings } from '../../schema/index.ts';
import type { Topology } from '../../topology/index.ts';
import { findNearest } from '../nearest.ts';
import { type Asked, refused, understood } from './asked.ts';
import { readUnit } from './names.ts';

type DisplayObservation = NonNullable<Snapshot['displays']>[number];

const complaints = ['upstream-loss', 'downstream-loss', 'both-losses'] as const;

/**
 * What a display shows, as written on the command line: `UNIT=MEANING[,MEANING…]`, `UNIT=CODE`. Besides the six meanings, `lit` is
 * all but dark and `complains` the three losses. A raw code is looked up in the legend of the unit's type, else the cabinet's.
 */
export function readDisplay(topology: Topology, text: string): Asked<DisplayObservation> {
  // Designations may hold equals signs themselves: the last one that leaves a known unit on its left parts the two.
  let answer: Asked<DisplayObservation> = refused('display-malformed', { value: text.trim() });
  for (let at = text.lastIndexOf('='); at > 0; at = at > 1 ? text.lastIndexOf('=', at - 1) : -1) {
    const unit = readUnit(topology, text.slice(0, at));
    if (unit.ok) return readMeanings(topology, unit.value, text.slice(at + 1).trim());
    if (text.lastIndexOf('=') === at) answer = unit;
  }
  return answer;
}

function readMeanings(topology: Topology, unit: UnitId, text: string): Asked<DisplayObservation> {
  const name = makeNames(topology).unit(unit);
  if (!text) return refused('display-malformed', { value: `${name}=` });
  const legend = findLegend(topology, unit);
  // A code may hold a comma: the whole text is tried before its parts.
  const whole = findCode(legend, text);
  if (whole) return understood({ unit, meanings: [...whole.meanings], code: whole.code });
  const meanings = new Set<DisplayMeaning>();
  let code: string | undefined;
  for (const part of text.split(',').map((one) => one.trim())) {
    const found = readMeaning(topology, unit, part);
    const coded = found ? undefined : findCode(legend, part);
    if (!found && !coded) return refuseMeaning(name, part, legend);
    for (const meaning of found ?? coded?.meanings ?? []) meanings.add(meaning);
    if (coded) code = code === undefined ? coded.code : `${code},${coded.code}`;
  }
  if (isSupply(topology, unit)) {
    const allowed: readonly DisplayMeaning[] = supplyMeanings;
    const foreign = [...meanings].find((meaning) => !allowed.includes(meaning));
    if (foreign) return refused('meaning-not-of-supply', { name, value: foreign });
  }
  return understood({ unit, meanings: displayMeanings.filter((meaning) => meanings.has(meaning)), ...(code ? { code } : {}) });
}

function readMeaning(topology: Topology, unit: UnitId, text: string): readonly DisplayMeaning[] | undefined {
  const word = text.toLowerCase().replace(/\s+/g, '-');
  if (word === 'lit') return (isSupply(topology, unit) ? supplyMeanings : displayMeanings).filter((meaning) => meaning !== 'dark');
  if (word === 'complains') return complaints;
  return displayMeanings.filter((meaning) => meaning === word).length > 0
    ? displayMeanings.filter((meaning) => meaning === word)
    : undefined;
}

/** The legend of a unit: its type's, else the cabinet's. */
function findLegend(topology: Topology, unit: UnitId): LegendRecord | undefined {
  const typeId = topology.units.get(unit)?.type;
  const type = typeId === undefined ? undefined : topology.content.types?.find(({ id }) => id === typeId);
  const id = type?.legend ?? topology.content.defaultLegend;
  return topology.content.legends?.find((legend) => legend.id === id);
}

function findCode(legend: LegendRecord | undefined, text: string) {
  const codes = legend?.codes ?? [];
  const exact = codes.find(({ code }) => code === text);
  if (exact) return exact;
  const alike = codes.filter(({ code }) => code.toLowerCase() === text.toLowerCase());
  return alike.length === 1 ? alike[0] : undefined;
}

function refuseMeaning(name: string, value: string, legend: LegendRecord | undefined) {
  if (!legend) {
    const near = findNearest(value, [...displayMeanings, 'lit', 'complains']);
    return near
      ? refused('value-not-allowed', { where: name, value, allowed: [...displayMeanings, 'lit', 'complains'], near })
      : refused('code-without-legend', { name, value });
  }
  const near = findNearest(value, [...displayMeanings, 'lit', 'complains', ...legend.codes.map(({ code }) => code)]);
  return refused('code-unknown', { name, value, legend: legend.name, near });
}

function isSupply(topology: Topology, unit: UnitId): boolean {
  return topology.units.get(unit)?.kind === 'supply';
}
