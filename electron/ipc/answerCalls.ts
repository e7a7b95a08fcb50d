import type { IpcMain, IpcMainInvokeEvent } from 'electron';
import { z } from 'zod';
import { fail, makeProblem, nameTrouble, type Result } from '../../engine/base/index.ts';
import { exportKindOf } from '../files/exports.ts';
import { mostFileBytes } from '../files/limits.ts';
import type { BridgeCalls, CallName } from './bridge.ts';
import { callChannels } from './channels.ts';

// The validator must not make code from text: the same rule as in the page.
z.config({ jitless: true });

// A bare name: no folder, no drive, nothing that any system refuses in a name.
const proposedName = z
  .string()
  .min(1)
  .max(200)
  .refine((name) => !name.startsWith('.') && nameTrouble(name) === null);
// What is made of a document, and nothing that a system would run.
const exportedName = proposedName.refine((name) => exportKindOf(name) !== null);
const fileContent = z.instanceof(Uint8Array).refine((content) => content.byteLength <= mostFileBytes);

/** Handles, keys and names of documents: random, made here or in the page. They never reach a file name but as they are. */
const token = z.string().regex(/^[0-9a-f-]{16,64}$/);
const id = z.string().min(1).max(200);
/** An id as files have it; it becomes part of a file name. */
const caseId = z.string().regex(/^[A-Za-z0-9][A-Za-z0-9._-]{0,63}$/);
const documentText = z.string().max(mostFileBytes);
const documentFiles = z.strictObject({ case: token.nullable(), cabinet: token.nullable() });

const callArguments = {
  describeProgram: z.tuple([]),
  changeTextSize: z.tuple([z.enum(['larger', 'smaller', 'normal'])]),
  takeNotices: z.tuple([]),
  takeHandedOverFiles: z.tuple([]),
  chooseFile: z.tuple([]),
  saveFileAs: z.tuple([proposedName, fileContent]),
  exportFile: z.tuple([exportedName, fileContent]),
  saveFile: z.tuple([token, fileContent]),
  chooseList: z.tuple([]),
  chooseJsonFiles: z.tuple([z.enum(['files', 'folder'])]),
  deleteResult: z.tuple([token]),
  readFileAgain: z.tuple([token]),
  peekFile: z.tuple([token]),
  lookAtFile: z.tuple([token]),
  keepMine: z.tuple([token]),
  readKeptCopy: z.tuple([token]),
  findCabinetBeside: z.tuple([token, id]),
  listRecentFiles: z.tuple([]),
  openRecentFile: z.tuple([token]),
  keepRecovery: z.tuple([token, documentFiles, documentText]),
  dropRecovery: z.tuple([token]),
  listRecoveries: z.tuple([]),
  keepCase: z.tuple([caseId, fileContent]),
  listKeptCases: z.tuple([]),
  dropKeptCase: z.tuple([token]),
  tellUnsaved: z.tuple([z.boolean()]),
  answerClose: z.tuple([z.enum(['asking', 'close', 'stay'])]),
} satisfies { readonly [Name in CallName]: z.ZodType<Parameters<BridgeCalls[Name]>> };

/** What answers each call. The arguments have been validated; what can fail answers a `Result`. */
export type CallHandlers = {
  readonly [Name in CallName]: (
    ...args: Parameters<BridgeCalls[Name]>
  ) => Result<ReturnType<BridgeCalls[Name]>> | Promise<Result<ReturnType<BridgeCalls[Name]>>>;
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
    // The arguments were validated by the entry of this very name; the table's union cannot carry that on.
    const handle = handlers[name] as (...args: readonly unknown[]) => Result<unknown> | Promise<Result<unknown>>;
    return await handle(...parsed.data);
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
