import { describe, expect, it } from 'vitest';
import { checkCabinet } from '../../engine/cabinet/index.ts';
import {
  makeNames,
  wordAct,
  wordBefore,
  wordCodesToLookUp,
  wordFaultClause,
  wordItem,
  wordStepOutcome,
} from '../../engine/messages/index.ts';
import type { CabinetContent } from '../../engine/schema/index.ts';
import { line } from '../topology/small.ts';

const content: CabinetContent = {
  ...line(2),
  leads: line(2).leads?.map((lead) => (lead.id === 'l1' ? { ...lead, fuse: '-FC22' } : lead)),
};
const names = makeNames(checkCabinet(content).topology);

describe('what brings 24 V', () => {
  it('should be checked and measured before it is exchanged', () => {
    expect(wordAct(names, { do: 'replace-supply', unit: 'ps' })).toBe('check main switch, breaker and feed of supply -T0, then replace it');
    expect(wordAct(names, { do: 'replace-lead', lead: 'l1' })).toBe('check fuse -FC22 and terminals of lead -WD1, then replace it');
    expect(wordAct(names, { do: 'replace-lead', lead: 'l2' })).toBe('check fuse and terminals of lead -WD2, then replace it');
    expect(wordAct(names, { do: 'replace-fuse', unit: 'u1' })).toBe('measure the control fuse of -T1, replace it if it is open');
    expect(wordAct(names, { do: 'replace-fuse', unit: 'u1' }, 'done')).toBe('replaced the control fuse of -T1');
    expect(wordBefore({ do: 'act', acts: [{ do: 'replace-supply', unit: 'ps' }] })).toHaveLength(1);
    expect(wordBefore({ do: 'act', acts: [{ do: 'replace-board', unit: 'u1' }] })).toEqual([]);
  });

  it('should be suspected with the fuse that the file names', () => {
    expect(wordItem(names, { item: 'lead', lead: 'l1', mode: 'open' })).toBe('lead -WD1 with fuse -FC22');
    expect(wordFaultClause(names, { item: 'lead', lead: 'l1', mode: 'open' })).toBe('lead -WD1 with fuse -FC22 is open');
    expect(wordItem(names, { item: 'lead', lead: 'l2', mode: 'open' })).toBe('lead -WD2');
  });
});

describe('what may sit wrong', () => {
  it('should be compared before anything is put right', () => {
    expect(wordAct(names, { do: 'uncross-plugs', unit: 'u1' })).toBe('check and put right the two optical plugs of -T1');
    expect(wordBefore({ do: 'act', acts: [{ do: 'uncross-fibres', link: 'w1' }] })).toEqual([
      expect.stringContaining('Compare with a photo'),
    ]);
  });
});

describe('a code of a unit’s own', () => {
  const seen = (meanings: ('other' | 'dark' | 'quiet')[]) => ({ snapshots: [{ displays: [{ unit: 'u1', meanings }] }] });

  it('should be looked up first, as long as nothing else was done', () => {
    expect(wordCodesToLookUp(names, seen(['other']))?.head).toBe('Look up the code that -T1 shows.');
    expect(wordCodesToLookUp(names, seen(['dark']))).toBeNull();
    expect(wordCodesToLookUp(names, seen(['quiet', 'other']))).toBeNull();
    expect(wordCodesToLookUp(names, { snapshots: [...seen(['other']).snapshots, { restarted: true }] })).toBeNull();
  });
});

describe('a feedback plug that is pulled', () => {
  it('should ask for the chain, because the control halts for the missing encoder all the same', () => {
    const step = { do: 'act', acts: [{ do: 'pull-feedback', feedback: 'f1' }] } as const;
    expect(wordStepOutcome(names, step, 'runs')).toBe('chain comes up');
    expect(wordStepOutcome(names, { do: 'act', acts: [{ do: 'replace-feedback', feedback: 'f1' }] }, 'runs')).toBe('machine runs');
  });
});
