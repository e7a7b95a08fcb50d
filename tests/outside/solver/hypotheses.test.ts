import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { consistentHypotheses } from '../../../engine/diagnosis/index.ts';
import type { CabinetContent, DisplayMeaning, Evidence, Fault, Onset } from '../../../engine/schema/index.ts';
import { displayMeanings, onsets, supplyMeanings } from '../../../engine/schema/index.ts';
import { smallCabinet, someFaults } from '../smallCabinets.ts';
import { checked, predictByEngine } from './engine.ts';
import type { SolverSnapshot } from './facts.ts';
import { consistentBySolver, hypothesisKey } from './solve.ts';

/*
 * Source of the expectations: clingo, a general answer-set solver (M. Gebser, R. Kaminski, B. Kaufmann, T. Schaub, "Multi-shot ASP
 * solving with clingo", Theory and Practice of Logic Programming 19 (2019), 27-82), on an encoding written from the domain text alone.
 */
const seed = 20_261_125;

/** What was seen, in the form that both sides can be given. */
interface Seen {
  readonly content: CabinetContent;
  readonly snapshots: readonly SolverSnapshot[];
}

/** Random evidence: true faults, one or two looks, some displays left unread, some read as a set, now and then one misread. */
const seen: fc.Arbitrary<Seen> = smallCabinet({ chains: 2, unitsPerChain: 2 })
  .chain((content) => {
    const look = fc.record({
      onset: fc.constantFrom(...onsets),
      restarted: fc.boolean(),
      gone: fc.array(fc.boolean(), { minLength: 4, maxLength: 4 }),
      reading: fc.array(fc.integer({ min: 0, max: 19 }), { minLength: 12, maxLength: 12 }),
      haltedObserved: fc.boolean(),
    });
    return fc.record({
      content: fc.constant(content),
      faults: someFaults(content, 2),
      looks: fc.array(look, { minLength: 1, maxLength: 2 }),
    });
  })
  .map(({ content, faults, looks }) => {
    let trip: readonly Fault[] = faults;
    let onset: Onset = 'while-running';
    let wasRunning = false;
    const snapshots = looks.map((look, s) => {
      const newTrip = s === 0 || look.restarted || wasRunning;
      if (newTrip) {
        // What stops a running machine stops it while running; else the drawn onset holds.
        onset = wasRunning && !look.restarted ? 'while-running' : look.onset;
        trip = s === 0 ? faults : faults.filter((fault, i) => fault.presence === 'steady' || look.gone[i] !== true);
      }
      const now = trip.map(
        (fault, i): Fault => (fault.presence === 'intermittent' ? { ...fault, absentNow: look.gone[i + 2] === true } : fault),
      );
      const snapshot = readings(content, now, onset, { ...look, restarted: s > 0 && look.restarted, newTrip });
      wasRunning = snapshot.halted === false;
      return snapshot;
    });
    return { content, snapshots };
  });

interface Reading {
  readonly restarted: boolean;
  readonly newTrip: boolean;
  readonly reading: readonly number[];
  readonly haltedObserved: boolean;
}

/** What a person writes down of a predicted picture: 20-sided dice decide which display is left out, read as a set, or misread. */
function readings(
  content: CabinetContent,
  faults: readonly Fault[],
  onset: Onset,
  { restarted, newTrip, reading, haltedObserved }: Reading,
): SolverSnapshot {
  const { displays, reports } = predictByEngine(content, faults, onset);
  const broken = Object.values(reports).some((gap) => gap !== 'none');
  const supplies = new Set((content.units ?? []).filter((unit) => unit.kind === 'supply').map((unit) => unit.id));
  const meaningsOf = (unit: string, shown: DisplayMeaning, die: number): readonly DisplayMeaning[] | null => {
    const choice: readonly DisplayMeaning[] = supplies.has(unit) ? supplyMeanings : displayMeanings;
    if (die < 5) return null;
    if (die < 7) return choice.filter((meaning) => meaning !== 'dark');
    if (die === 7) return [choice[(choice.indexOf(shown) + 1) % choice.length] ?? shown];
    return [shown];
  };
  const read = Object.entries(displays).flatMap(([unit, shown], i) => {
    const meanings = meaningsOf(unit, shown, reading[i % reading.length] ?? 19);
    return meanings === null ? [] : [[unit, meanings] as const];
  });
  return {
    onset,
    restarted,
    // A halted control stays halted until it is switched off, so a running one is only seen after a new start.
    ...(haltedObserved && (broken || newTrip) ? { halted: broken } : {}),
    displays: new Map(read),
    reports: new Map((reading[11] ?? 0) < 10 ? [] : Object.entries(reports).map(([chain, gap]) => [chain, [gap]])),
  };
}

function toEvidence(snapshots: readonly SolverSnapshot[]): Evidence {
  return {
    snapshots: snapshots.map((snapshot) => ({
      onset: snapshot.onset,
      ...(snapshot.restarted === true ? { restarted: true } : {}),
      ...(snapshot.halted === undefined ? {} : { halted: snapshot.halted }),
      displays: [...(snapshot.displays ?? [])].map(([unit, meanings]) => ({ unit, meanings: meanings.map(asMeaning) })),
      reports: [...(snapshot.reports ?? [])].map(([chain, gaps]) => ({ chain, gaps: [...gaps] })),
    })),
  };
}

function asMeaning(text: string): DisplayMeaning {
  const meaning = displayMeanings.find((m) => m === text);
  if (meaning === undefined) throw new Error(`no meaning ${text}`);
  return meaning;
}

describe('diagnose, against a general solver', () => {
  it('should find exactly the single and double faults that explain all that was seen', { timeout: 120_000 }, async () => {
    let withAnswers = 0;
    await fc.assert(
      fc.asyncProperty(seen, async ({ content, snapshots }) => {
        const expected = await consistentBySolver(content, snapshots);
        const found = consistentHypotheses(checked(content), toEvidence(snapshots)).map(hypothesisKey).sort();
        expect(found).toEqual(expected);
        if (expected.length > 0) withAnswers += 1;
      }),
      { seed, numRuns: 60 },
    );
    // The comparison says something: most of the questions have an answer.
    expect(withAnswers).toBeGreaterThan(30);
  });
});
