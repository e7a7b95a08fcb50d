import { app, type Session, session, type WebContents } from 'electron';
import { pageAddress } from './pageScheme.ts';

/** Refuses, for every web page in the program, whatever our page never needs. Call once the program is ready, before any window. */
export function lockDown(): void {
  lockDownSession(session.defaultSession);
  app.on('session-created', lockDownSession);
  app.on('web-contents-created', (_event, contents) => lockDownContents(contents));
}

// No permission is needed by anything on the page, so the table of allowed ones is empty: all are denied.
function lockDownSession(target: Session): void {
  target.setPermissionRequestHandler((_contents, _permission, decide) => decide(false));
  target.setPermissionCheckHandler(() => false);
  target.setDevicePermissionHandler(() => false);
  target.on('will-download', (event) => event.preventDefault());
  // The page brings all it needs; no other address is ever asked.
  target.webRequest.onBeforeRequest((details, decide) => decide({ cancel: !isAllowedAddress(details.url) }));
}

function lockDownContents(contents: WebContents): void {
  const refuse = (event: { preventDefault: () => void }) => event.preventDefault();
  contents.on('will-navigate', (event, url) => {
    // A reload of the page itself is no navigation to elsewhere.
    if (url !== pageAddress) refuse(event);
  });
  contents.on('will-redirect', refuse);
  contents.on('will-frame-navigate', (event) => {
    if (!event.isMainFrame || event.url !== pageAddress) refuse(event);
  });
  contents.on('will-attach-webview', refuse);
  contents.setWindowOpenHandler(() => ({ action: 'deny' }));
}

function isAllowedAddress(address: string): boolean {
  const { protocol } = new URL(address);
  // `devtools:` belongs to the runtime's own tools, which only a build from source can open.
  return protocol === new URL(pageAddress).protocol || protocol === 'devtools:';
}
