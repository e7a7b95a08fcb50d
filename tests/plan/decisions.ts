import type { Decision } from '../../engine/plan/decision.ts';
import type { MachineState } from '../../engine/schema/index.ts';
import { Random } from '../generators/random.ts';

/** States that cost nothing to change. */
export const free = {
  closed: { closed: 0, open: 0, isolated: 0 },
  open: { closed: 0, open: 0, isolated: 0 },
  isolated: { closed: 0, open: 0, isolated: 0 },
};

/** One thing broken, one act for each: probabilities and costs, looks by which worlds they set apart. */
export function single(
  weights: readonly number[],
  costs: readonly number[],
  looks: readonly { readonly cost: number; readonly sets: readonly (readonly number[])[] }[] = [],
): Decision {
  return {
    weights,
    parts: weights.map(() => 1),
    absent: weights.map(() => 0),
    start: 'closed',
    running: false,
    change: free,
    restart: { closed: 0, open: 0, isolated: 0 },
    looks: looks.map(({ cost, sets }, id) => ({
      state: 'closed',
      cost,
      spread: () => ({
        id,
        outcomes: sets.map((_, index) => `o${index}`),
        rows: sets.map((set) => Float64Array.from(weights, (_, world) => (set.includes(world) ? 1 : 0))),
      }),
    })),
    acts: costs.map((cost, act) => ({
      state: 'isolated',
      cost,
      cures: Int32Array.from(weights, (_, world) => (world === act ? 1 : 0)),
      fails: 0,
      marks: '',
      handling: `act ${act}`,
      isTrial: false,
    })),
    provocations: [],
    comeback: 1e6,
    outsideHelp: 1e6,
  };
}

export interface DrawnSize {
  readonly worlds: number;
  readonly looks: number;
  readonly acts: number;
}

/** A drawn decision: looks with misreadings, acts that mend one or two worlds, bad spares, two faults at once, costly states. */
export function drawDecision(seed: number, { worlds, looks, acts }: DrawnSize): Decision {
  const random = new Random(seed);
  const share = (low: number, high: number) => low + ((high - low) * random.whole(0, 1000)) / 1000;
  const raw = Array.from({ length: worlds }, () => share(0.05, 1) ** 2);
  const sum = raw.reduce((total, weight) => total + weight, 0);
  const parts = raw.map(() => (random.chance(0.15) ? 2 : 1));
  const absent = raw.map(() => (random.chance(0.15) ? 0.5 : 0));
  const epsilon = random.chance(0.5) ? 0 : 0.04;
  const states: readonly MachineState[] = ['closed', 'open', 'isolated'];
  const step = { open: share(1, 4), close: 1, lock: share(3, 15), boot: share(2, 8) };
  return {
    weights: raw.map((weight) => weight / sum),
    parts,
    absent,
    start: random.pick(['closed', 'open'] as const),
    running: false,
    change: {
      closed: { closed: 0, open: step.open, isolated: step.open + step.lock },
      open: { closed: step.close, open: 0, isolated: step.lock },
      isolated: { closed: step.close + step.boot, open: step.boot, isolated: 0 },
    },
    restart: { closed: step.boot, open: step.close + step.boot, isolated: step.close + step.boot },
    looks: Array.from({ length: looks }, (_, id) => {
      const outcomes = random.whole(2, 3);
      const says = raw.map(() => random.whole(0, outcomes - 1));
      const state = random.chance(0.2) ? 'isolated' : random.pick(states.slice(0, 2));
      const rows = Array.from({ length: outcomes }, (__, outcome) =>
        Float64Array.from(says, (said) => (said === outcome ? 1 - epsilon : epsilon / (outcomes - 1))),
      );
      return {
        state,
        cost: share(1, 8),
        spread: (epoch) => (epoch.startsWith('+') ? null : { id, outcomes: rows.map((___, index) => `o${index}`), rows }),
      };
    }),
    acts: Array.from({ length: acts }, (_, act) => ({
      state: 'isolated',
      cost: share(2, 60),
      // Each world is mended by some act; acts now and then mend others too.
      cures: Int32Array.from(raw, (__, world) => {
        const all = (1 << (parts[world] ?? 1)) - 1;
        return world % acts === act ? all : random.chance(0.15) ? random.whole(1, all) : 0;
      }),
      fails: random.chance(0.3) ? 0.05 : 0,
      marks: '',
      handling: `act ${act}`,
      isTrial: false,
    })),
    provocations: [],
    comeback: 120,
    outsideHelp: 600,
  };
}
