import { app, Menu, type MenuItemConstructorOptions } from 'electron';
import { shellWords } from '../../engine/messages/index.ts';

/**
 * The menu of the window: only what the runtime itself does. Undo and redo are left out, because the page's own commands take those
 * keys; loading again is left out, because it would drop what is being typed.
 */
export function installMenu(): void {
  const developer: MenuItemConstructorOptions[] = app.isPackaged ? [] : [{ type: 'separator' }, { role: 'toggleDevTools' }];
  const template: MenuItemConstructorOptions[] = [
    ...(process.platform === 'darwin' ? [{ role: 'appMenu' } as const] : []),
    {
      label: shellWords.file,
      submenu: [process.platform === 'darwin' ? { role: 'close' } : { role: 'quit', accelerator: 'CommandOrControl+Q' }],
    },
    { label: shellWords.edit, submenu: [{ role: 'cut' }, { role: 'copy' }, { role: 'paste' }, { role: 'selectAll' }] },
    {
      label: shellWords.view,
      submenu: [
        { role: 'resetZoom' },
        { role: 'zoomIn' },
        { role: 'zoomOut' },
        { type: 'separator' },
        { role: 'togglefullscreen' },
        ...developer,
      ],
    },
    { label: shellWords.window, submenu: [{ role: 'minimize' }, { role: 'close' }] },
  ];
  Menu.setApplicationMenu(Menu.buildFromTemplate(template));
}
