import { beforeEach, describe, expect, it, vi } from 'vitest';
import { ChosenFiles } from '../../electron/files/chosenFiles.ts';
import { KeptCopies } from '../../electron/files/keptCopies.ts';
import { writeWhole } from '../../electron/files/writeWhole.ts';
import { makeFileName, nameTrouble } from '../../engine/base/index.ts';
import { parseCabinetFile, serializeCabinet } from '../../engine/cabinet/index.ts';
import { wordProblem } from '../../engine/messages/index.ts';
import { type Deed, FakeDisk, fakeMachine } from './fakeDisk.ts';

const path = '/plant/grinder.cabinet.json';
const text = (name: string) => serializeCabinet({ id: 'c1', name });
const bytes = (name: string) => new TextEncoder().encode(text(name));
const unfinished = (disk: FakeDisk) => [...disk.files.keys()].filter((name) => name.includes('.~'));

function start(windows = false) {
  const disk = new FakeDisk();
  disk.put(path, text('old'));
  const machine = fakeMachine(disk, windows);
  return { disk, machine, files: new ChosenFiles(machine, new KeptCopies(machine, '/user/copies')) };
}
async function opened(windows = false) {
  const made = start(windows);
  const taken = await made.files.take(path);
  if (!taken.ok) throw new Error('not taken');
  return { ...made, handle: taken.value.handle };
}

// A copy that could not be kept goes to the log; here it is provoked.
beforeEach(() => {
  vi.spyOn(console, 'error').mockImplementation(() => undefined);
});

