import { describe, expect, it } from 'vitest';
import type { Problem } from '../../engine/base/index.ts';
import { parseCabinetFile, parseCaseFile, parseTruthFile } from '../../engine/cabinet/index.ts';
import { wordProblem } from '../../engine/messages/index.ts';

const cabinet = (content: object) =>
  parseCabinetFile(
    JSON.stringify({ format: 'linkwright-cabinet', formatVersion: 1, content: { id: 'c', name: 'n', ...content } }, null, 1),
  );
const problemsOf = (content: object): readonly Problem[] => {
  const result = cabinet(content);
  expect(result.ok).toBe(false);
  return result.ok ? [] : result.problems;
};
const brief = (content: object) => problemsOf(content).map(({ code, where, facts }) => [code, where, facts]);

describe('parseCabinetFile, the shape of the content', () => {
  it('should open a cabinet with nothing but id and name', () => {
    expect(cabinet({})).toEqual({ ok: true, value: { id: 'c', name: 'n' } });
  });

  it('should name unknown fields with their place and line', () => {
    const units = [{ id: 'u1', kind: 'servo-drive', designation: '-T1', desingation: 'x', maker: 'y' }];
    expect(brief({ units, colour: 'red' })).toEqual([
      ['field-unknown', '/colour', { field: 'colour', line: 16 }],
      ['field-unknown', '/units/0/desingation', { field: 'units[0].desingation', line: 12 }],
      ['field-unknown', '/units/0/maker', { field: 'units[0].maker', line: 13 }],
    ]);
  });

  it('should name what is missing, at the line of what it belongs to', () => {
    expect(
      brief({
        units: [
          { id: 'u1', kind: 'supply' },
          { kind: 'supply', designation: '-T2' },
        ],
      }),
    ).toEqual([
      ['field-missing', '/units/0/designation', { field: 'units[0].designation', line: 8 }],
      ['field-missing', '/units/1/id', { field: 'units[1].id', line: 12 }],
    ]);
  });

  it('should name what is of the wrong kind, and what would be right', () => {
    const unit = { id: 'u1', kind: 'servo-drive', designation: '-T1' };
    const found = (more: object) => brief({ units: [{ ...unit, ...more }] }).map(([code, , facts]) => [code, facts]);
    const line = 12;
    const [row] = [{ field: 'units[0].row', line }];
    expect(found({ row: '3' })).toEqual([['field-wrong-type', { ...row, expected: 'number', found: 'text' }]]);
    expect(found({ row: 1.5 })).toEqual([['field-wrong-type', { ...row, expected: 'whole-number', found: 'number' }]]);
    expect(found({ row: null })).toEqual([['field-wrong-type', { ...row, expected: 'number', found: 'nothing' }]]);
    expect(found({ row: -1 })).toEqual([['field-too-small', { ...row, minimum: 0 }]]);
    expect(found({ row: 1000 })).toEqual([['field-too-large', { ...row, maximum: 999 }]]);
    expect(found({ axes: {} })).toEqual([['field-wrong-type', { field: 'units[0].axes', line, expected: 'list', found: 'object' }]]);
    expect(found({ axes: Array(5).fill({ name: 'X' }) })).toEqual([['list-too-long', { field: 'units[0].axes', line, maximum: 4 }]]);
    expect(found({ model: 'x'.repeat(201) })).toEqual([['text-too-long', { field: 'units[0].model', line, maximum: 200 }]]);
    expect(found({ kind: 'turbine' })).toEqual([
      ['field-not-allowed', { field: 'units[0].kind', line: 10, allowed: 'servo-drive, spindle-drive, encoder-interface, supply' }],
    ]);
    expect(found({ id: 'two words' })).toEqual([['field-bad-form', { field: 'units[0].id', line: 9, form: 'id' }]]);
    expect(found({ ports: [] })).toEqual([['field-wrong-type', { field: 'units[0].ports', line, expected: 'object', found: 'list' }]]);
  });

  it('should explain the ends of a cable by the form that comes nearest', () => {
    const end = (upper: unknown) => brief({ links: [{ id: 'w1', upper }] }).map(([code, where]) => [code, where]);
    expect(end({ chain: 1 })).toEqual([['field-wrong-type', '/links/0/upper/chain']]);
    expect(end({ unit: '' })).toEqual([['field-bad-form', '/links/0/upper/unit']]);
    expect(end({ unit: 'u1', chain: 'ch1' })).toEqual([['field-unknown', '/links/0/upper/unit']]);
    expect(end('u1')).toEqual([['field-wrong-type', '/links/0/upper']]);
  });

  it('should refuse numbers that JSON can write and a machine cannot hold', () => {
    const text = '{"format":"linkwright-cabinet","formatVersion":1,"content":{"id":"c","name":"n","ambientC":1e999}}';
    const result = parseCabinetFile(text);
    expect(result.ok ? [] : result.problems.map(({ code, facts }) => [code, facts['found']])).toEqual([
      ['field-wrong-type', 'number-too-large'],
    ]);
  });

  it('should refuse dates that are none', () => {
    const verified = (on: string) => cabinet({ types: [{ id: 't', name: 't', behaviourVerified: { on } }] }).ok;
    expect([verified('2026-11-25'), verified('2026-13-01'), verified('2026-00-10'), verified('2026-1-1'), verified('25.11.2026')]).toEqual([
      true,
      false,
      false,
      false,
      false,
    ]);
  });

  it('should list at most 200 problems, and count the rest', () => {
    const units = Array.from({ length: 1_000 }, (_, index) => ({ id: `u${index}`, kind: 'supply', designation: 1 }));
    const problems = problemsOf({ units });
    expect(problems).toHaveLength(201);
    expect(problems.filter(({ code }) => code === 'more-problems').map(({ facts }) => facts)).toEqual([{ count: 800 }]);
  });

  it('should refuse ids that are given twice, among all that stands in the cabinet', () => {
    const unit = { id: 'a', kind: 'supply', designation: '-T1' };
    expect(brief({ chains: [{ id: 'a', number: 1 }], units: [unit, { ...unit }] })).toEqual([
      ['id-duplicate', '/units/0/id', { id: 'a', first: '/chains/0', second: '/units/0' }],
      ['id-duplicate', '/units/1/id', { id: 'a', first: '/chains/0', second: '/units/1' }],
    ]);
    expect(brief({ controller: { id: 'a', designation: '-K' }, links: [{ id: 'a' }] })[0]?.[1]).toBe('/links/0/id');
    expect(
      brief({
        units: [
          {
            ...unit,
            supply: {
              outputs: [
                { id: 'x', name: '1' },
                { id: 'x', name: '2' },
              ],
            },
          },
        ],
      })[0]?.[1],
    ).toBe('/units/0/supply/outputs/1/id');
  });

  it('should let types, legends and the like share an id with what stands in the cabinet', () => {
    const shared = { types: [{ id: 'a', name: 't' }], legends: [{ id: 'a', name: 'l', codes: [] }], fibres: [{ id: 'a', name: 'f' }] };
    expect(cabinet({ ...shared, units: [{ id: 'a', kind: 'supply', designation: '-T1' }] }).ok).toBe(true);
    expect(brief({ types: [shared.types[0], shared.types[0]] })).toHaveLength(1);
  });
});

