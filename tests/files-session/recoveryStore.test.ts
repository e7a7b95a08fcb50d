import { describe, expect, it } from 'vitest';
import { ChosenFiles } from '../../electron/files/chosenFiles.ts';
import { KeptCopies } from '../../electron/files/keptCopies.ts';
import { RecentFiles, type RecentMemory } from '../../electron/files/recentFiles.ts';
import { RecoveryStore } from '../../electron/files/recoveryStore.ts';
import { serializeCabinet } from '../../engine/cabinet/index.ts';
import { FakeDisk, fakeMachine } from './fakeDisk.ts';

const path = '/plant/grinder.cabinet.json';
const nobody = { case: null, cabinet: null };
const id = (number: number) => `00000000-0000-4000-8000-${String(number).padStart(12, '0')}`;

function start() {
  const disk = new FakeDisk();
  disk.put(path, serializeCabinet({ id: 'c1', name: 'old' }));
  const machine = fakeMachine(disk);
  const chosen = new ChosenFiles(machine, new KeptCopies(machine, '/user/copies'));
  return { disk, chosen, store: new RecoveryStore(machine, '/user/recovery', chosen) };
}

describe('recovery copies', () => {
  it('should be listed with the newest first, whatever the order in the folder', async () => {
    const { store } = start();
    for (const number of [3, 1, 2]) expect((await store.keep(id(number), nobody, `work ${number}`)).ok).toBe(true);
    const { works, problems } = await store.list();
    expect(works.map(({ id: name }) => name)).toEqual([id(2), id(1), id(3)]);
    expect(works.map(({ content }) => new TextDecoder().decode(content))).toEqual(['work 2', 'work 1', 'work 3']);
    expect(problems).toEqual([]);
  });

  const happenings: Readonly<Record<'same' | 'changed' | 'missing', (disk: FakeDisk) => void>> = {
    same: () => undefined,
    changed: (disk) => disk.put(path, serializeCabinet({ id: 'c1', name: 'by others' })),
    missing: (disk) => disk.files.delete(path),
  };
  it.each(['same', 'changed', 'missing'] as const)('should tell how the file behind them is now: %s', async (state) => {
    const { disk, chosen, store } = start();
    const taken = await chosen.take(path);
    if (!taken.ok) throw new Error('not taken');
    await store.keep(id(1), { case: null, cabinet: taken.value.handle }, 'work');
    happenings[state](disk);
    const { works } = await store.list();
    expect(works[0]?.cabinetFile).toMatchObject({ name: 'grinder.cabinet.json', state });
    expect(works[0]?.caseFile).toBeNull();
  });

  it('should not fill the disk: a hundred are kept, and those go on to be brought up to date', async () => {
    const { store } = start();
    for (let number = 0; number < 100; number += 1) expect((await store.keep(id(number), nobody, 'work')).ok).toBe(true);
    expect(await store.keep(id(100), nobody, 'work')).toMatchObject({ ok: false, problems: [{ code: 'recovery-not-kept' }] });
    expect((await store.keep(id(7), nobody, 'newer')).ok).toBe(true);
    await store.drop(id(3));
    expect((await store.keep(id(100), nobody, 'work')).ok).toBe(true);
    expect((await store.list()).works).toHaveLength(100);
  });
});

describe('recent files', () => {
  it('should be the ten last opened or saved, the newest first, each once, and say what is not there', async () => {
    const { disk, chosen } = start();
    const memory: RecentMemory = { recent: [] };
    const recent = new RecentFiles(memory, chosen, disk);
    for (let number = 1; number <= 12; number += 1)
      recent.remember(`/plant/${number}.case.json`, new Date(Date.UTC(2026, 10, 26, 8, number)));
    recent.remember(path, new Date(Date.UTC(2026, 10, 26, 9)));
    recent.remember('/plant/12.case.json', new Date(Date.UTC(2026, 10, 26, 10)));
    const listed = await recent.list();
    expect(listed.map(({ name }) => name)).toEqual([
      '12.case.json',
      'grinder.cabinet.json',
      ...[11, 10, 9, 8, 7, 6, 5, 4].map((number) => `${number}.case.json`),
    ]);
    expect(listed.filter(({ missing }) => !missing).map(({ name }) => name)).toEqual(['grinder.cabinet.json']);
    expect(JSON.stringify(listed)).not.toContain('/plant');
    const key = listed[1]?.key ?? '';
    expect(await recent.open(key)).toMatchObject({ ok: true, value: { name: 'grinder.cabinet.json' } });
    expect(await recent.open('0'.repeat(32))).toMatchObject({ ok: false, problems: [{ facts: { reason: 'forgotten' } }] });
  });
});
