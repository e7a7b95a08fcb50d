import { describe, expect, it } from 'vitest';
import {
  addChain,
  addFeedback,
  chainOf,
  downstreamOf,
  feedUnits,
  insertUnits,
  joinPorts,
  layCable,
  moveInChain,
  moveToPlace,
  reconnectLead,
  removeThings,
  replugEnd,
  takeOffChain,
  upstreamOf,
  whyNotFeed,
  whyNotInsert,
  whyNotJoin,
  whyNotLay,
  whyNotReplug,
} from '../../engine/edit/index.ts';
import { buildTopology } from '../../engine/topology/index.ts';
import { chains, done, find, refused, row, small } from './small.ts';

describe('insertUnits', () => {
  it('should split the cable: it keeps its upper plug, a new one leads on, and the row moves on', () => {
    const { cabinet, added } = done(insertUnits(small, { units: [{ kind: 'servo-drive' }], at: { onLink: 'w2' } }));
    expect(chains(cabinet)).toEqual(['w1 a w2 u1 w5 b w3 c', 'w4 d']);
    expect(added).toEqual(['u1', 'w5']);
    expect(find(cabinet, 'links', 'w2')).toEqual({ ...find(small, 'links', 'w2'), lower: { unit: 'u1' } });
    expect(row(cabinet, 1)).toBe('1 a, 2 u1, 3 b, 4 c');
    expect(find(cabinet, 'units', 'u1')).toMatchObject({ designation: '-TB10', kind: 'servo-drive' });
    expect(find(cabinet, 'links', 'w5')).toMatchObject({ designation: '-WH5' });
  });

  it.each([
    [{ endOf: 'ch1' }, 'w1 a w2 b w3 c w5 u1'],
    [{ chain: 'ch1', position: 1 }, 'w1 u1 w5 a w2 b w3 c'],
    [{ chain: 'ch1', position: 99 }, 'w1 a w2 b w3 c w5 u1'],
    [{ beforeUnit: 'c' }, 'w1 a w2 b w3 u1 w5 c'],
    [{ afterUnit: 'a' }, 'w1 a w2 u1 w5 b w3 c'],
  ])('should insert at %j', (at, chain) => {
    expect(chains(done(insertUnits(small, { units: [{ kind: 'spindle-drive' }], at })).cabinet)[0]).toBe(chain);
  });

  it('should insert several in order, and keep the first free slot in the row', () => {
    const units = [{ kind: 'servo-drive' }, { kind: 'encoder-interface', designation: '=X-KE7' }] as const;
    const { cabinet } = done(insertUnits(small, { units, at: { endOf: 'ch2' } }));
    expect(chains(cabinet)[1]).toBe('w4 d w5 u1 w6 u2');
    // -TB9 stands in slot 4 with an empty slot before it: that is used up first.
    expect(row(cabinet, 2)).toBe('1 d, 2 u1, 3 u2, 4 e, 5 p');
    expect(find(cabinet, 'units', 'u2')?.designation).toBe('=X-KE7');
  });

  it('should put drives and supplies off the chain at the end of the last row, or where it is told to', () => {
    const off = done(insertUnits(small, { units: [{ kind: 'servo-drive' }, { kind: 'supply' }], at: null })).cabinet;
    expect(row(off, 2)).toBe('1 d, 2 e, 4 p, 5 u1, 6 u2');
    expect(find(off, 'units', 'u1')?.onChain).toBe(false);
    const there = done(insertUnits(small, { units: [{ kind: 'supply' }], at: null, place: { row: 1, slot: 2 } })).cabinet;
    expect(row(there, 1)).toBe('1 a, 2 u1, 3 b, 4 c');
  });

  it('should refuse what a chain does not take', () => {
    expect(refused(insertUnits(small, { units: [{ kind: 'supply' }], at: { endOf: 'ch1' } }))).toBe('edit-supply-on-chain');
    expect(refused(insertUnits(small, { units: [{ kind: 'encoder-interface' }], at: null }))).toBe('edit-encoder-off-chain');
    expect(refused(insertUnits(small, { units: [{ kind: 'servo-drive' }], at: { afterUnit: 'e' } }))).toBe('join-off-chain');
    expect(refused(insertUnits(small, { units: [{ kind: 'servo-drive' }], at: { afterUnit: 'p' } }))).toBe('join-supply');
    expect(refused(insertUnits(small, { units: [{ kind: 'servo-drive' }], at: { onLink: 'gone' } }))).toBe('edit-thing-unknown');
    const place = { row: 2, slot: 12_000 };
    expect(refused(insertUnits(small, { units: [{ kind: 'supply' }], at: null, place }))).toBe('edit-row-full');
    expect(whyNotInsert('supply', { endOf: 'ch1' })?.code).toBe('edit-supply-on-chain');
    expect(whyNotInsert('servo-drive', null)).toBeNull();
  });

  it('should begin an empty cabinet with row 1, and give no places where nothing has one', () => {
    const first = done(addChain({ id: 'x', name: 'New' })).cabinet;
    expect(first.controller).toMatchObject({ designation: '-KE1' });
    const one = done(insertUnits(first, { units: [{ kind: 'servo-drive' }, { kind: 'servo-drive' }], at: { endOf: 'chain1' } })).cabinet;
    expect(row(one, 1)).toBe('1 u1, 2 u2');
    const unplaced = { ...small, units: small.units?.map(({ row: _row, slot: _slot, ...unit }) => unit) };
    const { cabinet } = done(insertUnits(unplaced, { units: [{ kind: 'servo-drive' }], at: { endOf: 'ch1' } }));
    expect(find(cabinet, 'units', 'u1')).not.toHaveProperty('row');
  });

  it('should number designations by the edition of the cabinet, and go on with the stem in use', () => {
    const old = done(insertUnits({ ...small, designationEdition: '2009' }, { units: [{ kind: 'servo-drive' }], at: { endOf: 'ch1' } }));
    expect(find(old.cabinet, 'units', 'u1')?.designation).toBe('-TA1');
    const units = small.units?.map((unit) => ({ ...unit, designation: `=M2+S1${unit.designation}` }));
    const { cabinet } = done(insertUnits({ ...small, units }, { units: [{ kind: 'servo-drive' }], at: { endOf: 'ch1' } }));
    expect(find(cabinet, 'units', 'u1')?.designation).toBe('=M2+S1-TB10');
  });
});

