import { describe, expect, it } from 'vitest';
import { debrief, joinParts, makeExercise, play, proposeExercise, suspectsOf } from '../../engine/exercise/index.ts';
import { namesForPlay, wordExerciseOutcome, wordProblem } from '../../engine/messages/index.ts';
import type { ExerciseMove } from '../../engine/schema/index.ts';
import { schoolCabinet } from '../samples/schoolCabinet.ts';
import { readyGame } from './readyGames.ts';

const step = (id: string, rest: Partial<Extract<ExerciseMove, { do: 'step' }>> = {}): ExerciseMove => ({
  do: 'step',
  step: id,
  suspects: [],
  heeded: [],
  ...rest,
});

describe('a play', () => {
  it('should show only what was paid for, and count it', () => {
    const { game, answer } = readyGame('neighbours');
    const { openMinutes } = game.exercise.times;
    const played = play(game, answer, [step('s1', { predicted: 'none' }), step('s2', { predicted: 'bright' })]);
    expect(played.steps.map(({ step: id, outcome, minutes, predictedRight }) => [id, outcome, minutes, predictedRight])).toEqual([
      ['s1', 'none', 3 + openMinutes, true],
      ['s2', 'none', 3, false],
    ]);
    expect(played).toMatchObject({ minutes: 6 + openMinutes, end: null });
    expect(JSON.stringify(played)).not.toContain('"cut"');
  });

  it('should refuse what was seen already, and what the exercise does not have, and change nothing', () => {
    const { game, answer } = readyGame('neighbours');
    const once = play(game, answer, [step('s1')]);
    const odd = play(game, answer, [step('s1'), step('s1'), step('s99'), { do: 'hand-over' }, { do: 'name', answer: 'moon' }]);
    expect(odd.refused.map(({ why }) => why)).toEqual(['seen', 'unknown-step', 'not-asked', 'unknown-answer']);
    expect({ ...odd, refused: [] }).toEqual(once);
  });

  it('should end with an answer, and take no move after it', () => {
    const { game, answer } = readyGame('neighbours');
    expect(play(game, answer, [{ do: 'name', answer: 'link/WH3' }, step('s1')])).toMatchObject({
      end: 'solved',
      steps: [],
      refused: [{ why: 'ended' }],
    });
    expect(play(game, answer, [{ do: 'name', answer: 'unit/BG1' }]).end).toBe('wrong');
  });

  it('should tell a machine that runs by chance from one that is mended', () => {
    const { game, answer } = readyGame('intermittent');
    // Off and on again: what comes and goes may be away, and nothing is mended.
    const off = play(game, answer, [step('s6'), { do: 'hand-over' }]);
    expect(off.end).toBe('wrong');
    expect(play(game, answer, [step('s3'), { do: 'hand-over' }]).end).toBe('solved');
  });

  it('should draw what comes and goes from the seed alone', () => {
    const { game, answer } = readyGame('intermittent');
    const moves = [step('s6'), step('s1'), step('s2')];
    expect(play(game, answer, moves)).toEqual(play(game, answer, moves));
    const outcomes = new Set(Array.from({ length: 20 }, (_, seed) => play(game, { ...answer, seed }, moves).steps[0]?.outcome));
    expect([...outcomes].sort()).toEqual(['halts', 'runs']);
  });

  it('should forget what the displays held once the machine was switched off', () => {
    const { game, answer } = readyGame('do-not-switch-off');
    const before = play(game, answer, [step('s5')]).steps[0]?.outcome;
    const after = play(game, answer, [step('s6'), step('s5')]).steps[1]?.outcome;
    expect([before, after]).toEqual(['upstream-loss', 'quiet']);
  });

  it('should take single things as suspects where several may be wrong, and any of them as an answer', () => {
    const { game, answer } = readyGame('two-faults');
    const suspects = suspectsOf(game);
    expect(suspects).toEqual([...suspects].sort());
    expect(suspects.some((one) => one.includes(' + '))).toBe(false);
    const named = { ...game, exercise: { ...game.exercise, solved: 'item' as const } };
    const said = play(named, answer, [step('s1', { suspects: ['cable/WH2', 'moon'] }), { do: 'name', answer: 'cable/WH2 + cable/WH6' }]);
    expect(said).toMatchObject({ end: 'wrong', refused: [], steps: [{ suspects: ['cable/WH2'] }] });
    expect(play(named, answer, [{ do: 'name', answer: joinParts(['plug/WH6/upper', 'cable/WH2']) }]).end).toBe('solved');
    expect(play(named, answer, [{ do: 'name', answer: 'cable/WH2 + moon' }]).refused).toMatchObject([{ why: 'unknown-answer' }]);
  });

  it('should leave counting to who is to learn it: no ordinal at a unit, no designation in a report', () => {
    const { game } = readyGame('counting');
    const names = namesForPlay(game);
    const [report] = game.steps;
    expect(report && wordExerciseOutcome(names, report, '4')).toBe('between encoder interface 1 and drive 3');
    expect(report && wordExerciseOutcome(names, report, '1')).toBe('between -KE1 and drive 1');
    expect(names.ordinal('TB3')).toBe('servo drive');
    expect(namesForPlay(readyGame('neighbours').game).ordinal('TB3')).toBe('drive 3');
  });

  it('should stop when the time is used up', () => {
    const { game, answer } = readyGame('do-not-switch-off');
    const short = { ...game, exercise: { ...game.exercise, limits: { minutes: 2 } } };
    expect(play(short, answer, [step('s5')]).end).toBe('out-of-time');
  });

  it('should sell hints', () => {
    const { game, answer } = readyGame('neighbours');
    expect(play(game, answer, [{ do: 'hint' }, { do: 'hint' }])).toMatchObject({
      minutes: 2,
      hints: ['A unit that complains is usually healthy.'],
      refused: [{ why: 'no-hint' }],
    });
  });
});