describe('a save', () => {
  it('should leave the old or the new file whole, wherever the power goes', async () => {
    let outcomes = '';
    for (let deeds = 0; ; deeds += 1) {
      const { disk, files, handle } = await opened();
      disk.cutPowerAfter(deeds);
      const saved = await files.save(handle, bytes('new'));
      disk.restorePower();
      const found = disk.text(path);
      expect([text('old'), text('new')]).toContain(found);
      if (saved.ok) expect(found).toBe(text('new'));
      outcomes += found === text('new') ? 'n' : 'o';
      // The next start and save find nothing in their way, and leave nothing.
      const again = await files.take(path);
      expect(again.ok && (await files.save(again.value.handle, bytes('next'))).ok).toBe(true);
      expect(unfinished(disk).filter((name) => name.startsWith('/plant'))).toEqual([]);
      if (saved.ok && disk.done.length > 0 && deeds > 40) break;
    }
    expect(outcomes).toMatch(/^o+n+$/);
  });

  it.each(['ENOSPC', 'EDQUOT', 'EROFS', 'EACCES', 'EPERM', 'EBUSY', 'EIO', 'ESTALE', 'ENAMETOOLONG', 'ENETUNREACH'])(
    'should say why when the system answers %s, leave the old file, and nothing beside it',
    async (code) => {
      for (const failing of ['write', 'rename'] satisfies Deed[]) {
        const { disk, files, handle, machine } = await opened();
        disk.fault = (deed, at) => (deed === failing && at.startsWith('/plant') ? code : undefined);
        const saved = await files.save(handle, bytes('new'));
        expect(saved.ok).toBe(false);
        // Only on Windows does a scanner hold a file for a moment: elsewhere nobody is kept waiting.
        expect(machine.pauses).toEqual([]);
        const [problem] = saved.ok ? [] : saved.problems;
        expect(problem).toMatchObject({ code: 'file-not-saved', facts: { file: 'grinder.cabinet.json', reason: code } });
        expect(problem && wordProblem(problem).explanation).not.toContain(code);
        expect(disk.text(path)).toBe(text('old'));
        expect(unfinished(disk)).toEqual([]);
        // Solved: the same handle saves.
        disk.fault = () => undefined;
        expect((await files.save(handle, bytes('new'))).ok).toBe(true);
      }
    },
  );

  it('should say so when the folder has vanished, and save there again once it is back', async () => {
    const { disk, files, handle } = await opened();
    disk.folders.delete('/plant');
    disk.files.delete(path);
    expect(await files.save(handle, bytes('new'))).toMatchObject({ ok: false, problems: [{ facts: { reason: 'ENOENT' } }] });
    disk.folders.add('/plant');
    expect((await files.save(handle, bytes('new'))).ok).toBe(true);
    expect(disk.text(path)).toBe(text('new'));
  });

  it('should not replace a file that is protected, though a rename would', async () => {
    const { disk, files } = start();
    disk.put(path, text('old'), 0o444);
    const taken = await files.take(path);
    const saved = taken.ok ? await files.save(taken.value.handle, bytes('new')) : taken;
    expect(saved).toMatchObject({ ok: false, problems: [{ facts: { reason: 'EACCES' } }] });
    expect(disk.text(path)).toBe(text('old'));
  });

  it('should write nothing that would not open again', async () => {
    const { disk, files, handle } = await opened();
    for (const content of ['', '{}', 'text', text('new').slice(0, -5), text('new').replace('"id"', '"ids"')]) {
      const saved = await files.save(handle, new TextEncoder().encode(content));
      expect(saved).toMatchObject({ ok: false, problems: [{ code: 'file-would-not-open' }] });
    }
    expect(disk.text(path)).toBe(text('old'));
    expect(unfinished(disk)).toEqual([]);
  });

  it.each([
    ['with one bit turned', (content: Uint8Array) => content.map((byte, index) => (index === 40 ? byte ^ 1 : byte))],
    ['whole, but not what was written', () => bytes('other')],
  ])('should notice when the disk gives back something else: %s', async (_what, turn) => {
    const { disk, files, handle } = await opened();
    const write = disk.write.bind(disk);
    disk.write = async (at, content, mode) => {
      await write(at, content, mode);
      if (at.startsWith('/plant')) disk.put(at, turn(content));
    };
    expect(await files.save(handle, bytes('new'))).toMatchObject({ ok: false, problems: [{ code: 'file-would-not-open' }] });
    expect(disk.text(path)).toBe(text('old'));
  });

  it('should make the rename last: the folder is flushed after it', async () => {
    const { disk, files, handle } = await opened();
    expect((await files.save(handle, bytes('new'))).ok).toBe(true);
    const deeds = disk.done.filter(({ path: at }) => at === path || at === '/plant').map(({ deed }) => deed);
    expect(deeds.indexOf('flushFolder')).toBeGreaterThan(deeds.indexOf('rename'));
    expect(deeds.indexOf('rename')).toBeGreaterThan(-1);
  });

  it('should replace the file that a link leads to, and leave the link', async () => {
    const { disk, machine } = start();
    const real = '/user/real.cabinet.json';
    disk.put(real, text('old'));
    disk.real = (at) => Promise.resolve(at === path ? real : at);
    await writeWhole(machine, path, bytes('new'));
    expect([disk.text(real), disk.text(path)]).toEqual([text('new'), text('old')]);
  });

  it('should keep the last good copy, and never put a damaged one in its place', async () => {
    const { disk, files, handle } = await opened();
    await files.save(handle, bytes('second'));
    expect(await files.readKept(handle)).toMatchObject({ ok: true, value: { name: 'grinder.cabinet.json', content: bytes('old') } });
    disk.put(path, '{"damaged');
    await files.keepMine(handle);
    expect((await files.save(handle, bytes('third'))).ok).toBe(true);
    expect(await files.readKept(handle)).toMatchObject({ ok: true, value: { content: bytes('old') } });
  });

  it('should save although no copy can be kept', async () => {
    const { disk, files, handle } = await opened();
    disk.fault = (deed, at) => (deed === 'write' && at.startsWith('/user') ? 'ENOSPC' : undefined);
    expect((await files.save(handle, bytes('new'))).ok).toBe(true);
  });

  it('should keep the permission bits', async () => {
    const { disk, files } = start();
    disk.put(path, text('old'), 0o600);
    const taken = await files.take(path);
    if (taken.ok) await files.save(taken.value.handle, bytes('new'));
    expect(disk.files.get(path)?.mode).toBe(0o600);
  });

  it('should never overlap with another of the same file, and end with the last', async () => {
    const { disk, files, handle } = await opened();
    const saves = await Promise.all(['a', 'b', 'c', 'd'].map((name) => files.save(handle, bytes(name))));
    expect(saves.every(({ ok }) => ok)).toBe(true);
    expect(disk.text(path)).toBe(text('d'));
  });

  it('should refuse while another program has changed the file, whatever it did, and not when only the time is another', async () => {
    const { disk, files, handle } = await opened();
    disk.put(path, text('old'));
    expect((await files.look(handle)).ok && (await files.save(handle, bytes('mine'))).ok).toBe(true);
    for (const outside of [text('other'), text('mine!'), '']) {
      disk.put(path, outside);
      expect(await files.look(handle)).toMatchObject({ ok: true, value: { state: 'changed' } });
      // What is only looked at, to be compared, stays guarded.
      expect(await files.peek(handle)).toMatchObject({ ok: true });
      expect(await files.save(handle, bytes('mine again'))).toMatchObject({ ok: false, problems: [{ code: 'file-changed-outside' }] });
      expect(disk.text(path)).toBe(outside);
      await files.keepMine(handle);
      expect((await files.save(handle, bytes('mine'))).ok).toBe(true);
    }
    disk.files.delete(path);
    expect(await files.look(handle)).toEqual({ ok: true, value: { state: 'missing' } });
  });
});

