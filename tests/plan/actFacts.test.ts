import { describe, expect, it } from 'vitest';
import { actFacts } from '../../engine/plan/index.ts';
import { actKinds } from '../../engine/schema/index.ts';

const mends = (act: (typeof actKinds)[number]) => actFacts(act).mends.flatMap(({ item, modes }) => modes.map((mode) => `${item} ${mode}`));

describe('what acts do wherever they are done', () => {
  // domain.md sections 4 and 7.
  it('should mend what the domain says that they cure', () => {
    expect(mends('reseat-plug')).toEqual(['plug loose']);
    expect(mends('clean-plug')).toEqual(['plug loose', 'plug fouled']);
    expect(mends('re-route')).toEqual(['route kinked']);
    expect(mends('replace-fuse')).toEqual(['fuse open']);
    expect(mends('reseat-unit')).toEqual(['place contact-bad']);
    expect(mends('uncross-fibres')).toEqual(['cable fibres-crossed']);
    expect(mends('uncross-plugs')).toContain('wiring crossed');
    expect(mends('replace-supply')).toEqual(['supply output-lost', 'supply dead']);
    expect(mends('pull-feedback')).toEqual(['feedback short']);
    expect(mends('unplug')).toEqual([]);
  });

  it('should mend with a new part all that travels with it, and leave the place', () => {
    const { mends: board } = actFacts('replace-board');
    expect(board.find(({ item }) => item === 'board')?.isAll).toBe(true);
    expect(board.some(({ item }) => item === 'place' || item === 'fuse')).toBe(false);
    const cable = actFacts('replace-cable').mends;
    expect(cable.filter(({ isAll }) => isAll).map(({ item }) => item)).toEqual(['cable', 'plug']);
    expect(cable.some(({ item }) => item === 'route')).toBe(false);
  });

  it('should move with an exchange what travels, and mend none of it but what is seated anew', () => {
    expect(actFacts('exchange-boards').moves.map(({ item, isAll }) => [item, isAll])).toEqual([['board', true]]);
    expect(actFacts('exchange-boards').mends.some(({ item }) => item === 'board')).toBe(false);
    expect(actFacts('exchange-cables').moves.map(({ item }) => item)).toEqual(['cable', 'plug']);
    expect(actFacts('turn-cable').moves.map(({ item }) => item)).toContain('cable');
  });

  it('should name what an act opens and endangers', () => {
    expect(actKinds.filter((act) => actFacts(act).opensFeed)).toEqual(['replace-unit', 'reseat-unit', 'take-out-unit']);
    expect(actFacts('replace-board').cautions.map(({ code }) => code)).toEqual([
      'reference-position',
      'fibre-light',
      'esd',
      'safety-check',
    ]);
    expect(actFacts('replace-fuse').cautions).toEqual([]);
    expect(actFacts('plug-in').cautions.map(({ code }) => code)).toEqual(['fibre-light']);
  });
});