describe('safety', () => {
  it('should fail live work without the caution, apart from cost', () => {
    const { game, answer } = readyGame('neighbours');
    expect(play(game, answer, [step('s1')]).steps[0]?.unsafe).toEqual(['live-work']);
    expect(play(game, answer, [step('s1', { heeded: ['live-cabinet'] }), step('s2')]).steps.map(({ unsafe }) => unsafe)).toEqual([[], []]);
  });

  it('should fail an act without lock-out, a lost reference, and boards that are not equal', () => {
    const { game, answer } = readyGame('intermittent');
    expect(play(game, answer, [step('s5')]).steps[0]?.unsafe).toEqual(['live-work', 'lost-reference']);
    const safe = ['all-feeds', 'lock-out', 'dc-link', 'reference-position'];
    expect(play(game, answer, [step('s5', { heeded: safe })]).steps[0]?.unsafe).toEqual([]);
    const steps = game.steps.map((one) =>
      one.id === 's5' ? { ...one, step: { do: 'act', acts: [{ do: 'exchange-boards', unit: 'TB3', other: 'BG2' }] } as const } : one,
    );
    expect(play({ ...game, steps }, answer, [step('s5', { heeded: safe })]).steps[0]?.unsafe).toEqual(['unequal-boards']);
  });
});

describe('the debrief', () => {
  it('should stay closed until the end', () => {
    const { game, answer } = readyGame('neighbours');
    expect(debrief(game, answer, [step('s1')])).toBeNull();
  });

  it('should say of each step what was known, what it could tell, and what would have been better', () => {
    const { game, answer } = readyGame('neighbours');
    const looked = debrief(game, answer, [step('s6'), step('s1', { predicted: 'none' }), step('s2'), { do: 'name', answer: 'link/WH3' }]);
    expect(looked).toMatchObject({ end: 'solved', trueAnswer: 'link/WH3', predictions: 1, predictionsRight: 1, exact: true });
    expect(looked?.steps.map(({ judgement, taught, outcome }) => [judgement, taught, outcome])).toEqual([
      ['worse', false, 'steady'],
      ['best', true, 'none'],
      ['best', true, 'none'],
    ]);
    expect(looked?.steps[0]?.better).not.toBeNull();
    for (const { before, after } of looked?.steps ?? []) {
      for (const shares of [before, after]) expect(shares.reduce((sum, { share }) => sum + share, 0)).toBeCloseTo(1, 9);
    }
    expect(looked?.steps.at(-1)?.after).toEqual([{ answer: 'link/WH3', share: 1 }]);
  });

  it('should count what is within a tenth or two minutes as equally good', () => {
    const { game, answer } = readyGame('neighbours');
    const dearer = (minutes: number) => ({ ...game, steps: game.steps.map((one) => (one.id === 's2' ? { ...one, minutes } : one)) });
    const judge = (minutes: number) => debrief(dearer(minutes), answer, [step('s1'), step('s2'), { do: 'give-up' }])?.steps[1]?.judgement;
    // After s1 the light at the other plug and the port of the unit above tell the same; the latter costs 3.
    expect([judge(3), judge(5), judge(5.5)]).toEqual(['best', 'as-good', 'worse']);
  });
});

