/// <reference path="./libraries.d.ts" />
import regular from '@fontsource/b612/files/b612-latin-400-normal.woff?inline';
import bold from '@fontsource/b612/files/b612-latin-700-normal.woff?inline';
import mono from '@fontsource/b612-mono/files/b612-mono-latin-400-normal.woff?inline';
import { decodeBase64 } from './base64.ts';
import { unpackWoff } from './unpackWoff.ts';

/** The typefaces, as font files. Unpacked once: a reader of packed ones would unpack a table each time that it looks into it. */
export const fontFiles = {
  regular: once(() => unpackWoff(bytesOf(regular))),
  bold: once(() => unpackWoff(bytesOf(bold))),
  mono: once(() => unpackWoff(bytesOf(mono))),
  /** For what the first three lack: other alphabets, arrows. It is large, and fetched only when it is needed. */
  substitute: async () => bytesOf((await import('./substituteFont.ts')).substituteFont),
} as const;

function once<T>(make: () => T): () => T {
  let made: { readonly value: T } | null = null;
  return () => {
    made ??= { value: make() };
    return made.value;
  };
}

function bytesOf(address: string): Uint8Array {
  return decodeBase64(address.slice(address.indexOf(',') + 1));
}
