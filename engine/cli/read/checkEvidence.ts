import { unknownInEvidence } from '../../cabinet/index.ts';
import type { Names, UsageProblem } from '../../messages/index.ts';
import type { Evidence } from '../../schema/index.ts';
import type { Topology } from '../../topology/index.ts';
import { makeUsageProblem } from './asked.ts';
import { nameUnknown } from './checkFaults.ts';

/** What evidence names that the cabinet does not have: units, chains, gaps, links. A diagnosis could make nothing of it. */
export function checkEvidence(topology: Topology, names: Names, evidence: Evidence): readonly UsageProblem[] {
  return unknownInEvidence(topology, evidence).map((one) =>
    one.thing === 'gap'
      ? makeUsageProblem('place-unknown', { name: String(one.gap), chain: names.chain(one.chain), length: one.length })
      : nameUnknown(topology, one),
  );
}
