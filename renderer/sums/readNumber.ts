import { longestLine } from '../../engine/schema/index.ts';
import type { FigureChange } from '../../engine/sums/index.ts';

/** Which numbers a figure can be. */
export type NumberKind = 'amount' | 'positive' | 'whole' | 'temperature' | 'level';

/** Least temperature that there is, °C. */
const absoluteZero = -273.15;
/** Far above what a cabinet needs; it keeps a slip of the finger from becoming a number without end. */
const most = 1e9;
const written = /^[+-]?(?:\d+(?:\.\d*)?|\.\d+)$/;

/** A number as people write it, with point or comma; null where it is none, or none of its kind. */
export function readNumber(text: string, kind: NumberKind): number | null {
  const plain = text.trim().replace(',', '.').replace('−', '-');
  if (!written.test(plain)) return null;
  const value = Number(plain);
  if (!Number.isFinite(value) || Math.abs(value) > most) return null;
  switch (kind) {
    case 'amount':
      return value >= 0 ? value : null;
    case 'positive':
      return value > 0 ? value : null;
    case 'whole':
      return Number.isInteger(value) && value >= 0 && value <= 100 ? value : null;
    case 'temperature':
      return value > absoluteZero ? value : null;
    case 'level':
      return value;
  }
}

/** Which numbers a figure that is tried can be. */
export function kindOfFigure(figure: FigureChange['figure']): NumberKind {
  if (figure === 'ambient' || figure === 'conductor-temperature') return 'temperature';
  if (figure === 'couplers') return 'whole';
  if (figure === 'cross-section' || figure === 'discharge-resistor' || figure === 'line-voltage') return 'positive';
  return 'amount';
}

/** A name as people write it; null where there is none, or one too long for a file. */
export function readName(text: string): string | null {
  const name = text.trim();
  return name === '' || name.length > longestLine ? null : name;
}
