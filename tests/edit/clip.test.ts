import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { checkCabinet, parseCabinetFile, serializeCabinet } from '../../engine/cabinet/index.ts';
import { copyThings, duplicateThings, maximumClipSigns, pasteClip, readClip } from '../../engine/edit/index.ts';
import { wordProblem } from '../../engine/messages/index.ts';
import type { CabinetContent } from '../../engine/schema/index.ts';
import { type Json, mutateText, mutateValue } from '../files/mutations.ts';
import { arbitraryCabinet } from '../generators/cabinets.ts';
import { Random } from '../generators/random.ts';
import { brokenBy } from './brokenBy.ts';
import { chains, done, find, refused, row, small } from './small.ts';

const copied = (content: CabinetContent, ids: readonly string[]) => copyThings(content, ids) ?? '';

describe('copyThings', () => {
  it('should take along what lies between the things, and leave what leads outside', () => {
    const clip = readClip(copied(small, ['a', 'b']));
    if (!clip.ok) throw new Error('refused');
    expect(clip.value.units?.map(({ id }) => id)).toEqual(['a', 'b']);
    expect(clip.value.links?.map(({ id }) => id)).toEqual(['w2']);
    expect(clip.value.leads?.map(({ id }) => id)).toEqual(['l2']);
    expect(clip.value.feedbacks?.map(({ id }) => id)).toEqual(['g1']);
    expect(clip.value.chains).toBeUndefined();
  });

  it('should copy nothing where no unit is chosen', () => {
    expect(copyThings(small, ['w2', 'l1'])).toBeNull();
  });
});

describe('pasteClip', () => {
  it('should give new ids and the next designations, and hang what it pastes where it is told to', () => {
    const { cabinet, added } = done(pasteClip(small, copied(small, ['a', 'b']), { at: { endOf: 'ch2' } }));
    expect(chains(cabinet)).toEqual(['w1 a w2 b w3 c', 'w4 d w6 u1 w5 u2']);
    expect(added).toEqual(['u1', 'u2', 'w5', 'w6', 'l6', 'g2']);
    expect(find(cabinet, 'units', 'u1')).toMatchObject({ designation: '-TB10', kind: 'servo-drive' });
    expect(find(cabinet, 'units', 'u2')).toMatchObject({ designation: '-TB11', kind: 'spindle-drive' });
    expect(find(cabinet, 'leads', 'l6')).toMatchObject({ designation: '-WD4', from: { unit: 'u1' }, to: { unit: 'u2' } });
    expect(row(cabinet, 2)).toBe('1 d, 2 u1, 3 u2, 4 e, 5 p');
  });

  it('should put a run onto a cable', () => {
    const { cabinet } = done(pasteClip(small, copied(small, ['a', 'b']), { at: { onLink: 'w3' } }));
    expect(chains(cabinet)[0]).toBe('w1 a w2 b w3 u1 w5 u2 w6 c');
  });

  it('should not copy serial numbers, unless it is a move', () => {
    const text = copied(small, ['a']);
    expect(find(done(pasteClip(small, text)).cabinet, 'units', 'u1')).toMatchObject({ board: { partNumber: 'P' } });
    expect(JSON.stringify(find(done(pasteClip(small, text)).cabinet, 'units', 'u1'))).not.toMatch(/"S1"|"B1"/);
    expect(find(done(pasteClip(small, text, { keepSerials: true })).cabinet, 'units', 'u1')).toMatchObject({ serial: 'S1' });
  });

  it('should paste whole chains as chains of their own, and places below what stands there', () => {
    const { cabinet } = done(pasteClip(small, copied(small, ['ch1', 'a', 'b', 'c'])));
    expect(chains(cabinet)[2]).toBe('w5 u1 w6 u2 w7 u3');
    expect(cabinet.chains?.[2]).toEqual({ id: 'chain1', number: 3 });
    expect(row(cabinet, 3)).toBe('1 u1, 2 u2, 3 u3');
  });

  it('should bring types along once, and use those that are the same', () => {
    const typed: CabinetContent = {
      ...small,
      units: small.units?.map((unit) => (unit.id === 'a' ? { ...unit, type: 't' } : unit)),
      types: [{ id: 't', name: 'QE drive', legend: 'x' }],
      legends: [{ id: 'x', name: 'QE', codes: [{ code: '7', meanings: ['dark'] }] }],
    };
    const text = copied(typed, ['a']);
    const same = done(pasteClip(typed, text)).cabinet;
    expect(same.types).toHaveLength(1);
    const other = { ...typed, types: [{ id: 't', name: 'Another' }] };
    const brought = done(pasteClip(other, text)).cabinet;
    expect(brought.types?.map(({ id, name }) => `${id} ${name}`)).toEqual(['t Another', 'type-1 QE drive']);
    expect(find(brought, 'units', 'u1')?.type).toBe('type-1');
    expect(done(pasteClip(small, text)).cabinet.types?.[0]?.legend).toBe('x');
  });

  it('should duplicate in one go as a copy and a paste do', () => {
    const target = { at: { afterUnit: 'b' } } as const;
    expect(done(duplicateThings(small, ['a', 'b'], target)).cabinet).toEqual(
      done(pasteClip(small, copied(small, ['a', 'b']), target)).cabinet,
    );
    expect(refused(duplicateThings(small, ['w1']))).toBe('clip-empty');
  });

  it('should keep a sound cabinet sound, whatever of it is pasted into a chain', () => {
    const property = fc.property(arbitraryCabinet({ behaviours: 'mixed' }), fc.nat(), (content, pick) => {
      const ids = (content.units ?? []).filter((_unit, index) => ((pick >> (index % 20)) & 1) === 1).map(({ id }) => id);
      const text = copyThings(content, ids);
      if (text === null) return;
      const { cabinet } = done(pasteClip(content, text, { at: { endOf: 'ch1' } }));
      expect(checkCabinet(cabinet).cabinet).not.toBeNull();
      expect(cabinet.units).toHaveLength((content.units ?? []).length + ids.length);
    });
    fc.assert(property, { seed: 11, numRuns: 100 });
  });
});

