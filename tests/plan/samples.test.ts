import { readdirSync, readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { checkCabinet, parseCaseFile } from '../../engine/cabinet/index.ts';
import { diagnose } from '../../engine/diagnosis/index.ts';
import { planSteps } from '../../engine/plan/index.ts';
import type { Evidence } from '../../engine/schema/index.ts';
import type { Cabinet } from '../../engine/topology/index.ts';

const folder = new URL('../../sample-cabinets/', import.meta.url);
const cases = readdirSync(folder).filter((name) => name.endsWith('.case.json'));

function openCase(name: string): { readonly cabinet: Cabinet; readonly evidence: Evidence } {
  const opened = parseCaseFile(readFileSync(new URL(name, folder)));
  const cabinet = opened.ok ? checkCabinet(opened.value.cabinet).cabinet : null;
  if (!opened.ok || cabinet === null) {
    throw new Error(`${name} does not open`);
  }
  return { cabinet, evidence: opened.value.evidence };
}

describe('the plan of every sample case', () => {
  it.each(cases)('%s: should be one list, cheapest first, useless steps last with their reason', (name) => {
    const { cabinet, evidence } = openCase(name);
    const { steps, expectedCost } = planSteps(cabinet, evidence, diagnose(cabinet, evidence), { exactSituations: 0 });
    expect(steps.length).toBeGreaterThan(0);
    const useful = steps.filter(({ useless }) => useless === null);
    expect(steps.slice(0, useful.length)).toEqual(useful);
    // A look that is had before help is called comes first although it saves nothing.
    const isBeforeHelp = (useful[0]?.expectedCost ?? 0) > expectedCost + 1e-9;
    useful.forEach(({ expectedCost: cost, outcomes, own, information, mends }, index) => {
      if (!(isBeforeHelp && index === 1)) expect(cost).toBeGreaterThanOrEqual(useful[index - 1]?.expectedCost ?? 0);
      expect(outcomes.reduce((sum, { probability }) => sum + probability, 0)).toBeCloseTo(1, 9);
      // A step costs itself and what follows.
      const itself = own.minutes + own.changes + own.parts + own.risks + own.later;
      expect(cost).toBeGreaterThanOrEqual(itself - 1e-9);
      expect(information + mends).toBeGreaterThan(0);
    });
    expect(expectedCost).toBeLessThanOrEqual((useful[0]?.expectedCost ?? Number.POSITIVE_INFINITY) + 1e-9);
    for (const { useless, information } of steps.slice(useful.length)) {
      expect(useless).not.toBeNull();
      expect(information).toBeGreaterThanOrEqual(0);
    }
  });
});
