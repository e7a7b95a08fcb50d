import { describe, expect, it } from 'vitest';
import { diagnose, lookOutcomes } from '../../engine/diagnosis/index.ts';
import { makeNames } from '../../engine/messages/index.ts';
import type { Evidence, Snapshot } from '../../engine/schema/index.ts';
import { wordTime } from '../../renderer/files/wordTime.ts';
import { listCandidates } from '../../renderer/find/candidates.ts';
import { makeCandidateWords } from '../../renderer/find/candidateWords.ts';
import { checkChoices, looksAt, thingsToCheck } from '../../renderer/find/checkChoices.ts';
import { meantKey } from '../../renderer/find/entryKeys.ts';
import { asksHalted, nextReport } from '../../renderer/find/entryWalk.ts';
import { plainCabinet } from '../bench/cabinets.ts';
import { drivesContent, seenSnapshot, soundCabinet } from '../plan/smallCabinet.ts';

describe('meantKey', () => {
  it('should be the figure on the number pad whatever NumLock makes of it, and leave all other keys alone', () => {
    expect(meantKey({ key: 'Home', code: 'Numpad7' })).toBe('7');
    expect(meantKey({ key: 'Clear', code: 'Numpad5' })).toBe('5');
    expect(meantKey({ key: '4', code: 'Numpad4' })).toBe('4');
    expect(meantKey({ key: 'Delete', code: 'NumpadDecimal' })).toBe('.');
    expect(meantKey({ key: 'ArrowLeft', code: 'ArrowLeft' })).toBe('ArrowLeft');
    expect(meantKey({ key: 'Enter', code: 'NumpadEnter' })).toBe('Enter');
    expect(meantKey({ key: '+', code: 'NumpadAdd' })).toBe('+');
  });
});

describe('asksHalted', () => {
  const record = (snapshot: Snapshot) => ({ caseRecord: { id: 'c', name: 'c', evidence: { snapshots: [snapshot] } } });

  it('should ask at the end of a walk where nobody said it and no report names a loss', () => {
    expect(asksHalted(record({}))).toBe(true);
    expect(asksHalted(record({ reports: [{ chain: 'c1', gaps: ['none'] }] }))).toBe(true);
    expect(asksHalted(record({ reports: [{ chain: 'c1', gaps: [2, 'none'] }] }))).toBe(true);
    expect(asksHalted(record({ reports: [{ chain: 'c1', gaps: [2] }] }))).toBe(false);
    expect(asksHalted(record({ halted: false }))).toBe(false);
  });
});

describe('nextReport', () => {
  const cabinet = plainCabinet(3, 2);
  const state = (snapshot: Snapshot) => ({
    checked: { cabinet, topology: cabinet, problems: [] },
    caseRecord: { id: 'c', name: 'c', evidence: { snapshots: [snapshot] } },
  });
  const [first, second, third] = cabinet.chains.map(({ id }) => id);

  it('should go on to the chains that are left when the report of one cannot be read, and end after the last of them', () => {
    expect(nextReport(state({}))).toBe(first);
    expect(nextReport(state({}), [String(first)])).toBe(second);
    const entered = state({ reports: [{ chain: String(second), gaps: ['none'] }] });
    expect(nextReport(entered, [String(first)])).toBe(third);
    expect(nextReport(entered, [String(first), String(third)])).toBe(null);
  });
});

describe('checkChoices', () => {
  it('should offer every outcome of a look whatever is expected, each once and with a digit of its own', () => {
    const cabinet = soundCabinet(drivesContent(2));
    for (const thing of [...thingsToCheck(cabinet).links, ...thingsToCheck(cabinet).units]) {
      for (const look of looksAt(cabinet, thing)) {
        const choices = checkChoices(look, 'not looked at');
        expect(choices.flatMap(({ outcomes }) => (outcomes.length === 1 ? outcomes : []))).toEqual(lookOutcomes(look));
        expect(new Set(choices.map(({ key }) => key)).size).toBe(choices.length);
        expect(choices.every(({ words }) => words !== '')).toBe(true);
      }
    }
  });
});

describe('the name of a suspect', () => {
  const cabinet = soundCabinet(drivesContent(4));
  const titleOf = (evidence: Evidence) => {
    const [first] = listCandidates(diagnose(cabinet, evidence));
    if (!first) throw new Error('nobody is suspected');
    const words = makeCandidateWords(makeNames(cabinet));
    return [words.title(first).text, words.object(first)];
  };
  const first = seenSnapshot(cabinet, [{ item: 'cable', link: 'w3', mode: 'cut', presence: 'steady' }]);
  const cleaned: Snapshot = {
    interventions: [
      { do: 'clean-plug', link: 'w3', end: 'upper' },
      { do: 'clean-plug', link: 'w3', end: 'lower' },
    ],
    restarted: true,
    onset: 'at-power-up',
    halted: true,
  };

  it('should leave the plugs out once both were cleaned without success', () => {
    expect(titleOf({ snapshots: [first] })).toEqual(['-WH3 cable or plugs', 'cable -WH3 and its plugs']);
    expect(titleOf({ snapshots: [first, cleaned] })).toEqual(['-WH3 cable', 'cable -WH3']);
  });
});

describe('wordTime', () => {
  it('should write hours and minutes alike everywhere, with the day where it is another', () => {
    const now = new Date(2026, 10, 26, 23, 50);
    expect(wordTime(new Date(2026, 10, 26, 9, 5, 7).toISOString(), now)).toBe('today 09:05');
    expect(wordTime(new Date(2026, 10, 25, 17, 30).toISOString(), now)).toBe('2026-11-25 17:30');
    expect(wordTime('no time', now)).toBe('no time');
  });
});
