import type { Page } from 'playwright-core';
import { serializeCase } from '../../engine/cabinet/index.ts';
import type { CaseContent, Evidence, Fault } from '../../engine/schema/index.ts';
import { fullEvidence, plainCabinet, plainContent } from '../bench/cabinets.ts';

/** A case about one chain of so many drives, with a cut in the middle; the last display was not read yet. */
export function bigCase(perChain: number): CaseContent {
  const fault: Fault = { item: 'cable', link: `w1.${Math.ceil(perChain / 2)}`, mode: 'cut' };
  const evidence: Evidence = fullEvidence(plainCabinet(1, perChain), fault);
  const [first] = evidence.snapshots;
  return {
    id: 'big',
    name: `A chain of ${perChain}`,
    cabinet: plainContent(1, perChain),
    evidence: {
      snapshots: first ? [{ ...first, displays: (first.displays ?? []).filter(({ unit }) => unit !== lastUnit(perChain)) }] : [],
    },
  };
}

const lastUnit = (perChain: number) => `u1.${perChain}`;
/** The designation of the last drive of the chain. */
export const lastDesignation = (perChain: number): string => `-TB1.${perChain}`;

/** Drops a case file onto the window, as a user does from a folder. */
export async function dropCase(page: Page, content: CaseContent): Promise<void> {
  await page.evaluate((text) => {
    const data = new DataTransfer();
    data.items.add(new File([text], 'dropped.case.json', { type: 'application/json' }));
    window.dispatchEvent(new DragEvent('drop', { dataTransfer: data, bubbles: true, cancelable: true }));
  }, serializeCase(content));
}
