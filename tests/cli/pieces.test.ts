import fc from 'fast-check';
import stringWidth from 'string-width';
import { describe, expect, it } from 'vitest';
import { splitLines } from '../../engine/cli/lines.ts';
import { findNearest } from '../../engine/cli/nearest.ts';
import { type OptionSpecs, splitArguments } from '../../engine/cli/options.ts';
import { formatTable } from '../../engine/cli/table.ts';
import { cleanText, paragraph, wrapText } from '../../engine/cli/text.ts';

const seed = 20_261_125;

const specs: OptionSpecs = { fault: { value: true, many: true }, onset: { value: true }, json: {} };
const split = (...args: string[]) => {
  const { given, problems } = splitArguments('simulate', args, specs, { fault: 'FAULT', onset: 'WHEN' });
  return { options: Object.fromEntries(given.options), rest: given.arguments, codes: problems.map(({ code }) => code), problems };
};

describe('splitArguments', () => {
  it('should take values that begin with a minus, plus or equals sign', () => {
    for (const name of ['-TB2=dark', '+C1-TB2=dark', '=A1+C1-TB2=dark', '--x']) {
      expect(split('--fault', name)).toMatchObject({ options: { fault: [name] }, codes: [] });
      expect(split(`--fault=${name}`)).toMatchObject({ options: { fault: [name] }, codes: [] });
    }
  });

  it('should gather what may be given several times, and refuse the rest once', () => {
    expect(split('--fault', 'a', 'FILE', '--fault=b')).toMatchObject({ options: { fault: ['a', 'b'] }, rest: ['FILE'], codes: [] });
    expect(split('--onset', 'a', '--onset', 'b', '--onset', 'c').codes).toEqual(['option-repeated']);
  });

  it('should tell a missing value from a value', () => {
    expect(split('--fault').codes).toEqual(['option-value-missing']);
    expect(split('--fault', '--json')).toMatchObject({ codes: ['option-value-missing'] });
    expect(split('--onset', '--fault=x').codes).toContain('option-value-missing');
    expect(split('--json=yes').codes).toEqual(['option-value-unwanted']);
  });

  it('should name an unknown option once, as it was written, with the nearest known one', () => {
    expect(split('--falt', 'x').problems[0]).toEqual({
      code: 'option-unknown',
      facts: { command: 'simulate', option: '--falt', near: '--fault' },
    });
    expect(split('-TB2').problems).toEqual([{ code: 'option-unknown', facts: { command: 'simulate', option: '-TB2', near: '' } }]);
    expect(split('--constructor').codes).toEqual(['option-unknown']);
  });

  it('should leave everything after -- alone', () => {
    expect(split('--', '-odd-name.json', '--json')).toMatchObject({ options: {}, rest: ['-odd-name.json', '--json'], codes: [] });
  });

  it('should never throw, and lose no argument', () => {
    fc.assert(
      fc.property(fc.array(fc.oneof(fc.string(), fc.constantFrom('--fault', '--json', '--onset', '-T', '--', '--=', '-'))), (args) => {
        const { options, rest, problems } = split(...args);
        const taken = Object.values(options).flat().length + rest.length + problems.length;
        expect(taken === 0).toBe(args.filter((arg) => arg !== '--').length === 0 && args.length < 2);
      }),
      { seed },
    );
  });
});

describe('findNearest', () => {
  it('should find what a person probably meant, and nothing when nothing is near', () => {
    expect(findNearest('-WH33', ['-WH1', '-WH3', '-WD3'])).toBe('-WH3');
    expect(findNearest('upstrem-loss', ['downstream-loss', 'upstream-loss'])).toBe('upstream-loss');
    expect(findNearest('CABEL', ['cable', 'plug'])).toBe('cable');
    expect(findNearest('cut', ['kinked', 'loose'])).toBe('');
    expect(findNearest('', ['x'])).toBe('');
    expect(findNearest('x'.repeat(100_000), ['x'])).toBe('');
  });
});

describe('cleanText', () => {
  it('should let nothing through that steers a terminal or turns the reading direction', () => {
    expect(cleanText('\u001b[31mred\u0007\u009b0m')).toBe('\ufffd[31mred\ufffd\ufffd0m');
    expect(cleanText('a\u202eb\u2066c\ufeff')).toBe('a\ufffdb\ufffdc\ufffd');
    expect(cleanText('one\r\ntwo\tthree')).toBe('one two three');
    fc.assert(
      fc.property(fc.string({ unit: 'binary' }), (text) => {
        expect(cleanText(text)).not.toMatch(/[\p{Cc}\u2028\u2029\u202a-\u202e]/u);
      }),
      { seed },
    );
  });
});

