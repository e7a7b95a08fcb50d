import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { makeQuickCabinet, parseQuickLine } from '../../engine/quick/index.ts';
import { buildTopology } from '../../engine/topology/index.ts';
import { blankField, type CountedField, fieldsOf, readGaps } from '../../renderer/find/reportPlaces.ts';

function chainOf(line: string) {
  const plan = parseQuickLine(line);
  if (!plan.ok) throw new Error(line);
  const { topology } = buildTopology({ id: 'found', name: 'as found', ...makeQuickCabinet(plan.value, { typeName: 'as found' }) });
  const [chain] = topology.chains;
  if (!chain) throw new Error(line);
  return { topology, chain };
}
const drive = (ordinal: string): CountedField => ({ group: 'drive', ordinal });
const encoder = (ordinal: string): CountedField => ({ group: 'encoder-interface', ordinal });
const controller: CountedField = { group: 'controller', ordinal: '' };

describe('readGaps', () => {
  const { topology, chain } = chainOf('ssesp');
  it.each([
    ['nothing typed', blankField, blankField, { kind: 'nothing' }],
    ['drive 2 reached, the third unit is the first encoder interface', drive('2'), blankField, { kind: 'gaps', gaps: [3] }],
    ['encoder interface 1 reached', encoder('1'), blankField, { kind: 'gaps', gaps: [4] }],
    ['nobody reached', controller, blankField, { kind: 'gaps', gaps: [1] }],
    ['the last one reached', drive('4'), blankField, { kind: 'gaps', gaps: ['none'] }],
    ['drive 3 not reached', blankField, drive('3'), { kind: 'gaps', gaps: [4] }],
    ['both named', drive('1'), drive('3'), { kind: 'gaps', gaps: [2, 3, 4] }],
    ['one that is not there', drive('9'), blankField, { kind: 'unknown-place', place: drive('9') }],
    ['the wrong way round', drive('3'), drive('3'), { kind: 'wrong-order' }],
  ] as const)('should read: %s', (_what, reached, missing, expected) => {
    expect(readGaps(topology, chain, reached, missing)).toEqual(expected);
  });

  it('should read back the fields of every run of gaps', () => {
    fc.assert(
      fc.property(fc.array(fc.constantFrom('s', 'p', 'e'), { minLength: 1, maxLength: 12 }), fc.nat(), fc.nat(), (kinds, start, length) => {
        const made = chainOf(kinds.join(''));
        const first = 1 + (start % kinds.length);
        const gaps = Array.from({ length: 1 + (length % (kinds.length - first + 1)) }, (_, index) => first + index);
        const [reached, missing] = fieldsOf(made.topology, made.chain, gaps);
        expect(readGaps(made.topology, made.chain, reached, missing)).toEqual({ kind: 'gaps', gaps });
      }),
      { seed: 4, numRuns: 200 },
    );
  });
});
