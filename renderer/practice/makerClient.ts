import type { MakerQuestion, MakerReply } from './makerProtocol.ts';

/** The part of a worker that is used here; a test can stand in for it. */
export interface MakerWorker {
  postMessage(question: MakerQuestion): void;
  terminate(): void;
  onmessage: ((event: MessageEvent<MakerReply>) => void) | null;
}

export interface MakerClient {
  /** Asks; what is still being worked out is given up. */
  readonly ask: (question: MakerQuestion, onReply: (reply: MakerReply) => void) => void;
  /** Gives up what is being worked out; nothing more is heard of it. */
  readonly stop: () => void;
}

const lastReplies: readonly MakerReply['kind'][] = ['made', 'refused', 'generated', 'sealed', 'locked', 'unlocked'];

/** Puts one question at a time to a worker of its own. A plan cannot be interrupted, so to give it up its worker is ended. */
export function makeMakerClient(startWorker: () => MakerWorker): MakerClient {
  let worker: MakerWorker | null = null;
  let isBusy = false;
  const stop = () => {
    if (!isBusy) return;
    worker?.terminate();
    worker = null;
    isBusy = false;
  };
  return {
    ask(question, onReply) {
      stop();
      worker ??= startWorker();
      isBusy = true;
      worker.onmessage = ({ data }) => {
        if (lastReplies.includes(data.kind)) isBusy = false;
        onReply(data);
      };
      worker.postMessage(question);
    },
    stop,
  };
}

/** A client with the worker of the built page. */
export function openMaker(): MakerClient {
  return makeMakerClient(
    () => new Worker(new URL('../worker/maker.worker.ts', import.meta.url), { type: 'module', name: 'maker' }) as MakerWorker,
  );
}
