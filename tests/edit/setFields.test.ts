import { readFileSync } from 'node:fs';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { parseCabinetFile, serializeCabinet } from '../../engine/cabinet/index.ts';
import { checkField, type FieldSpec, type FieldTable, type FieldValue, fieldSpecs, setFields } from '../../engine/edit/index.ts';
import { fieldWords } from '../../engine/messages/index.ts';
import type { CabinetContent } from '../../engine/schema/index.ts';
import { arbitraryCabinet } from '../generators/cabinets.ts';
import { brokenBy } from './brokenBy.ts';
import { chains, done, find, refused, small } from './small.ts';

const unit = (id: string) => ({ in: 'units', id }) as const;

describe('setFields', () => {
  it('should set fields of several things at once, deep ones too, and leave the rest alone', () => {
    const { cabinet, changed } = done(
      setFields(small, [
        { of: unit('a'), path: ['board', 'serial'], value: 'B77' },
        { of: unit('b'), path: ['control24', 'loadA'], value: 1.5 },
        { of: { in: 'cabinet' }, path: ['times', 'bootMinutes'], value: 4 },
        { of: { in: 'controller' }, path: ['model'], value: 'QN 3' },
      ]),
    );
    expect(find(cabinet, 'units', 'a')?.board).toEqual({ serial: 'B77', partNumber: 'P' });
    expect(find(cabinet, 'units', 'b')?.control24).toEqual({ loadA: 1.5 });
    expect(cabinet.times).toEqual({ bootMinutes: 4 });
    expect(cabinet.controller?.model).toBe('QN 3');
    expect([...changed].sort()).toEqual(['a', 'b', 'cab', 'nc']);
    expect(cabinet.links).toBe(small.links);
  });

  it('should leave out what is emptied, and groups that hold nothing any more', () => {
    const { cabinet } = done(
      setFields(small, [
        { of: unit('a'), path: ['board', 'serial'], value: null },
        { of: unit('a'), path: ['board', 'partNumber'], value: '' },
        { of: unit('a'), path: ['designation'], value: null },
      ]),
    );
    expect(find(cabinet, 'units', 'a')).not.toHaveProperty('board');
    expect(find(cabinet, 'units', 'a')?.designation).toBe('');
    expect(done(setFields(small, [{ of: { in: 'cabinet' }, path: ['designationEdition'], value: null }])).cabinet).not.toHaveProperty(
      'designationEdition',
    );
  });

  it.each([
    [unit('a'), ['control24', 'loadA'], 'much', 'field-wrong-type'],
    [unit('a'), ['control24', 'loadA'], -1, 'field-too-small'],
    [unit('a'), ['control24', 'loadA'], Number.NaN, 'field-wrong-type'],
    [unit('a'), ['designation'], 'x'.repeat(201), 'text-too-long'],
    [unit('a'), ['kind'], 'lamp', 'field-not-allowed'],
    [unit('a'), ['kind'], null, 'field-missing'],
    [unit('a'), ['colour'], 'red', 'field-unknown'],
    [unit('a'), ['kind'], 'supply', 'edit-kind-in-use'],
    [unit('a'), ['type'], 'gone', 'reference-unknown'],
    [unit('a'), ['dcLinkSupply'], 'b', 'reference-unknown'],
    [unit('a'), ['photos'], ['gone'], 'reference-unknown'],
    [unit('a'), ['id'], 'z', 'edit-field-fixed'],
    [unit('c'), ['onChain'], false, 'edit-encoder-off-chain'],
    [unit('p'), ['onChain'], true, 'edit-supply-on-chain'],
    [unit('gone'), ['model'], 'x', 'edit-thing-unknown'],
    [{ in: 'links', id: 'w1' }, ['lower', 'unit'], 'd', 'edit-field-fixed'],
    [{ in: 'links', id: 'w1' }, ['fibre'], 'gone', 'reference-unknown'],
    [{ in: 'chains', id: 'ch1' }, ['number'], 2, 'chain-number-doubled'],
    [{ in: 'chains', id: 'ch1' }, ['number'], 0, 'field-too-small'],
    [{ in: 'feedbacks', id: 'g1' }, ['unit'], 'p', 'edit-feedback-on-supply'],
    [{ in: 'feedbacks', id: 'g1' }, ['unit'], 'gone', 'edit-thing-unknown'],
    [{ in: 'cabinet' }, ['units'], [], 'edit-field-fixed'],
    [{ in: 'cabinet' }, ['defaultLegend'], 'gone', 'reference-unknown'],
    [{ in: 'cabinet' }, ['ageingReserveDb'], -3, 'field-too-small'],
    [{ in: 'controller' }, ['slot'], 1.5, 'field-wrong-type'],
  ] as const)('should refuse %j %j = %j: %s', (of, path, value, code) => {
    const edit = { of, path, value } as Parameters<typeof checkField>[1];
    expect(refused(setFields(small, [edit]))).toBe(code);
    expect(checkField(small, edit).map((problem) => problem.code)).toEqual([code]);
  });

  it('should set all or none', () => {
    const answer = setFields(small, [
      { of: unit('a'), path: ['model'], value: 'good' },
      { of: unit('b'), path: ['kind'], value: 'lamp' },
    ]);
    expect(refused(answer)).toBe('field-not-allowed');
  });

  it('should take a unit out of its chain when it is marked as off it', () => {
    const { cabinet } = done(setFields(small, [{ of: unit('b'), path: ['onChain'], value: false }]));
    expect(chains(cabinet)[0]).toBe('w1 a w2 c');
  });

  it('should let leads go on from the supply when their output is taken away', () => {
    const outputs: readonly FieldValue[] = [{ id: 'x1', name: 'X1' }];
    const first = done(setFields(small, [{ of: unit('p'), path: ['supply', 'outputs'], value: outputs }])).cabinet;
    const leads = first.leads?.map((lead) => (lead.id === 'l1' ? { ...lead, from: { unit: 'p', output: 'x1' } } : lead));
    const { cabinet } = done(setFields({ ...first, leads }, [{ of: unit('p'), path: ['supply', 'outputs'], value: null }]));
    expect(find(cabinet, 'leads', 'l1')?.from).toEqual({ unit: 'p' });
  });

  it('should answer values of every sort without a throw, and never break the file', () => {
    const tables = Object.keys(fieldSpecs) as FieldTable[];
    const values: fc.Arbitrary<FieldValue | null> = fc.oneof(
      fc.string({ maxLength: 220 }),
      fc.double(),
      fc.boolean(),
      fc.constant(null),
      fc.constantFrom('servo-drive', 'supply', 'unknown', 'type1', 'u1'),
      fc.array(fc.dictionary(fc.constantFrom('name', 'id', 'ratedA', 'row'), fc.oneof(fc.string(), fc.integer())), { maxLength: 5 }),
    );
    const property = fc.property(
      arbitraryCabinet(),
      fc.constantFrom(...tables),
      fc.nat(),
      fc.nat(),
      values,
      (content, table, at, which, value) => {
        const specs: readonly FieldSpec[] = fieldSpecs[table];
        const path = (specs[which % specs.length]?.path ?? '').split('.');
        const list = table === 'cabinet' || table === 'controller' ? [] : (content[table] ?? []);
        const of =
          table === 'cabinet' || table === 'controller'
            ? { in: table }
            : { in: table, id: list[at % Math.max(1, list.length)]?.id ?? 'gone' };
        const answer = setFields(content, [{ of, path, value }]);
        if (!answer.ok) return;
        expect(parseCabinetFile(serializeCabinet(answer.value.cabinet)).ok).toBe(true);
        expect(brokenBy(answer.value.cabinet).filter(({ code }) => code !== 'designation-missing')).toEqual([]);
      },
    );
    fc.assert(property, { seed: 21, numRuns: 1500 });
  });
});

