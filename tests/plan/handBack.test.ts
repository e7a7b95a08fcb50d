import { describe, expect, it } from 'vitest';
import { listHandBackChecks } from '../../engine/plan/index.ts';
import { listReplaced, writeReplaced } from '../../engine/repair/index.ts';
import type { Evidence, Intervention } from '../../engine/schema/index.ts';
import { drivesContent, soundCabinet } from './smallCabinet.ts';

const content = drivesContent(3, { spares: [{ id: 'b1', kind: 'board', partNumber: 'AX-100', serial: 'S-1', count: 1 }] });
const cabinet = soundCabinet(content);
const doneTo = (...acts: readonly Intervention[]): Evidence => ({
  snapshots: [{}, { interventions: [...acts], restarted: true, halted: false }],
});

describe('listReplaced and writeReplaced', () => {
  it('should list each place once, with what stands there last and what is known of the spare', () => {
    const evidence = doneTo(
      { do: 'replace-board', unit: 'u2' },
      { do: 'replace-cable', link: 'w1' },
      { do: 'replace-board', unit: 'u2', spare: 'b1' },
    );
    expect(listReplaced(content, evidence).map(({ owner, proposed, spare }) => [owner, proposed, spare])).toEqual([
      [{ kind: 'link', id: 'w1' }, { partNumber: 'POF-1', serial: '' }, null],
      [{ kind: 'board', id: 'u2' }, { partNumber: 'AX-100', serial: 'S-1' }, 'b1'],
    ]);
  });

  it('should list nothing for what was only reseated, cleaned or exchanged', () => {
    expect(listReplaced(content, doneTo({ do: 'reseat-unit', unit: 'u1' }, { do: 'exchange-boards', unit: 'u1', other: 'u2' }))).toEqual(
      [],
    );
  });

  it('should write the numbers, take the spare out of the stock, and touch nothing else', () => {
    const written = writeReplaced(content, [{ owner: { kind: 'board', id: 'u2' }, partNumber: 'AX-100', serial: 'S-1', spare: 'b1' }]);
    expect(written.units?.find(({ id }) => id === 'u2')?.board).toEqual({ partNumber: 'AX-100', serial: 'S-1' });
    expect(written.spares).toEqual([{ id: 'b1', kind: 'board', partNumber: 'AX-100', count: 0 }]);
    expect(written.units?.filter(({ id }) => id !== 'u2')).toEqual(content.units?.filter(({ id }) => id !== 'u2'));
    expect(written.links).toBe(content.links);
    expect(soundCabinet(written)).toBeTruthy();
  });

  it('should leave a number out that nobody knows, rather than keep that of the old part', () => {
    const numbered = writeReplaced(content, [{ owner: { kind: 'link', id: 'w1' }, partNumber: '', serial: '', spare: null }]);
    expect(numbered.links?.[0]).not.toHaveProperty('partNumber');
  });
});

describe('listHandBackChecks', () => {
  it('should ask for what concerns what was done, and for no more', () => {
    const proved = { end: 'proved' } as const;
    const level = soundCabinet({
      ...content,
      units: (content.units ?? []).map((unit) => (unit.kind === 'supply' ? unit : { ...unit, axes: [{ name: 'X', hanging: false }] })),
    });
    const reseated = doneTo({ do: 'reseat-plug', link: 'w1', end: 'upper' });
    expect(listHandBackChecks(level, reseated, proved)).toEqual(['displays', 'plugs', 'closed', 'ran', 'told']);
    const board = listHandBackChecks(level, doneTo({ do: 'exchange-boards', unit: 'u1', other: 'u2' }), proved);
    expect(board).toEqual(['displays', 'put-back', 'plugs', 'reference', 'safety', 'closed', 'ran', 'told']);
    expect(listHandBackChecks(level, { snapshots: [{}] }, { end: 'open' })).toEqual(['closed', 'told']);
    // Of the drives of this cabinet nobody has said whether their axes hang.
    expect(listHandBackChecks(cabinet, reseated, proved)).toContain('hanging-axes');
  });
});
