import { fileWords, injectWords } from '../../engine/messages/index.ts';
import type { Workbench } from '../state/dispatcher.ts';
import type { FileAccess } from './access.ts';
import type { FileDesk } from './fileDesk.ts';
import { documentName, isUnsaved } from './unsaved.ts';

/** How often an open file is looked at while the window is used, milliseconds. */
const lookEvery = 5_000;

/** Joins the files to the window: its title, its closing, what is dropped onto it, what comes from outside. */
export function followFiles(bench: Pick<Workbench, 'store' | 'announce'>, access: FileAccess, desk: FileDesk): void {
  followTitle(bench, access);
  access.onHandedOver(() => void desk.takeHandedOver());
  access.onCloseAsked(() => void desk.closeAsked());
  followDrops(bench, desk);
  followOutside(bench, desk);
  if (access.means !== 'desktop') {
    window.addEventListener('beforeunload', (event) => {
      if (isUnsaved(bench.store.getState())) event.preventDefault();
    });
  }
  void desk.start();
}

/** The title names the document and marks it when it is unsaved; the desktop program hears of it. */
function followTitle({ store }: Pick<Workbench, 'store'>, access: FileAccess): void {
  let told: boolean | null = null;
  const tell = () => {
    const state = store.getState();
    const unsaved = isUnsaved(state);
    const named = fileWords.title(documentName(state), unsaved);
    const title = state.inject.on ? injectWords.title(named) : named;
    if (document.title !== title) document.title = title;
    if (told !== unsaved) access.tellUnsaved(unsaved);
    told = unsaved;
  };
  store.subscribe(tell);
  tell();
}

function followDrops({ announce }: Pick<Workbench, 'announce'>, desk: FileDesk): void {
  const hasFiles = (event: DragEvent) => event.dataTransfer?.types.includes('Files') ?? false;
  const mark = (on: boolean) => document.documentElement.toggleAttribute('data-dropping', on);
  window.addEventListener('dragover', (event) => {
    if (!hasFiles(event)) return;
    event.preventDefault();
    mark(true);
  });
  window.addEventListener('dragleave', (event) => {
    if (event.relatedTarget === null) mark(false);
  });
  window.addEventListener('drop', (event) => {
    if (!hasFiles(event)) return;
    event.preventDefault();
    mark(false);
    const items = [...(event.dataTransfer?.items ?? [])].filter(({ kind }) => kind === 'file');
    const [first] = items;
    if (first) void desk.takeDropped(first);
    if (items.length > 1) announce(fileWords.dropOne);
  });
}

function followOutside({ store }: Pick<Workbench, 'store'>, desk: FileDesk): void {
  let looking = false;
  const look = async () => {
    // While a question is open nothing else is done.
    if (looking || document.hidden || store.getState().question) return;
    looking = true;
    await desk.lookOutside().finally(() => {
      looking = false;
    });
  };
  window.addEventListener('focus', () => void look());
  setInterval(() => void look(), lookEvery);
  document.addEventListener('visibilitychange', () => void (document.hidden ? desk.flush() : look()));
  window.addEventListener('pagehide', () => void desk.flush());
}