describe('the table of fields', () => {
  const golden = parseCabinetFile(readFileSync(new URL('../files/golden/everything-1.cabinet.json', import.meta.url), 'utf8'));
  if (!golden.ok) throw new Error('the golden file does not open');
  const everything: CabinetContent = golden.value;

  /** Fields that stand elsewhere: what hangs on what, behaviour, legends and the repair table (pages of their own), what is kept unread. */
  const elsewhere = /^(id|upper|lower|from|to|extra)(\.|$)|^(behaviour|behaviourVerified|repair)(\.|$)/;
  const leaves = (value: unknown, path: readonly string[]): readonly string[] =>
    typeof value === 'object' && value !== null && !Array.isArray(value)
      ? Object.entries(value).flatMap(([key, member]) => leaves(member, [...path, key]))
      : [path.join('.')];

  it.each(Object.keys(fieldSpecs) as FieldTable[])('should have every field of the file: %s', (table) => {
    const specs: readonly FieldSpec[] = fieldSpecs[table];
    const lists = ['chains', 'units', 'links', 'leads', 'feedbacks', 'types', 'legends', 'fibres', 'spares', 'photos', 'controller'];
    const bare = Object.fromEntries(Object.entries(everything).filter(([key]) => !lists.includes(key)));
    const records: readonly unknown[] =
      table === 'cabinet' ? [bare] : table === 'controller' ? [everything.controller] : (everything[table] ?? []);
    const found = new Set(records.flatMap((record) => leaves(record, [])));
    const known = new Set(specs.map(({ path }) => path));
    const outside = [...found].filter(
      (path) => !known.has(path) && !(elsewhere.test(path) && !(table === 'chains' && path.startsWith('b'))),
    );
    expect(outside).toEqual([]);
    // And nothing that no file has.
    expect([...known].filter((path) => !found.has(path))).toEqual([]);
  });

  it('should word every field, those within rows too', () => {
    const paths = (specs: readonly FieldSpec[]): readonly string[] =>
      specs.flatMap(({ path, form }) => [path, ...(typeof form === 'object' && 'rows' in form ? paths(form.rows) : [])]);
    const all = new Set(Object.values(fieldSpecs).flatMap((specs) => paths(specs)));
    expect(Object.keys(fieldWords).sort()).toEqual([...all].sort());
  });
});
