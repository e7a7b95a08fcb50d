import { assertNever, fail, makeProblem, ok, type Problem, type Result } from '../base/index.ts';
import type { UnitKind } from '../schema/index.ts';
import { isTail, nearestKindWord, readKinds } from './kindWords.ts';
import { readTokens, type Token } from './readTokens.ts';
import type { QuickPlan, QuickRow, QuickUnit } from './types.ts';

/** More of one kind at once, and more units at all, is a slip of the finger; larger cabinets are drawn. */
export const quickLimits = { count: 99, units: 500, chainNumber: 999 } as const;

/**
 * Reads a line such as `3 servo, spindle, encoder; off chain 2 servo`, or in letters `3spe;off 2s`.
 *
 *     line  = row { ; row }                 ; or / or a new line
 *     row   = [ chain [NUMBER] [:] ] [ off [chain] [:] ] { item }
 *     item  = [COUNT [x]] KIND [off [chain]]
 *     KIND  = servo | spindle | encoder | supply (also "servo drive", "encoders", beginnings of three letters) or letters s p e u
 *
 * A count goes with the kind, or the letter, that follows it. `off` at the beginning of a row is for the whole row, after a kind for
 * that kind alone. Each row with a unit on a chain is a chain of its own; rows that name no number get the next free one.
 * Fails with everything that is wrong, in the order of the line. Never throws.
 */
export function parseQuickLine(line: string): Result<QuickPlan> {
  const reader = new Reader();
  for (const token of readTokens(line)) reader.take(token);
  return reader.finish();
}

interface DraftRow {
  number: number | null;
  numberColumn: number;
  off: boolean;
  units: QuickUnit[];
}

const isOff = (text: string) => text === 'off' || text === 'o';

/** Takes the pieces one after another; what was said last decides what the next one means. */
class Reader {
  readonly #rows: DraftRow[] = [];
  readonly #problems: Problem[] = [];
  #row = emptyRow();
  #count: Extract<Token, { kind: 'number' }> | null = null;
  /** Units of the last item, for "off" behind them, and the kind whose name may go on. */
  #last: { readonly kind: UnitKind; readonly from: number; readonly word: string } | null = null;
  #total = 0;
  /** The piece before: "chain" waits for its number, "off" for its "chain". */
  #after: 'chain' | 'off' | 'nothing' = 'nothing';

