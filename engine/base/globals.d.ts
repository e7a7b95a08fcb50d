/**
 * The few things outside the language that every host of the engine has (browser, worker, Node ≥ 20, the desktop shell), declared
 * by hand because the engine is compiled without the page's and without Node's types.
 */
declare class TextDecoder {
  constructor(label?: string, options?: { readonly fatal?: boolean; readonly ignoreBOM?: boolean });
  decode(input?: Uint8Array): string;
}

declare class TextEncoder {
  encode(input?: string): Uint8Array;
}
