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

describe.skipIf(missing)('the desktop program, attacked from its page', () => {
  let desktop: LaunchedDesktop;

  beforeAll(async () => {
    desktop = await launchDesktop();
  });
  afterAll(async () => {
    await desktop.close(provoked);
  });

  const windowCount = () => desktop.app.evaluate(({ BrowserWindow }) => BrowserWindow.getAllWindows().length);

  it.each([
    'https://example.invalid/',
    'http://127.0.0.1:9/',
    'file:///etc/passwd',
    'linkwright://other/index.html',
    'linkwright://app/failure',
    'data:text/html,<h1>hello</h1>',
    'chrome://gpu',
    'javascript:document.body.append("hello")',
  ])('should not be led to %s', async (address) => {
    const { page } = desktop;
    await page.evaluate((to) => {
      location.href = to;
    }, address);
    await page.evaluate(() => new Promise((resolve) => setTimeout(resolve, 150)));
    expect(page.url()).toBe(home);
    expect(await page.evaluate(() => location.href)).toBe(home);
    expect(await page.locator('body').textContent()).not.toContain('hello');
  });

  it('should come home from the empty page, which the runtime lets every page go to', async () => {
    const { page } = desktop;
    const away = page.waitForURL('about:blank');
    await page.evaluate(() => {
      location.href = 'about:blank';
    });
    await away;
    await page.waitForURL(home);
    await page.waitForSelector('#root:not(:empty)');
  });

  it('should not be led away by a form or a link', async () => {
    const { page } = desktop;
    await page.evaluate(() => {
      const form = document.createElement('form');
      form.action = 'https://example.invalid/';
      document.body.append(form);
      form.submit();
      const link = document.createElement('a');
      link.href = 'https://example.invalid/';
      link.target = '_blank';
      document.body.append(link);
      link.click();
      form.remove();
      link.remove();
    });
    await page.evaluate(() => new Promise((resolve) => setTimeout(resolve, 150)));
    expect(page.url()).toBe(home);
    expect(await windowCount()).toBe(1);
  });

  it.each(['https://example.invalid/', 'linkwright://app/index.html', 'about:blank', 'file:///etc/passwd'])(
    'should open no new window on %s',
    async (address) => {
      expect(await desktop.page.evaluate((to) => window.open(to) === null, address)).toBe(true);
      expect(await windowCount()).toBe(1);
    },
  );

  it.each([
    'file:///etc/passwd',
    'https://example.invalid/',
    'http://127.0.0.1:9/',
    'linkwright://other/index.html',
    'data:text/plain,hello',
    'blob:linkwright://app/1',
  ])('should fetch nothing from %s', async (address) => {
    const outcome = await desktop.page.evaluate((from) => fetch(from).then(() => 'fetched', String), address);
    expect(outcome).toMatch(/TypeError/);
  });

  it.each([
    ['/..%2f..%2fpackage.json', 404],
    ['/%2e%2e/%2e%2e/package.json', 404],
    ['/../../package.json', 404],
    ['/..%5c..%5cpackage.json', 404],
    ['//etc/passwd', 404],
    ['/%zz', 400],
  ])('should serve nothing outside the page for %s', async (path, status) => {
    expect(await desktop.page.evaluate((at) => fetch(`linkwright://app${at}`).then((answer) => answer.status), path)).toBe(status);
  });

  it.each(['POST', 'PUT', 'DELETE'])('should answer no %s', async (method) => {
    expect(await desktop.page.evaluate((how) => fetch('/index.html', { method: how }).then((answer) => answer.status), method)).toBe(405);
  });

  it('should serve the page with its policy', async () => {
    const headers = await desktop.page.evaluate(() => fetch('/index.html').then((answer) => Object.fromEntries(answer.headers)));
    expect(headers['content-security-policy']).toContain("default-src 'none'");
    expect(headers['x-content-type-options']).toBe('nosniff');
  });

  it('should open no connection', async () => {
    const outcome = await desktop.page.evaluate(
      () =>
        new Promise<string>((resolve) => {
          try {
            const socket = new WebSocket('ws://127.0.0.1:9/');
            socket.onerror = () => resolve('refused');
            socket.onopen = () => resolve('open');
          } catch (error) {
            resolve(String(error));
          }
        }),
    );
    expect(outcome).not.toBe('open');
  });

  it('should run no inline script, no handler in markup, and no code from text', async () => {
    const outcome = await desktop.page.evaluate(async () => {
      const ran: string[] = [];
      Object.assign(window, { ran });
      const script = document.createElement('script');
      script.textContent = "ran.push('inline script')";
      document.body.append(script);
      const holder = document.createElement('div');
      holder.innerHTML = `<img src="/missing.png" onerror="ran.push('handler')"><svg onload="ran.push('svg')"></svg>`;
      document.body.append(holder);
      for (const source of ["data:text/javascript,ran.push('data')", 'https://example.invalid/x.js']) {
        const foreign = document.createElement('script');
        foreign.src = source;
        document.body.append(foreign);
      }
      // Outside the call of the test driver, which itself is let through.
      setTimeout(() => {
        for (const [name, attempt] of [
          // biome-ignore lint/security/noGlobalEval: this is the attack.
          ['eval', () => window.eval('1')],
          ['Function', () => new Function('return 1')()],
        ] as const) {
          try {
            attempt();
            ran.push(name);
          } catch {
            // Refused, as it should be.
          }
        }
      }, 0);
      try {
        new Worker(URL.createObjectURL(new Blob(['postMessage(1)']))).onmessage = () => ran.push('blob worker');
      } catch {
        // Refused, as it should be.
      }
      await new Promise((resolve) => setTimeout(resolve, 300));
      holder.remove();
      return ran;
    });
    expect(outcome).toEqual([]);
  });

  it('should embed no frame from elsewhere, and give a frame of its own no bridge', async () => {
    const outcome = await desktop.page.evaluate(async () => {
      const found: string[] = [];
      for (const address of ['https://example.invalid/', 'linkwright://app/index.html', 'data:text/html,hello', 'about:blank']) {
        const frame = document.createElement('iframe');
        frame.src = address;
        document.body.append(frame);
        await new Promise((resolve) => setTimeout(resolve, 150));
        try {
          if (frame.contentWindow && 'linkwright' in frame.contentWindow) found.push(`bridge in ${address}`);
          if (frame.contentDocument?.querySelector('#root')) found.push(`page in ${address}`);
        } catch {
          // The refusal's own page, which is foreign to ours.
        }
        frame.remove();
      }
      return found;
    });
    expect(outcome).toEqual([]);
  });

  it('should know nothing of Node, and have only the named functions', async () => {
    const found = await desktop.page.evaluate(() => ({
      node: ['require', 'process', 'module', 'Buffer', 'global', 'ipcRenderer', 'electron'].filter((name) => name in window),
      bridge: Object.keys((window as unknown as { linkwright: object }).linkwright).sort(), // put there by the preload
    }));
    expect(found).toEqual({
      node: [],
      bridge: [...Object.keys(callChannels), 'onCloseAsked', 'onFilesHandedOver'].sort(),
    });
  });

  it('should deny every permission but writing text to the clipboard and the full screen', async () => {
    const states = await desktop.page.evaluate(async () => {
      const names = [
        'geolocation',
        'notifications',
        'camera',
        'microphone',
        'midi',
        'clipboard-read',
        'persistent-storage',
        'accelerometer',
      ];
      const result: Record<string, string> = {};
      for (const name of names) {
        // Names beyond those of the standard library's list.
        result[name] = await navigator.permissions.query({ name: name as PermissionName }).then((status) => status.state, String);
      }
      return result;
    });
    for (const [name, state] of Object.entries(states)) expect(`${name}: ${state}`).toMatch(/denied|TypeError/);
    const outcomes = await desktop.page.evaluate(async () => ({
      notification: await Notification.requestPermission(),
      place: await new Promise((resolve) =>
        navigator.geolocation.getCurrentPosition(
          () => resolve('found'),
          (error) => resolve(error.code),
        ),
      ),
      camera: await navigator.mediaDevices.getUserMedia({ video: true }).then(
        () => 'open',
        (error: Error) => error.name,
      ),
      screen: await navigator.mediaDevices.getDisplayMedia({ video: true }).then(
        () => 'open',
        (error: Error) => error.name,
      ),
      clipboard: await navigator.clipboard.readText().then(
        () => 'read',
        (error: Error) => error.name,
      ),
    }));
    expect(outcomes).toMatchObject({ notification: 'denied', place: 1, clipboard: 'NotAllowedError' });
    expect(outcomes.camera).not.toBe('open');
    expect(outcomes.screen).not.toBe('open');
  });

  it('should offer no device', async () => {
    const outcomes = await desktop.page.evaluate(async () => {
      const device = navigator as unknown as Record<string, { getDevices?: () => Promise<unknown[]>; getPorts?: () => Promise<unknown[]> }>; // newer than the types
      const result: Record<string, unknown> = {};
      for (const name of ['usb', 'hid']) result[name] = (await device[name]?.getDevices?.().catch(() => [])) ?? [];
      result['serial'] = (await device['serial']?.getPorts?.().catch(() => [])) ?? [];
      return result;
    });
    expect(outcomes).toEqual({ usb: [], hid: [], serial: [] });
  });

  it('should have no embedded browser', async () => {
    const outcome = await desktop.page.evaluate(async () => {
      const view = document.createElement('webview');
      view.setAttribute('src', 'https://example.invalid/');
      document.body.append(view);
      await new Promise((resolve) => setTimeout(resolve, 150));
      const inert = !('getWebContentsId' in view);
      view.remove();
      return inert;
    });
    expect(outcome).toBe(true);
  });

  it('should save nothing by itself', async () => {
    const downloads: string[] = [];
    desktop.page.on('download', (download) => downloads.push(download.url()));
    const finished = await desktop.app.evaluate(({ session }) => {
      const states: string[] = [];
      session.defaultSession.on('will-download', (event) => states.push(event.defaultPrevented ? 'prevented' : 'going on'));
      Object.assign(globalThis, { downloadStates: states });
      return states.length;
    });
    expect(finished).toBe(0);
    await desktop.page.evaluate(() => {
      const link = document.createElement('a');
      link.href = URL.createObjectURL(new Blob(['hello']));
      link.download = 'hello.txt';
      link.click();
    });
    await desktop.page.evaluate(() => new Promise((resolve) => setTimeout(resolve, 200)));
    const states = await desktop.app.evaluate(() => (globalThis as unknown as { downloadStates: string[] }).downloadStates); // put there above
    expect(states.filter((state) => state !== 'prevented')).toEqual([]);
    expect(downloads).toEqual([]);
  });

  it('should keep its window locked down', async () => {
    const preferences = await desktop.app.evaluate(({ BrowserWindow }) => {
      const contents = BrowserWindow.getAllWindows()[0]?.webContents as unknown as { getLastWebPreferences: () => Record<string, unknown> }; // not in the types
      return contents.getLastWebPreferences();
    });
    expect(preferences).toMatchObject({
      sandbox: true,
      contextIsolation: true,
      nodeIntegration: false,
      nodeIntegrationInSubFrames: false,
      webSecurity: true,
      webviewTag: false,
    });
  });
});
