import { makePapers } from '../worker/makePapers.ts';
import type { PapersReply, PapersRequest, ReportRequest } from '../worker/papersProtocol.ts';

/** Makes documents off the window's thread, and gives every reply; after `stop` none comes any more. */
export function runPapers(request: PapersRequest | ReportRequest, onReply: (reply: PapersReply) => void): { readonly stop: () => void } {
  let isVoid = false;
  const receive = (reply: PapersReply) => {
    if (!isVoid) onReply(reply);
  };
  const worker = startWorker(receive);
  if (worker !== null) worker.postMessage(request);
  else makePapers(request, receive).catch((error: unknown) => receive({ kind: 'failed', detail: String(error) }));
  return {
    stop: () => {
      isVoid = true;
      worker?.terminate();
    },
  };
}

/** Null where there are no workers: then the page does it by itself. */
function startWorker(receive: (reply: PapersReply) => void): Worker | null {
  try {
    const worker = new Worker(new URL('../worker/papers.worker.ts', import.meta.url), { type: 'module' });
    worker.onmessage = (event: MessageEvent<PapersReply>) => receive(event.data);
    worker.onerror = (event) => receive({ kind: 'failed', detail: event.message });
    return worker;
  } catch {
    return null;
  }
}
