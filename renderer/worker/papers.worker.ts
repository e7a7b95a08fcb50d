import { makePapers } from './makePapers.ts';
import type { PapersReply, PapersRequest } from './papersProtocol.ts';

const reply = (message: PapersReply) => self.postMessage(message);

self.addEventListener('message', (event: MessageEvent<PapersRequest>) => {
  makePapers(event.data, reply).catch((error: unknown) => reply({ kind: 'failed', detail: String(error) }));
});
