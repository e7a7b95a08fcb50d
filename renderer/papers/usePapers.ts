import { useCallback, useEffect, useRef, useState } from 'react';
import type { PaperKind } from '../../engine/messages/index.ts';
import { makePapers } from '../worker/makePapers.ts';
import type { PapersReply, PapersRequest } from '../worker/papersProtocol.ts';

/** How the making of documents stands. */
export type PapersWork =
  | { readonly state: 'working'; readonly document: PaperKind | null; readonly share: number }
  | { readonly state: 'done' }
  | { readonly state: 'cancelled' }
  | { readonly state: 'failed'; readonly detail: string };

/** Makes documents off the window's thread, the newest request only; ends it when the dialog closes. */
export function usePapers(): {
  readonly work: PapersWork;
  readonly make: (request: PapersRequest, onReply: (reply: PapersReply) => void) => void;
  readonly cancel: () => void;
} {
  const [work, setWork] = useState<PapersWork>({ state: 'done' });
  const running = useRef<{ stop: () => void } | null>(null);
  const stop = useCallback(() => {
    running.current?.stop();
    running.current = null;
  }, []);
  useEffect(() => stop, [stop]);
  const make = useCallback(
    (request: PapersRequest, onReply: (reply: PapersReply) => void) => {
      stop();
      setWork({ state: 'working', document: null, share: 0 });
      let isVoid = false;
      const receive = (reply: PapersReply) => {
        if (isVoid) return;
        if (reply.kind === 'progress') setWork({ state: 'working', document: reply.document, share: reply.share });
        else {
          setWork(reply.kind === 'failed' ? { state: 'failed', detail: reply.detail } : { state: 'done' });
          onReply(reply);
        }
      };
      const worker = startWorker(receive);
      running.current = {
        stop: () => {
          isVoid = true;
          worker?.terminate();
        },
      };
      if (worker !== null) worker.postMessage(request);
      else makePapers(request, receive).catch((error: unknown) => receive({ kind: 'failed', detail: String(error) }));
    },
    [stop],
  );
  const cancel = useCallback(() => {
    stop();
    setWork({ state: 'cancelled' });
  }, [stop]);
  return { work, make, cancel };
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
