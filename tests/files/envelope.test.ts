import { describe, expect, it } from 'vitest';
import type { Problem, Result } from '../../engine/base/index.ts';
import {
  maximumDepth,
  maximumFileBytes,
  maximumValues,
  parseCabinetFile,
  parseCaseFile,
  parseTruthFile,
  serializeCabinet,
  serializeCase,
} from '../../engine/cabinet/index.ts';
import { wordProblem } from '../../engine/messages/index.ts';
import { makeCabinet } from '../generators/cabinets.ts';
import { makeCase } from '../generators/cases.ts';

const good = { format: 'linkwright-cabinet', formatVersion: 1, appVersion: '0.1.0', content: { id: 'c', name: 'n' } };

/** The problems of something that must not open; each is worded without a hole. */
function refused(result: Result<unknown>): readonly Problem[] {
  expect(result.ok).toBe(false);
  if (result.ok) return [];
  expect(result.problems.length).toBeGreaterThan(0);
  for (const problem of result.problems) {
    expect(problem.severity).toBe('refused');
    const { title, explanation, whatToDo } = wordProblem(problem);
    for (const text of [title, explanation, whatToDo]) expect(text).toMatch(/^(?!.*(undefined|NaN|\[object)).+/su);
  }
  return result.problems;
}

const only = (result: Result<unknown>) => {
  const problems = refused(result);
  expect(problems).toHaveLength(1);
  const [problem] = problems;
  return { code: problem?.code, where: problem?.where, ...problem?.facts };
};

const open = (value: unknown) => parseCabinetFile(JSON.stringify(value));
const bytes = (text: string) => new TextEncoder().encode(text);

describe('parseCabinetFile, the file as a whole', () => {
  it('should open text and bytes, with and without byte order mark, with either line ending', () => {
    const text = serializeCabinet(makeCabinet(3));
    const value = parseCabinetFile(text);
    expect(value.ok).toBe(true);
    for (const source of [
      bytes(text),
      `\uFEFF${text}`,
      bytes(`\uFEFF${text}`),
      text.replaceAll('\n', '\r\n'),
      bytes(text.replaceAll('\n', '\r\n')),
    ]) {
      expect(parseCabinetFile(source)).toEqual(value);
    }
  });

  it('should refuse what is empty', () => {
    for (const source of ['', '  \n', '\uFEFF', new Uint8Array(), bytes('\r\n')])
      expect(only(parseCabinetFile(source)).code).toBe('file-empty');
  });

  it('should refuse what is too large, as text and as bytes, and open what is just not', () => {
    const padded = (size: number) => JSON.stringify(good).padEnd(size, ' ');
    expect(parseCabinetFile(padded(maximumFileBytes)).ok).toBe(true);
    expect(only(parseCabinetFile(padded(maximumFileBytes + 1)))).toMatchObject({
      code: 'file-too-large',
      megabytes: 20.1,
      limitMegabytes: 20,
    });
    expect(only(parseCabinetFile(new Uint8Array(25_000_000).fill(0x20)))).toMatchObject({ code: 'file-too-large', megabytes: 25 });
    // 7 million characters, but 21 million bytes.
    expect(only(parseCabinetFile('€'.repeat(7_000_000)))).toMatchObject({ code: 'file-too-large', megabytes: 21 });
  });

  it('should refuse bytes that are no UTF-8, and name the line', () => {
    const broken = new Uint8Array([...bytes('{\n"format":\n"'), 0xc3, 0x28, ...bytes('"}')]);
    expect(only(parseCabinetFile(broken))).toEqual({ code: 'file-not-utf8', where: '', line: 3 });
    const png = new Uint8Array([0x89, 0x50, 0x4e, 0x47, 0x0d, 0x0a, 0x1a, 0x0a]);
    expect(only(parseCabinetFile(png))).toMatchObject({ code: 'file-not-utf8', line: 1 });
    const utf16 = new Uint8Array([0xff, 0xfe, 0x7b, 0x00]);
    expect(only(parseCabinetFile(utf16))).toMatchObject({ code: 'file-not-utf8' });
  });

  it('should say where a file is damaged', () => {
    const cases: [string, object][] = [
      ['{"format": "linkwright-cabinet",\n  "content" {}}', { line: 2, column: 13, found: '{', expected: 'colon' }],
      ['{"a": 1,}', { line: 1, column: 9, found: '}', expected: 'key' }],
      ['{a: 1}', { line: 1, column: 2, found: 'a', expected: 'key-or-end' }],
      ['[1 2]', { line: 1, column: 4, found: '2', expected: 'comma-or-end-of-list' }],
      ['{"a": 1\n"b": 2}', { line: 2, column: 1, found: '"', expected: 'comma-or-end-of-object' }],
      ['{"a": tru}', { line: 1, column: 7, found: 't', expected: 'value' }],
      ['{"a": "x\ny"}', { line: 1, column: 9, found: '\n', expected: 'closing-quote' }],
      ['{"a": "\\x"}', { line: 1, column: 8, found: '\\', expected: 'escape' }],
      ['{"a": "\\u12"}', { line: 1, column: 8, found: '\\', expected: 'escape' }],
      ['{"a": 1.}', { line: 1, column: 9, found: '}', expected: 'digit' }],
      ['{"a": 01}', { line: 1, column: 8, found: '1', expected: 'comma-or-end-of-object' }],
      ['{"a": [1, 2', { line: 1, column: 12, found: '', expected: 'comma-or-end-of-list' }],
      ['{"a": ', { line: 1, column: 7, found: '', expected: 'value' }],
      ['{} {}', { line: 1, column: 4, found: '{', expected: 'nothing-more' }],
      ['name;kind\r\n-T1;drive', { line: 1, column: 1, found: 'n', expected: 'value' }],
    ];
    for (const [text, facts] of cases) expect(only(parseCabinetFile(text))).toEqual({ code: 'json-damaged', where: '', ...facts });
  });

  it('should refuse deep nesting without falling over it', () => {
    for (const depth of [maximumDepth + 1, 1_000_000]) {
      expect(only(parseCabinetFile('['.repeat(depth) + ']'.repeat(depth)))).toMatchObject({
        code: 'json-too-deep',
        line: 1,
        column: maximumDepth + 1,
      });
      expect(only(parseCabinetFile(`${'{"a":'.repeat(depth)}1${'}'.repeat(depth)}`)).code).toBe('json-too-deep');
    }
    const nest = (depth: number): unknown => (depth === 0 ? 1 : [nest(depth - 1)]);
    // Envelope, content and extra are three.
    expect(open({ ...good, content: { ...good.content, extra: { deep: nest(maximumDepth - 3) } } }).ok).toBe(true);
    expect(only(open({ ...good, content: { ...good.content, extra: { deep: nest(maximumDepth - 2) } } })).code).toBe('json-too-deep');
  });

  it('should refuse a flood of values', () => {
    const flood = `{"format": "linkwright-cabinet", "formatVersion": 1, "content": {"id": "c", "name": "n", "units": [${'0,'.repeat(maximumValues)}0]}}`;
    expect(only(parseCabinetFile(flood))).toMatchObject({ code: 'json-too-many-values', limit: maximumValues });
  });

  it('should refuse keys that reach for a prototype, with their place, however they are written', () => {
    const at = (key: string) =>
      `{"format":"linkwright-cabinet","formatVersion":1,\n"content":{"id":"c","name":"n","extra":{"a":[{"${key}":{"admin":true}}]}}}`;
    for (const [written, key] of [
      ['__proto__', '__proto__'],
      ['constructor', 'constructor'],
      ['prototype', 'prototype'],
      ['\\u005f_proto__', '__proto__'],
    ] as const) {
      expect(only(parseCabinetFile(at(written)))).toMatchObject({ code: 'json-prototype-key', key, where: `/extra/a/0/${key}`, line: 2 });
    }
    expect(({} as Record<string, unknown>)['admin']).toBeUndefined();
    expect(only(parseCabinetFile('{"__proto__": {"format": "linkwright-cabinet"}}'))).toMatchObject({
      code: 'json-prototype-key',
      where: '',
      column: 2,
    });
  });

  it('should name the place of a text that holds half a sign, and take whole ones', () => {
    const file = (text: string) => `{"format":"linkwright-cabinet","formatVersion":1,\n"content":{"id":"c","name":"${text}"}}`;
    for (const half of ['\\ud83d', 'a\\uDE00b', '\\ud83d\\ud83d\\ude00', '\ud83d']) {
      expect(only(parseCabinetFile(file(half)))).toMatchObject({ code: 'json-half-sign', where: '/name', line: 2, column: 28 });
    }
    for (const whole of ['\\ud83d\\ude00', '😀', '\\\\ud83d']) expect(parseCabinetFile(file(whole)).ok).toBe(true);
  });

  it('should write half a sign as what stands for a sign that is lost, so that the file opens again', () => {
    const text = serializeCabinet({ id: 'c', name: 'a\ud83d\ud83d\ude00 \\ud83d', extra: { note: '\ude00\ude00' } });
    const opened = parseCabinetFile(text);
    expect(opened).toMatchObject({ ok: true, value: { name: 'a\ufffd\ud83d\ude00 \\ud83d', extra: { note: '\ufffd\ufffd' } } });
  });

  it('should refuse a field that stands twice, of which one would be lost', () => {
    const twice = '{"format":"linkwright-cabinet","formatVersion":1,"content":{"id":"c","name":"n","units":[],\n"uni\\u0074s":[]}}';
    expect(only(parseCabinetFile(twice))).toMatchObject({ code: 'json-duplicate-key', key: 'units', where: '/units', line: 2, column: 1 });
  });
});

describe('parseCabinetFile, the envelope', () => {
  it('should refuse what is not ours', () => {
    expect(only(open([good])).code).toBe('envelope-not-object');
    expect(only(open(null)).code).toBe('envelope-not-object');
    expect(only(open({ id: 'c', name: 'n' }))).toMatchObject({ code: 'format-foreign', format: '' });
    expect(only(open({ ...good, format: 'somebody-elses' }))).toMatchObject({ code: 'format-foreign', format: 'somebody-elses' });
    expect(only(open({ ...good, format: 7 }))).toMatchObject({ code: 'format-foreign', format: '' });
    expect(only(open({ ...good, format: 'x'.repeat(1_000_000) }))).toMatchObject({ format: 'x'.repeat(60) });
  });

  it('should say which of our files it is', () => {
    const text = serializeCase(makeCase(1));
    expect(only(parseCabinetFile(text))).toMatchObject({
      code: 'format-other-kind',
      format: 'linkwright-case',
      expected: 'linkwright-cabinet',
    });
    expect(only(parseTruthFile(text))).toMatchObject({ code: 'format-other-kind', expected: 'linkwright-truth' });
    expect(only(parseCaseFile(JSON.stringify(good)))).toMatchObject({ code: 'format-other-kind', format: 'linkwright-cabinet' });
  });

  it('should refuse a missing or senseless version', () => {
    const { formatVersion: _, ...without } = good;
    expect(only(open(without)).code).toBe('version-missing');
    for (const version of ['1', 0, -1, 1.5, null, [1]])
      expect(only(open({ ...good, formatVersion: version })).code).toBe('version-invalid');
  });

  it('should say that a file is too new before it minds anything in it', () => {
    const newer = { format: 'linkwright-cabinet', formatVersion: 2, appVersion: '3.4.0', content: 'anything', more: 1 };
    expect(only(open(newer))).toEqual({ code: 'version-too-new', where: '', version: 2, supported: 1, appVersion: '3.4.0' });
    const [problem] = refused(open(newer));
    if (problem === undefined) throw new Error('no problem');
    expect(wordProblem(problem).whatToDo).toBe('Open it with version 3.4.0 of the program or a newer one.');
    expect(wordProblem(problem).explanation).toContain('left as it is');
    expect(only(open({ ...newer, appVersion: undefined }))).toMatchObject({ appVersion: '' });
  });

  it('should refuse unknown fields, a senseless program version and a missing content', () => {
    expect(only(open({ ...good, contents: {} }))).toMatchObject({ code: 'envelope-field-unknown', field: 'contents' });
    expect(only(open({ ...good, appVersion: 1 })).code).toBe('envelope-app-version-invalid');
    expect(only(open({ ...good, content: undefined })).code).toBe('content-missing');
    expect(only(open({ ...good, content: [] })).code).toBe('content-missing');
    const { appVersion: _, ...without } = good;
    expect(open(without).ok).toBe(true);
  });
});
