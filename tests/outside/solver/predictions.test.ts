import { readFileSync } from 'node:fs';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { onsets } from '../../../engine/schema/index.ts';
import { chainIdOf, type NeutralCase, toCabinetContent, toFault } from '../../conformance/neutral.ts';
import { smallCabinet, someFaults } from '../smallCabinets.ts';
import { looksByEngine, predictByEngine } from './engine.ts';
import { looksBySolver, predictBySolver } from './solve.ts';

/*
 * Source of the expectations: clingo, a general answer-set solver (M. Gebser, R. Kaminski, B. Kaufmann, T. Schaub, "Multi-shot ASP
 * solving with clingo", Theory and Practice of Logic Programming 19 (2019), 27-82), on an encoding written from the domain text alone.
 */
const seed = 20_261_125;

describe('the answer-set encoding', () => {
  it('should agree with the conformance cases, so that it is a fit judge', { timeout: 60_000 }, async () => {
    const lines = readFileSync(new URL('../../conformance/simulation.jsonl', import.meta.url), 'utf8')
      .trim()
      .split('\n');
    for (const line of lines) {
      // Checked by use, as in the conformance test.
      const neutral = JSON.parse(line) as NeutralCase;
      const answer = await predictBySolver(toCabinetContent(neutral.seed, neutral.cabinet), neutral.faults.map(toFault), neutral.onset);
      const reports = Object.fromEntries(neutral.reports.map((report, c) => [chainIdOf(c), report === null ? 'none' : report[1]]));
      expect({ seed: neutral.seed, ...answer }).toEqual({ seed: neutral.seed, displays: neutral.displays, reports });
    }
  });
});

describe('simulate, against a general solver', () => {
  it('should predict the displays and reports that the solver derives, for up to four faults', { timeout: 60_000 }, async () => {
    const input = smallCabinet({ chains: 2, unitsPerChain: 4 }).chain((content) =>
      fc.record({ content: fc.constant(content), faults: someFaults(content, 4), onset: fc.constantFrom(...onsets) }),
    );
    await fc.assert(
      fc.asyncProperty(input, async ({ content, faults, onset }) => {
        expect(predictByEngine(content, faults, onset)).toEqual(await predictBySolver(content, faults, onset));
      }),
      { seed, numRuns: 600 },
    );
  });

  it('should say of light, lamp, voltage and comparison with the photo what the solver derives, for up to four faults', {
    timeout: 60_000,
  }, async () => {
    const input = smallCabinet({ chains: 2, unitsPerChain: 3 }).chain((content) =>
      fc.record({ content: fc.constant(content), faults: someFaults(content, 4) }),
    );
    await fc.assert(
      fc.asyncProperty(input, async ({ content, faults }) => {
        expect(looksByEngine(content, faults)).toEqual(await looksBySolver(content, faults));
      }),
      { seed, numRuns: 400 },
    );
  });
});
