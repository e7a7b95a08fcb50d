import { isOwnFile } from '../../engine/cabinet/index.ts';

/** Whether these bytes open as a file of ours, by the one way in that every file takes. */
export function opensAgain(content: Uint8Array): boolean {
  return isOwnFile(content);
}
