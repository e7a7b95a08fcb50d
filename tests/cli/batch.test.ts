import { readFileSync } from 'node:fs';
import { Ajv2020 } from 'ajv/dist/2020.js';
import { describe, expect, it } from 'vitest';
import { chainIdOf, type NeutralCase, toCabinetContent, toFault } from '../conformance/neutral.ts';
import { jsonLinesOf, jsonOf, linkwright } from './runLinkwright.ts';

const sample = 'sample-cabinets/two-chains.cabinet.json';
const batch = (command: string, lines: readonly (object | string)[], file: readonly string[] = [sample]) =>
  linkwright([command, ...file, '--batch', '-'], {
    '-': lines.map((line) => (typeof line === 'string' ? line : JSON.stringify(line))).join('\n'),
  });

describe('linkwright simulate --batch', () => {
  // Source: the 300 conformance cases (tests/conformance/README.md), here from the outside: JSON lines in, JSON lines out.
  it('should answer the 300 conformance cases, each with its own cabinet, in one run', async () => {
    const cases = readFileSync(new URL('../conformance/simulation.jsonl', import.meta.url), 'utf8')
      .trim()
      .split('\n')
      .map((line) => JSON.parse(line) as NeutralCase); // the file is ours; a wrong shape fails below
    const lines = cases.map(({ seed, cabinet, faults, onset }) => ({
      id: seed,
      cabinet: toCabinetContent(seed, cabinet),
      faults: faults.map(toFault),
      onset,
    }));
    const ran = await batch('simulate', lines, []);
    expect(ran.exit).toBe(0);
    const answers = jsonLinesOf(ran) as {
      id: number;
      displays: { unit: string; meaning: string }[];
      reports: { chain: string; gap: number | 'none' }[];
    }[];
    expect(answers.map(({ id }) => id)).toEqual(cases.map(({ seed }) => seed));
    for (const [i, { displays, reports }] of answers.entries()) {
      expect(Object.fromEntries(displays.map(({ unit, meaning }) => [unit, meaning]))).toEqual(cases[i]?.displays);
      const expected = cases[i]?.reports.map((report, chain) => [chainIdOf(chain), report === null ? 'none' : report[1]]) ?? [];
      expect(Object.fromEntries(reports.map(({ chain, gap }) => [chain, gap]))).toEqual(Object.fromEntries(expected));
    }
  }, 60_000);

  it('should answer a line as the command itself would', async () => {
    const fault = { item: 'plug', link: 'WH3', end: 'lower', mode: 'loose', presence: 'intermittent', absentNow: true };
    const [line] = jsonLinesOf(await batch('simulate', [{ faults: [fault], onset: 'while-running' }]));
    const single = jsonOf(await linkwright(['simulate', sample, '--fault', 'plug:-WH3/lower:loose,intermittent,absent-now', '--json']));
    expect(line?.['displays']).toEqual(single['displays']);
    expect(line?.['reports']).toEqual(single['reports']);
  });

  it('should predict the looks that are asked for', async () => {
    const line = {
      faults: [{ item: 'lead', lead: 'WD1', mode: 'open' }],
      looks: [
        { look: 'voltage', unit: 'TB1' },
        { look: 'light-at-port', link: 'WH1', end: 'lower' },
      ],
    };
    const [answer] = jsonLinesOf(await batch('simulate', [line]));
    expect(answer?.['looks']).toEqual([
      { ...line.looks[0], outcome: 'absent', noLightIsNormal: false },
      { ...line.looks[1], outcome: 'none', noLightIsNormal: false },
    ]);
  });

  it('should answer a bad line with what is wrong, go on, and end with 2', async () => {
    const good = { id: 'good', faults: [] };
    const ran = await batch('simulate', [
      good,
      '{not json',
      '[1]',
      '"text"',
      '',
      { id: 'typo', fautls: [] },
      { id: 'mode', faults: [{ item: 'cable', link: 'WH3', mode: 'smashed' }] },
      { id: 'ghost', faults: [{ item: 'cable', link: 'WH99', mode: 'cut' }] },
      {
        id: 'both',
        faults: [
          { item: 'cable', link: 'WH3', mode: 'cut' },
          { item: 'cable', link: 'WH3', mode: 'return-cut' },
        ],
      },
      { id: 'act', faults: [], sinceTrip: [{ do: 'exchange-boards', unit: 'TB1', other: 'TB99' }] },
      { id: 'look', faults: [], looks: [{ look: 'voltage', unit: 'TB99' }] },
      { id: 'cabinet', cabinet: { id: 'x' }, faults: [] },
      {
        id: 'loop',
        cabinet: {
          id: 'x',
          name: 'x',
          units: [{ id: 'a', kind: 'servo-drive', designation: '-A' }],
          links: [{ id: 'w', upper: { unit: 'a' }, lower: { unit: 'a' } }],
        },
        faults: [],
      },
      { id: 'text', cabinet: '{}', faults: [] },
      { ...good, id: 'last' },
    ]);
    expect(ran.exit).toBe(2);
    const answers = jsonLinesOf(ran);
    expect(answers.map(({ line, ok }) => [line, ok])).toEqual(
      [1, 2, 3, 4, 6, 7, 8, 9, 10, 11, 12, 13, 14, 15].map((line) => [line, line === 1 || line === 15]),
    );
    expect(answers.map(({ id }) => id)).toEqual([
      'good',
      null,
      null,
      null,
      'typo',
      'mode',
      'ghost',
      'both',
      'act',
      'look',
      'cabinet',
      'loop',
      'text',
      'last',
    ]);
    const codes = answers.map(({ problems }) => (problems as { code: string }[]).map(({ code }) => code));
    expect(codes.slice(1, 4)).toEqual([['batch-line-not-json'], ['batch-line-not-object'], ['batch-line-not-object']]);
    expect(codes[4]).toEqual(expect.arrayContaining(['field-unknown', 'field-missing']));
    expect(codes.slice(6, 10)).toEqual([['name-unknown'], ['faults-exclude'], ['name-unknown'], ['name-unknown']]);
    expect(codes[10]).toContain('field-missing');
    expect(codes[11]).toContain('cabinet-not-sound');
    for (const { problems, ok } of answers) {
      for (const problem of problems as { title: string; whatToDo: string }[]) {
        expect(ok).toBe(false);
        expect(problem.title).not.toBe('');
        expect(problem.whatToDo).not.toBe('');
        expect(JSON.stringify(problem)).not.toMatch(/undefined|\[object/);
      }
    }
  });

  it('should want a cabinet from somewhere, and options that fit', async () => {
    expect(jsonLinesOf(await batch('simulate', [{ faults: [] }], []))).toMatchObject([
      { ok: false, problems: [{ code: 'batch-cabinet-missing' }] },
    ]);
    const whole = JSON.parse(readFileSync(new URL(`../../${sample}`, import.meta.url), 'utf8')) as object;
    expect(jsonLinesOf(await batch('simulate', [{ faults: [], cabinet: whole }], []))).toMatchObject([{ ok: true }]);
    const ran = await linkwright(['simulate', sample, '--batch', '-', '--fault', 'cable:-WH3:cut'], { '-': '' });
    expect(ran).toMatchObject({ exit: 2, out: '' });
    expect(ran.err).toContain('--fault does not go with --batch');
  });

  it('should stand what is nested beyond reason', async () => {
    const deep = '['.repeat(200_000) + ']'.repeat(200_000);
    const ran = await batch('simulate', [`{"id":"deep","faults":[],"cabinet":${deep}}`, { id: 'next', faults: [] }]);
    expect(ran.exit).toBe(2);
    expect(jsonLinesOf(ran)).toMatchObject([{ ok: false }, { id: 'next', ok: true }]);
  });

  it('should end with 3 when the lines cannot be read', async () => {
    const ran = await linkwright(['simulate', sample, '--batch', 'nowhere.jsonl']);
    expect(ran).toMatchObject({ exit: 3, out: '' });
    expect(ran.err).toContain('nowhere.jsonl cannot be read');
  });
});

describe('linkwright diagnose --batch', () => {
  const evidence = { snapshots: [{ halted: true, onset: 'while-running', displays: [{ unit: 'TB2', meanings: ['downstream-loss'] }] }] };

  it('should answer a line as the command itself would', async () => {
    const [line] = jsonLinesOf(await batch('diagnose', [{ evidence }]));
    const args = ['diagnose', sample, '--display', '-TB2=downstream-loss', '--halted', 'yes', '--onset', 'while-running', '--json'];
    const single = jsonOf(await linkwright(args));
    for (const field of ['suspects', 'hypotheses', 'groups', 'unvisitedShare', 'contradiction', 'notes'])
      expect(line?.[field], field).toEqual(single[field]);
  });

  it('should end with 1 when a line contradicts itself, and with 2 when one is bad', async () => {
    const odd = { snapshots: [{ halted: false, reports: [{ chain: 'chain1', gaps: [3] }] }] };
    expect((await batch('diagnose', [{ evidence }])).exit).toBe(0);
    expect((await batch('diagnose', [{ evidence: odd }, { evidence }])).exit).toBe(1);
    const ghost = { snapshots: [{ displays: [{ unit: 'ghost', meanings: ['dark'] }] }] };
    expect((await batch('diagnose', [{ evidence: odd }, { evidence: ghost }, { evidence }])).exit).toBe(2);
    const gap = { snapshots: [{ reports: [{ chain: 'chain1', gaps: [77] }] }] };
    const circumstance = { snapshots: [], circumstances: [{ kind: 'storm', subjects: ['ghost'] }] };
    const answers = jsonLinesOf(await batch('diagnose', [{ evidence: gap }, { evidence: circumstance }]));
    expect(answers).toMatchObject([{ problems: [{ code: 'place-unknown' }] }, { problems: [{ code: 'name-unknown' }] }]);
  });
});

describe('the schemas of batch lines', () => {
  it('should accept what a batch accepts, by a validator of somebody else', async () => {
    for (const [command, file] of [
      ['simulate', 'simulate-lines'],
      ['diagnose', 'diagnose-lines'],
    ] as const) {
      const schema = jsonOf(await linkwright(['schema', `${command}-line`]));
      const validate = new Ajv2020({ strict: false }).compile(schema);
      const examples = readFileSync(new URL(`../../engine/cli/examples/${file}.jsonl`, import.meta.url), 'utf8')
        .trim()
        .split('\n');
      for (const line of examples) expect(validate(JSON.parse(line)), line).toBe(true);
      expect(validate({ faults: 'none', evidence: 1 })).toBe(false);
    }
  });
});
