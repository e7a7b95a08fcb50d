import { describe, expect, it } from 'vitest';
import {
  figureWords,
  makeNames,
  sumHeadings,
  sumStatements,
  sumsPageWords,
  termBasisWords,
  termStatusWords,
  termWords,
  verdictWords,
  wordDuration,
  wordMissing,
  wordNumber,
  wordTerm,
  wordTermValue,
  wordWaitingTime,
} from '../../engine/messages/index.ts';
import { figureCodes, termBases, termUnits } from '../../engine/sums/terms.ts';
import { rawCodesIn, textsIn } from '../messages/rawCodes.ts';
import { oneLink, sound, sumsOf } from './sketch.ts';

const codes = [...Object.keys(termUnits), ...termBases, ...figureCodes].filter((code) => code.includes('-'));
/** Ordinary words that happen to be spelt like a code. */
const words = ['cross-section'];

describe('the words of the sums', () => {
  it.each(Object.entries({ figureWords, sumHeadings, sumStatements, termBasisWords, termStatusWords, termWords, verdictWords }))(
    'should hold no raw code in %s',
    (_, table) => {
      for (const text of textsIn(table)) {
        expect(text.trim()).toBe(text);
        expect(rawCodesIn(text), text).toEqual([]);
        expect(
          codes.filter((code) => text.split(/[^A-Za-z0-9-]+/).includes(code) && !words.includes(code)),
          text,
        ).toEqual([]);
      }
    },
  );

  it.each([
    [2.7449, '2.74'],
    [-0.004, '−0.004'],
    [0, '0'],
    [1e-12, '0'],
    [12, '12'],
    [Number.NaN, '–'],
  ])('should write %d as %s', (value, text) => {
    expect(wordNumber(value)).toBe(text);
  });

  it.each([
    [0, '0 s'],
    [0.1, '1 s'],
    [59.2, '1 min'],
    [60, '1 min'],
    [393.04, '6 min 34 s'],
    [3600, '1 h'],
    [3661, '1 h 2 min'],
    [Number.POSITIVE_INFINITY, '–'],
  ])('should round %d seconds up: %s', (seconds, text) => {
    expect(wordDuration(seconds)).toBe(text);
  });

  it('should name a missing figure by the thing that lacks it', () => {
    const names = makeNames(sound(oneLink()));
    const missing = [
      { figure: 'load', of: 'u1' },
      { figure: 'inrush', of: 'u1' },
      { figure: 'ageing-reserve', of: null },
    ] as const;
    expect(wordMissing(names, missing)).toEqual([
      '-U1: 24 V load, 24 V inrush not written down',
      'The cabinet: ageing reserve not written down',
    ]);
  });

  it('should say a term with its value, origin and source', () => {
    const names = makeNames(sound(oneLink()));
    const [budget] = sumsOf(oneLink()).optical;
    const [launch, , loss] = budget?.margin.from ?? [];
    expect(launch && wordTerm(names, launch, 'w1')).toBe('launch power, at least (chain 1) = −13.6 dBm, documented; invented data sheet');
    expect(loss && wordTerm(names, loss, 'w1')).toBe('loss of the cable = 2 dB, computed: sum of the losses');
    expect(wordTermValue({ value: 4, unit: 'A', bound: 'at-least' })).toBe('at least 4 A');
    expect(wordTermValue({ value: null, unit: 'A', bound: null })).toBe('–');
  });

  it('should send to the manual and the meter with a waiting time and without one', () => {
    for (const text of [wordWaitingTime(null), wordWaitingTime(45)]) {
      expect(text).toMatch(/manual/);
      expect(text).toMatch(/measure/);
    }
    expect(wordWaitingTime(null)).not.toMatch(/\d/);
  });

  it('should say the waiting time in one short line of the cautions, and no number without data', () => {
    expect(sumsPageWords.waitShort(224.2)).toBe(
      'Wait for the DC link: 3 min 45 s to 60 V by its figures, at least as the manual says. Then measure',
    );
    expect(sumsPageWords.waitShort(null)).toBe('Wait for the DC link: time not known, see the machine’s manual. Then measure');
    for (const time of [null, 1, 45, 224.2, 3600]) expect(sumsPageWords.waitShort(time).length).toBeLessThanOrEqual(100);
  });
});
