import { describe, expect, it } from 'vitest';
import { serializeCabinet } from '../../engine/cabinet/index.ts';
import { insertUnits, setFields } from '../../engine/edit/index.ts';
import { done, small } from '../edit/small.ts';
import { jsonOf, linkwright } from './runLinkwright.ts';

const { cabinet: inserted } = done(insertUnits(small, { units: [{ kind: 'servo-drive' }], at: { onLink: 'w2' } }));
const { cabinet: later } = done(
  setFields(inserted, [
    { of: { in: 'links', id: 'w2' }, path: ['lengthM'], value: 0.6 },
    { of: { in: 'units', id: 'a' }, path: ['board', 'serial'], value: 'B9' },
  ]),
);
const files = { 'a.json': serializeCabinet(small), 'b.json': serializeCabinet(later) };

describe('linkwright compare', () => {
  it('should list what differs, and end with 1', async () => {
    const { out, exit } = await linkwright(['compare', 'a.json', 'b.json'], files);
    expect(exit).toBe(1);
    const flat = out.replace(/\s+/g, ' ');
    expect(flat).toContain('2 added, 2 shifted, 1 re-plugged and 2 changed.');
    expect(flat).toMatch(/re-plugged cable -WH2 lower plug -TB2 -TB10/);
    expect(flat).toMatch(/changed cable -WH2 Length, m 0\.4 0\.6/);
    expect(flat).toMatch(/changed -TB1 Board, serial number B1 B9/);
  });

  it('should say that there are no differences, and end with 0', async () => {
    const { out, exit } = await linkwright(['compare', 'a.json', 'a.json'], files);
    expect(exit).toBe(0);
    expect(out).toContain('No differences.');
    const json = jsonOf(await linkwright(['compare', '--json', 'a.json', 'a.json'], files));
    expect(json).toMatchObject({ ok: true, exit: 0, changes: [] });
  });

  it('should give programs every change with its ids', async () => {
    const { changes } = jsonOf(await linkwright(['compare', 'a.json', 'b.json', '--json'], files)) as { changes: readonly object[] };
    expect(changes).toContainEqual({
      kind: 'replugged',
      list: 'links',
      before: 'w2',
      after: 'w2',
      facts: { end: 'lower', was: { unit: 'b' }, is: { unit: 'u1' } },
      label: 'cable -WH2',
      text: 'cable -WH2, lower plug: -TB2 → -TB10',
    });
  });

  it('should ask for two files, take no third, and name the one that cannot be read', async () => {
    expect((await linkwright(['compare', 'a.json'], files)).exit).toBe(2);
    expect((await linkwright(['compare', 'a.json', 'b.json', 'c.json'], files)).exit).toBe(2);
    const { exit, err } = await linkwright(['compare', 'a.json', 'gone.json'], files);
    expect(exit).toBe(3);
    expect(err).toContain('gone.json');
  });
});
