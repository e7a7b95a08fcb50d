import { gatherExperience } from '../../engine/experience/index.ts';
import type { CaseContent } from '../../engine/schema/index.ts';

self.addEventListener('message', (event: MessageEvent<readonly CaseContent[]>) => {
  self.postMessage(gatherExperience(event.data));
});
