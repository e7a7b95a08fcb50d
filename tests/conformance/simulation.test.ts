import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { checkCabinet } from '../../engine/cabinet/index.ts';
import { fault as faultSchema } from '../../engine/schema/index.ts';
import { simulate } from '../../engine/simulation/index.ts';
import { chainIdOf, type NeutralCase, toCabinetContent, toFault } from './neutral.ts';

/*
 * Source: simulation.jsonl, 300 random cases computed by an implementation that somebody else wrote from the domain text (sections
 * 1 to 5) alone. See README.md beside this file.
 */
const cases = readFileSync(new URL('./simulation.jsonl', import.meta.url), 'utf8')
  .trim()
  .split('\n')
  // The file is ours and is checked by use: a wrong shape makes the mapping or the comparison fail.
  .map((line) => JSON.parse(line) as NeutralCase);

describe('simulate, against the conformance cases', () => {
  it('should have all 300 cases at hand', () => {
    expect(cases.length).toBe(300);
    expect(new Set(cases.map((c) => c.seed)).size).toBe(300);
  });

  it.each(cases.map((c) => [c.seed, c] as const))('should show and report the same in case %i', (_seed, neutral) => {
    const { cabinet, problems } = checkCabinet(toCabinetContent(neutral.seed, neutral.cabinet));
    if (cabinet === null) throw new Error(JSON.stringify(problems));
    const faults = neutral.faults.map(toFault);
    for (const fault of faults) expect(faultSchema.safeParse(fault).success).toBe(true);

    const simulation = simulate({ cabinet, faults, onset: neutral.onset });

    const displays = Object.fromEntries([...simulation.displays].map(([unit, display]) => [unit, display.meaning]));
    expect(displays).toEqual(neutral.displays);
    const reports = Object.fromEntries([...simulation.reports].map(([chain, report]) => [chain, report.gap]));
    expect(reports).toEqual(Object.fromEntries(neutral.reports.map((report, c) => [chainIdOf(c), report === null ? 'none' : report[1]])));
  });
});
