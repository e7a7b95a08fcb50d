import { makeDrawActions } from '../draw/drawActions.ts';
import { followEdits } from '../draw/followEdits.ts';
import { makeBrowserAccess } from '../files/browserAccess.ts';
import { makeDesktopAccess } from '../files/desktopAccess.ts';
import { findDesktop } from '../files/desktopBridge.ts';
import { type FileDesk, makeFileDesk } from '../files/fileDesk.ts';
import { followFiles } from '../files/followFiles.ts';
import { wordTime } from '../files/wordTime.ts';
import type { DocumentSource, DocumentState } from '../state/appState.ts';
import type { CanvasControl, DrawActions } from '../state/command.ts';
import { makeWorkbench } from '../state/dispatcher.ts';
import { findStorage, readPreferences, writePreferences } from '../state/preferences.ts';
import type { Window } from '../state/useWorkbench.ts';
import { applyTheme } from '../theme/applyTheme.ts';
import { followDiagnosis } from '../worker/followDiagnosis.ts';
import { moveToRegion } from './SkipLinks.tsx';
import { listenForShortcuts } from './shortcuts.ts';

/** Puts the parts of the window together, once: store, dispatcher, diagnosis, colours, keys. */
export function openWindow(document: DocumentState, source: DocumentSource): Window {
  const storage = findStorage();
  const preferences = readPreferences(storage);
  let canvas: CanvasControl | null = null;
  const desktop = findDesktop();
  const access = desktop ? makeDesktopAccess(desktop) : makeBrowserAccess();
  const desks: FileDesk[] = [];
  const drawings: DrawActions[] = [];
  const bench = makeWorkbench({ document, source, preferences, now: () => new Date().toISOString() }, (inner) => {
    const desk = makeFileDesk(inner, access, { newId: () => crypto.randomUUID(), now: () => new Date(), wordTime });
    desks.push(desk);
    const draw = makeDrawActions(inner);
    drawings.push(draw);
    return { canvas: () => canvas, files: desk.actions, draw };
  });
  const diagnosis = followDiagnosis(bench.store);
  listenForShortcuts(bench);
  followEdits(bench);
  for (const desk of desks) followFiles(bench, access, desk);
  window.addEventListener('keydown', (event) => {
    if (event.key !== 'F6' || event.defaultPrevented) return;
    event.preventDefault();
    moveToRegion(event.shiftKey);
  });

  let stopTheme = applyTheme(preferences.theme);
  bench.store.subscribe((state, before) => {
    if (state.theme !== before.theme) {
      stopTheme();
      stopTheme = applyTheme(state.theme);
    }
    const kept = [
      'theme',
      'foldChains',
      'reduceMotion',
      'walkOrder',
      'takeConfirmed',
      'confirmedStrength',
      'library',
      'listColumns',
    ] as const;
    if (kept.some((key) => state[key] !== before[key])) {
      writePreferences(storage, state);
    }
  });

  const [drawing] = drawings;
  if (!drawing) throw new Error('the workbench made no effects');
  return {
    ...bench,
    drawing,
    registerCanvas: (control) => {
      canvas = control;
    },
    cancelDiagnosis: diagnosis.cancel,
    restartDiagnosis: diagnosis.restart,
  };
}
