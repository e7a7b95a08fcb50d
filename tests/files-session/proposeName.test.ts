import { describe, expect, it } from 'vitest';
import type { CabinetContent, CaseContent } from '../../engine/schema/index.ts';
import { newCabinetId, proposeName } from '../../renderer/files/writeDocument.ts';

describe('the name that is proposed for a file', () => {
  const named = (cabinet: CabinetContent, id: string) => {
    const caseRecord: CaseContent = { id, name: 'any', cabinet, evidence: { snapshots: [] } };
    return [proposeName('cabinet', { cabinet, caseRecord }), proposeName('case', { cabinet, caseRecord })];
  };

  it('should be the name of the cabinet where nobody gave an id', () => {
    const id = newCabinetId(new Date('2026-11-26T21:16:12Z'));
    expect(named({ id, name: 'Gear grinder QG-7' }, `${id}-case-1`)).toEqual([
      'Gear-grinder-QG-7.cabinet.json',
      'Gear-grinder-QG-7-case-1.case.json',
    ]);
  });

  it('should be the id where one was given, and one that every system takes', () => {
    expect(named({ id: 'qg7-c1', name: 'Gear grinder' }, 'qg7-c1.2')).toEqual(['qg7-c1.cabinet.json', 'qg7-c1.2.case.json']);
    expect(named({ id: newCabinetId(new Date(0)), name: 'a/b:c' }, 'x')[0]).toBe('a-b-c.cabinet.json');
  });
});