describe('removeThings', () => {
  it('should join the chain, hand the feed on, take feedback cables along and close up the row', () => {
    const { cabinet, removed } = done(removeThings(small, ['a']));
    expect(chains(cabinet)).toEqual(['w1 b w3 c', 'w4 d']);
    expect([...removed].sort()).toEqual(['a', 'g1', 'l1', 'w2']);
    expect(find(cabinet, 'leads', 'l2')).toMatchObject({ from: { unit: 'p' }, to: { unit: 'b' } });
    expect(row(cabinet, 1)).toBe('1 b, 2 c');
  });

  it('should undo an insertion, whatever stood there', () => {
    const { cabinet } = done(insertUnits(small, { units: [{ kind: 'servo-drive' }], at: { onLink: 'w3' } }));
    expect(done(removeThings(cabinet, ['u1'])).cabinet).toEqual(small);
  });

  it('should take out the last unit with its cable, and cables by themselves', () => {
    expect(chains(done(removeThings(small, ['c'])).cabinet)[0]).toBe('w1 a w2 b');
    expect(chains(done(removeThings(small, ['w3'])).cabinet)[0]).toBe('w1 a w2 b');
  });

  it('should take a chain out only with its units', () => {
    expect(refused(removeThings(small, ['ch2']))).toBe('edit-chain-in-use');
    const { cabinet } = done(removeThings(small, ['ch2', 'd']));
    expect(chains(cabinet)).toEqual(['w1 a w2 b w3 c']);
    expect(find(cabinet, 'links', 'w4')).toBeUndefined();
  });

  it('should refuse the controller and what is not there, and then do nothing', () => {
    expect(refused(removeThings(small, ['nc']))).toBe('edit-controller-stays');
    expect(refused(removeThings(small, ['a', 'gone']))).toBe('edit-thing-unknown');
  });

  it('should forget a supply of the DC link with the supply', () => {
    const units = small.units?.map((unit) => (unit.id === 'a' ? { ...unit, dcLinkSupply: 'p' } : unit));
    expect(find(done(removeThings({ ...small, units }, ['p'])).cabinet, 'units', 'a')).not.toHaveProperty('dcLinkSupply');
  });
});

