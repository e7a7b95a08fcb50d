import { fail, makeProblem, type Problem, type Result } from '../../engine/base/index.ts';
import type { FileRef } from '../state/sitting.ts';

export const mostFileBytes = 21 * 1024 * 1024;

export const bytesOf = async (file: File) => new Uint8Array(await file.arrayBuffer());
export const errorName = (error: unknown) => (error instanceof Error ? error.name : 'unknown');

/** A file as the window knows it: by a handle of this sitting, and a key that is the same for the same file. */
export function describe(handle: string, key: string, file: File): FileRef {
  return { handle, key, name: file.name, modifiedAt: new Date(file.lastModified).toISOString() };
}

/** No file that is read here may be larger. */
export function tooLarge(size: number): Result<never> {
  const facts = { megabytes: Math.ceil(size / 1024 / 1024), limitMegabytes: mostFileBytes / 1024 / 1024 };
  return fail(makeProblem('file-too-large', 'refused', { facts }));
}

export function unreadable(file: string, reason: string): Result<never> {
  return fail(makeProblem('file-unreadable', 'refused', { facts: { file, reason } }));
}

/** Does what the browser may refuse by a throw; a throw becomes a problem of this code. */
export async function attempt<T>(
  code: 'file-unreadable' | 'file-not-saved' | 'recovery-not-kept',
  file: string,
  work: () => Promise<Result<T>>,
): Promise<Result<T>> {
  try {
    return await work();
  } catch (error) {
    const reason = errorName(error);
    const problem: Problem =
      code === 'recovery-not-kept'
        ? makeProblem(code, 'warning', { facts: { reason } })
        : makeProblem(code, 'refused', { facts: { file, reason } });
    return fail(problem);
  }
}
