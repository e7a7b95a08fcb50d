import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { meaningWords } from '../../engine/messages/index.ts';
import { displayMeanings } from '../../engine/schema/index.ts';
import { codeTrouble, mergeRows, readPastedRows } from '../../renderer/legend/codeRows.ts';

describe('codes at the field', () => {
  const others = [{ code: 'n7', meanings: ['quiet' as const] }];
  it('should be refused when empty, doubled or too long', () => {
    expect(codeTrouble('  ', others)).toBe('empty');
    expect(codeTrouble(' n7 ', others)).toBe('doubled');
    expect(codeTrouble('N7', others)).toBeNull();
    expect(codeTrouble('x'.repeat(41), others)).toBe('too-long');
  });
});

describe('pasted rows', () => {
  it('should be read with tabs or semicolons, words or names, and a note', () => {
    const { rows, troubles } = readPastedRows(
      '21\tupstream loss\tnothing; from above\r\n30; Both-Losses + downstream loss ;\n\n"3;1";quiet',
    );
    expect(rows).toEqual([
      { code: '21', meanings: ['upstream-loss'], note: 'nothing; from above' },
      { code: '30', meanings: ['downstream-loss', 'both-losses'] },
    ]);
    // A separator inside quotation marks is not understood: the row is refused, never misread.
    expect(troubles).toEqual([{ row: 4, trouble: 'unknown-meaning', word: '1"' }]);
  });

  it('should say of each row what is wrong with it, and take the others', () => {
    const { rows, troubles } = readPastedRows(';quiet\n5\n6;never heard of\n7;dark\n7;quiet');
    expect(rows).toEqual([{ code: '7', meanings: ['dark'] }]);
    expect(troubles).toEqual([
      { row: 1, trouble: 'empty' },
      { row: 2, trouble: 'no-meaning' },
      { row: 3, trouble: 'unknown-meaning', word: 'never heard of' },
      { row: 5, trouble: 'doubled' },
    ]);
  });

  it('should come back as they were written, whatever they hold', () => {
    const cell = fc
      .string({ minLength: 1, maxLength: 12 })
      .map((text) => text.replace(/[\t\r\n;"]/g, '').trim())
      .filter(Boolean);
    const row = fc.record({ code: cell, meanings: fc.subarray([...displayMeanings], { minLength: 1 }), note: cell });
    fc.assert(
      fc.property(fc.uniqueArray(row, { selector: ({ code }) => code, maxLength: 8 }), (rows) => {
        const text = rows.map(({ code, meanings, note }) =>
          [code, meanings.map((one) => meaningWords[one].label).join(', '), note].join('\t'),
        );
        expect(readPastedRows(text.join('\n'))).toEqual({ rows, troubles: [] });
        expect(mergeRows(rows, rows)).toEqual(rows);
      }),
      { seed: 20261125, numRuns: 100 },
    );
  });

  it('should never crash', () => {
    fc.assert(
      fc.property(fc.string(), (text) => {
        const { rows } = readPastedRows(text);
        expect(new Set(rows.map(({ code }) => code)).size).toBe(rows.length);
      }),
      { seed: 20261125 },
    );
  });
});
