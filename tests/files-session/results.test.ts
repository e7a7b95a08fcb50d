import { describe, expect, it } from 'vitest';
import { ChosenFiles } from '../../electron/files/chosenFiles.ts';
import { KeptCopies } from '../../electron/files/keptCopies.ts';
import { takeSeveral } from '../../electron/files/severalFiles.ts';
import { serializeCabinet, serializeResult } from '../../engine/cabinet/index.ts';
import { debrief, makeResult } from '../../engine/exercise/index.ts';
import { readyGame } from '../exercise/readyGames.ts';
import { FakeDisk, fakeMachine } from './fakeDisk.ts';

function resultText(code: string): string {
  const { game, answer, exercise } = readyGame('neighbours');
  const looked = debrief(game, answer, [{ do: 'give-up' }]);
  if (looked === null) throw new Error('not ended');
  return serializeResult(makeResult(exercise, [{ do: 'give-up' }], looked, { code }));
}

async function folderOf(files: Readonly<Record<string, string>>) {
  const disk = new FakeDisk();
  disk.folders.add('/class');
  for (const [name, text] of Object.entries(files)) disk.put(`/class/${name}`, text);
  const machine = fakeMachine(disk, false);
  const chosen = new ChosenFiles(machine, new KeptCopies(machine, '/user/copies'));
  const taken = await takeSeveral(disk, chosen, ['/class'], 'folder');
  if (!taken.ok || taken.value === null) throw new Error('not taken');
  const handleOf = (name: string) => taken.value?.files.find((file) => file.name === name)?.handle ?? '';
  return { disk, chosen, taken: taken.value, handleOf };
}

describe('a folder of results', () => {
  it('should be read file by file; one that cannot be read stops none, and what is no JSON is left alone', async () => {
    const { disk, chosen } = await folderOf({ 'b10.json': resultText('b'), 'b2.json': resultText('a'), 'notes.txt': 'x' });
    disk.fault = (deed, at) => (deed === 'read' && at.endsWith('b2.json') ? 'EACCES' : undefined);
    const taken = await takeSeveral(disk, chosen, ['/class'], 'folder');
    expect(taken).toMatchObject({
      ok: true,
      value: { files: [{ name: 'b10.json' }], problems: [{ code: 'file-unreadable', facts: { file: 'b2.json' } }], leftOut: 0 },
    });
    expect(await takeSeveral(disk, chosen, ['/gone'], 'folder')).toMatchObject({ ok: false, problems: [{ code: 'file-unreadable' }] });
  });

  it('should stop before a folder chosen by mistake fills the memory', async () => {
    const { disk, chosen } = await folderOf({});
    const large = new Uint8Array(20 * 1024 * 1024);
    for (let at = 10; at < 30; at += 1) disk.put(`/class/${at}.json`, large);
    const taken = await takeSeveral(disk, chosen, ['/class'], 'folder');
    expect(taken).toMatchObject({ ok: true, value: { leftOut: 9 } });
  });

  it('should lose results that are deleted, also with a wrong checksum, and nothing else', async () => {
    const cabinet = serializeCabinet({ id: 'c1', name: 'a cabinet' });
    const changed = resultText('c').replace('"code": "c"', '"code": "d"');
    const { disk, chosen, handleOf } = await folderOf({ 'a.json': resultText('a'), 'c.json': changed, 'cabinet.json': cabinet });
    expect(await chosen.deleteResult(handleOf('a.json'))).toEqual({ ok: true, value: null });
    expect(await chosen.deleteResult(handleOf('c.json'))).toEqual({ ok: true, value: null });
    expect(await chosen.deleteResult(handleOf('cabinet.json'))).toMatchObject({ ok: false, problems: [{ code: 'result-not-recognised' }] });
    expect([...disk.files.keys()]).toEqual(['/class/cabinet.json']);
    // Gone once is gone: the handle leads nowhere any more.
    expect((await chosen.deleteResult(handleOf('a.json'))).ok).toBe(false);
  });

  it('should keep a file that another program has changed since, and one that the system does not let go', async () => {
    const { disk, chosen, handleOf } = await folderOf({ 'a.json': resultText('a'), 'b.json': resultText('b') });
    disk.put('/class/a.json', resultText('somebody else'));
    expect(await chosen.deleteResult(handleOf('a.json'))).toMatchObject({ ok: false, problems: [{ code: 'result-not-recognised' }] });
    disk.fault = (deed) => (deed === 'remove' ? 'EBUSY' : undefined);
    expect(await chosen.deleteResult(handleOf('b.json'))).toMatchObject({
      ok: false,
      problems: [{ code: 'result-not-deleted', facts: { file: 'b.json', reason: 'EBUSY' } }],
    });
    expect(disk.files.size).toBe(2);
  });
});
