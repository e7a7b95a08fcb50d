import type { IpcMain, IpcMainInvokeEvent } from 'electron';
import { describe, expect, it, vi } from 'vitest';
import { answerCalls, type CallHandlers } from '../../electron/ipc/answerCalls.ts';
import { callChannels } from '../../electron/ipc/channels.ts';
import { ok } from '../../engine/base/index.ts';

const origin = 'linkwright://app';
const facts = { version: '1', platform: 'linux', runtime: '1', browser: '1' };

const saved = { handle: 'h', key: 'k', name: 'a.case.json', modifiedAt: '' };

type Listener = (event: IpcMainInvokeEvent, ...args: unknown[]) => unknown;

function listen(handlers: Partial<CallHandlers> = {}) {
  const listeners = new Map<string, Listener>();
  const ipc: Pick<IpcMain, 'handle'> = { handle: (channel, listener) => void listeners.set(channel, listener) };
  const none: CallHandlers = {
    describeProgram: () => ok(facts),
    changeTextSize: () => ok(null),
    takeNotices: () => ok([]),
    takeHandedOverFiles: () => ok([]),
    chooseFile: () => ok(null),
    saveFileAs: () => ok(null),
    exportFile: () => ok(null),
    saveFile: () => ok(saved),
    chooseList: () => ok(null),
    chooseJsonFiles: () => ok(null),
    deleteResult: () => ok(null),
    readFileAgain: () => ok({ ...saved, content: new Uint8Array() }),
    peekFile: () => ok({ ...saved, content: new Uint8Array() }),
    lookAtFile: () => ok({ state: 'same' }),
    keepMine: () => ok(null),
    readKeptCopy: () => ok({ name: 'a', content: new Uint8Array(), keptAt: '' }),
    findCabinetBeside: () => ok(null),
    listRecentFiles: () => ok([]),
    openRecentFile: () => ok({ ...saved, content: new Uint8Array() }),
    keepRecovery: () => ok(null),
    dropRecovery: () => ok(null),
    listRecoveries: () => ok([]),
    keepCase: () => ok(null),
    listKeptCases: () => ok({ cases: [], problems: [] }),
    dropKeptCase: () => ok(null),
    tellUnsaved: () => ok(null),
    answerClose: () => ok(null),
  };
  answerCalls(ipc, { ...none, ...handlers }, origin);
  return async (channel: string, frame: { origin: string } | null, mainFrame: unknown, ...args: unknown[]) =>
    // Only the fields that the listener looks at.
    listeners.get(channel)?.({ senderFrame: frame, sender: { mainFrame } } as unknown as IpcMainInvokeEvent, ...args);
}

const refused = (reason: string) => ({
  ok: false,
  problems: [expect.objectContaining({ code: 'call-refused', facts: expect.objectContaining({ reason }) })],
});

