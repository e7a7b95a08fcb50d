import { cleanText, padText, textWidth, wrapText } from './text.ts';

/** A column of a table. `grow`: takes what room is left and wraps first. */
export interface Column {
  readonly head: string;
  readonly align?: 'left' | 'right';
  readonly grow?: true;
}

const gap = '  ';

/**
 * A table as text: heads, a rule, rows; columns are two spaces apart. It never is wider than `width`: cells wrap, the growing
 * columns first. A column in which every cell is empty is left out.
 */
export function formatTable(columns: readonly Column[], rows: readonly (readonly string[])[], width: number): string {
  const cells = rows.map((row) => row.map(cleanText));
  const shown = columns.flatMap((column, index) => (cells.some((row) => row[index]) ? [{ ...column, index }] : []));
  if (shown.length === 0) return '';
  const wished = shown.map(({ head, index }) => Math.max(textWidth(head), ...cells.map((row) => textWidth(row[index] ?? ''))));
  const widths = fitWidths(
    wished,
    shown.map(({ grow }) => grow === true),
    width - gap.length * (shown.length - 1),
  );
  const line = (texts: readonly string[]) => {
    const wrapped = texts.map((text, i) => wrapText(text, widths[i] ?? 1));
    const height = Math.max(...wrapped.map((lines) => lines.length));
    let out = '';
    for (let at = 0; at < height; at += 1) {
      const parts = shown.map(({ align }, i) => padText(wrapped[i]?.[at] ?? '', widths[i] ?? 0, align));
      out += `${parts.join(gap).trimEnd()}\n`;
    }
    return out;
  };
  const rule = `${widths.map((columnWidth) => '─'.repeat(columnWidth)).join(gap)}\n`;
  return line(shown.map(({ head }) => head)) + rule + cells.map((row) => line(shown.map(({ index }) => row[index] ?? ''))).join('');
}

/**
 * Takes width away where there is too much, one column at a time from the widest: first from growing columns as long as they can be
 * read well, then from the others, then from all down to the width of one wide character.
 */
function fitWidths(wished: readonly number[], grows: readonly boolean[], room: number): readonly number[] {
  const widths = [...wished];
  let over = widths.reduce((sum, width) => sum + width, 0) - room;
  const steps: readonly { readonly from: (index: number) => boolean; readonly least: number }[] = [
    { from: (index) => grows[index] === true, least: 24 },
    { from: (index) => grows[index] === false, least: 12 },
    { from: () => true, least: 2 },
  ];
  for (const { from, least } of steps) {
    while (over > 0) {
      let widest = -1;
      for (const [index, width] of widths.entries()) {
        if (from(index) && width > least && width > (widths[widest] ?? 0)) widest = index;
      }
      if (widest < 0) break;
      widths[widest] = (widths[widest] ?? 0) - 1;
      over -= 1;
    }
  }
  return widths;
}
