import { type ExerciseContent, exerciseKinds, type ResultContent, solvedBy } from '../../engine/schema/index.ts';
import { makeCabinet } from './cabinets.ts';
import { makeTruth } from './cases.ts';
import { Random } from './random.ts';

/** An exercise of the right shape; it need not make sense. */
export function makeExerciseContent(seed: number): ExerciseContent {
  const random = new Random(seed);
  const { faults } = makeTruth(seed);
  return {
    id: `e${seed}`,
    name: `Exercise ${seed}`,
    kind: random.pick(exerciseKinds),
    task: 'Find it.',
    onset: random.pick(['while-running', 'at-power-up'] as const),
    given: { displays: [{ unit: 'u1', meaning: 'quiet' }], reports: [{ chain: 'ch1', gap: random.pick(['none', 2] as const) }] },
    possible: [{ faults: faults.length > 0 ? faults.slice(0, 4) : [{ item: 'fuse', unit: 'u1', mode: 'open' }], weight: 1 }],
    steps: [
      { id: 's1', step: { do: 'read-display', unit: 'u1' }, minutes: random.whole(0, 9) },
      { id: 's2', step: { do: 'act', acts: [{ do: 'replace-cable', link: 'w1' }] }, minutes: 12, spare: 'p1' },
    ],
    times: { openMinutes: 2, isolateMinutes: 8, bootMinutes: 5 },
    spares: [{ id: 'p1', name: 'Cable', count: 1 }],
    hints: [{ text: 'Look.', minutes: 1 }],
    solved: random.pick(solvedBy),
    sealed: '',
    cabinet: makeCabinet(seed, { units: 2 }),
  };
}

/** A result of the right shape. */
export function makeResultContent(seed: number): ResultContent {
  const random = new Random(seed);
  return {
    exercise: `e${seed}`,
    name: 'Exercise',
    code: `trainee ${seed}`,
    moves: [
      { do: 'step', step: 's1', suspects: ['cable/w1'], predicted: 'quiet', heeded: ['live-cabinet'] },
      { do: 'hint' },
      { do: 'give-up' },
    ],
    solved: random.chance(0.5),
    minutes: random.whole(0, 90),
    bestMinutes: 12,
    predictions: 1,
    predictionsRight: random.whole(0, 1),
    unsafe: ['live-work'],
    checksum: '00000000',
  };
}
