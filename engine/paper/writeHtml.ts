import { assertNever } from '../base/index.ts';
import type { Block, Paper, TableCell } from './blocks.ts';
import { type RichText, runsOf } from './richText.ts';
import type { Figure } from './shapes.ts';
import { houseSign, placeSign } from './signs.ts';
import { escapeXml, svgOf } from './writeSvg.ts';

/** What an HTML page needs besides the paper itself. */
export interface HtmlOptions {
  /** Language of the words, as in BCP 47. */
  readonly language: string;
}

/**
 * A document as one HTML file that holds everything it shows and runs nothing: headings, lists and tables as such, drawings as SVG.
 * It is read on a screen and can be printed from there.
 */
export function writeHtml(paper: Paper, { language }: HtmlOptions): string {
  const { head, foot } = paper;
  const body = paper.blocks.map(writeBlock).join('\n');
  const caution = foot.caution === undefined ? '' : writeBlock(foot.caution);
  const house = svgOf({ width: 22, height: 22 }, placeSign(houseSign, 0, 0, 22), 'Linkwright', { width: '22', height: '22' });
  return `<!doctype html>
<html lang="${escapeXml(language)}">
<meta charset="utf-8">
<meta name="viewport" content="width=device-width">
<meta http-equiv="Content-Security-Policy" content="default-src 'none'; style-src 'unsafe-inline'; img-src data:">
<title>${escapeXml(head.title)}</title>
<style>${styles}</style>
<header><div><h1>${escapeXml(head.title)}</h1><p>${escapeXml(head.subtitle)}</p></div><div class="house"><p>${house} <b>Linkwright</b></p>${head.right.map((line) => `<p>${escapeXml(line)}</p>`).join('')}</div></header>
<main>
${body}
</main>
<footer>${caution}<p>${escapeXml(foot.left)}</p><p>${escapeXml(foot.right)}</p></footer>
</html>
`;
}

const styles = `
:root{color-scheme:light}*{box-sizing:border-box}
body{max-width:60rem;margin:0 auto;padding:1.5rem;background:#fff;color:#000;font:1rem/1.4 B612,"DejaVu Sans",sans-serif}
header{display:flex;justify-content:space-between;gap:2rem;align-items:end;border-bottom:1px solid #000;padding-bottom:.4rem;position:relative;margin-bottom:1.4rem}
header::after{content:"";position:absolute;left:0;right:0;bottom:-6px;border-bottom:3px solid #000}
h1{font-size:1.7rem;line-height:1.2;margin:0}h2{font-size:1.25rem;margin:1.6rem 0 .4rem}h3{font-size:1.05rem;margin:1.2rem 0 .3rem}
p{margin:.3rem 0}header p{margin:0}.house{text-align:right;font-size:.9rem}.house svg{vertical-align:-.3rem}
table{border-collapse:collapse;width:100%;font-size:.9rem;margin:.6rem 0}th,td{border-top:1px solid #000;padding:.25rem .4rem;text-align:left;vertical-align:middle}
tbody tr:last-child td{border-bottom:1px solid #000}thead th{border-top:0;vertical-align:bottom}th small{display:block;font-weight:400}.center{text-align:center}.right{text-align:right}
td.loss{background:#fff1bf}td svg{display:block;margin:0 auto}code{font-family:"B612 Mono","DejaVu Sans Mono",monospace}
figure{margin:1rem 0}figure svg,figure img{max-width:100%;height:auto}figcaption{font-size:.9rem}
.caution{border:2px solid #000;border-left:14px solid #f4b90a;padding:.5rem .8rem;margin:1rem 0}
dl{display:grid;grid-template-columns:repeat(var(--columns),1fr);gap:.4rem 1.5rem}dl div{display:flex;gap:.5rem;border-bottom:1px solid #8a8a8a;min-height:1.9rem;align-items:end}dt{color:#505050;font-size:.9rem}dd{margin:0;font-weight:700}
.line{border-bottom:1px solid #8a8a8a;height:2rem}footer{margin-top:2rem;font-size:.9rem;display:grid;gap:.3rem}
@media print{body{padding:0;max-width:none;font-size:10pt}tr,figure,.caution{break-inside:avoid}h2,h3{break-after:avoid}.break{break-after:page}}
`;