  take(token: Token): void {
    const after = this.#after;
    this.#after = 'nothing';
    switch (token.kind) {
      case 'number':
        if (after === 'chain') this.#numberChain(token);
        else this.#begin(token);
        break;
      case 'times':
        if (!this.#count) this.#unknown(token);
        break;
      case 'colon':
        if (this.#row.units.length > 0 || this.#count) this.#unknown(token);
        break;
      case 'next-item':
        this.#countStands();
        this.#last = null;
        break;
      case 'next-row':
        this.#endRow();
        break;
      case 'unknown':
        this.#unknown(token);
        break;
      case 'word':
        this.#word(token, after);
        break;
      default:
        assertNever(token);
    }
  }

  finish(): Result<QuickPlan> {
    this.#endRow();
    if (this.#problems.length === 0 && this.#total > quickLimits.units) {
      this.#problems.push(makeProblem('quick-too-many-units', 'refused', { facts: { maximum: quickLimits.units } }));
    }
    const rows = this.#numbered();
    if (this.#problems.length === 0 && !rows.some(({ chain }) => chain !== null)) {
      this.#problems.push(makeProblem('quick-no-chain', 'refused'));
    }
    return this.#problems.length > 0 ? fail(...this.#problems) : ok({ rows });
  }

  #begin(token: Extract<Token, { kind: 'number' }>): void {
    this.#countStands();
    this.#count = token;
    this.#last = null;
  }

  #word(token: Token, after: 'chain' | 'off' | 'nothing'): void {
    const { text } = token;
    if (text === 'chain' && !this.#count) {
      // "off chain" is one; otherwise a chain begins.
      if (after === 'off') return;
      if (this.#row.units.length > 0 || this.#row.off || this.#row.number !== null) this.#endRow();
      this.#after = 'chain';
      return;
    }
    if (isOff(text) && !this.#count) {
      this.#after = 'off';
      this.#off(token);
      return;
    }
    // "servo drive" is one, "drive drive" are two.
    if (this.#last && !this.#count && this.#last.word !== text && isTail(this.#last.kind, text)) {
      this.#last = { ...this.#last, word: text };
      return;
    }
    const kinds = readKinds(text);
    if (kinds) this.#add(kinds, token);
    else this.#unknown(token);
  }

  #add(kinds: readonly UnitKind[], token: Token): void {
    const count = this.#takeCount();
    const from = this.#row.units.length;
    for (const [index, kind] of kinds.entries()) {
      const onChain = kind !== 'supply' && !this.#row.off;
      if (kind === 'encoder-interface' && this.#row.off) this.#encoderOff(token);
      const times = index === 0 ? count : 1;
      this.#total += times;
      // Counted but not kept: a line of ten thousand nines shall not fill the memory.
      if (this.#total <= quickLimits.units) for (let i = 0; i < times; i++) this.#row.units.push({ kind, onChain });
    }
    const last = kinds[kinds.length - 1];
    // "off" behind letters means the last of them; behind a word all that its count made.
    this.#last = last ? { kind: last, from: kinds.length === 1 ? from : this.#row.units.length - 1, word: token.text } : null;
  }

  #takeCount(): number {
    const token = this.#count;
    this.#count = null;
    if (!token) return 1;
    const count = Number(token.text);
    if (count >= 1 && count <= quickLimits.count) return count;
    const facts = { number: short(token.text), limit: quickLimits.count, column: token.column };
    this.#problems.push(makeProblem('quick-count-wrong', 'refused', { facts }));
    return 1;
  }

  #off(token: Token): void {
    if (this.#row.units.length === 0) {
      this.#row.off = true;
      return;
    }
    if (!this.#last) {
      this.#unknown(token);
      return;
    }
    for (let i = this.#last.from; i < this.#row.units.length; i++) {
      const unit = this.#row.units[i];
      if (unit) this.#row.units[i] = { kind: unit.kind, onChain: false };
    }
    if (this.#last.kind === 'encoder-interface') this.#encoderOff(token);
  }

  #numberChain(token: Extract<Token, { kind: 'number' }>): void {
    const number = Number(token.text);
    if (number < 1 || number > quickLimits.chainNumber) {
      const facts = { number: short(token.text), maximum: quickLimits.chainNumber, column: token.column };
      this.#problems.push(makeProblem('quick-chain-number-wrong', 'refused', { facts }));
      return;
    }
    this.#row.number = number;
    this.#row.numberColumn = token.column;
  }

  /** A count that nothing follows. */
  #countStands(): void {
    const token = this.#count;
    this.#count = null;
    if (!token) return;
    this.#problems.push(makeProblem('quick-count-alone', 'refused', { facts: { number: short(token.text), column: token.column } }));
  }

  #endRow(): void {
    this.#countStands();
    if (this.#row.units.length > 0) this.#rows.push(this.#row);
    this.#row = emptyRow();
    this.#last = null;
    this.#after = 'nothing';
  }

  #unknown({ text, column }: Token): void {
    this.#count = null;
    this.#last = null;
    const facts = { word: short(text), column, nearest: nearestKindWord(text) };
    this.#problems.push(makeProblem('quick-word-unknown', 'refused', { facts }));
  }

  #encoderOff({ column }: Token): void {
    this.#problems.push(makeProblem('quick-encoder-off-chain', 'refused', { facts: { column } }));
  }

  /** Gives each chain its number: the one that was named, else the next free one. */
  #numbered(): readonly QuickRow[] {
    const hasChain = (row: DraftRow) => row.units.some(({ onChain }) => onChain);
    const taken = new Set<number>();
    for (const { number, numberColumn } of this.#rows) {
      if (number === null) continue;
      if (taken.has(number)) {
        this.#problems.push(makeProblem('quick-chain-doubled', 'refused', { facts: { number, column: numberColumn } }));
      }
      taken.add(number);
    }
    let next = 1;
    const free = () => {
      while (taken.has(next)) next += 1;
      taken.add(next);
      return next;
    };
    return this.#rows.map((row) => ({ chain: hasChain(row) ? (row.number ?? free()) : null, units: row.units }));
  }
}

function emptyRow(): DraftRow {
  return { number: null, numberColumn: 0, off: false, units: [] };
}

/** A long word is cut: it goes into a sentence. */
function short(text: string): string {
  const letters = [...text];
  return letters.length > 30 ? `${letters.slice(0, 30).join('')}…` : text;
}
