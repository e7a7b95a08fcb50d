import { mkdtemp, rm, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { callChannels } from '../../electron/ipc/channels.ts';
import { findDesktop, type LaunchedDesktop, launchDesktop } from '../support/launchDesktop.ts';
import { whyMissing } from '../support/required.ts';

const missing = await whyMissing('the desktop runtime', findDesktop);
const home = 'linkwright://app/index.html';
// What the attacks below make the page complain of.
const provoked = [
  /Content Security Policy/i,
  /ERR_/,
  /failed:/,
  /Not allowed to (load|navigate)/i,
  /Refused to/,
  /Failed to load resource/,
  /Blocked/i,
];

describe.skipIf(missing)('the channels of the desktop program, used by others', () => {
  let desktop: LaunchedDesktop;
  let folder: string;

  beforeAll(async () => {
    folder = await mkdtemp(join(tmpdir(), 'linkwright-attack-'));
    // A preload that hands the page everything, as ours never does.
    await writeFile(
      join(folder, 'raw.cjs'),
      "const { contextBridge, ipcRenderer } = require('electron');\ncontextBridge.exposeInMainWorld('raw', { invoke: (...all) => ipcRenderer.invoke(...all).catch((error) => String(error)) });\n",
    );
    desktop = await launchDesktop();
  });
  afterAll(async () => {
    await desktop.close(provoked);
    await rm(folder, { recursive: true, force: true });
  });

  /** Opens a window of the attacker's making inside the program and runs a piece of script in it. */
  const inForeignWindow = (address: string, script: string): Promise<unknown> =>
    desktop.app.evaluate(
      async ({ BrowserWindow }, given) => {
        const window = new BrowserWindow({
          show: false,
          webPreferences: { preload: given.preload, nodeIntegrationInSubFrames: true, sandbox: true, contextIsolation: true },
        });
        try {
          await window.loadURL(given.address);
          return (await window.webContents.executeJavaScript(given.script)) as unknown;
        } finally {
          window.destroy();
        }
      },
      { address, script, preload: join(folder, 'raw.cjs') },
    );

  const invoke = (...args: unknown[]) => `raw.invoke(${args.map((arg) => JSON.stringify(arg)).join(', ')})`;
  const refused = (reason: string) => ({
    ok: false,
    problems: [expect.objectContaining({ code: 'call-refused', facts: expect.objectContaining({ reason }) })],
  });

  it('should answer the page itself', async () => {
    expect(await inForeignWindow(home, invoke(callChannels.describeProgram))).toMatchObject({ ok: true });
  });

  it('should refuse a page from elsewhere', async () => {
    for (const channel of Object.values(callChannels)) {
      expect(await inForeignWindow('about:blank', invoke(channel))).toEqual(refused('elsewhere'));
    }
  });

  it('should refuse a frame inside the page', async () => {
    const script = `new Promise((resolve) => {
      const frame = document.createElement('iframe');
      frame.srcdoc = '<p>inside</p>';
      document.body.append(frame);
      setTimeout(() => resolve('raw' in frame.contentWindow ? frame.contentWindow.${invoke(callChannels.describeProgram)} : 'no bridge'), 200);
    })`;
    expect(await inForeignWindow(home, script)).toEqual(refused('elsewhere'));
  });

  it.each([['/etc/passwd'], [{ path: '/etc/passwd' }], [null]])('should refuse the argument %j', async (argument) => {
    for (const channel of Object.values(callChannels)) {
      expect(await inForeignWindow(home, invoke(channel, argument))).toEqual(refused('malformed'));
    }
  });

  it('should read results of no place that the page names, and delete nothing that the user has not chosen as a result', async () => {
    for (const from of ['/etc', '../..', 'anywhere', '']) {
      expect(await inForeignWindow(home, invoke(callChannels.chooseJsonFiles, from))).toEqual(refused('malformed'));
    }
    const deleting = (handle: string) => inForeignWindow(home, invoke(callChannels.deleteResult, handle));
    expect(await deleting(join(folder, 'raw.cjs'))).toEqual(refused('malformed'));
    // Of the right form, and never given out.
    expect(await deleting('00000000-0000-4000-8000-000000000000')).toMatchObject({ ok: false, problems: [{ code: 'file-unreadable' }] });
  });

  it('should save under no name that leads to a folder', async () => {
    const script = `raw.invoke(${JSON.stringify(callChannels.saveFileAs)}, '../evil.json', new Uint8Array([1]))`;
    expect(await inForeignWindow(home, script)).toEqual(refused('malformed'));
  });

  it('should not listen on any other channel', async () => {
    expect(await inForeignWindow(home, invoke('linkwright:read-file', '/etc/passwd'))).toContain('No handler registered');
  });
});