function writeBlock(block: Block): string {
  switch (block.kind) {
    case 'heading':
      return block.level === 1 ? `<h2>${writeText(block.text)}</h2>` : `<h3>${writeText(block.text)}</h3>`;
    case 'paragraph':
      return `<p>${writeText(block.text)}</p>`;
    case 'list': {
      const items = block.items.map((item) => `<li>${writeText(item)}</li>`).join('');
      return block.isNumbered === true ? `<ol>${items}</ol>` : `<ul>${items}</ul>`;
    }
    case 'table': {
      const head = block.columns
        .map(
          ({ head: text, under }) =>
            `<th scope="col">${writeText(text)}${under === undefined ? '' : `<small>${writeText(under)}</small>`}</th>`,
        )
        .join('');
      const rows = block.rows
        .map((row) => `<tr>${row.map((cell, index) => writeCell(cell, block.columns[index]?.align)).join('')}</tr>`)
        .join('\n');
      return `<table aria-label="${escapeXml(block.words)}"><thead><tr>${head}</tr></thead>\n<tbody>${rows}</tbody></table>`;
    }
    case 'figure':
      return `<figure>${writeFigure(block.figure)}${writeCaption(block.caption)}</figure>`;
    case 'photo':
      return `<figure><img src="data:${escapeXml(block.photo.mediaType)};base64,${escapeXml(block.photo.data)}" alt="${escapeXml(block.photo.words)}">${writeCaption(block.caption)}</figure>`;
    case 'caution':
      return `<div class="caution" role="note"><b>${writeText(block.title)}</b><br>${writeText(block.text)}</div>`;
    case 'fields': {
      const fields = block.fields
        .map(({ label, value }) => `<div><dt>${escapeXml(label)}</dt><dd>${escapeXml(value ?? '')}</dd></div>`)
        .join('');
      return `<dl style="--columns:${block.columns ?? 2}">${fields}</dl>`;
    }
    case 'lines':
      return '<div class="line"></div>'.repeat(block.count);
    case 'space':
      return '';
    case 'page-break':
      return '<div class="break"></div>';
    case 'together':
      return block.blocks.map(writeBlock).join('\n');
    default:
      return assertNever(block);
  }
}

const writeCaption = (caption: RichText | undefined): string =>
  caption === undefined ? '' : `<figcaption>${writeText(caption)}</figcaption>`;

function writeCell(cell: TableCell, align: 'left' | 'center' | 'right' | undefined): string {
  const name = [
    align === 'center' || align === 'right' ? align : '',
    typeof cell === 'object' && 'figure' in cell && cell.fill !== undefined ? 'loss' : '',
  ]
    .filter(Boolean)
    .join(' ');
  const open = name === '' ? '<td>' : `<td class="${name}">`;
  if (typeof cell === 'object' && 'figure' in cell) return `${open}${writeFigure(cell.figure)}</td>`;
  if (typeof cell === 'object' && 'text' in cell) {
    const lines = [cell.text, ...(cell.below ?? [])].map(writeText).join('<br>');
    return `${open}${cell.ring === undefined ? '' : `<b>${escapeXml(cell.ring)}.</b> `}${lines}</td>`;
  }
  return `${open}${writeText(cell)}</td>`;
}

/** Pixels of a browser for each mm. */
const pixels = 96 / 25.4;

function writeFigure(figure: Figure): string {
  const shown = { width: String(Math.round(figure.width * pixels)), height: String(Math.round(figure.height * pixels)) };
  return svgOf(figure, figure.shapes, figure.words, shown);
}

function writeText(text: RichText): string {
  return runsOf(text)
    .map((run) => {
      const escaped = escapeXml(run.text).replaceAll('\n', '<br>');
      return run.face === 'bold' ? `<b>${escaped}</b>` : run.face === 'mono' ? `<code>${escaped}</code>` : escaped;
    })
    .join('');
}