describe('what else lies on a clipboard', () => {
  it.each([
    ['', 'clip-foreign'],
    ['Hello', 'clip-foreign'],
    ['-TB1\tservo\n-TB2\tservo', 'clip-foreign'],
    ['{', 'json-damaged'],
    ['{}', 'format-foreign'],
    ['{"__proto__":{"a":1}}', 'json-prototype-key'],
    ['{"format":"linkwright-cabinet","formatVersion":99,"content":{}}', 'version-too-new'],
    ['{"format":"linkwright-case","formatVersion":1,"content":{}}', 'format-other-kind'],
    [serializeCabinet({ id: 'x', name: 'Empty' }), 'clip-empty'],
    [`{${' '.repeat(maximumClipSigns)}}`, 'clip-too-large'],
    ['{"a":'.repeat(1000), 'json-too-deep'],
  ])('should refuse %j…', (text, code) => {
    expect(refused(pasteClip(small, text))).toBe(code);
  });

  it('should take damaged clips apart as it does damaged files, and never throw or break the cabinet', () => {
    const text = copied(small, ['a', 'b', 'c', 'ch1']);
    const clip = JSON.parse(text) as Json;
    const property = fc.property(fc.nat(), fc.boolean(), fc.integer({ min: 1, max: 4 }), (number, asText, times) => {
      const random = new Random(number);
      let value = clip;
      for (let i = 0; i < times; i += 1) value = mutateValue(random, value);
      const mutated = asText ? mutateText(random, text) : JSON.stringify(value);
      const answer = pasteClip(small, mutated, { at: { endOf: 'ch2' } });
      if (!answer.ok) {
        for (const problem of answer.problems) expect(wordProblem(problem).title).not.toBe('');
        return;
      }
      expect(parseCabinetFile(serializeCabinet(answer.value.cabinet)).ok).toBe(true);
      expect(brokenBy(answer.value.cabinet)).toEqual([]);
    });
    fc.assert(property, { seed: 12, numRuns: 2000 });
  });
});
