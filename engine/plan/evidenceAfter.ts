import type { DisplayMeaning, Evidence, LookObservation, Snapshot } from '../schema/index.ts';
import { type Step, stateNeeded } from '../steps/index.ts';

/**
 * The evidence after a step was taken and an outcome found, as a person enters it: a look into the last snapshot, an act or a restart
 * as a new one. The outcome is one of the step's own.
 */
export function evidenceAfter(evidence: Evidence, step: Step, outcome: string): Evidence {
  const { snapshots } = evidence;
  const restarted = { restarted: true, onset: 'at-power-up', halted: outcome === 'halts' } as const;
  if (step.do === 'act') {
    return { ...evidence, snapshots: [...snapshots, { interventions: [...step.acts], ...restarted }] };
  }
  if (step.do === 'provoke') {
    const provoked = { how: step.how, subjects: [...step.subjects] };
    // It came up, and halted while it was waited, flexed or warmed.
    const onset = outcome === 'halts' ? 'while-running' : 'at-power-up';
    return { ...evidence, snapshots: [...snapshots, { ...restarted, onset, provoked }] };
  }
  const last: Snapshot = snapshots[snapshots.length - 1] ?? {};
  const seen = (more: Snapshot): Evidence => ({
    ...evidence,
    snapshots: [...snapshots.slice(0, -1), { ...last, ...more, state: stateNeeded(step) }],
  });
  switch (step.do) {
    case 'read-display': {
      const others = (last.displays ?? []).filter(({ unit }) => unit !== step.unit);
      return seen({ displays: [...others, { unit: step.unit, meanings: [outcome as DisplayMeaning] }] }); // the outcome of reading a display is a meaning
    }
    case 'read-report': {
      const others = (last.reports ?? []).filter(({ chain }) => chain !== step.chain);
      return seen({ reports: [...others, { chain: step.chain, gaps: [outcome === 'none' ? 'none' : Number(outcome)] }] });
    }
    case 'look':
      return seen({ looks: [...(last.looks ?? []), { ...step.look, outcomes: [outcome] } as LookObservation] }); // the step's own look and outcome
  }
}
