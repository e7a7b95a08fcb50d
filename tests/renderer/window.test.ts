import { describe, expect, it } from 'vitest';
import { displayMeanings, supplyMeanings } from '../../engine/schema/index.ts';
import { buildTopology } from '../../engine/topology/index.ts';
import { nextUnit } from '../../renderer/canvas/neighbours.ts';
import { makeProjectionCache } from '../../renderer/canvas/projectionCache.ts';
import { workspaces } from '../../renderer/draw/drawState.ts';
import { entryChoices } from '../../renderer/find/entryChoices.ts';
import { markOf } from '../../renderer/marks/DisplayMark.tsx';
import { listShortcuts } from '../../renderer/shell/shortcuts.ts';
import { findLegend, readCode } from '../../renderer/state/legend.ts';
import { defaultPreferences, readPreferences, writePreferences } from '../../renderer/state/preferences.ts';
import { soundSamples } from '../samples/index.ts';

describe('the keys', () => {
  it('should give no key to two commands of one workspace', () => {
    for (const shown of workspaces) {
      const heard = listShortcuts().filter(({ workspace }) => workspace === null || workspace === shown);
      const keys = heard.map((one) => one.keys.toLowerCase());
      expect(new Set(keys).size).toBe(keys.length);
      expect(keys.length).toBeGreaterThan(5);
    }
  });
});

describe('entryChoices', () => {
  it('should offer every meaning a unit or a supply can have, each digit once and with one sense', () => {
    for (const [kind, meanings] of [
      ['servo-drive', displayMeanings],
      ['supply', supplyMeanings],
    ] as const) {
      const choices = entryChoices(kind);
      expect(choices.filter((choice) => choice.meanings.length === 1).map((choice) => choice.meanings[0])).toEqual([...meanings]);
      expect(new Set(choices.map(({ key }) => key)).size).toBe(choices.length);
      expect(choices.every((choice) => choice.meanings.every((meaning) => (meanings as readonly string[]).includes(meaning)))).toBe(true);
    }
    const digits = new Map(entryChoices('servo-drive').map(({ key, words }) => [key, words]));
    for (const { key, words } of entryChoices('supply')) expect(digits.get(key)).toBe(words);
  });

  it('should give every answer a mark of its own', () => {
    const marks = entryChoices('spindle-drive').map(({ meanings }) => markOf(meanings));
    expect(new Set(marks).size).toBe(marks.length);
  });
});

describe('readCode', () => {
  const legend = {
    id: 'l',
    name: 'Invented',
    codes: [
      { code: 'n7', meanings: ['upstream-loss' as const] },
      { code: 'N8', meanings: ['dark' as const, 'quiet' as const] },
      { code: 'n8', meanings: ['both-losses' as const] },
    ],
  };

  it('should take capital and small letters for equal unless the legend has both', () => {
    expect(readCode(legend, ' N7 ')).toEqual({ code: 'n7', meanings: ['upstream-loss'], known: true });
    expect(readCode(legend, 'n8')?.meanings).toEqual(['both-losses']);
    expect(readCode(legend, 'N8')?.meanings).toEqual(['dark', 'quiet']);
  });

  it('should keep what the legend has not, and say nothing of nothing', () => {
    expect(readCode(legend, 'x1')).toEqual({ code: 'x1', meanings: ['other'], known: false });
    expect(readCode(undefined, 'x1')?.known).toBe(false);
    expect(readCode(legend, '  ')).toBeNull();
  });

  it('should find the legend of a unit by its type, else the usual one of the cabinet', () => {
    const cabinet = {
      id: 'c',
      name: 'c',
      legends: [legend, { ...legend, id: 'own' }],
      defaultLegend: 'l',
      types: [{ id: 't', name: 'T', legend: 'own' }],
      units: [
        { id: 'a', kind: 'servo-drive' as const, designation: '-TB1', type: 't' },
        { id: 'b', kind: 'servo-drive' as const, designation: '-TB2' },
      ],
    };
    expect(findLegend(cabinet, 'a')?.id).toBe('own');
    expect(findLegend(cabinet, 'b')?.id).toBe('l');
  });
});

describe('the preferences', () => {
  const storage = (text: string | null) => ({ getItem: () => text });

  it('should read what they wrote', () => {
    let kept = '';
    const preferences = { ...defaultPreferences, theme: 'dark' as const, foldChains: true };
    writePreferences(
      {
        setItem: (_key, text) => {
          kept = text;
        },
      },
      preferences,
    );
    expect(readPreferences(storage(kept))).toMatchObject(preferences);
  });

  it('should fall back to the usual ones, value by value, whatever stands there', () => {
    for (const text of [null, '', '{', '[]', '7', '{"version":99,"theme":"dark"}'])
      expect(readPreferences(storage(text))).toEqual(defaultPreferences);
    expect(readPreferences(storage('{"version":1,"theme":"pink","foldChains":true}'))).toMatchObject({ theme: 'system', foldChains: true });
    expect(readPreferences(null)).toEqual(defaultPreferences);
  });
});

describe('nextUnit', () => {
  it('should lead from the first unit through every other one to the last, and back to the report', () => {
    for (const { content } of soundSamples) {
      const { topology } = buildTopology(content);
      let at = topology.chains[0]?.units[0];
      const walked = new Set<string>();
      while (at !== undefined && !walked.has(at)) {
        walked.add(at);
        const next = nextUnit(topology, at, 'ArrowRight');
        at = next?.kind === 'unit' ? next.unit : undefined;
      }
      expect(walked.size).toBe(topology.units.size);
      const first = topology.chains[0];
      expect(first?.units[0] && nextUnit(topology, first.units[0], 'ArrowLeft')).toEqual({ kind: 'chain', chain: first?.id });
    }
  });
});

describe('makeProjectionCache', () => {
  it('should give the same object for the same picture, another for a changed one, and forget what is gone', () => {
    const project = makeProjectionCache((view: { readonly id: string; readonly words: string }) => ({
      id: view.id,
      position: { x: 0, y: 0 },
      data: { view },
    }));
    const idOf = ({ id }: { readonly id: string }) => id;
    const [a, b] = project(
      [
        { id: 'a', words: 'quiet' },
        { id: 'b', words: 'dark' },
      ],
      idOf,
    );
    const [again, changed] = project(
      [
        { id: 'a', words: 'quiet' },
        { id: 'b', words: 'quiet' },
      ],
      idOf,
    );
    expect(again).toBe(a);
    expect(changed).not.toBe(b);
    expect(project([], idOf)).toEqual([]);
    expect(project([{ id: 'a', words: 'quiet' }], idOf)[0]).not.toBe(a);
  });
});
