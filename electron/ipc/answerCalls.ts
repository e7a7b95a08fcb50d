import type { IpcMain, IpcMainInvokeEvent } from 'electron';
import { z } from 'zod';
import { fail, makeProblem, ok, type Result } from '../../engine/base/index.ts';
import type { BridgeCalls, CallName } from './bridge.ts';
import { callChannels } from './channels.ts';

// The validator must not make code from text: the same rule as in the page.
z.config({ jitless: true });

const callArguments = {
  describeProgram: z.tuple([]),
  takeNotices: z.tuple([]),
  takeHandedOverFiles: z.tuple([]),
} satisfies { readonly [Name in CallName]: z.ZodType<Parameters<BridgeCalls[Name]>> };

/** What answers each call. The arguments have been validated. */
export type CallHandlers = {
  readonly [Name in CallName]: (
    ...args: Parameters<BridgeCalls[Name]>
  ) => ReturnType<BridgeCalls[Name]> | Promise<ReturnType<BridgeCalls[Name]>>;
};

/**
 * Listens on every channel of the list. A call from anything but the main frame of our own page is refused, then one with wrong
 * arguments; both are answered as values, so that nothing of the program's inside reaches the caller.
 */
export function answerCalls(ipc: Pick<IpcMain, 'handle'>, handlers: CallHandlers, pageOrigin: string): void {
  // The keys of a table typed by `CallName` are exactly the call names.
  for (const name of Object.keys(callChannels) as CallName[]) {
    ipc.handle(callChannels[name], (event, ...args: unknown[]) => answer(name, event, args, handlers, pageOrigin));
  }
}

async function answer(
  name: CallName,
  event: IpcMainInvokeEvent,
  args: readonly unknown[],
  handlers: CallHandlers,
  pageOrigin: string,
): Promise<Result<unknown>> {
  if (!isOwnPage(event, pageOrigin)) return refuse(name, 'elsewhere');
  const parsed = callArguments[name].safeParse(args);
  if (!parsed.success) return refuse(name, 'malformed');
  try {
    return ok(await handlers[name](...parsed.data));
  } catch (error) {
    // A bug of ours: the page hears that it failed, the log hears why.
    console.error(`call ${name} failed`, error);
    return refuse(name, 'failed');
  }
}

function refuse(call: CallName, reason: 'elsewhere' | 'malformed' | 'failed'): Result<never> {
  return fail(makeProblem('call-refused', 'refused', { facts: { call, reason } }));
}

/** The frame may be gone (null), may be an embedded one, and may have come from elsewhere. */
function isOwnPage(event: IpcMainInvokeEvent, pageOrigin: string): boolean {
  const frame = event.senderFrame;
  return frame !== null && frame === event.sender.mainFrame && frame.origin === pageOrigin;
}
