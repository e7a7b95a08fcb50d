/// <reference path="./libraries.d.ts" />
import regular from '@fontsource/b612/files/b612-latin-400-normal.woff?inline';
import bold from '@fontsource/b612/files/b612-latin-700-normal.woff?inline';
import mono from '@fontsource/b612-mono/files/b612-mono-latin-400-normal.woff?inline';
import { decodeBase64 } from './base64.ts';

/** The typefaces, as font files. */
export const fontFiles = {
  regular: () => bytesOf(regular),
  bold: () => bytesOf(bold),
  mono: () => bytesOf(mono),
  /** For what the first three lack: other alphabets, arrows. It is large, and fetched only when it is needed. */
  substitute: async () => bytesOf((await import('./substituteFont.ts')).substituteFont),
} as const;

const bytesOf = (address: string): Uint8Array => decodeBase64(address.slice(address.indexOf(',') + 1));
