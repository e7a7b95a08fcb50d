import { describe, expect, it } from 'vitest';
import { checkCabinet } from '../../engine/cabinet/index.ts';
import { diagnose } from '../../engine/diagnosis/index.ts';
import { evidenceAfter } from '../../engine/plan/index.ts';
import { makeQuickCabinet, parseQuickLine } from '../../engine/quick/index.ts';
import type { DisplayMeaning, Evidence, Snapshot } from '../../engine/schema/index.ts';
import { makeWorkbench } from '../../renderer/state/dispatcher.ts';
import { defaultPreferences } from '../../renderer/state/preferences.ts';

const line = parseQuickLine('7 servo');
if (!line.ok) throw new Error('unreadable line');
const content = { id: 'q', name: 'q', ...makeQuickCabinet(line.value, null) };
const { cabinet } = checkCabinet(content);
if (!cabinet) throw new Error('unsound');
const [chain] = cabinet.chains;
const units = chain?.units ?? [];

/** Two neighbours complain about the cable between them. */
const pattern: Pick<Snapshot, 'displays' | 'reports'> = {
  displays: units.map((unit, index): { unit: string; meanings: DisplayMeaning[] } => ({
    unit,
    meanings: [index === 1 ? 'downstream-loss' : index === 2 ? 'upstream-loss' : 'quiet'],
  })),
  reports: [{ chain: String(chain?.id), gaps: [3] }],
};
const stopped: Evidence = { snapshots: [{ onset: 'while-running', halted: true, ...pattern }] };

/** The same pattern seen again at the last look. */
function seenAgain(evidence: Evidence): Evidence {
  const last = evidence.snapshots[evidence.snapshots.length - 1];
  return { ...evidence, snapshots: [...evidence.snapshots.slice(0, -1), { ...last, ...pattern }] };
}

function expectThirdCable(evidence: Evidence): void {
  const { contradiction, items } = diagnose(cabinet as NonNullable<typeof cabinet>, evidence); // checked above
  expect(contradiction).toBe(null);
  expect(items[0]?.item.fault).toMatchObject({ link: chain?.links[2] });
}

describe('a machine that came up and stopped again', () => {
  it('should be a new trip while running, so that the same displays fit the same cable', () => {
    const restarted = evidenceAfter(stopped, { do: 'provoke', how: 'wait', subjects: [] }, 'runs');
    const again = evidenceAfter(restarted, { do: 'provoke', how: 'flex', subjects: [] }, 'halts');
    expectThirdCable(seenAgain(again));
  });

  it('should be so as it is entered in the window too: provoked, or stopped by itself', () => {
    const bench = () =>
      makeWorkbench(
        {
          document: { cabinet: content, caseRecord: { id: 'c', name: 'c', evidence: stopped } },
          source: { kind: 'new', name: 'c' },
          preferences: defaultPreferences,
        },
        () => ({ canvas: () => null }) as never, // no effect is run here
      );
    const evidenceOf = ({ store }: ReturnType<typeof bench>) => store.getState().caseRecord.evidence;
    const provoked = bench();
    provoked.dispatch('enter-outcome', { step: { do: 'provoke', how: 'flex', subjects: [] }, outcome: 'halts', at: '' });
    expectThirdCable(seenAgain(evidenceOf(provoked)));
    const byItself = bench();
    byItself.dispatch('enter-restart');
    byItself.dispatch('set-halted', { halted: false });
    byItself.dispatch('enter-stop');
    expect(evidenceOf(byItself).snapshots).toHaveLength(3);
    expectThirdCable(seenAgain(evidenceOf(byItself)));
    byItself.dispatch('withdraw-entry', { entry: { kind: 'acts', snapshot: 2 }, what: 'it' });
    expect(evidenceOf(byItself).snapshots).toHaveLength(2);
  });
});
