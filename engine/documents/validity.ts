import type { UnitId } from '../base/index.ts';
import { unknownParameters } from '../cabinet/index.ts';
import { doorSheetWords as words } from '../messages/index.ts';
import type { Topology } from '../topology/index.ts';

/** Of which types the behaviour was seen on the real thing, and when; and of which it is assumed, in one or two sentences. */
export function behaviourNote(topology: Topology, units: readonly UnitId[]): string {
  const verified = new Set<string>();
  const assumed = new Set<string>();
  for (const unit of units) {
    const record = topology.units.get(unit);
    if (record === undefined || record.kind === 'supply') continue;
    const type = topology.content.types?.find(({ id }) => id === record.type);
    if (type === undefined) assumed.add(words.noType);
    else if (type.behaviourVerified !== undefined && unknownParameters(topology, unit).length === 0) {
      verified.add(words.verifiedOn(type.name, type.behaviourVerified.on));
    } else assumed.add(type.name);
  }
  return [...(verified.size > 0 ? [words.verified([...verified])] : []), ...(assumed.size > 0 ? [words.assumed([...assumed])] : [])].join(
    ' ',
  );
}