describe('parseCaseFile and parseTruthFile', () => {
  const caseFile = (content: object) =>
    parseCaseFile(
      JSON.stringify({
        format: 'linkwright-case',
        formatVersion: 1,
        content: { id: 'k', name: 'k', cabinet: { id: 'c', name: 'n' }, evidence: { snapshots: [] }, ...content },
      }),
    );
  const codes = (result: ReturnType<typeof parseCaseFile>) =>
    result.ok ? [] : result.problems.map(({ code, where, facts }) => [code, where, facts['allowed'] ?? '']);

  it('should open a case with its cabinet, and refuse what is wrong in either', () => {
    expect(caseFile({}).ok).toBe(true);
    expect(codes(caseFile({ cabinet: { id: 'c', name: 'n', units: [{ id: 'u' }] } })).map(([, where]) => where)).toEqual([
      '/cabinet/units/0/designation',
      '/cabinet/units/0/kind',
    ]);
    const twice = [{ id: 'w' }, { id: 'w' }];
    expect(codes(caseFile({ cabinet: { id: 'c', name: 'n', links: twice } }))).toEqual([['id-duplicate', '/cabinet/links/1/id', '']]);
  });

  it('should name the acts that there are', () => {
    const [found] = codes(caseFile({ evidence: { snapshots: [{ interventions: [{ do: 'hit-it', unit: 'u1' }] }] } }));
    expect(found?.slice(0, 2)).toEqual(['field-not-allowed', '/evidence/snapshots/0/interventions/0/do']);
    expect(found?.[2]).toContain('reseat-plug');
    const [missing] = codes(caseFile({ evidence: { snapshots: [{ interventions: [{ unit: 'u1' }] }] } }));
    expect(missing?.slice(0, 2)).toEqual(['field-missing', '/evidence/snapshots/0/interventions/0/do']);
  });

  it('should refuse an empty set of meanings, and a gap that is none', () => {
    const snapshot = (more: object) => codes(caseFile({ evidence: { snapshots: [more] } })).map(([code, where]) => [code, where]);
    expect(snapshot({ displays: [{ unit: 'u1', meanings: [] }] })).toEqual([
      ['list-too-short', '/evidence/snapshots/0/displays/0/meanings'],
    ]);
    expect(snapshot({ reports: [{ chain: 'ch1', gaps: [0] }] })).toEqual([['field-too-small', '/evidence/snapshots/0/reports/0/gaps/0']]);
    expect(snapshot({ reports: [{ chain: 'ch1', gaps: ['all'] }] })).toHaveLength(1);
  });

  it('should refuse a fault mode that its item does not have', () => {
    const truth = (fault: object) =>
      parseTruthFile(JSON.stringify({ format: 'linkwright-truth', formatVersion: 1, content: { case: 'k', faults: [fault] } }));
    expect(truth({ item: 'cable', link: 'w1', mode: 'cut' }).ok).toBe(true);
    expect(truth({ item: 'cable', link: 'w1', mode: 'dead' }).ok).toBe(false);
    expect(truth({ item: 'cable', unit: 'u1', mode: 'cut' }).ok).toBe(false);
  });
});

describe('wordProblem for the shape', () => {
  it('should say what, where and what to do', () => {
    const [problem] = problemsOf({ units: [{ id: 'u1', kind: 'servo-drive', designation: '-T1', row: '3' }] });
    if (problem === undefined) throw new Error('no problem');
    expect(wordProblem(problem)).toEqual({
      title: '“units[0].row” (line 12) cannot be read',
      explanation: 'It must be a number, and is a text.',
      whatToDo: 'Correct the value.',
    });
  });
});
