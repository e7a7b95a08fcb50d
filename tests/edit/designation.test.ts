import { describe, expect, it } from 'vitest';
import { designationTrouble, renumber } from '../../engine/edit/index.ts';
import { done, find, refused, small } from './small.ts';

describe('designationTrouble', () => {
  // C4. Prefix signs and the order of letters and digits: IEC 81346-1, examples "=ST+HB-Q1" and "=PU01+CP1-Q1" as quick references give them.
  it.each([
    ['=ST+HB-T1', 'servo-drive', null],
    ['=PU01+CP1-T1', 'servo-drive', null],
    ['-TB1', 'servo-drive', null],
    ['−TB1', 'servo-drive', null],
    ['==A=B-TB1:X2', 'servo-drive', null],
    ['+S1', 'servo-drive', null],
    ['', 'servo-drive', null],
    ['TB1', 'servo-drive', 'no-sign'],
    ['-1TB1', 'servo-drive', 'digit-first'],
    ['=1A-TB1', 'servo-drive', 'digit-first'],
    ['-', 'servo-drive', 'no-letters'],
    ['-KE1', 'servo-drive', 'other-class'],
    ['-WH3', 'link', null],
    ['-WD3', 'link', 'other-class'],
  ] as const)('should find with %j of a %s: %s', (designation, kind, trouble) => {
    expect(designationTrouble(designation, kind)).toBe(trouble);
  });

  // C6, C8. IEC 81346-2, both editions (from memory): a frequency converter is TA in 2009 and TB in 2019, a controller KF and KE.
  it.each([
    ['-TA1', 'servo-drive', '2009', null],
    ['-TA1', 'servo-drive', '2019', 'other-class'],
    ['-KF1', 'controller', '2009', null],
    ['-KF1', 'controller', '2019', 'other-class'],
    ['-KE1', 'controller', '2019', null],
  ] as const)('should go by the edition: %s of a %s in %s', (designation, kind, edition, trouble) => {
    expect(designationTrouble(designation, kind, edition)).toBe(trouble);
  });
});

describe('renumber', () => {
  it('should number in the order given, each class letters for itself, and leave out what others bear', () => {
    const { cabinet } = done(renumber(small, ['d', 'c', 'a', 'w3', 'w1', 'nc']));
    const named = (list: 'units' | 'links', id: string) => find(cabinet, list, id);
    // -TB2, -TB8 and -TB9 stay; -WH2 and -WH4 too.
    expect([named('units', 'd'), named('units', 'a')].map((unit) => unit && 'designation' in unit && unit.designation)).toEqual([
      '-TB1',
      '-TB3',
    ]);
    expect(named('units', 'c')).toMatchObject({ designation: '-KE1' });
    expect(cabinet.controller?.designation).toBe('-KE2');
    expect([named('links', 'w3'), named('links', 'w1')].map((link) => link && 'designation' in link && link.designation)).toEqual([
      '-WH1',
      '-WH3',
    ]);
  });

  it('should put a prefix before, begin where it is told to, and go by the edition', () => {
    const { cabinet } = done(renumber({ ...small, designationEdition: '2009' }, ['a', 'l4'], { prefix: '=M1+S2-', first: 10 }));
    expect(find(cabinet, 'units', 'a')?.designation).toBe('=M1+S2-TA10');
    expect(find(cabinet, 'leads', 'l4')?.designation).toBe('=M1+S2-WD10');
    expect(refused(renumber(small, ['gone']))).toBe('edit-thing-unknown');
  });
});
