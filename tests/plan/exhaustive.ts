import type { Decision } from '../../engine/plan/decision.ts';
import type { MachineState } from '../../engine/schema/index.ts';

/*
 * The cheapest plan of a tiny decision by trying everything: every order of every step, over the joint probabilities of world and of
 * which acts would work, written down without any of the planner's rules, short cuts or memory. Provocations and trials are left out.
 */

/** One way things may be: the world, and which acts work. */
interface Case {
  readonly world: number;
  readonly works: readonly boolean[];
  readonly probability: number;
}

interface Position {
  readonly cases: readonly Case[];
  readonly state: MachineState;
  readonly running: boolean;
  readonly done: readonly number[];
  /** Acts since the last restart: two at most, in one state of the machine. */
  readonly pending: readonly number[];
  readonly looked: readonly number[];
}

/** Expected cost of the cheapest plan. */
export function cheapest(decision: Decision): number {
  const cases = decision.weights.flatMap((weight, world) =>
    subsets(decision.acts.map((_, index) => index)).map((failing): Case => {
      const works = decision.acts.map((_, index) => !failing.includes(index));
      const chance = decision.acts.reduce((product, { fails }, index) => product * (works[index] === true ? 1 - fails : fails), 1);
      return { world, works, probability: weight * chance };
    }),
  );
  const { start, running } = decision;
  return search({ cases: cases.filter(({ probability }) => probability > 0), state: start, running, done: [], pending: [], looked: [] });

  function search(at: Position): number {
    let least = at.pending.length > 0 ? Number.POSITIVE_INFINITY : leave(at);
    if (at.pending.length === 0) {
      decision.looks.forEach((look, index) => {
        const spread = at.running ? null : look.spread('');
        if (spread === null || at.looked.includes(index) || (at.state === 'isolated' && look.state !== 'isolated')) return;
        // Nor is a look had that says the same of all that is still possible, only to be where one may restart.
        const says = spread.rows.map((row) => new Set(at.cases.map(({ world }) => row[world] ?? 0)));
        if (says.every(({ size }) => size <= 1)) return;
        let cost = decision.change[at.state][look.state] + look.cost;
        for (const row of spread.rows) {
          const share = at.cases.map((one) => ({ ...one, probability: one.probability * (row[one.world] ?? 0) }));
          cost += weigh(share, { ...at, state: look.state, looked: [...at.looked, index] });
        }
        least = Math.min(least, cost);
      });
    }
    decision.acts.forEach((act, index) => {
      // Restarting for luck is what provocations are for: an act is done where it may mend something that is broken.
      const mayHelp = at.cases.some((one) => !isMended(one, at.done) && (act.cures[one.world] ?? 0) !== 0);
      const mayJoin = at.pending.length < 2 && at.pending.every((other) => decision.acts[other]?.state === act.state);
      if (at.done.includes(index) || !mayHelp || !mayJoin) return;
      const cost = decision.change[at.state][act.state] + act.cost;
      least = Math.min(least, cost + search({ ...at, state: act.state, done: [...at.done, index], pending: [...at.pending, index] }));
    });
    if (at.pending.length > 0 || at.state === 'isolated') {
      const next = { ...at, state: 'closed', pending: [] } as const;
      const run = at.cases.map((one) => ({ ...one, probability: one.probability * (isMended(one, at.done) ? 1 : absentOf(one)) }));
      const halt = at.cases.map((one) => ({ ...one, probability: one.probability * (isMended(one, at.done) ? 0 : 1 - absentOf(one)) }));
      least = Math.min(
        least,
        decision.restart[at.state] + weigh(run, { ...next, running: true }) + weigh(halt, { ...next, running: false }),
      );
    }
    return least;
  }

  /** Cost of going on with a part of the probability, times that part. */
  function weigh(cases: readonly Case[], at: Omit<Position, 'cases'>): number {
    const sum = cases.reduce((total, { probability }) => total + probability, 0);
    if (sum <= 0) return 0;
    const scaled = cases.filter(({ probability }) => probability > 0).map((one) => ({ ...one, probability: one.probability / sum }));
    return sum * search({ ...at, cases: scaled });
  }

  function isMended({ world, works }: Case, done: readonly number[]): boolean {
    const parts = Array.from({ length: decision.parts[world] ?? 0 }, (_, part) => part);
    return parts.every((part) =>
      done.some((index) => works[index] === true && ((decision.acts[index]?.cures[world] ?? 0) >> part) % 2 === 1),
    );
  }

  function absentOf({ world }: Case): number {
    return decision.absent[world] ?? 0;
  }

  function leave({ cases: all, running: runs, done }: Position): number {
    if (!runs) return decision.outsideHelp;
    return all.reduce((sum, one) => sum + (isMended(one, done) ? 0 : one.probability * comebackOf(one.world)), 0);
  }

  /** Called again, and mended then by one who knows what it is. */
  function comebackOf(world: number): number {
    const acts = decision.acts.map((_, index) => index);
    const works = acts.map(() => true);
    const enough = subsets(acts).filter((done) => isMended({ world, works, probability: 1 }, done));
    const least = Math.min(...enough.map((done) => done.reduce((sum, index) => sum + (decision.acts[index]?.cost ?? 0), 0)));
    const known = Math.min(...decision.acts.map(({ state }) => decision.change.closed[state])) + least + decision.restart.isolated;
    return decision.comeback + Math.min(decision.outsideHelp, known);
  }
}

function subsets(list: readonly number[]): readonly (readonly number[])[] {
  const [first, ...rest] = list;
  return first === undefined ? [[]] : subsets(rest).flatMap((subset) => [subset, [first, ...subset]]);
}
