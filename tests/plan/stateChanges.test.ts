import { describe, expect, it } from 'vitest';
import { repairTable, stateChange } from '../../engine/repair/index.ts';
import { machineStates } from '../../engine/schema/index.ts';
import { drivesContent } from './smallCabinet.ts';

const table = repairTable(drivesContent(1));
const minutesOf = (...parts: readonly (keyof typeof table.changes)[]) => parts.reduce((sum, part) => sum + table.changes[part].value, 0);

describe('a change of the machine’s state', () => {
  // Domain section 7: isolating costs lock-out and discharge and erases displays; leaving it costs boot, and the machine restarts.
  it.each([
    ['closed', 'open', ['open'], ['opens-live-cabinet']],
    ['open', 'closed', ['close'], []],
    ['closed', 'isolated', ['lockOut', 'discharge', 'open'], ['erases-displays']],
    ['open', 'isolated', ['lockOut', 'discharge'], ['erases-displays']],
    ['isolated', 'closed', ['close', 'boot'], ['restarts']],
    ['isolated', 'open', ['boot'], ['restarts', 'opens-live-cabinet']],
  ] as const)('should cost from %s to %s its parts, once, and say what it brings', (from, to, parts, effects) => {
    expect(stateChange(table, from, to)).toEqual({ from, to, minutes: minutesOf(...parts), effects });
  });

  it('should wait for the DC link whenever somebody is to reach in', () => {
    expect(table.changes.discharge.value).toBeGreaterThan(0);
  });

  it('should be none where nothing changes', () => {
    for (const state of machineStates) expect(stateChange(table, state, state)).toBeNull();
  });
});
