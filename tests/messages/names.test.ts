import { describe, expect, it } from 'vitest';
import { makeNames } from '../../engine/messages/index.ts';
import type { CabinetContent } from '../../engine/schema/index.ts';
import { buildTopology } from '../../engine/topology/index.ts';
import { content } from './smallCabinet.ts';

const namesOf = (cabinet: CabinetContent) => makeNames(buildTopology(cabinet).topology);
const names = namesOf(content);

describe('makeNames', () => {
  it('should use designations', () => {
    expect([names.unit('u1'), names.link('w2'), names.lead('d1'), names.chain('c1'), names.controller()]).toEqual([
      '-TB1',
      'cable -WH2',
      'lead -WD1',
      'chain 1',
      '-KF1',
    ]);
  });

  it('should say where a thing is that has no designation', () => {
    expect(names.lead('d2')).toBe('lead from -TB1 to -TB2');
    expect(names.feedback('f1')).toBe('feedback cable of -TB1, axis X');
    const bare = namesOf({ ...content, links: content.links?.map(({ designation: _, ...link }) => link) ?? [] });
    expect(bare.link('w1')).toBe('cable between the controller’s chain 1 and -TB1');
    expect(bare.link('w2')).toBe('cable between -TB1 and -TB2');
    const blank = namesOf({
      id: 'b',
      name: 'b',
      units: [{ id: 'u7', kind: 'spindle-drive', designation: '  ' }],
      links: [{ id: 'w7' }],
      leads: [{ id: 'd7' }],
    });
    expect([blank.unit('u7'), blank.link('w7'), blank.lead('d7'), blank.controller()]).toEqual([
      'spindle drive u7',
      'cable between an open end and an open end',
      'lead from an open end to an open end',
      'the controller',
    ]);
  });

  it('should add the id where two things bear one designation', () => {
    const doubled = namesOf({
      ...content,
      units: content.units?.map((unit) => (unit.kind === 'supply' ? unit : { ...unit, designation: '-TB1' })) ?? [],
    });
    expect(doubled.unit('u1')).toBe('-TB1 (id u1)');
    expect(doubled.unit('u2')).toBe('-TB1 (id u2)');
    expect(doubled.unit('s1')).toBe('-TB9');
  });

  it('should count units in their group on their chain, and tell what stands on none', () => {
    expect(names.place('u2')).toBe('chain 1, position 2, encoder interface 1');
    expect(names.place('u3')).toBe('not on a chain');
    expect(names.place('s1')).toBe('supply');
    expect(names.position('c1', 0)).toBe('-KF1');
    expect(names.position('c1', 1)).toBe('drive 1 (-TB1)');
    expect(names.position('c1', 9)).toBe('position 9');
  });

  it('should name what it does not know by its id', () => {
    for (const name of [
      names.unit('x'),
      names.link('x'),
      names.lead('x'),
      names.feedback('x'),
      names.chain('x'),
      names.type('x'),
      names.thing('x'),
    ]) {
      expect(name).toMatch(/\bx$/);
    }
    expect(names.thing('w1')).toBe('cable -WH1');
    expect(names.thing('k1')).toBe('-KF1');
    expect(names.thing('c1')).toBe('chain 1');
    // Keys of an object's prototype are ids like any other.
    expect(names.unit('constructor')).toBe('unit constructor');
  });
});
