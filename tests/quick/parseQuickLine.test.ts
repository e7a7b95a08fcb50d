import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { wordProblem } from '../../engine/messages/index.ts';
import { kindLetters, parseQuickLine, type QuickPlan, quickLimits } from '../../engine/quick/index.ts';
import { type UnitKind, unitKinds } from '../../engine/schema/index.ts';

/** A plan in letters: "spe;^s" for a chain of three and a drive off the chain. */
function brief(plan: QuickPlan): string {
  return plan.rows
    .map(
      ({ chain, units }) =>
        `${chain ?? ''}:${units.map(({ kind, onChain }) => (onChain || kind === 'supply' ? '' : '^') + kindLetters[kind]).join('')}`,
    )
    .join(' ');
}

const read = (line: string) => {
  const result = parseQuickLine(line);
  return result.ok
    ? brief(result.value)
    : result.problems.map(({ code, facts }) => `${code} ${facts['word'] ?? facts['number'] ?? ''}@${facts['column'] ?? ''}`.trim());
};

describe('parseQuickLine', () => {
  it.each([
    ['3 servo, spindle, encoder, servo', '1:ssspes'],
    ['3s,p,e,s', '1:ssspes'],
    ['ssspes', '1:ssspes'],
    ['3spes', '1:ssspes'],
    ['3servo spindle encoder servo', '1:ssspes'],
    ['3x servo drive + 2 × encoder interfaces and 1 spindle drive', '1:ssseep'],
    ['3xs 2xe', '1:sssee'],
    ['THREE', ['quick-word-unknown three@1']],
    ['Servo Drive, DRIVE, drives, axis', '1:ssss'],
    ['drive drive', '1:ss'],
    ['servo drive drive', '1:ss'],
    ['power supply, 2 supplies, servo', '1:uuus'],
    ['enc, spi, serv, supp', '1:epsu'],
    ['sup', '1:sup'],
    ['ss;sp', '1:ss 2:sp'],
    ['ss/sp', '1:ss 2:sp'],
    ['ss\nsp', '1:ss 2:sp'],
    ['ss;;  ; sp;', '1:ss 2:sp'],
    ['chain 2: ss; sp', '2:ss 1:sp'],
    ['chain 1 2 servo chain 2 3 spindle', '1:ss 2:ppp'],
    ['chain 7 s; chain 3: e', '7:s 3:e'],
    ['ss; off 2s', '1:ss :^s^s'],
    ['ss; off chain: 2 servo, spindle', '1:ss :^s^s^p'],
    ['ss; off-chain 2 servo', '1:ss :^s^s'],
    ['servo, 2 spindle off chain, encoder', '1:s^p^pe'],
    ['sp off, e', '1:s^pe'],
    ['off s; s', ':^s 1:s'],
    ['u 2s u s', '1:ussus'],
  ])('should read %j', (line, expected) => {
    expect(read(line)).toEqual(expected);
  });

  it.each([
    ['', ['quick-no-chain @']],
    [' ; ,', ['quick-no-chain @']],
    ['2 supply', ['quick-no-chain @']],
    ['off 2 servo', ['quick-no-chain @']],
    ['2 servo, 3', ['quick-count-alone 3@10']],
    ['2 3 servo', ['quick-count-alone 2@1']],
    ['0 servo', ['quick-count-wrong 0@1']],
    ['100 servo', ['quick-count-wrong 100@1']],
    ['servo, serbo, spindel', ['quick-word-unknown serbo@8', 'quick-word-unknown spindel@15']],
    ['servo = spindle', ['quick-word-unknown =@7']],
    ['off encoder; s', ['quick-encoder-off-chain @5']],
    ['s, e off', ['quick-encoder-off-chain @6']],
    ['chain 1 s; chain 1 p', ['quick-chain-doubled 1@18']],
    ['chain 0 s', ['quick-chain-number-wrong 0@7']],
    ['chain 4000 s', ['quick-chain-number-wrong 4000@7']],
    ['99s 99s 99s 99s 99s 99s', ['quick-too-many-units @']],
    ['s ٣ s', ['quick-word-unknown ٣@3']],
  ])('should say what is wrong with %j', (line, expected) => {
    expect(read(line)).toEqual(expected);
  });

  it('should ask whether the word that is most like it is meant', () => {
    const nearest = (word: string) => {
      const result = parseQuickLine(word);
      return result.ok ? null : result.problems[0]?.facts['nearest'];
    };
    expect(['serbo', 'spindel', 'encodr', 'suply', 'chian', 'lamp'].map(nearest)).toEqual([
      'servo',
      'spindle',
      'encoder',
      'supply',
      'chain',
      '',
    ]);
    const result = parseQuickLine('2 servo, serbo');
    expect(result.ok ? null : result.problems.map(wordProblem)).toEqual([
      {
        title: '“serbo” is not a kind of unit',
        explanation: 'It stands at sign 10 of the line. Perhaps “servo” is meant.',
        whatToDo: 'Write servo, spindle, encoder or supply, or their letters s, p, e, u. A semicolon begins the next chain.',
      },
    ]);
  });

  it('should read the same from words, from letters and from counts', () => {
    const words: { readonly [K in UnitKind]: string } = {
      'servo-drive': 'servo drive',
      'spindle-drive': 'spindle',
      'encoder-interface': 'encoder interface',
      supply: 'power supply',
    };
    const chain = fc.array(fc.record({ kind: fc.constantFrom(...unitKinds), count: fc.integer({ min: 1, max: 9 }) }), {
      minLength: 1,
      maxLength: 8,
    });
    fc.assert(
      fc.property(fc.array(chain, { minLength: 1, maxLength: 4 }), (chains) => {
        const line = (item: (kind: UnitKind, count: number) => string, between: string, next: string) =>
          chains.map((items) => items.map(({ kind, count }) => item(kind, count)).join(between)).join(next);
        const inWords = parseQuickLine(line((kind, count) => `${count} ${words[kind]}`, ', ', '; '));
        const inLetters = parseQuickLine(line((kind, count) => kindLetters[kind].repeat(count), '', ';'));
        const counted = parseQuickLine(line((kind, count) => `${count}${kindLetters[kind]}`, '', '/'));
        expect(inLetters).toEqual(inWords);
        expect(counted).toEqual(inWords);
        if (inWords.ok) {
          expect(inWords.value.rows.map(({ units }) => units.map(({ kind }) => kind))).toEqual(
            chains.map((items) => items.flatMap(({ kind, count }) => Array.from({ length: count }, () => kind))),
          );
        }
      }),
      { seed: 4, numRuns: 200 },
    );
  });

  it('should answer whatever is typed, quickly, with a plan or with problems that have words', () => {
    const piece = fc.oneof(
      fc.constantFrom(
        'servo',
        'spindle drive',
        'encoder',
        'off',
        'chain',
        '3',
        'x',
        ';',
        ',',
        ':',
        'sspe',
        '__proto__',
        'constructor',
        '9'.repeat(400),
      ),
      fc.string({ unit: 'grapheme', maxLength: 12 }),
    );
    fc.assert(
      fc.property(fc.array(piece, { maxLength: 40 }), (pieces) => {
        const line = pieces.join(' ');
        const result = parseQuickLine(line);
        if (result.ok) {
          const units = result.value.rows.flatMap((row) => row.units);
          expect(units.length).toBeLessThanOrEqual(quickLimits.units);
          expect(result.value.rows.some(({ chain }) => chain !== null)).toBe(true);
        } else {
          expect(result.problems.length).toBeGreaterThan(0);
          for (const problem of result.problems) {
            expect(wordProblem(problem).title.length).toBeLessThan(120);
            const { column } = problem.facts;
            if (column !== undefined) expect(Number(column)).toBeLessThanOrEqual(line.length);
          }
        }
      }),
      { seed: 4, numRuns: 500 },
    );
  });
});
