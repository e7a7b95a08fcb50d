import { app, type Session, session, type WebContents } from 'electron';
import { pageAddress, pageOrigin } from './pageScheme.ts';

/** The only permissions our own page gets; each with its reason. */
const allowedPermissions: Readonly<Record<string, string>> = {
  'clipboard-sanitized-write': 'copying a table or a problem report as text',
  fullscreen: 'showing an exercise on a projector',
};

/** Refuses, for every web page in the program, whatever our page never needs. Call once the program is ready, before any window. */
export function lockDown(): void {
  lockDownSession(session.defaultSession);
  app.on('session-created', lockDownSession);
  app.on('web-contents-created', (_event, contents) => lockDownContents(contents));
}

function lockDownSession(target: Session): void {
  target.setPermissionRequestHandler((_contents, permission, decide, { requestingUrl, isMainFrame }) =>
    decide(isMainFrame && isAllowed(permission, requestingUrl)),
  );
  target.setPermissionCheckHandler((_contents, permission, origin, { isMainFrame }) => isMainFrame && isAllowed(permission, origin));
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

function isAllowed(permission: string, address: string): boolean {
  return Object.hasOwn(allowedPermissions, permission) && originOf(address) === pageOrigin;
}

function isAllowedAddress(address: string): boolean {
  // `devtools:` belongs to the runtime's own tools, which only a program run from source can open.
  return originOf(address) === pageOrigin || address.startsWith('devtools://');
}

// By hand: `URL.origin` is "null" for schemes that Node does not know, and `URL.canParse` is missing in Node 18.15 (Electron 25).
function originOf(address: string): string | undefined {
  try {
    const { protocol, host } = new URL(address);
    return `${protocol}//${host}`;
  } catch {
    return undefined;
  }
}
