import { useCallback, useEffect, useRef, useState } from 'react';
import type { PaperKind } from '../../engine/messages/index.ts';
import type { PapersReply, PapersRequest } from '../worker/papersProtocol.ts';
import { runPapers } from './runPapers.ts';

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
      running.current = runPapers(request, (reply) => {
        if (reply.kind === 'progress') setWork({ state: 'working', document: reply.document, share: reply.share });
        else {
          setWork(reply.kind === 'failed' ? { state: 'failed', detail: reply.detail } : { state: 'done' });
          onReply(reply);
        }
      });
    },
    [stop],
  );
  const cancel = useCallback(() => {
    stop();
    setWork({ state: 'cancelled' });
  }, [stop]);
  return { work, make, cancel };
}