const anyText = fc.oneof(
  fc.string({ unit: 'grapheme' }),
  fc.constantFrom('主轴驱动器', '🛠️ tool', 'e\u0301cran', 'W'.repeat(300), 'a b  c', ''),
);

describe('formatTable', () => {
  it('should line columns up, also with wide characters', () => {
    const table = formatTable(
      [{ head: 'Unit' }, { head: 'Likely', align: 'right' }],
      [
        ['主轴', '82 %'],
        ['-TB2', '<0.1 %'],
      ],
      60,
    );
    expect(table).toBe('Unit  Likely\n────  ──────\n主轴    82 %\n-TB2  <0.1 %\n');
  });

  it('should leave out columns in which nothing stands', () => {
    expect(formatTable([{ head: 'A' }, { head: 'B' }], [['x', '']], 40)).toBe('A\n─\nx\n');
    expect(formatTable([{ head: 'A' }], [], 40)).toBe('');
  });

  it('should never be wider than its room, and lose no letter', () => {
    fc.assert(
      fc.property(
        fc.array(fc.tuple(anyText, anyText, anyText, anyText), { minLength: 1, maxLength: 5 }),
        fc.integer({ min: 40, max: 140 }),
        (rows, width) => {
          const columns = [
            { head: 'A' },
            { head: 'B', grow: true as const },
            { head: 'C', align: 'right' as const },
            { head: 'D', grow: true as const },
          ];
          const table = formatTable(columns, rows, width);
          for (const line of table.split('\n')) expect(stringWidth(line)).toBeLessThanOrEqual(width);
          const letters = (text: string) => [...text.normalize().replace(/[\s─]/gu, '')].sort().join('');
          const heads = columns.filter((_, i) => rows.some((row) => cleanText(row[i] ?? ''))).map(({ head }) => head);
          expect(letters(table)).toBe(letters(heads.join('') + rows.flat().map(cleanText).join('')));
        },
      ),
      { seed, numRuns: 200 },
    );
  });
});

describe('paragraph', () => {
  it('should keep a figure with its percent sign', () => {
    expect(wrapText('aaaa 82 % bbbb', 7)).toEqual(['aaaa', '82 %', 'bbbb']);
    expect(paragraph('one two three', 9, '  ', '- ')).toBe('- one two\n  three\n');
  });
});

describe('splitLines', () => {
  const collect = async (chunks: readonly Uint8Array[], limit?: number) => {
    const lines = [];
    const stream = (async function* () {
      yield* chunks;
    })();
    for await (const line of splitLines(stream, limit)) lines.push(line);
    return lines;
  };
  const bytes = (text: string) => new TextEncoder().encode(text);

  it('should give the same lines however the bytes come in', async () => {
    await fc.assert(
      fc.asyncProperty(
        fc.array(
          fc.string({ unit: 'grapheme' }).map((text) => text.replace(/[\r\n]/g, '')),
          { minLength: 1 },
        ),
        fc.integer({ min: 1, max: 7 }),
        async (lines, size) => {
          const whole = bytes(`${lines.join('\n')}\n`);
          const chunks = Array.from({ length: Math.ceil(whole.length / size) }, (_, i) => whole.slice(i * size, (i + 1) * size));
          const read = await collect(chunks);
          expect(read.map((line) => ('text' in line ? line.text : '?'))).toEqual(lines.map((line) => line.replace(/^\ufeff/, '')));
          expect(read.map(({ line }) => line)).toEqual(lines.map((_, i) => i + 1));
        },
      ),
      { seed, numRuns: 100 },
    );
  });

  it('should take LF and CRLF, and a last line without either', async () => {
    expect(await collect([bytes('a\r\nb\n\nc')])).toEqual([
      { line: 1, text: 'a' },
      { line: 2, text: 'b' },
      { line: 3, text: '' },
      { line: 4, text: 'c' },
    ]);
    expect(await collect([])).toEqual([]);
  });

  it('should skip a line that is too long and go on behind it', async () => {
    expect(await collect([bytes('aaaa'), bytes('aaaa'), bytes('a\nok\n')], 5)).toEqual([
      { line: 1, tooLong: true },
      { line: 2, text: 'ok' },
    ]);
  });
});
