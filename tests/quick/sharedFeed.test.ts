import { describe, expect, it } from 'vitest';
import { checkCabinet } from '../../engine/cabinet/index.ts';
import { diagnose } from '../../engine/diagnosis/index.ts';
import { askSharedFeed, feedApart, feedTogether, makeQuickCabinet, parseQuickLine } from '../../engine/quick/index.ts';
import type { CabinetContent, Snapshot } from '../../engine/schema/index.ts';

function quick(line: string): CabinetContent {
  const plan = parseQuickLine(line);
  if (!plan.ok) throw new Error('unreadable line');
  return { id: 'q', name: 'q', ...makeQuickCabinet(plan.value, { typeName: 'as found' }) };
}

function firstSuspect(content: CabinetContent, snapshot: Snapshot) {
  const { cabinet } = checkCabinet(content);
  if (!cabinet) throw new Error('unsound');
  const { hypotheses, contradiction } = diagnose(cabinet, { snapshots: [snapshot] });
  return { faults: hypotheses[0]?.faults.map(({ item }) => item) ?? [], contradicted: contradiction !== null };
}

/** Two neighbours dark, their neighbours complain, the supply is lit. */
const content = quick('ssspes');
const darkPair: Snapshot = {
  onset: 'while-running',
  halted: true,
  displays: (['TB1', 'TB2', 'TB3', 'TB4', 'KE2', 'TB5'] as const).map((unit, index) => ({
    unit,
    meanings: [(['quiet', 'quiet', 'downstream-loss', 'dark', 'dark', 'upstream-loss'] as const)[index] ?? 'quiet'],
  })),
};

describe('a feed that several units may share', () => {
  it('should be asked for, and once it is said, be the one suspect that explains both', () => {
    const units = askSharedFeed(content, darkPair);
    expect(units).toEqual(['TB4', 'KE2']);
    expect(firstSuspect(content, darkPair).contradicted).toBe(true);
    const together = { ...content, leads: feedTogether(content.leads ?? [], units) };
    expect(firstSuspect(together, darkPair)).toEqual({ faults: ['lead/WD4'], contradicted: false });
    expect(askSharedFeed(together, darkPair)).toEqual([]);
  });

  it('should not be asked for again once each is known to have a lead of its own', () => {
    const units = askSharedFeed(content, darkPair);
    const apart = { ...content, leads: feedApart(content.leads ?? [], units, 'read off') };
    expect(askSharedFeed(apart, darkPair)).toEqual([]);
    expect(apart.leads.filter(({ notes }) => notes === 'read off').map(({ to }) => to?.unit)).toEqual(['TB4', 'KE2']);
    expect(firstSuspect(apart, darkPair)).toEqual(firstSuspect(content, darkPair));
  });

  it('should not be asked for where one unit is dark, all are, the supply is, or the lead was read off the machine', () => {
    const seen = (unit: string, meaning: 'dark' | 'quiet') => ({ unit, meanings: [meaning] });
    const every = (content.units ?? []).filter(({ kind }) => kind !== 'supply').map(({ id }) => seen(id, 'dark'));
    expect(askSharedFeed(content, { displays: [seen('TB4', 'dark'), seen('KE2', 'quiet')] })).toEqual([]);
    expect(askSharedFeed(content, { displays: every })).toEqual([]);
    expect(askSharedFeed(content, { displays: [...(darkPair.displays ?? []), seen('TB6', 'dark')] })).toEqual([]);
    const known = { ...content, leads: content.leads?.map((lead) => (lead.to?.unit === 'KE2' ? { ...lead, designation: '-WD7' } : lead)) };
    expect(askSharedFeed(known, darkPair)).toEqual([]);
  });
});