describe('making', () => {
  const wish = {
    id: 'x',
    name: 'X',
    kind: 'neighbours',
    task: '',
    cabinet: schoolCabinet,
    onset: 'while-running',
    seed: 1,
    known: { displays: ['TB2', 'BG1'], reports: ['chain1'] },
    faults: [{ item: 'cable', link: 'WH3', mode: 'cut', presence: 'steady' }],
    solved: 'item',
  } as const;

  it('should propose every step that concerns what may be wrong, and mark those that it would allow', () => {
    const proposed = proposeExercise({ ...wish, faults: [...wish.faults] });
    const made = makeExercise({ ...wish, faults: [...wish.faults] });
    if (!proposed.ok || !made.ok) throw new Error('not made');
    const { steps, possible } = proposed.value;
    const marked = steps.filter(({ allowed }) => allowed).map(({ step, minutes }) => ({ step, minutes }));
    expect(marked).toHaveLength(made.value.exercise.steps.length);
    expect(made.value.exercise.steps.map(({ step, minutes }) => ({ step, minutes }))).toEqual(expect.arrayContaining(marked));
    expect(new Set(steps.map(({ key }) => key)).size).toBe(steps.length);
    expect(steps.length).toBeGreaterThan(marked.length);
    expect(made.value.exercise.possible).toEqual(possible);
    // All of them allowed can be played too, and never costs more.
    const all = makeExercise({
      ...wish,
      faults: [...wish.faults],
      steps: steps.map(({ step, minutes }, index) => ({ id: `s${index}`, step, minutes })),
    });
    expect(all.ok && all.value.exercise.figures?.bestMinutes).toBeLessThanOrEqual(made.value.exercise.figures?.bestMinutes ?? 0);
  });

  it('should weigh what may be wrong by the circumstances that it gives, and refuse one of a thing that is not there', () => {
    const shareOfPlugs = (circumstances: { kind: 'oil-or-coolant'; subjects?: string[] }[]) => {
      const made = makeExercise({ ...wish, faults: [...wish.faults], known: { ...wish.known, circumstances } });
      if (!made.ok) return made.problems.map(({ code, where }) => `${code} ${where}`);
      const { possible, given } = made.value.exercise;
      expect(given.circumstances ?? []).toEqual(circumstances);
      const sum = (only: boolean) =>
        possible
          .filter(({ faults: [fault] }) => !only || (fault?.item === 'plug' && fault.mode === 'fouled'))
          .reduce((total, { weight }) => total + weight, 0);
      return sum(true) / sum(false);
    };
    expect(shareOfPlugs([{ kind: 'oil-or-coolant' }])).toBeGreaterThan(Number(shareOfPlugs([])));
    expect(shareOfPlugs([{ kind: 'oil-or-coolant', subjects: ['TB77'] }])).toEqual(['exercise-thing-unknown /given/circumstances/0']);
  });

  it('should tell how much of the work of a plan is done', () => {
    const told: number[] = [];
    const two = {
      ...wish,
      solved: 'mended',
      faults: [wish.faults[0], { item: 'plug', link: 'WH5', end: 'upper', mode: 'loose' }],
    } as const;
    const made = makeExercise({ ...two, faults: [...two.faults], known: { displays: [], reports: ['chain1'] } }, (share) =>
      told.push(share),
    );
    expect(made.ok).toBe(true);
    expect(told.length).toBeGreaterThan(0);
    expect([...told].sort((a, b) => a - b)).toEqual(told);
    expect(Math.max(...told)).toBeLessThanOrEqual(1);
  });

  it('should refuse, with the reason, what no allowed step can decide', () => {
    const made = makeExercise({
      ...wish,
      faults: [...wish.faults],
      steps: [{ id: 's1', minutes: 1, step: { do: 'read-display', unit: 'TB1' } }],
    });
    const [problem] = made.ok ? [] : made.problems;
    expect(problem?.code).toBe('exercise-undecided');
    expect(problem && wordProblem(problem).title).toContain('cable/WH3');
  });

  it('should refuse what nothing allowed mends', () => {
    const made = makeExercise({
      ...wish,
      faults: [...wish.faults],
      solved: 'mended',
      steps: [{ id: 's1', minutes: 2, step: { do: 'act', acts: [] } }],
    });
    expect(made.ok ? [] : made.problems.map(({ code }) => code)).toEqual(['exercise-not-mendable']);
  });

  it('should refuse faults that halt nothing, and things that the cabinet does not have', () => {
    const whole = makeExercise({ ...wish, faults: [{ item: 'fuse', unit: 'TB9', mode: 'open' }] });
    expect(whole.ok ? [] : whole.problems.map(({ code }) => code)).toEqual(['exercise-does-not-halt']);
    const odd = makeExercise({
      ...wish,
      faults: [...wish.faults],
      steps: [{ id: 's1', minutes: 1, step: { do: 'read-display', unit: 'TB77' } }],
    });
    expect(odd.ok ? [] : odd.problems.map(({ code, where }) => [code, where])).toEqual([['exercise-thing-unknown', '/steps/0']]);
  });
});
