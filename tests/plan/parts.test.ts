import { describe, expect, it } from 'vitest';
import { partFor, repairTable } from '../../engine/repair/index.ts';
import type { CabinetContent, UnitKind } from '../../engine/schema/index.ts';
import { drivesContent, soundCabinet } from './smallCabinet.ts';

type Spare = NonNullable<CabinetContent['spares']>[number];

/** Two drives, a spindle drive with another board, and one of which no number is known; all in one store. */
function boardFor(unit: 'u1' | 'u3' | 'u4', spare: Omit<Spare, 'id' | 'kind'>, kind: UnitKind = 'servo-drive') {
  const numbers = ['AX-100', 'AX-100', 'SP-200', undefined];
  const content = drivesContent(4, { spares: [{ id: 'b1', kind: 'board', ...spare }] });
  const units = content.units?.map((one) => {
    const number = numbers[Number(one.id.slice(1)) - 1];
    return one.kind === 'supply'
      ? one
      : { ...one, ...(one.id === unit ? { kind } : {}), board: number === undefined ? {} : { partNumber: number } };
  });
  const cabinet = soundCabinet({ ...content, units: units ?? [] });
  const source = partFor(cabinet, repairTable(cabinet.content), { do: 'replace-board', unit });
  return [source?.partNumber, source?.spare, source?.mustBeGot, source?.fits];
}

describe('the part that an act puts in (domain section 8: boards of equal part number)', () => {
  it('should take a spare of equal number, and no other, whatever the store says of the other', () => {
    expect(boardFor('u1', { partNumber: 'AX-100' })).toEqual(['AX-100', 'b1', false, 'yes']);
    expect(boardFor('u1', { partNumber: ' AX-100 ', fits: 'yes' })).toEqual(['AX-100', 'b1', false, 'yes']);
    expect(boardFor('u3', { partNumber: 'AX-100' })).toEqual(['SP-200', null, true, 'yes']);
    expect(boardFor('u3', { partNumber: 'AX-100', fits: 'yes' })).toEqual(['SP-200', null, true, 'yes']);
    expect(boardFor('u1', { partNumber: 'AX-100', fits: 'no' })).toEqual(['AX-100', null, true, 'yes']);
    expect(boardFor('u1', { partNumber: 'AX-100', fits: 'unknown' })).toEqual(['AX-100', 'b1', false, 'unknown']);
  });

  it('should take the word of the store for a successor, whose number stands nowhere in the cabinet', () => {
    expect(boardFor('u1', { partNumber: 'AX-101', fits: 'yes' })).toEqual(['AX-100', 'b1', false, 'yes']);
    expect(boardFor('u1', { partNumber: 'AX-101' })).toEqual(['AX-100', null, true, 'yes']);
  });

  it('should know less where a number is missing, and nothing of a spare that is another unit’s', () => {
    expect(boardFor('u4', { partNumber: 'AX-100', fits: 'yes' })).toEqual([null, 'b1', false, 'unknown']);
    expect(boardFor('u4', { partNumber: 'AX-100', fits: 'yes' }, 'encoder-interface')).toEqual([null, null, true, 'yes']);
    expect(boardFor('u4', { partNumber: 'AX-101', fits: 'yes' })).toEqual([null, 'b1', false, 'yes']);
    expect(boardFor('u4', {})).toEqual([null, 'b1', false, 'unknown']);
    expect(boardFor('u3', { fits: 'yes' })).toEqual(['SP-200', 'b1', false, 'yes']);
  });
});
