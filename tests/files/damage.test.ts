import { readFileSync } from 'node:fs';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { scanJson } from '../../engine/cabinet/file/scanJson.ts';
import {
  checkCabinet,
  parseCabinetFile,
  parseCaseFile,
  parseExerciseFile,
  parseResultFile,
  parseTruthFile,
  serializeCabinet,
} from '../../engine/cabinet/index.ts';
import { wordProblem } from '../../engine/messages/index.ts';
import { makeCabinet } from '../generators/cabinets.ts';
import { Random } from '../generators/random.ts';
import { type Json, mutateBytes, mutateText, mutateValue } from './mutations.ts';

const golden = (ending: string) => readFileSync(new URL(`./golden/everything-1.${ending}.json`, import.meta.url));
const texts: readonly string[] = [
  golden('cabinet').toString(),
  serializeCabinet(makeCabinet(4, { units: 4 })),
  golden('case').toString(),
  golden('truth').toString(),
  smallExercise(),
  golden('result').toString(),
];

/** The golden exercise with a small cabinet: damage shall hit the exercise. */
function smallExercise(): string {
  const file = JSON.parse(golden('exercise').toString());
  return JSON.stringify({ ...file, content: { ...file.content, cabinet: makeCabinet(4, { units: 1 }) } });
}

/** Opens the source in every way; each answer must be a value or worded problems. Answers how long the slowest took, in ms. */
function openAnyhow(source: string | Uint8Array): number {
  let slowest = 0;
  for (const parse of [parseCabinetFile, parseCaseFile, parseTruthFile, parseExerciseFile, parseResultFile]) {
    const start = performance.now();
    const result = parse(source);
    if (parse === parseCabinetFile && result.ok) {
      const cabinet = parseCabinetFile(source);
      for (const problem of cabinet.ok ? checkCabinet(cabinet.value).problems : [])
        expect(wordProblem(problem).title).not.toMatch(/undefined|NaN/);
    }
    slowest = Math.max(slowest, performance.now() - start);
    for (const problem of result.ok ? [] : result.problems) {
      expect(problem.severity).toBe('refused');
      const { title, explanation, whatToDo } = wordProblem(problem);
      expect(`${title} ${explanation} ${whatToDo}`).not.toMatch(/undefined|NaN|\[object/);
    }
  }
  return slowest;
}

describe('damaged files', () => {
  it('should never throw and never take long, however the text is damaged', () => {
    const random = new Random(1);
    let slowest = 0;
    for (let i = 0; i < 1_000; i++) slowest = Math.max(slowest, openAnyhow(mutateText(random, random.pick(texts))));
    expect(slowest).toBeLessThan(1_000);
  });

  it('should never throw, however the bytes are damaged', () => {
    const random = new Random(2);
    for (let i = 0; i < 500; i++) openAnyhow(mutateBytes(random, golden(random.pick(['cabinet', 'case', 'truth', 'exercise', 'result']))));
  });

  it('should never throw, however wrong the shape is', () => {
    const random = new Random(3);
    const values: Json[] = texts.map((text) => JSON.parse(text));
    for (let i = 0; i < 800; i++) {
      let value = random.pick(values);
      for (let times = random.whole(1, 4); times > 0; times--) value = mutateValue(random, value);
      openAnyhow(JSON.stringify(value));
    }
  });

  it('should never throw on texts made of the signs of JSON', () => {
    const sign = fc.constantFrom(
      '{',
      '}',
      '[',
      ']',
      ',',
      ':',
      '"',
      '"a"',
      '"content"',
      '1',
      '-',
      'e5',
      'true',
      'null',
      ' ',
      '\n',
      '\\',
      '\\u00',
      '\uFEFF',
    );
    fc.assert(
      fc.property(fc.array(sign, { maxLength: 30 }), (signs) => {
        openAnyhow(signs.join(''));
      }),
      { numRuns: 1_000, seed: 20261125 },
    );
  });

  it('should name damage where somebody who reads the file finds it', () => {
    // One sign taken out of a good file: the place named is not before the damage.
    const text = texts[1] ?? '';
    const random = new Random(5);
    for (let i = 0; i < 300; i++) {
      const at = random.whole(0, text.length - 1);
      if (!'{}[]:,"'.includes(text[at] ?? ' ')) continue;
      const result = parseCabinetFile(text.slice(0, at) + text.slice(at + 1));
      const [problem] = result.ok ? [] : result.problems;
      if (problem?.code !== 'json-damaged') continue;
      const line = text.slice(0, at).split('\n').length;
      expect(Number(problem.facts['line'])).toBeGreaterThanOrEqual(line);
    }
  });
});

describe('scanJson', () => {
  const refusals = new Set(['json-damaged', 'file-empty']);
  const agrees = (text: string) => {
    let parsed = true;
    try {
      JSON.parse(text);
    } catch {
      parsed = false;
    }
    const scanned = scanJson(text);
    // Doubled and forbidden keys, depth and number are refused beyond what JSON.parse refuses.
    const damaged = !scanned.ok && refusals.has(scanned.problems[0]?.code ?? '');
    if (scanned.ok || damaged) expect({ text, taken: !damaged }).toEqual({ text, taken: parsed });
  };

  it('should take and refuse the same texts as JSON.parse', () => {
    const random = new Random(7);
    for (let i = 0; i < 5_000; i++) {
      const text = JSON.stringify(
        { a: [1, -2.5e-3, 'x"\\/\n\u0001é', null, true, false, {}, [], [[{ b: '' }]]], n: random.tenth(-5, 5) },
        null,
        random.pick([0, 1]),
      );
      agrees(mutateText(random, text));
    }
    const sign = fc.constantFrom(...'{}[],:"\\/bu0123456789+-.eE \n\t\r\f\v\u00a0', 'true', 'false', 'null', '"a"', '\u2028', '\ud800');
    fc.assert(
      fc.property(fc.array(sign, { maxLength: 12 }), (signs) => agrees(signs.join(''))),
      { numRuns: 5_000, seed: 20261125 },
    );
    fc.assert(
      fc.property(fc.json({ maxDepth: 5 }), (text) => {
        agrees(text);
      }),
      { numRuns: 500, seed: 20261125 },
    );
  });

  it('should tell where members stand', () => {
    const text = '{\n "a": [10, {"b/c": 1, "~": 2}],\n "d": 3 }';
    const found = scanJson(text, new Set(['/a', '/a/0', '/a/1/b~1c', '/a/1/~0', '/d', '/e']));
    expect(found.ok && [...found.value].map(([pointer, at]) => [pointer, text.slice(at, at + 3)])).toEqual([
      ['/a', '"a"'],
      ['/a/0', '10,'],
      ['/a/1/b~1c', '"b/'],
      ['/a/1/~0', '"~"'],
      ['/d', '"d"'],
    ]);
  });
});
