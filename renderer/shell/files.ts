import { ok, type Result } from '../../engine/base/index.ts';
import { chooseFile, offerFile } from './browserFiles.ts';
import { findDesktop } from './desktopBridge.ts';

/** A file as it comes in, whichever way. */
export interface IncomingFile {
  readonly name: string;
  readonly content: Uint8Array;
}

/** Asks the user for a file: in the desktop program by the system's dialog, else by the browser's. Null when none was chosen. */
export async function askForFile(): Promise<Result<IncomingFile | null>> {
  const desktop = findDesktop();
  return desktop ? desktop.chooseFile() : ok(await chooseFile('.json,application/json'));
}

/**
 * Saves a text where the user chooses. In a browser it is handed over as a download, and whether that went well is not told: the answer
 * is a success then.
 */
export async function saveText(proposedName: string, text: string): Promise<Result<unknown>> {
  const desktop = findDesktop();
  if (desktop) return desktop.saveFileAs(proposedName, new TextEncoder().encode(text));
  offerFile(proposedName, text);
  return ok(null);
}
