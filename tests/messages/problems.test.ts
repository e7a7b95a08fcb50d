import { readdirSync, readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { type Problem, type ProblemCode, problemCodes, problemFacts, severities } from '../../engine/base/index.ts';
import { severityWords, wordProblem } from '../../engine/messages/index.ts';

const numbers = [
  'line',
  'column',
  'limit',
  'count',
  'version',
  'supported',
  'axes',
  'minimum',
  'maximum',
  'assumedDrives',
  'megabytes',
  'limitMegabytes',
];
/** A value by which a fact can be told in a sentence. */
const telling = (fact: string) => (numbers.includes(fact) ? 411 + numbers.indexOf(fact) : `<${fact}>`);

/** A problem of the code with facts of its own, each told apart from all others. */
function problem(code: ProblemCode, value: (fact: string) => string | number): Problem {
  const facts = Object.fromEntries(problemFacts[code].map((fact) => [fact, value(fact)]));
  return { code, severity: 'error', where: '', subjects: [], facts };
}

const sources = ['engine', 'electron', 'renderer'].flatMap((folder) =>
  readdirSync(new URL(`../../${folder}/`, import.meta.url), { recursive: true, encoding: 'utf8' })
    .filter((name) => /\.tsx?$/.test(name) && !name.includes('problemCodes') && !name.startsWith('messages'))
    .map((name) => readFileSync(new URL(`../../${folder}/${name}`, import.meta.url), 'utf8')),
);

describe('wordProblem', () => {
  it('should read what a file says as text, also where it is the name of something that every object has', () => {
    for (const code of problemCodes) {
      for (const name of ['constructor', '__proto__', 'toString']) {
        expect(Object.values(wordProblem(problem(code, () => name))).join(' ')).not.toMatch(/function|native code|\[object/);
      }
    }
  });

  it.each(problemCodes)('should word %s with title, explanation and what to do', (code) => {
    for (const value of [telling, () => 11, () => 1]) {
      const words = wordProblem(problem(code, value));
      expect(Object.keys(words)).toEqual(['title', 'explanation', 'whatToDo']);
      for (const text of Object.values(words)) {
        expect(text).not.toMatch(/undefined|NaN|\[object|\s\s/);
        expect(text.trim()).toBe(text);
        expect(text.length).toBeGreaterThan(5);
      }
      expect(words.title).not.toMatch(/\.$/);
      expect(words.whatToDo).toMatch(/\.$/);
      expect(words.explanation).toMatch(/\.$/);
    }
  });

  it.each(problemCodes)('should say every fact of %s that tells something', (code) => {
    const words = Object.values(wordProblem(problem(code, telling))).join(' ');
    // How many there are shows only where not all are listed. The form of a text chooses the words.
    const silent = ['count', 'form'];
    for (const fact of problemFacts[code]) if (!silent.includes(fact)) expect(words).toContain(String(telling(fact)));
  });

  it.each(problemCodes)('should not word %s for nothing: something in the program names it', (code) => {
    expect(sources.some((text) => text.includes(`'${code}'`))).toBe(true);
  });

  it('should word every severity', () => {
    expect(Object.keys(severityWords)).toEqual(severities);
  });

  it('should tell how many there are where not all are listed', () => {
    const loop = (count: number) =>
      wordProblem({ ...problem('chain-loop', (fact) => (fact === 'count' ? count : 'A, B, C, D, E, F, G, H, I, J')) }).title;
    expect(loop(10)).toBe('The chain runs in a loop through A, B, C, D, E, F, G, H, I, J');
    expect(loop(13)).toBe('The chain runs in a loop through A, B, C, D, E, F, G, H, I, J and 3 more');
  });
});
