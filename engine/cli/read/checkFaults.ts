import type { UnitId } from '../../base/index.ts';
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
  return acts.flatMap((act) => {
    const other = act.do === 'exchange-cables' ? { link: act.other } : act.do === 'exchange-boards' ? { unit: act.other } : {};
    return [...unknownThings(topology, act), ...unknownThings(topology, act.do === 'bridge-unit' ? { link: act.cable } : other)];
  });
}

/** Fields of a fault, act or look that hold an id, and those that say what it is. */
interface References {
  readonly item?: string;
  readonly do?: string;
  readonly look?: string;
  readonly unit?: string;
  readonly link?: string;
  readonly lead?: string;
  readonly feedback?: string;
  readonly chain?: string;
}

/** Ids that do not occur in the cabinet. */
export function unknownThings(topology: Topology, references: References): readonly UsageProblem[] {
  const check = (thing: 'unit' | 'cable' | 'lead' | 'feedback' | 'chain', id: string | undefined, known: ReadonlyMap<string, unknown>) =>
    id === undefined || known.has(id) ? [] : [makeUsageProblem('name-unknown', { thing, name: id, near: findNearest(id, known.keys()) })];
  return [
    ...check('unit', references.unit, topology.units),
    ...check('cable', references.link, topology.links),
    ...check('lead', references.lead, topology.leads),
    ...check('feedback', references.feedback, topology.feedbacks),
    ...check('chain', references.chain, topology.chainById),
  ];
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