describe('moveInChain', () => {
  it('should keep every cable, and change no more than the plugs around', () => {
    const { cabinet } = done(moveInChain(small, ['a'], { endOf: 'ch1' }));
    expect(chains(cabinet)[0]).toBe('w1 b w3 c w2 a');
    expect(row(cabinet, 1)).toBe(row(small, 1));
  });

  it('should move several in the order given, between chains and from off a chain', () => {
    expect(chains(done(moveInChain(small, ['c', 'b'], { chain: 'ch2', position: 1 })).cabinet)).toEqual(['w1 a', 'w4 c w3 b w2 d']);
    expect(chains(done(moveInChain(small, ['e'], { onLink: 'w2' })).cabinet)[0]).toBe('w1 a w2 e w5 b w3 c');
  });

  it('should take a spot beside what moves as the spot before it', () => {
    expect(chains(done(moveInChain(small, ['b', 'c'], { afterUnit: 'c' })).cabinet)[0]).toBe('w1 a w2 b w3 c');
    expect(chains(done(moveInChain(small, ['a', 'b', 'c'], { onLink: 'w3' })).cabinet)[0]).toMatch(/^w1 a w\d b w\d c$/);
    expect(refused(moveInChain(small, ['p'], { endOf: 'ch1' }))).toBe('join-supply');
    const loose = done(removeThings(small, ['w1'])).cabinet;
    expect(refused(moveInChain(loose, ['a'], { beforeUnit: 'a' }))).toBe('edit-no-spot');
  });
});

describe('takeOffChain', () => {
  it('should join the chain behind what it takes off, and leave no plug in it', () => {
    const { cabinet, removed } = done(takeOffChain(small, ['a', 'b']));
    expect(chains(cabinet)).toEqual(['w1 c', 'w4 d']);
    expect(removed).toEqual(['w2', 'w3']);
    expect(cabinet.units?.filter(({ onChain }) => onChain === false).map(({ id }) => id)).toEqual(['a', 'b', 'e']);
    const loose = done(replugEnd(small, 'w2', 'lower', null)).cabinet;
    expect(done(takeOffChain(loose, ['a'])).cabinet.links?.find(({ id }) => id === 'w2')).toEqual({
      id: 'w2',
      designation: '-WH2',
      lengthM: 0.4,
    });
    expect(done(takeOffChain(small, ['e'])).changed).toEqual([]);
  });

  it('should refuse what is on a chain or nowhere', () => {
    expect(refused(takeOffChain(small, ['a', 'c']))).toBe('edit-encoder-off-chain');
    expect(refused(takeOffChain(small, ['p']))).toBe('join-supply');
  });
});

