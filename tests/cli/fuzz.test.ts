import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { linkwright } from './runLinkwright.ts';

const seed = 20_261_125;

const sample = 'sample-cabinets/three-units.cabinet.json';

/** Pieces of command lines, right and wrong, and things that nobody would type. */
const piece = fc.oneof(
  fc.constantFrom(
    ...['check', 'simulate', 'diagnose', 'schema', 'help', sample, 'nowhere.json', '--json', '--explain', '--light', '--', '-', '--help'],
    ...['--fault', 'cable:-WH1:cut', 'plug:-WH2/upper:loose,intermittent', 'board:1/2:up-rx', ':::', 'cable:-WH1:cut,,', 'port:1:dead'],
    ...['--display', '-TB1=dark', '1/drive/2=lit', '=', '==', '-TB1=', '--report', '1=1|2', '1=none', '1=|', '1=..'],
    ...['--onset', 'while-running', 'unknown', '--halted', 'yes', '--days', '3', '-1', '1e9', '--top', '2', '--chain', '1'],
    ...['--before-trip', 'unplug:-WH1/upper', 'bridge-unit:-TB1/-WH1', '--since-trip', '--circumstance', 'storm', 'storm:,,', 'cabinet'],
    ...['__proto__', 'constructor', '--constructor', '--__proto__=x', 'toString:-WH1:cut', 'cable:constructor:cut', '1/constructor/1=dark'],
  ),
  fc.string({ unit: 'grapheme' }),
);

describe('the command line', () => {
  it('should take anything: it answers, or says what is wrong, and never falls over', async () => {
    await fc.assert(
      fc.asyncProperty(
        fc.constantFrom('check', 'simulate', 'diagnose', 'schema', ''),
        fc.array(piece, { maxLength: 8 }),
        async (command, rest) => {
          const args = [command, ...rest].filter((arg, i) => i > 0 || arg !== '');
          const { exit, out, err } = await linkwright(args, { '-': '' });
          expect([0, 1, 2, 3]).toContain(exit);
          expect(exit === 0 || out !== '' || err !== '').toBe(true);
          if (exit > 1) expect(err).toMatch(/^linkwright: /);
          expect(out + err).not.toMatch(/\[object|undefined/);
          // biome-ignore lint/suspicious/noControlCharactersInRegex: what steers a terminal is looked for.
          expect(err).not.toMatch(/[\u0000-\u0009\u000b-\u001f\u007f-\u009f]/);
        },
      ),
      { seed, numRuns: 400 },
    );
  }, 60_000);
});
