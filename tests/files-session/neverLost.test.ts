import fc from 'fast-check';
import { afterEach, beforeEach, describe, expect, it, vi } from 'vitest';
import { parseCaseFile, serializeCase } from '../../engine/cabinet/index.ts';
import type { DisplayMeaning } from '../../engine/schema/index.ts';
import { sameContent } from '../../renderer/files/sameContent.ts';
import { isUnsaved } from '../../renderer/files/unsaved.ts';
import type { CaseRecord } from '../../renderer/state/sitting.ts';
import { soundSamples } from '../samples/index.ts';
import { FakeDisk, fakeMachine } from './fakeDisk.ts';
import { type Session, startSession } from './session.ts';

const cabinet = soundSamples.find(({ name }) => name === 'three-units')?.content;
if (!cabinet) throw new Error('the sample is missing');
const units = (cabinet.units ?? []).map(({ id }) => id);
const caseRecord: CaseRecord = { id: 'case', name: 'case', evidence: { snapshots: [{}] } };
const path = '/plant/grinder.case.json';
const at = '2026-11-25T10:42:00Z';
const sittings = { document: { cabinet, caseRecord } };

// The keeper's clock stands still: what it keeps, it keeps when the test says that a second has passed.
beforeEach(() => {
  vi.useFakeTimers({ toFake: ['setTimeout', 'clearTimeout'] });
  vi.spyOn(console, 'error').mockImplementation(() => undefined);
});
afterEach(() => {
  vi.useRealTimers();
});

type Deed =
  | { readonly do: 'enter'; readonly unit: string; readonly meaning: DisplayMeaning }
  | { readonly do: 'undo' }
  | { readonly do: 'redo' }
  | { readonly do: 'save' }
  | { readonly do: 'second-passes' }
  | { readonly do: 'kill' }
  | { readonly do: 'select' }
  | { readonly do: 'power-cut'; readonly after: number; readonly during: 'save' | 'second-passes' }
  | { readonly do: 'full'; readonly during: 'save' | 'second-passes' };

const deed: fc.Arbitrary<Deed> = fc.oneof(
  {
    weight: 5,
    arbitrary: fc.record({
      do: fc.constant('enter' as const),
      unit: fc.constantFrom(...units),
      meaning: fc.constantFrom('dark' as const, 'quiet' as const, 'upstream-loss' as const),
    }),
  },
  {
    weight: 5,
    arbitrary: fc.constantFrom<Deed>(
      { do: 'undo' },
      { do: 'redo' },
      { do: 'save' },
      { do: 'second-passes' },
      { do: 'kill' },
      { do: 'select' },
    ),
  },
  {
    weight: 2,
    arbitrary: fc.record({
      do: fc.constant('power-cut' as const),
      after: fc.nat(45),
      during: fc.constantFrom('save' as const, 'second-passes' as const),
    }),
  },
  {
    weight: 1,
    arbitrary: fc.record({ do: fc.constant('full' as const), during: fc.constantFrom('save' as const, 'second-passes' as const) }),
  },
);

const recordOf = (session: Session) => session.bench.store.getState().caseRecord;
const displaysOf = (record: CaseRecord) => record.evidence.snapshots.map(({ displays }) => displays ?? []);

describe('work in a window that may be killed at any moment', () => {
  it('should never be lost once a second old or saved, and the file be whole at every moment', { timeout: 60_000 }, async () => {
    let kills = 0;
    let restored = 0;
    await fc.assert(
      fc.asyncProperty(fc.array(deed, { minLength: 5, maxLength: 40 }), async (deeds) => {
        const disk = new FakeDisk();
        const machine = fakeMachine(disk);
        disk.put(path, serializeCase({ ...caseRecord, cabinet }));
        let session = await startSession({ machine, ...sittings, named: [path] });
        /** The states that a restart may show: the one that was safe last, and all since. The model. */
        let allowed: CaseRecord[] = [recordOf(session)];
        const settle = async () => {
          await session.desk.flush();
        };
        const restart = async () => {
          kills += 1;
          disk.restorePower();
          disk.fault = () => undefined;
          expect(parseCaseFile(disk.text(path) ?? '').ok).toBe(true);
          session = await startSession({ machine, ...sittings, named: [path] });
          const found = recordOf(session);
          if (session.bench.store.getState().alerts.some(({ kind }) => kind === 'restored')) restored += 1;
          expect(session.questions).toEqual([]);
          expect(allowed.some((state) => sameContent(displaysOf(state), displaysOf(found)))).toBe(true);
          allowed = [found];
        };
        for (const one of deeds) {
          if (one.do === 'enter') session.bench.dispatch('enter-display', { unit: one.unit, meanings: [one.meaning], at });
          else if (one.do === 'undo' || one.do === 'redo') session.bench.dispatch(one.do);
          else if (one.do === 'select') session.bench.dispatch('choose-candidate', { chosen: { by: 'nobody' }, subject: null });
          else if (one.do === 'kill') {
            await restart();
            continue;
          } else if (one.do === 'save') await session.desk.actions.save();
          else if (one.do === 'second-passes') await settle();
          else {
            if (one.do === 'full') disk.fault = (act) => (act === 'write' ? 'ENOSPC' : undefined);
            else disk.cutPowerAfter(one.after);
            if (one.during === 'save') await session.desk.actions.save();
            else await settle();
            if (one.do === 'power-cut') {
              await restart();
              continue;
            }
            const { alerts } = session.bench.store.getState();
            // A disk that is full is told, and stays told.
            if (isUnsaved(session.bench.store.getState()) && one.during === 'save')
              expect(alerts.map(({ kind }) => kind)).toContain('not-saved');
            disk.fault = () => undefined;
          }
          const now = recordOf(session);
          if (one.do === 'save' || one.do === 'second-passes') allowed = [now];
          else allowed.push(now);
          if (one.do === 'save') {
            expect(isUnsaved(session.bench.store.getState())).toBe(false);
            const saved = parseCaseFile(disk.text(path) ?? '');
            expect(saved.ok && sameContent(displaysOf(saved.value), displaysOf(now))).toBe(true);
          }
          // Unsaved is what differs from the disk, however it came about.
          const onDisk = parseCaseFile(disk.text(path) ?? '');
          expect(onDisk.ok).toBe(true);
          const differs = !(onDisk.ok && sameContent(displaysOf(onDisk.value), displaysOf(now)) && onDisk.value.name === now.name);
          if (session.bench.store.getState().files.case) {
            expect(isUnsaved(session.bench.store.getState()) || !differs).toBe(true);
          }
        }
        await restart();
      }),
      { seed: 20261125, numRuns: 150 },
    );
    expect(kills).toBeGreaterThan(300);
    expect(restored).toBeGreaterThan(50);
  });
});