describe('moveToPlace', () => {
  it.each([
    [['a'], { row: 1, slot: 4 }, '1 b, 2 c, 3 a', '1 d, 2 e, 4 p'],
    [['c'], { row: 1, slot: 1 }, '1 c, 2 a, 3 b', '1 d, 2 e, 4 p'],
    [['b'], { row: 2, slot: 2 }, '1 a, 2 c', '1 d, 2 b, 3 e, 4 p'],
    [['a', 'b'], { row: 2, slot: 1 }, '1 c', '1 a, 2 b, 3 d, 4 e, 5 p'],
    [['a'], { row: 1, slot: 1 }, '1 a, 2 b, 3 c', '1 d, 2 e, 4 p'],
    [['p'], { row: 2, slot: 3 }, '1 a, 2 b, 3 c', '1 d, 2 e, 3 p'],
  ])('should move %j to %j', (ids, place, first, second) => {
    const { cabinet } = done(moveToPlace(small, ids, place));
    expect(row(cabinet, 1)).toBe(first);
    expect(row(cabinet, 2)).toBe(second);
    expect(chains(cabinet)).toEqual(chains(small));
  });
});

describe('joining', () => {
  it('should join in either order, and say why not', () => {
    const open = done(removeThings(small, ['w3'])).cabinet;
    expect(whyNotJoin(open, { unit: 'c', side: 'up' }, { unit: 'b', side: 'down' })).toBeNull();
    expect(chains(done(joinPorts(open, { unit: 'c', side: 'up' }, { unit: 'b', side: 'down' })).cabinet)[0]).toBe('w1 a w2 b w5 c');
  });

  it.each([
    [{ unit: 'b', side: 'down' }, { unit: 'd', side: 'down' }, 'join-two-down'],
    [{ chain: 'ch1' }, { chain: 'ch2' }, 'join-two-down'],
    [{ unit: 'b', side: 'up' }, { unit: 'd', side: 'up' }, 'join-two-up'],
    [{ unit: 'd', side: 'up' }, { unit: 'd', side: 'down' }, 'join-itself'],
    [{ unit: 'c', side: 'down' }, { unit: 'd', side: 'up' }, 'join-port-taken'],
    [{ unit: 'p', side: 'up' }, { unit: 'd', side: 'down' }, 'join-supply'],
    [{ unit: 'e', side: 'up' }, { unit: 'd', side: 'down' }, 'join-off-chain'],
    [{ unit: 'x', side: 'up' }, { unit: 'd', side: 'down' }, 'edit-thing-unknown'],
  ] as const)('should not join %j with %j: %s', (a, b, code) => {
    expect(whyNotJoin(small, a, b)?.code).toBe(code);
    expect(whyNotJoin(small, b, a)?.code).toBe(code);
    expect(refused(joinPorts(small, a, b))).toBe(code);
  });

  it('should lay a cable loose, or into one port that is free, by the end that fits it', () => {
    const fresh = ({ cabinet }: ReturnType<typeof done>) => cabinet.links?.find(({ id }) => !small.links?.some((link) => link.id === id));
    expect(fresh(done(layCable(small, null)))).not.toHaveProperty('upper');
    expect(fresh(done(layCable(small, { unit: 'd', side: 'down' })))).toMatchObject({ upper: { unit: 'd' } });
    const open = done(removeThings(small, ['w3'])).cabinet;
    const laid = done(layCable(open, { unit: 'c', side: 'up' })).cabinet.links ?? [];
    expect(laid[laid.length - 1]).toMatchObject({ lower: { unit: 'c' } });
    expect(whyNotLay(small, { unit: 'a', side: 'down' })?.code).toBe('join-port-taken');
    expect(refused(layCable(small, { unit: 'p', side: 'up' }))).toBe('join-supply');
    expect(refused(layCable(small, { unit: 'x', side: 'up' }))).toBe('edit-thing-unknown');
  });

  it('should not close a loop', () => {
    const loose = done(removeThings(small, ['w1'])).cabinet;
    expect(whyNotJoin(loose, { unit: 'c', side: 'down' }, { unit: 'a', side: 'up' })?.code).toBe('join-loop');
  });

  it('should re-plug an end, and pull it', () => {
    expect(whyNotReplug(small, 'w3', 'lower', { unit: 'd', side: 'up' })?.code).toBe('join-port-taken');
    expect(whyNotReplug(small, 'w3', 'lower', { unit: 'd', side: 'down' })?.code).toBe('join-lower-plug');
    expect(whyNotReplug(small, 'w3', 'upper', { unit: 'd', side: 'up' })?.code).toBe('join-upper-plug');
    expect(whyNotReplug(small, 'w3', 'lower', { unit: 'c', side: 'up' })).toBeNull();
    const { cabinet } = done(replugEnd(small, 'w3', 'upper', { unit: 'd', side: 'down' }));
    expect(chains(cabinet)).toEqual(['w1 a w2 b', 'w4 d w3 c']);
    expect(find(done(replugEnd(small, 'w3', 'upper', null)).cabinet, 'links', 'w3')).not.toHaveProperty('upper');
    expect(refused(replugEnd(small, 'gone', 'upper', null))).toBe('edit-thing-unknown');
  });
});

