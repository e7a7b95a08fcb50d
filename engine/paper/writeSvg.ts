import { assertNever } from '../base/index.ts';
import { textWidth } from './measure.ts';
import { inks, type Page, type Shape } from './shapes.ts';
import type { Size } from './sizes.ts';
import { mmPerPoint } from './sizes.ts';

const families = { regular: "B612, 'DejaVu Sans', sans-serif", mono: "'B612 Mono', 'DejaVu Sans Mono', monospace" } as const;

/** A page as an SVG file: vector, text as text, sizes in mm. */
export function writeSvg(page: Page, title: string): string {
  return `<?xml version="1.0" encoding="UTF-8"?>\n${svgOf(page, page.shapes, title, { width: `${trim(page.width)}mm`, height: `${trim(page.height)}mm` }, true)}\n`;
}

/** The `svg` element of some shapes, to be put into a page of a browser. Its own font sizes are mm. */
export function svgOf(
  size: Size,
  shapes: readonly Shape[],
  words: string,
  shown: { readonly width: string; readonly height: string },
  isPaper = false,
): string {
  const ground = isPaper ? `<rect width="${trim(size.width)}" height="${trim(size.height)}" fill="#ffffff"/>` : '';
  return `<svg xmlns="http://www.w3.org/2000/svg" width="${shown.width}" height="${shown.height}" viewBox="0 0 ${trim(size.width)} ${trim(size.height)}" role="img" aria-label="${escapeXml(words)}"><title>${escapeXml(words)}</title>${ground}${shapes.map(writeShape).join('')}</svg>`;
}

function writeShape(shape: Shape): string {
  switch (shape.kind) {
    case 'text': {
      const face = shape.face ?? 'regular';
      const anchor = shape.align === 'center' ? ' text-anchor="middle"' : shape.align === 'right' ? ' text-anchor="end"' : '';
      const turn = shape.turned === true ? ` transform="rotate(-90 ${trim(shape.x)} ${trim(shape.y)})"` : '';
      const weight = face === 'bold' ? ' font-weight="700"' : '';
      // The length is given, so that a substitute typeface does not run over.
      const length = ` textLength="${trim(textWidth(shape.text, shape.size, face))}" lengthAdjust="spacingAndGlyphs"`;
      return `<text x="${trim(shape.x)}" y="${trim(shape.y)}" font-family="${families[face === 'mono' ? 'mono' : 'regular']}" font-size="${trim(shape.size * mmPerPoint)}"${weight}${anchor}${length} fill="${shape.colour ?? inks.black}" xml:space="preserve"${turn}>${escapeXml(shape.text)}</text>`;
    }
    case 'line': {
      const points = shape.points.map(trim).join(' ');
      return `<polyline points="${points}" fill="none" stroke="${shape.colour ?? inks.black}" stroke-width="${trim(shape.width)}"${dashOf(shape.dash)}/>`;
    }
    case 'box': {
      const corner = shape.corner === undefined ? '' : ` rx="${trim(shape.corner)}"`;
      const line =
        shape.line === undefined
          ? ''
          : ` stroke="${shape.line.colour ?? inks.black}" stroke-width="${trim(shape.line.width)}"${dashOf(shape.line.dash)}`;
      return `<rect x="${trim(shape.x)}" y="${trim(shape.y)}" width="${trim(shape.width)}" height="${trim(shape.height)}"${corner} fill="${shape.fill ?? 'none'}"${line}/>`;
    }
    case 'path': {
      const stroke = shape.stroke === undefined ? '' : ` stroke="${shape.stroke.colour}" stroke-width="${trim(shape.stroke.width)}"`;
      return `<path d="${escapeXml(shape.path)}" transform="translate(${trim(shape.x)} ${trim(shape.y)}) scale(${trim(shape.scale, 5)})" fill="${shape.fill ?? 'none'}"${stroke}/>`;
    }
    case 'picture':
      return `<image x="${trim(shape.x)}" y="${trim(shape.y)}" width="${trim(shape.width)}" height="${trim(shape.height)}" href="data:${escapeXml(shape.mediaType)};base64,${escapeXml(shape.data)}"><title>${escapeXml(shape.words)}</title></image>`;
    case 'jump':
      return '';
    default:
      return assertNever(shape);
  }
}

const dashOf = (dash: readonly [number, number] | undefined): string =>
  dash === undefined ? '' : ` stroke-dasharray="${dash.map((length) => trim(length)).join(' ')}"`;

/** A number without needless digits: a hundredth of a millimetre is finer than any printer. */
function trim(value: number, digits = 3): string {
  return String(Number(value.toFixed(digits)));
}

/** Text for XML and HTML. Control signs, which XML cannot hold, are left out. */
export function escapeXml(text: string): string {
  return (
    text
      // biome-ignore lint/suspicious/noControlCharactersInRegex: these are what must go.
      .replace(/[\u0000-\u0008\u000b\u000c\u000e-\u001f\ufffe\uffff]/g, '')
      .replaceAll('&', '&amp;')
      .replaceAll('<', '&lt;')
      .replaceAll('>', '&gt;')
      .replaceAll('"', '&quot;')
  );
}
