import { readdirSync, readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { wordProblem } from '../../engine/messages/index.ts';
import { textForms } from '../../engine/schema/index.ts';
import { readDocument } from '../../renderer/files/readDocument.ts';
import { type Json, mutateBytes, mutateText, mutateValue } from '../files/mutations.ts';
import { Random } from '../generators/random.ts';

/*
 * A thousand damaged files and more through the window's one way in. The first specimen of each problem that was found is kept in
 * `damaged/`: to add to it, run this test with --update.
 */

const folder = new URL('./damaged/', import.meta.url);
const golden = ['cabinet', 'case'].map((kind) => readFileSync(new URL(`../files/golden/everything-1.${kind}.json`, import.meta.url)));
const longestMilliseconds = 1_000;

/** Opens it as a dropped file is opened. Answers the code of the first problem; null when it opens. */
function openDamaged(source: string | Uint8Array): string | null {
  const begun = performance.now();
  const read = readDocument('damaged.case.json', source);
  expect(performance.now() - begun).toBeLessThan(longestMilliseconds);
  if (read.ok) return null;
  for (const problem of read.problems) {
    const { title, explanation, whatToDo } = wordProblem(problem);
    expect(`${title} ${explanation} ${whatToDo}`).not.toMatch(/undefined|NaN|\[object/);
  }
  return read.problems[0]?.code ?? 'none';
}

const specimens = new Map<string, string>();
const remember = (code: string | null, text: string) => {
  const known = code === null ? undefined : specimens.get(code);
  if (code !== null && (known === undefined || text.length < known.length)) specimens.set(code, text);
};

/** Files from a grammar: JSON whose names and values are mostly those of our files, in any place. */
const words = [
  'format',
  'formatVersion',
  'content',
  'id',
  'name',
  'units',
  'links',
  'kind',
  'evidence',
  'snapshots',
  'cabinet',
  'extra',
  '__proto__',
];
const { file } = fc.letrec<{ value: unknown; file: unknown }>((tie) => ({
  value: fc.oneof(
    { maxDepth: 6, withCrossShrink: true },
    fc.constantFrom(null, true, 0, -1, 1.5, 1e308, '', 'servo-drive', 'linkwright-case', Object.keys(textForms)[0] ?? ''),
    fc.array(tie('value'), { maxLength: 4 }),
    fc.dictionary(fc.constantFrom(...words), tie('value'), { maxKeys: 5 }),
  ),
  file: fc.record(
    {
      format: fc.constantFrom('linkwright-case', 'linkwright-cabinet', 'linkwright-truth', 'other', 7),
      formatVersion: fc.constantFrom(1, 2, 0, '1', 1.5),
      appVersion: fc.constantFrom('0.1.0', 1),
      content: tie('value'),
    },
    { requiredKeys: [] },
  ),
}));

describe('the window and damaged files', () => {
  it('should open or refuse a thousand mutations of whole files, each in words and in time', () => {
    const random = new Random(20261125);
    for (let i = 0; i < 600; i += 1) {
      const text = mutateText(random, random.pick(golden).toString());
      remember(openDamaged(text), text);
    }
    for (let i = 0; i < 300; i += 1) openDamaged(mutateBytes(random, new Uint8Array(random.pick(golden))));
    for (let i = 0; i < 600; i += 1) {
      let value: Json = JSON.parse(random.pick(golden).toString());
      for (let times = random.whole(1, 3); times > 0; times -= 1) value = mutateValue(random, value);
      const text = JSON.stringify(value);
      remember(openDamaged(text), text);
    }
  });

  it('should do so with files made from a grammar', () => {
    fc.assert(
      fc.property(file, (made) => {
        const text = JSON.stringify(made) ?? '';
        remember(openDamaged(text), text);
      }),
      { seed: 20261125, numRuns: 1_000 },
    );
  });

  it('should have kept the first specimen of each problem', async () => {
    expect(specimens.size).toBeGreaterThan(15);
    for (const [code, text] of specimens) await expect(text).toMatchFileSnapshot(fileURLToPath(new URL(`${code}.txt`, folder)));
  });

  it('should refuse every kept specimen for its reason', () => {
    const kept = readdirSync(folder);
    expect(kept.length).toBeGreaterThan(15);
    for (const name of kept) expect(openDamaged(readFileSync(new URL(name, folder)))).toBe(name.replace(/\.txt$/, ''));
  });
});
