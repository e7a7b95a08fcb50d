import type { Problem } from '../../engine/base/index.ts';
import { checkCabinet } from '../../engine/cabinet/index.ts';
import type { CabinetContent } from '../../engine/schema/index.ts';

/** Problems that no edit may make: they say that something points nowhere, or that one port holds two plugs. */
const never: readonly Problem['code'][] = [
  'reference-unknown',
  'id-duplicate',
  'chain-fork',
  'unit-fork',
  'unit-merge',
  'chain-loop',
  'chain-number-doubled',
  'supply-on-chain',
  'unit-off-chain-linked',
  'lead-into-supply',
  'feedback-on-supply',
  'supply-marked-on-chain',
  'encoder-interface-off-chain',
  'designation-missing',
];

export function brokenBy(content: CabinetContent): readonly Problem[] {
  return checkCabinet(content).problems.filter(({ code }) => never.includes(code));
}
