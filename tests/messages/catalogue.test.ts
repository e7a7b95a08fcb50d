import { describe, expect, it } from 'vitest';
import {
  actWords,
  behaviourWords,
  cannotTellApart,
  cautionsDefer,
  cautionWords,
  circumstanceWords,
  directionWords,
  endWords,
  groupWords,
  haltedWords,
  healthyLooksDark,
  impossibleStatement,
  itemKindWords,
  lookWords,
  meaningSetWords,
  meaningWords,
  modeWords,
  momentWords,
  onsetWords,
  positionKeepingWords,
  presenceWords,
  rankedByRatesOnly,
  severityWords,
  unitKindWords,
  unknownBehaviourWords,
} from '../../engine/messages/index.ts';
import { rawCodesIn, textsIn } from './rawCodes.ts';

const tables = {
  actWords,
  behaviourWords,
  cautionWords,
  circumstanceWords,
  directionWords,
  endWords,
  groupWords,
  haltedWords,
  itemKindWords,
  lookWords,
  meaningSetWords,
  meaningWords,
  modeWords,
  momentWords,
  onsetWords,
  positionKeepingWords,
  presenceWords,
  severityWords,
  unitKindWords,
  single: { unknownBehaviourWords, cautionsDefer, cannotTellApart, rankedByRatesOnly, impossibleStatement, healthyLooksDark },
};

describe('the message catalogue', () => {
  it.each(Object.entries(tables))('should have words for everything in %s, and no raw code in them', (_name, table) => {
    const texts = textsIn(table);
    expect(texts.length).toBeGreaterThan(0);
    for (const text of texts) {
      expect(text.trim()).toBe(text);
      expect(text).not.toBe('');
      expect(rawCodesIn(text), text).toEqual([]);
    }
  });

  it('should tell the modes of one item apart', () => {
    for (const modes of Object.values(modeWords)) {
      const labels = Object.values(modes).map(({ label }) => label);
      expect(new Set(labels).size).toBe(labels.length);
    }
  });

  it('should tell the values of one behaviour parameter apart', () => {
    for (const { values } of Object.values(behaviourWords)) {
      const labels = Object.values(values).map(({ label }) => label);
      expect(new Set(labels).size).toBe(labels.length);
    }
  });

  it('should never claim that its cautions are complete, and defer to those who know', () => {
    expect(cautionsDefer).toMatch(/manual/);
    expect(cautionsDefer).toMatch(/local codes/);
    expect(cautionsDefer).toMatch(/licensed/);
    expect(cautionsDefer).toMatch(/not a complete list/);
    for (const { meaning } of Object.values(cautionWords)) {
      expect(meaning).not.toMatch(/\b(all|complete|every) (dangers|hazards|risks)\b|\bsafe to\b/i);
      // Short enough to be read standing.
      expect(meaning.length).toBeLessThan(120);
    }
  });
});