describe('on Windows', () => {
  it.each(['EPERM', 'EBUSY', 'EACCES'])(
    'should be patient when a scanner holds the file (%s), with longer and longer waits',
    async (code) => {
      const { disk, machine, files, handle } = await opened(true);
      let held = 5;
      disk.fault = (deed, at) => (deed === 'rename' && at === path && held-- > 0 ? code : undefined);
      expect((await files.save(handle, bytes('new'))).ok).toBe(true);
      expect(machine.pauses).toEqual([10, 20, 40, 80, 160]);
      expect(disk.text(path)).toBe(text('new'));
    },
  );

  it('should give up after some seconds, say that another program holds it, and leave nothing behind', async () => {
    const { disk, machine, files, handle } = await opened(true);
    disk.fault = (deed, at) => (deed === 'rename' && at === path ? 'EBUSY' : undefined);
    const saved = await files.save(handle, bytes('new'));
    expect(saved).toMatchObject({ ok: false, problems: [{ facts: { reason: 'EBUSY' } }] });
    expect(machine.pauses.reduce((a, b) => a + b, 0)).toBeGreaterThan(3_000);
    expect(machine.pauses.reduce((a, b) => a + b, 0)).toBeLessThan(10_000);
    expect(disk.text(path)).toBe(text('old'));
    expect(unfinished(disk)).toEqual([]);
  });

  it('should not wait for what waiting does not mend', async () => {
    const { disk, machine, files, handle } = await opened(true);
    disk.fault = (deed, at) => (deed === 'rename' && at === path ? 'ENOSPC' : undefined);
    await files.save(handle, bytes('new'));
    expect(machine.pauses).toEqual([]);
  });

  it.each([
    ['CON.case.json', 'reserved'],
    ['con', 'reserved'],
    ['Nul.cabinet.json', 'reserved'],
    ['aux .json', 'reserved'],
    ['COM1.json', 'reserved'],
    ['lpt9.case.json', 'reserved'],
    ['COM².json', 'reserved'],
    ['CONIN$.json', 'reserved'],
    ['grinder.json.', 'ending'],
    ['grinder.json ', 'ending'],
    ['grinder: north.json', 'sign'],
    ['a?.json', 'sign'],
  ] as const)('should refuse the name %j, and save nothing', async (name, reason) => {
    const { disk, files } = start(true);
    const saved = await files.saveAs(`/plant/${name}`, bytes('new'));
    expect(saved).toMatchObject({ ok: false, problems: [{ code: 'file-name-unusable', facts: { reason } }] });
    expect([...disk.files.keys()]).toEqual([path]);
  });

  it.each(['console.json', 'com10.json', 'null.json', 'auxiliary.json', 'grinder 1,5 mm.json', 'Prüfstand ä.json'])(
    'should take the name %j',
    (name) => {
      expect(nameTrouble(name)).toBeNull();
    },
  );

  it('should write its unfinished file under a name no longer than any file may have, in a folder however deep', async () => {
    const { disk, machine } = start(true);
    const folder = `/plant/${'deep/'.repeat(60)}end`;
    disk.folders.add(folder);
    const long = `${folder}/${'x'.repeat(240)}.case.json`;
    await writeWhole(machine, long, bytes('new'));
    const written = disk.done.filter(({ deed }) => deed === 'write').map(({ path: at }) => at.slice(folder.length + 1));
    expect(written.every((name) => name.length <= 20)).toBe(true);
    expect(disk.text(long)).toBe(text('new'));
  });

  it('should say it when the path is too long for the disk', async () => {
    const { disk, files } = start(true);
    disk.fault = (deed) => (deed === 'write' ? 'ENAMETOOLONG' : undefined);
    const saved = await files.saveAs('/plant/x.cabinet.json', bytes('new'));
    expect(saved.ok ? '' : saved.problems.map((problem) => wordProblem(problem).explanation).join()).toContain('too long');
  });

  it('should open files with its line ends as the same content, and refuse decimal commas at their place', () => {
    const good = serializeCabinet({ id: 'c1', name: 'old', ambientC: 22.5 });
    expect(parseCabinetFile(good.replaceAll('\n', '\r\n'))).toEqual(parseCabinetFile(good));
    const comma = parseCabinetFile(good.replace('22.5', '22,5').replaceAll('\n', '\r\n'));
    const line = good.slice(0, good.indexOf('22.5')).split('\n').length;
    expect(comma).toMatchObject({ ok: false, problems: [{ code: 'json-damaged', facts: { line } }] });
  });
});

describe('makeFileName', () => {
  it.each([
    ['QG-7', 'QG-7.case.json'],
    ['CON', 'case-CON.case.json'],
    ['../../etc/passwd', '-..-etc-passwd.case.json'],
    ['  . ', 'case.case.json'],
    ['???', 'case.case.json'],
    ['C1: north / south', 'C1- north - south.case.json'],
    ['a'.repeat(300), `${'a'.repeat(100)}.case.json`],
    ['ends. ', 'ends.case.json'],
    ['', 'case.case.json'],
  ])('should make of %j a name that every system takes', (base, name) => {
    expect(makeFileName(base, '.case.json', 'case')).toBe(name);
    expect(nameTrouble(name)).toBeNull();
    expect(name.startsWith('.')).toBe(false);
  });
});
