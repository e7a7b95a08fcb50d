import { describe, expect, it } from 'vitest';
import { KeptCases } from '../../electron/files/keptCases.ts';
import { serializeCase } from '../../engine/cabinet/index.ts';
import { makeCase } from '../generators/cases.ts';
import { FakeDisk, fakeMachine } from './fakeDisk.ts';

const bytes = (text: string) => new TextEncoder().encode(text);
const file = (seed: number) => bytes(serializeCase(makeCase(seed, { units: 2 })));

function begin() {
  const disk = new FakeDisk();
  const cases = new KeptCases(fakeMachine(disk), '/user/cases');
  const names = async () => {
    const listed = await cases.list();
    return listed.ok ? listed.value.cases.map(({ name }) => name) : [];
  };
  return { disk, cases, names };
}

describe('the collection of confirmed cases', () => {
  it('should keep each case in a file of its own, the same again in its place, and drop it', async () => {
    const { cases, names } = begin();
    expect(await cases.keep('a', file(1))).toMatchObject({ ok: true });
    await cases.keep('A', file(2));
    await cases.keep('a', file(3));
    const kept = await names();
    expect(kept).toHaveLength(2);
    // Some disks take a and A for one name.
    expect(new Set(kept.map((name) => name.toLowerCase())).size).toBe(2);
    const listed = await cases.list();
    const contents = listed.ok ? listed.value.cases : [];
    expect(contents.find(({ name }) => name.startsWith('a-'))?.content).toEqual(file(3));
    for (const { key } of contents) await cases.drop(key);
    expect(await names()).toEqual([]);
    expect(await cases.drop('0123456789abcdef')).toMatchObject({ ok: true });
  });

  it('should never replace a file that is damaged or newer', async () => {
    const { disk, cases, names } = begin();
    await cases.keep('a', file(1));
    const [name = ''] = await names();
    for (const text of [
      '{"format": "linkwright-case", ',
      new TextDecoder().decode(file(1)).replace('"formatVersion": 1', '"formatVersion": 9'),
    ]) {
      disk.put(`/user/cases/${name}`, text);
      expect(await cases.keep('a', file(2))).toMatchObject({ ok: false, problems: [{ code: 'case-in-the-way', facts: { file: name } }] });
      expect(disk.text(`/user/cases/${name}`)).toBe(text);
    }
  });

  it('should not keep what would not open again', async () => {
    const { cases, names } = begin();
    expect((await cases.keep('a', bytes('nonsense'))).ok).toBe(false);
    expect(await names()).toEqual([]);
  });

  it('should leave the old case whole wherever the disk fails or the power goes', async () => {
    const { disk, cases, names } = begin();
    await cases.keep('a', file(1));
    const [name = ''] = await names();
    const path = `/user/cases/${name}`;
    const before = disk.text(path);
    disk.fault = (deed) => (deed === 'write' ? 'ENOSPC' : undefined);
    expect(await cases.keep('a', file(2))).toMatchObject({ ok: false, problems: [{ code: 'case-not-kept', facts: { reason: 'ENOSPC' } }] });
    expect(disk.text(path)).toBe(before);
    disk.fault = () => undefined;
    const after = new TextDecoder().decode(file(2));
    for (let deeds = 0; deeds < 14; deeds += 1) {
      disk.cutPowerAfter(deeds);
      await cases.keep('a', file(2));
      disk.restorePower();
      expect([before, after]).toContain(disk.text(path));
      disk.put(path, before ?? '');
    }
  });
});