describe('answerCalls', () => {
  it('should answer the main frame of our page', async () => {
    const frame = { origin };
    expect(await listen()(callChannels.describeProgram, frame, frame)).toEqual({ ok: true, value: facts });
  });

  it.each([
    ['a frame that is gone', null, null],
    ['another origin', { origin: 'https://app' }, undefined],
    ['an origin that only begins like ours', { origin: 'linkwright://app.evil' }, undefined],
    ['an opaque origin', { origin: 'null' }, undefined],
    ['a frame inside our page', { origin }, { origin }],
  ])('should refuse %s, without asking the handler', async (_what, frame, mainFrame) => {
    const describeProgram = vi.fn(() => ok(facts));
    const call = listen({ describeProgram });
    for (const channel of Object.values(callChannels)) {
      expect(await call(channel, frame, mainFrame === undefined ? frame : mainFrame)).toEqual(refused('elsewhere'));
    }
    expect(describeProgram).not.toHaveBeenCalled();
  });

  it.each([[['/etc/passwd']], [[undefined]], [[{}, {}]], [[{ __proto__: null }]]])('should refuse the arguments %j', async (args) => {
    const describeProgram = vi.fn(() => ok(facts));
    const frame = { origin };
    expect(await listen({ describeProgram })(callChannels.describeProgram, frame, frame, ...args)).toEqual(refused('malformed'));
    expect(describeProgram).not.toHaveBeenCalled();
  });

  const content = new Uint8Array([1]);
  it.each([
    ['a folder', ['../evil.json', content]],
    ['a folder of another system', ['..\\evil.json', content]],
    ['a root', ['/etc/passwd', content]],
    ['a drive', ['C:evil.json', content]],
    ['a hidden name', ['.profile', content]],
    ['no name', ['', content]],
    ['an endless name', ['x'.repeat(201), content]],
    ['a control character', ['evil\n.json', content]],
    ['an end mark', ['evil.json\0.txt', content]],
    ['a name that is no text', [1, content]],
    ['content that is text', ['good.json', 'text']],
    ['content that only looks like bytes', ['good.json', { length: 1, 0: 1 }]],
    ['content without end', ['good.json', new Uint8Array(21 * 1024 * 1024 + 1)]],
    ['one argument more', ['good.json', content, '/etc/passwd']],
    ['one argument less', ['good.json']],
  ])('should not save under %s', async (_what, args) => {
    const saveFileAs = vi.fn(() => ok(null));
    const frame = { origin };
    expect(await listen({ saveFileAs })(callChannels.saveFileAs, frame, frame, ...args)).toEqual(refused('malformed'));
    expect(saveFileAs).not.toHaveBeenCalled();
  });

  const handle = '0123456789abcdef-0123';
  it.each([
    ['exportFile', ['../sheet.pdf', content]],
    ['exportFile', ['sheet.exe', content]],
    ['exportFile', ['sheet.pdf', 'text']],
    ['exportFile', ['sheet.pdf', new Uint8Array(21 * 1024 * 1024 + 1)]],
    ['chooseList', ['/etc/passwd']],
    ['chooseJsonFiles', ['/etc']],
    ['saveFile', ['/etc/passwd', content]],
    ['saveFile', ['../../etc/passwd', content]],
    ['readFileAgain', ['/etc/passwd']],
    ['peekFile', ['/etc/passwd']],
    ['lookAtFile', ['C:\\Windows']],
    ['keepMine', ['x'.repeat(65)]],
    ['readKeptCopy', ['..']],
    ['findCabinetBeside', [handle, '']],
    ['openRecentFile', ['/home/somebody/a.case.json']],
    ['keepRecovery', ['../../evil', { case: null, cabinet: null }, '']],
    ['keepRecovery', [handle, { case: '/etc/passwd', cabinet: null }, '']],
    ['keepRecovery', [handle, { case: null, cabinet: null, path: '/etc' }, '']],
    ['keepRecovery', [handle, { case: null, cabinet: null }, 'x'.repeat(21 * 1024 * 1024 + 1)]],
    ['dropRecovery', ['..%2f..%2fevil']],
    ['tellUnsaved', ['yes']],
    ['answerClose', ['destroy']],
  ] as const)('should refuse %s with arguments of a path or of another form', async (name, args) => {
    const frame = { origin };
    const handler = vi.fn(() => ok(null));
    // One handler for calls of different answers: it must never run.
    const call = listen({ [name]: handler } as unknown as Partial<CallHandlers>);
    expect(await call(callChannels[name], frame, frame, ...args)).toEqual(refused('malformed'));
    expect(handler).not.toHaveBeenCalled();
  });

  it.each(['CON.case.json', 'nul.json', 'com1.case.json', 'mine.case.json ', 'mine.'])(
    'should not propose %j, which Windows refuses',
    async (name) => {
      const frame = { origin };
      expect(await listen()(callChannels.saveFileAs, frame, frame, name, content)).toEqual(refused('malformed'));
    },
  );

  it('should save under a plain name', async () => {
    const saveFileAs = vi.fn(() => ok(null));
    const frame = { origin };
    expect(await listen({ saveFileAs })(callChannels.saveFileAs, frame, frame, 'Grinder +C1 (2).case.json', content)).toEqual(ok(null));
    expect(saveFileAs).toHaveBeenCalledWith('Grinder +C1 (2).case.json', content);
  });

  it('should tell the page nothing of what broke inside', async () => {
    const silenced = vi.spyOn(console, 'error').mockImplementation(() => undefined);
    const frame = { origin };
    const call = listen({
      describeProgram: () => {
        throw new Error('at /home/somebody');
      },
    });
    expect(JSON.stringify(await call(callChannels.describeProgram, frame, frame))).not.toContain('somebody');
    expect(await call(callChannels.describeProgram, frame, frame)).toEqual(refused('failed'));
    silenced.mockRestore();
  });
});
