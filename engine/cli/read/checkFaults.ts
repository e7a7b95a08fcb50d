import type { UnitId } from '../../base/index.ts';
import { type References, type UnknownName, unknownInActs, unknownReferences } from '../../cabinet/index.ts';
import { type Names, type UsageProblem, wordFault, wordItem } from '../../messages/index.ts';
import type { Fault, Intervention, Onset } from '../../schema/index.ts';
import { itemKey } from '../../simulation/index.ts';
import type { Topology } from '../../topology/index.ts';
import { findNearest } from '../nearest.ts';
import { makeUsageProblem } from './asked.ts';

/** Modes that are there all the time or not at all (domain section 4). */
function isOnlySteady(fault: Fault): boolean {
  return fault.item === 'wiring' || fault.item === 'fuse' || fault.mode === 'fibres-crossed';
}

/** Wiring mistakes that can only be found at power-up (domain section 4), unless something was done that may have left them so. */
export function checkOnset(names: Names, faults: readonly Fault[], onset: Onset, isTouched: boolean): readonly UsageProblem[] {
  if (onset === 'at-power-up' || isTouched) return [];
  return faults
    .filter(({ item, mode }) => item === 'wiring' || mode === 'fibres-crossed')
    .map((fault) => makeUsageProblem('only-at-power-up', { value: wordFault(names, fault) }));
}

/** What is wrong with a set of faults for this cabinet: things that it does not have, modes that these cannot have or not together. */
export function checkFaults(topology: Topology, names: Names, faults: readonly Fault[]): readonly UsageProblem[] {
  const unknown = faults.flatMap((fault) => unknownThings(topology, fault));
  if (unknown.length > 0) return unknown;
  return [...faults.flatMap((fault) => checkFault(topology, names, fault)), ...checkTogether(names, faults)];
}

/** What an act names that the cabinet does not have. */
export function checkActs(topology: Topology, acts: readonly Intervention[]): readonly UsageProblem[] {
  return unknownInActs(topology, acts).flatMap((one) => (one.thing === 'gap' ? [] : [nameUnknown(topology, one)]));
}

/** Ids that do not occur in the cabinet. */
export function unknownThings(topology: Topology, references: References): readonly UsageProblem[] {
  return unknownReferences(topology, references).flatMap((one) => (one.thing === 'gap' ? [] : [nameUnknown(topology, one)]));
}

/** Says that the cabinet has no such thing, and what it has that is called nearly so. */
export function nameUnknown(topology: Topology, { thing, id }: Exclude<UnknownName, { thing: 'gap' }>): UsageProblem {
  return makeUsageProblem('name-unknown', { thing, name: id, near: findNearest(id, knownIds(topology)[thing]) });
}

/** The ids that a thing could have. */
function knownIds({ units, links, leads, feedbacks, chainById, content }: Topology) {
  return {
    unit: units.keys(),
    cable: links.keys(),
    lead: leads.keys(),
    feedback: feedbacks.keys(),
    chain: chainById.keys(),
    spare: (content.spares ?? []).map(({ id }) => id),
    any: [units, links, leads, feedbacks, chainById].flatMap((map: ReadonlyMap<string, unknown>) => [...map.keys()]),
  };
}

function checkFault(topology: Topology, names: Names, fault: Fault): readonly UsageProblem[] {
  const problems: UsageProblem[] = [];
  if (fault.presence === 'intermittent' && isOnlySteady(fault)) {
    problems.push(makeUsageProblem('presence-only-steady', { value: wordFault(names, { ...fault, presence: 'steady' }) }));
  } else if (fault.absentNow === true && fault.presence !== 'intermittent') {
    problems.push(makeUsageProblem('absent-needs-intermittent', { value: wordFault(names, fault) }));
  }
  if (!('unit' in fault)) return problems;
  // The ids were looked up before; the maps are keyed by the branded ones.
  const unit = fault.unit as UnitId;
  const name = names.unit(unit);
  const isSupply = topology.units.get(unit)?.kind === 'supply';
  if (fault.item === 'supply' && !isSupply) problems.push(makeUsageProblem('supply-needed', { name }));
  else if (fault.item !== 'supply' && isSupply) problems.push(makeUsageProblem('unit-needed', { name }));
  else if ((fault.item === 'board' || fault.item === 'wiring') && !topology.placeOf.has(unit)) {
    problems.push(makeUsageProblem('board-needs-chain-unit', { name }));
  }
  return problems;
}

/** At most one mode for each item; a cable may have one for each fibre. */
function checkTogether(names: Names, faults: readonly Fault[]): readonly UsageProblem[] {
  const problems: UsageProblem[] = [];
  const taken = new Map<string, Set<string>>();
  for (const fault of faults) {
    const key = itemKey(fault);
    const parts =
      fault.item !== 'cable' || fault.mode === 'cut' || fault.mode === 'fibres-crossed'
        ? ['outbound', 'return']
        : [fault.mode.split('-')[0] ?? ''];
    const before = taken.get(key) ?? new Set<string>();
    if (parts.some((part) => before.has(part))) problems.push(makeUsageProblem('faults-exclude', { item: wordItem(names, fault) }));
    taken.set(key, new Set([...before, ...parts]));
  }
  return problems;
}
