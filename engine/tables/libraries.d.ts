/** What is used of the CSV library, declared by hand: its published types bring Node's along, which the engine must not know. */
declare module 'papaparse' {
  interface Parsed<R> {
    readonly data: readonly R[];
    readonly errors: readonly { readonly type: string }[];
    readonly meta: { readonly delimiter: string };
  }

  interface PapaParse {
    parse<R>(
      text: string,
      options: { readonly delimiter: string; readonly skipEmptyLines?: boolean; readonly preview?: number },
    ): Parsed<R>;
    unparse(
      rows: readonly (readonly string[])[],
      options: { readonly delimiter: string; readonly newline: string; readonly quotes: false },
    ): string;
  }

  const Papa: PapaParse;
  // biome-ignore lint/style/noDefaultExport: the library exports it so.
  export default Papa;
}
