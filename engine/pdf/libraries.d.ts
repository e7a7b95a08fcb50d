/**
 * What is used of the PDF library, declared by hand: its published types bring Node's along, which the engine must not know. The
 * library itself works in Node and in a browser.
 */
declare module 'pdfkit' {
  interface PdfkitOptions {
    readonly autoFirstPage: false;
    readonly font: null;
    readonly pdfVersion: '1.7';
    readonly lang: string;
    readonly displayTitle: true;
    readonly info: Readonly<Record<string, unknown>>;
  }

  interface PdfkitText {
    readonly lineBreak: false;
    readonly baseline: 'alphabetic';
    readonly features: { readonly kern: false };
    readonly textWidth: number;
    readonly wordCount: number;
  }

  interface PdfkitOutline {
    addItem(title: string): PdfkitOutline;
  }

  class PDFDocument {
    constructor(options: PdfkitOptions);
    readonly outline: PdfkitOutline;
    on(event: 'data', listener: (chunk: Uint8Array) => void): this;
    on(event: 'end', listener: () => void): this;
    on(event: 'error', listener: (error: unknown) => void): this;
    registerFont(name: string, data: Uint8Array): this;
    addPage(options: { readonly size: readonly [number, number]; readonly margin: 0 }): this;
    save(): this;
    restore(): this;
    translate(x: number, y: number): this;
    scale(factor: number): this;
    rotate(degrees: number): this;
    font(name: string): this;
    fontSize(points: number): this;
    text(text: string, x: number, y: number, options: PdfkitText): this;
    moveTo(x: number, y: number): this;
    lineTo(x: number, y: number): this;
    rect(x: number, y: number, width: number, height: number): this;
    roundedRect(x: number, y: number, width: number, height: number, radius: number): this;
    path(path: string): this;
    lineWidth(points: number): this;
    dash(length: number, options: { readonly space: number }): this;
    undash(): this;
    fillColor(colour: string): this;
    strokeColor(colour: string): this;
    fill(): this;
    stroke(): this;
    fillAndStroke(): this;
    image(data: Uint8Array, x: number, y: number, options: { readonly width: number; readonly height: number }): this;
    addNamedDestination(name: string): void;
    goTo(x: number, y: number, width: number, height: number, name: string): this;
    end(): void;
  }

  // biome-ignore lint/style/noDefaultExport: the library exports it so.
  export default PDFDocument;
}

/** Reads font files; the PDF library stands on it too. */
declare module 'fontkit' {
  interface FontkitFont {
    readonly characterSet: readonly number[];
    readonly unitsPerEm: number;
    hasGlyphForCodePoint(codePoint: number): boolean;
    glyphForCodePoint(codePoint: number): {
      readonly advanceWidth: number;
      readonly bbox: { readonly minY: number; readonly maxY: number };
    };
  }
  export function create(data: Uint8Array): FontkitFont;
}

/** A file as base64 behind `data:…;base64,`: the bundler puts it into the module. */
declare module '*.woff?inline' {
  const address: string;
  // biome-ignore lint/style/noDefaultExport: the bundler exports it so.
  export default address;
}
declare module '*.ttf?inline' {
  const address: string;
  // biome-ignore lint/style/noDefaultExport: the bundler exports it so.
  export default address;
}
