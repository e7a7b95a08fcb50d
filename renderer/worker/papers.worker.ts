import { makePapers } from './makePapers.ts';
import type { PapersReply, PapersRequest, ReportRequest } from './papersProtocol.ts';

const reply = (message: PapersReply) => self.postMessage(message);

self.addEventListener('message', (event: MessageEvent<PapersRequest | ReportRequest>) => {
  makePapers(event.data, reply).catch((error: unknown) => reply({ kind: 'failed', detail: String(error) }));
});
