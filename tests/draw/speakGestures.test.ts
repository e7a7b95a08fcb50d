import { afterEach, beforeEach, describe, expect, it, vi } from 'vitest';
import { type Gesture, makeGestureStore, noGesture } from '../../renderer/draw/gesture.ts';
import { previewDrop } from '../../renderer/draw/preview.ts';
import { speakGestures } from '../../renderer/draw/speakGestures.ts';
import type { DropTarget } from '../../renderer/draw/spots.ts';
import type { DocumentState } from '../../renderer/state/appState.ts';
import { type MakeEffects, makeWorkbench } from '../../renderer/state/dispatcher.ts';
import { defaultPreferences } from '../../renderer/state/preferences.ts';
import { readContent } from '../support/sampleCabinets.ts';

const noEffects = (() => ({ canvas: () => null })) as unknown as MakeEffects;
const between: DropTarget = { spot: { chain: 'c1', position: 2 }, place: null, link: null, mates: [], opening: null };

function setUp() {
  const document: DocumentState = {
    cabinet: readContent('two-chains'),
    caseRecord: { id: 'case', name: 'case', evidence: { snapshots: [{}] } },
  };
  const { store, dispatch } = makeWorkbench(
    { document, source: { kind: 'sample', name: 'test' }, preferences: defaultPreferences },
    noEffects,
  );
  dispatch('go-draw');
  const gestures = makeGestureStore();
  const heard: string[] = [];
  const stop = speakGestures({ gestures, store, announce: (text) => void heard.push(text) });
  const chain = store.getState().checked.topology.chains[0];
  const units = chain?.units ?? [];
  const carry = (target: DropTarget | null): Gesture => {
    const carried = { kind: 'move' as const, units: [units[2] ?? ''] };
    return {
      kind: 'carry',
      carried,
      pointer: { x: 0, y: 0 },
      target,
      preview: target && previewDrop(store.getState(), carried, target),
    };
  };
  const target = { ...between, spot: { chain: chain?.id ?? '', position: 1 } };
  return { store, dispatch, gestures, heard, stop, carry, target, units, show: (gesture: Gesture) => gestures.setState({ gesture }) };
}

beforeEach(() => void vi.useFakeTimers());
afterEach(() => void vi.useRealTimers());
const settle = () => vi.advanceTimersByTimeAsync(400);

describe('speakGestures', () => {
  it('should tell what is taken hold of, where it would land once the pointer rests, and what was done', async () => {
    const { heard, show, carry, target, dispatch, units } = setUp();
    show(carry(null));
    expect(heard).toEqual(['-TB3: taken hold of. Escape puts it back.']);
    // Crossed, not rested on.
    await vi.advanceTimersByTimeAsync(100);
    show(carry(target));
    await settle();
    show(carry(target));
    await settle();
    expect(heard.slice(1)).toHaveLength(1);
    expect(heard[1]).toMatch(/^Insert -TB3 at the head of chain 1\./);
    show(noGesture);
    dispatch('move-units', { ids: [units[2] ?? ''], to: target.spot });
    await settle();
    expect(heard.slice(2)).toEqual(['Done: move -TB3.']);
  });

  it('should say that it was put back, and tell no place any more', async () => {
    const { heard, show, carry, target } = setUp();
    show(carry(target));
    show(noGesture);
    await settle();
    expect(heard).toEqual(['-TB3: taken hold of. Escape puts it back.', 'Put back. Nothing was changed.']);
  });

  it('should tell why a cable does not go in, and leave a refusal to whoever tells it', async () => {
    const { heard, show, store, dispatch, units } = setUp();
    const [first = '', , third = ''] = units;
    show({
      kind: 'pull',
      pulled: { kind: 'port', port: { unit: first, side: 'down' } },
      from: { x: 0, y: 0 },
      to: { x: 0, y: 0 },
      over: { kind: 'port', port: { unit: third, side: 'down' } },
      refusal: { code: 'call-refused', severity: 'refused', where: '', subjects: [], facts: { call: 'a', reason: 'failed' } },
      bare: false,
      joinable: new Set(),
      sticky: false,
    });
    await settle();
    expect(heard[0]).toBe('An end of a new cable: taken hold of. Escape puts it back.');
    expect(heard[1]).toMatch(/^This cannot go here: /);
    show(noGesture);
    dispatch('join-ports', { a: { unit: first, side: 'down' }, b: { unit: third, side: 'down' } });
    await settle();
    expect(store.getState().refusal).not.toBeNull();
    expect(heard).toHaveLength(2);
  });
});
