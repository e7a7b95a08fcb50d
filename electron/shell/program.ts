import { app, type BrowserWindow, ipcMain } from 'electron';
import { ok, type Problem } from '../../engine/base/index.ts';
import { CloseGate } from '../files/closeGate.ts';
import { makeFileCalls } from '../files/fileCalls.ts';
import type { RecentMemory } from '../files/recentFiles.ts';
import { answerCalls } from '../ipc/answerCalls.ts';
import { noticeChannels } from '../ipc/channels.ts';
import { listPageFiles, type PageFiles } from '../serve/pageFiles.ts';
import { Settings } from '../settings/settings.ts';
import { filesNamed } from './commandLine.ts';
import { lockDown } from './lockdown.ts';
import { installMenu } from './menu.ts';
import { declarePageScheme, pageOrigin, servePageScheme } from './pageScheme.ts';
import { findPlace, rememberPlace } from './rememberPlace.ts';
import { changeTextSize } from './textSize.ts';
import { WindowWatch } from './watchWindow.ts';
import { openWindow } from './window.ts';

/** Where the built parts lie. */
interface BuiltParts {
  /** The folder of the page. */
  readonly page: string;
  /** The preload's one file. */
  readonly preload: string;
}

/** Runs the desktop program until its window is closed. A second start hands its files to the first one and ends. */
export function runProgram(parts: BuiltParts): void {
  const waiting = [...filesNamed(process.argv.slice(1), process.cwd())];
  if (!app.requestSingleInstanceLock({ files: [...waiting] })) {
    app.exit(0);
    return;
  }
  // A test machine that runs everything as root cannot have the system's sandbox and says so with this switch.
  if (!app.commandLine.hasSwitch('no-sandbox')) app.enableSandbox();
  declarePageScheme();
  let window: BrowserWindow | undefined;

  const handOver = (paths: readonly string[]) => {
    waiting.push(...paths);
    if (paths.length > 0) window?.webContents.send(noticeChannels.filesHandedOver);
  };
  // macOS names files this way, and may do so before the program is ready.
  app.on('open-file', (event, path) => {
    event.preventDefault();
    handOver([path]);
  });
  app.on('second-instance', (_event, _args, _folder, handedOver) => {
    handOver(filesHandedOver(handedOver));
    if (window?.isMinimized()) window.restore();
    window?.focus();
  });
  app.on('window-all-closed', () => app.quit());

  let gate: CloseGate | undefined;
  let memory: RecentMemory = { recent: [] };
  const notices: Problem[] = [];
  answerCalls(
    ipcMain,
    {
      describeProgram: () =>
        ok({
          version: app.getVersion(),
          platform: process.platform,
          runtime: process.versions.electron,
          browser: process.versions['chrome'] ?? '',
        }),
      changeTextSize: (change) => {
        if (window) changeTextSize(window.webContents, change);
        return ok(null);
      },
      takeNotices: () => ok(notices.splice(0)),
      ...makeFileCalls({
        window: () => window,
        gate: () => gate,
        settings: () => memory,
        waiting,
        notices,
        folder: app.getPath('userData'),
      }),
    },
    pageOrigin,
  );

  app
    .whenReady()
    .then(async () => {
      lockDown();
      installMenu();
      const { settings, problem } = Settings.open(app.getPath('userData'));
      if (problem) notices.push(problem);
      memory = settings;
      window = openWindow({ preload: parts.preload, place: findPlace(settings.window) });
      rememberPlace(window, (place) => {
        settings.window = place;
      });
      gate = new CloseGate(window, () => window?.webContents.send(noticeChannels.closeAsked));
      const watch = new WindowWatch(window);
      servePageScheme(await listBuiltPage(parts.page), () => watch.failure);
      window.on('closed', () => {
        window = undefined;
      });
      await watch.loadPage();
      tellStarter();
    })
    .catch((error: unknown) => {
      console.error('the program could not start', error);
      app.exit(1);
    });
}

/** A page that was not built is an empty one: loading it then ends at the failure page, in a window that can be read. */
async function listBuiltPage(folder: string): Promise<PageFiles> {
  try {
    return await listPageFiles(folder);
  } catch (error) {
    console.error('the built page cannot be listed', error);
    return new Map();
  }
}

/** The data a second start sends is only as trustworthy as any program of this user. */
function filesHandedOver(data: unknown): readonly string[] {
  if (typeof data !== 'object' || data === null || !('files' in data) || !Array.isArray(data.files)) return [];
  return data.files.filter((file): file is string => typeof file === 'string');
}

/** The start command waits for this word; a program that ends without it did not get as far as a window. */
function tellStarter(): void {
  process.send?.('window open');
}
