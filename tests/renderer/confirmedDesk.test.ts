import { describe, expect, it } from 'vitest';
import { ok, type Result } from '../../engine/base/index.ts';
import { serializeCase } from '../../engine/cabinet/index.ts';
import { makeConfirmedDesk } from '../../renderer/confirmed/confirmedDesk.ts';
import type { FileAccess } from '../../renderer/files/access.ts';
import { isUnsaved } from '../../renderer/files/unsaved.ts';
import { makeWorkbench } from '../../renderer/state/dispatcher.ts';
import { makeEmptyCase } from '../../renderer/state/emptyCase.ts';
import { defaultPreferences } from '../../renderer/state/preferences.ts';
import { provedCase } from '../experience/provedCase.ts';
import { readContent } from '../support/sampleCabinets.ts';

const content = readContent('three-units');
const unit = content.units?.find(({ kind }) => kind !== 'supply')?.id ?? '';
const kept = provedCase(content, { fault: { item: 'board', unit, mode: 'dead-dark' }, act: { do: 'replace-board', unit }, id: 'earlier' });

type Listed = Awaited<ReturnType<FileAccess['listKeptCases']>>;

/** A window whose collection is read when the test says so. */
function begin({ takeConfirmed = true } = {}) {
  let settle: (listed: Listed) => void = () => undefined;
  const listing = new Promise<Listed>((resolve) => {
    settle = resolve;
  });
  const now = () => new Date('2026-11-26T08:00:00Z');
  const sample = { cabinet: content, caseRecord: makeEmptyCase(content) };
  const desks: ReturnType<typeof makeConfirmedDesk>[] = [];
  const bench = makeWorkbench(
    { document: sample, source: { kind: 'sample', name: 'test' }, preferences: { ...defaultPreferences, takeConfirmed } },
    (inner) => {
      const nothing = async (): Promise<Result<null>> => ok(null);
      const desk = makeConfirmedDesk({
        bench: inner,
        now,
        access: { listKeptCases: () => listing, keepCase: nothing, dropKeptCase: nothing },
      });
      desks.push(desk);
      // Nothing else of the window is asked for.
      return { canvas: () => null, files: desk.actions as never, draw: {} as never };
    },
  );
  const [desk] = desks;
  if (!desk) throw new Error('no desk was made');
  const reading = desk.actions.readKeptCases();
  const open = () =>
    bench.openDocument(
      { cabinet: content, caseRecord: desk.beginOn(makeEmptyCase(content, now())) },
      { source: { kind: 'new', name: '' } },
    );
  const read = async () => {
    const file = new TextEncoder().encode(serializeCase(kept));
    settle(ok({ cases: [{ key: 'a', name: 'a.case.json', content: file }], problems: [] }));
    await reading;
  };
  return { bench, desk, open, read, rates: () => bench.store.getState().caseRecord.evidence.rates };
}

const enter = { unit, meanings: ['dark' as const], at: '2026-11-26T08:01:00Z' };

describe('a case that begins', () => {
  it('should stand on the sharpened rates though it was begun before they were read, unsaved work it is none', async () => {
    const { bench, open, read, rates } = begin();
    open();
    expect(rates()).toBeUndefined();
    const before = bench.store.getState().revision;
    await read();
    expect(rates()).toMatchObject({ cases: 1 });
    const state = bench.store.getState();
    expect(isUnsaved(state)).toBe(false);
    expect(state.history.past).toHaveLength(0);
    expect(state.revision).toBeGreaterThan(before);
  });

  it('should get them as a step that can be undone once something is entered', async () => {
    const { bench, open, read, rates } = begin();
    open();
    bench.dispatch('enter-display', enter);
    await read();
    expect(rates()).toMatchObject({ cases: 1 });
    bench.dispatch('undo');
    expect(rates()).toBeUndefined();
    expect(bench.store.getState().caseRecord.evidence.snapshots[0]?.displays).toHaveLength(1);
  });

  it('should keep what the user chose, and leave alone a case that was not begun here', async () => {
    const chosen = begin({ takeConfirmed: false });
    chosen.open();
    await chosen.read();
    expect(chosen.rates()).toBeUndefined();

    const opened = begin();
    opened.open();
    const { result: _, ...old } = kept;
    opened.bench.openDocument({ cabinet: content, caseRecord: { ...old, id: 'opened' } }, { source: { kind: 'copy', name: 'x' } });
    await opened.read();
    expect(opened.rates()).toBeUndefined();

    const sample = begin();
    await sample.read();
    expect(sample.rates()).toBeUndefined();
  });

  it('should stand on what is read when it begins afterwards', async () => {
    const { open, read, rates } = begin();
    await read();
    open();
    expect(rates()).toMatchObject({ cases: 1, strength: 2 });
  });

  it('should weigh the assumed rates as the user set it, at once for what is read', async () => {
    const { bench, open, read, rates } = begin();
    await read();
    bench.dispatch('confirmed-cases');
    bench.dispatch('set-strength', { strength: 20 });
    expect(bench.store.getState().confirmed.experience?.strength).toBe(20);
    open();
    expect(rates()).toMatchObject({ cases: 1, strength: 20 });
  });
});
