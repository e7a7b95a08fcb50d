import { type Experience, gatherExperience } from '../../engine/experience/index.ts';
import type { CaseContent } from '../../engine/schema/index.ts';

/** What cases teach, worked out off the window's thread; in the page itself where there are no workers, or one fails. */
export function gatherAside(cases: readonly CaseContent[]): Promise<Experience> {
  if (cases.length === 0) return Promise.resolve(gatherExperience([]));
  return new Promise((resolve) => {
    const here = () => resolve(gatherExperience(cases));
    try {
      const worker = new Worker(new URL('../worker/experience.worker.ts', import.meta.url), { type: 'module' });
      const end = (done: () => void) => {
        worker.terminate();
        done();
      };
      worker.onmessage = (event: MessageEvent<Experience>) => end(() => resolve(event.data));
      worker.onerror = () => end(here);
      worker.postMessage(cases);
    } catch {
      here();
    }
  });
}
