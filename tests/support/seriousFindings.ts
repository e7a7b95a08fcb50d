import axe from 'axe-core';
import type { Page } from 'playwright-core';

/** Serious and critical findings of the automatic accessibility check, each with the first place where it was found. */
export async function seriousFindings(page: Page, within?: string): Promise<readonly string[]> {
  // What is still fading in has other colours than it will have; what goes round without end is not waited for.
  await page.waitForFunction(() =>
    document.getAnimations().every(({ playState, effect }) => playState !== 'running' || effect?.getTiming().iterations === Infinity),
  );
  await page.evaluate(axe.source);
  const { violations } = await page.evaluate(
    (part) => (globalThis as unknown as { axe: typeof axe }).axe.run(part ?? document), // put there by the line before
    within,
  );
  return violations
    .filter(({ impact }) => impact === 'serious' || impact === 'critical')
    .map(({ id, nodes }) => `${id}: ${nodes[0]?.html.slice(0, 200)} ${nodes[0]?.failureSummary ?? ''}`);
}