describe('leads, chains and feedback cables', () => {
  it('should feed several units at once, each for itself or one through the other', () => {
    const bare = { ...small, leads: [] };
    const each = done(feedUnits(bare, { unit: 'p' }, ['a', 'b'], 'each')).cabinet.leads;
    expect(each?.map(({ from, to }) => `${from?.unit} ${to?.unit}`)).toEqual(['p a', 'p b']);
    const through = done(feedUnits(bare, { unit: 'p' }, ['a', 'b', 'c'], 'through')).cabinet.leads;
    expect(through?.map(({ from, to }) => `${from?.unit} ${to?.unit}`)).toEqual(['p a', 'a b', 'b c']);
    expect(through?.map(({ designation }) => designation)).toEqual(['-WD1', '-WD2', '-WD3']);
  });

  it('should not feed a supply or a unit by itself', () => {
    expect(whyNotFeed(small, { unit: 'a' }, 'p')?.code).toBe('feed-into-supply');
    expect(whyNotFeed(small, { unit: 'a' }, 'a')?.code).toBe('feed-itself');
    expect(whyNotFeed(small, { unit: 'p', output: 'x9' }, 'a')?.code).toBe('edit-thing-unknown');
    expect(whyNotFeed(small, { unit: 'p' }, 'a')).toBeNull();
    expect(refused(reconnectLead(small, 'l2', { to: 'a' }))).toBe('feed-itself');
    expect(find(done(reconnectLead(small, 'l2', { from: { unit: 'p' } })).cabinet, 'leads', 'l2')?.from).toEqual({ unit: 'p' });
    expect(find(done(reconnectLead(small, 'l2', { to: null })).cabinet, 'leads', 'l2')).not.toHaveProperty('to');
  });

  it('should add a chain with the next number, and a feedback cable where one can sit', () => {
    expect(find(done(addChain(small)).cabinet, 'chains', 'chain1')?.number).toBe(3);
    const { cabinet, added } = done(addFeedback(small, { unit: 'b', positionKept: 'none-needed' }));
    expect(find(cabinet, 'feedbacks', added[0])).toMatchObject({ unit: 'b', designation: '-WG2', positionKept: 'none-needed' });
    expect(refused(addFeedback(small, { unit: 'p' }))).toBe('edit-feedback-on-supply');
  });
});

describe('what belongs together', () => {
  const { topology } = buildTopology(small);
  it('should pick a chain, and what lies up and down of a unit', () => {
    expect(chainOf(topology, 'b')).toEqual({ units: ['a', 'b', 'c'], links: ['w1', 'w2', 'w3'] });
    expect(upstreamOf(topology, 'b')).toEqual({ units: ['a', 'b'], links: ['w1', 'w2'] });
    expect(downstreamOf(topology, 'b')).toEqual({ units: ['b', 'c'], links: ['w3'] });
    expect(chainOf(topology, 'p')).toEqual({ units: ['p'], links: [] });
    expect(chainOf(topology, 'gone')).toEqual({ units: [], links: [] });
  });
});
