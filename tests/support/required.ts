/** In continuous integration nothing may be left out: what is missing fails there and is a visible skip elsewhere. */
const nothingMayBeMissing = process.env['CI'] === 'true';

/**
 * Answers why a suite must be skipped, or undefined when it can run. Looks for `what` by trying `find`; in continuous integration a
 * failure of `find` is thrown instead.
 */
export async function whyMissing(what: string, find: () => Promise<unknown>): Promise<string | undefined> {
  try {
    await find();
    return undefined;
  } catch (error) {
    const reason = `${what} is not to be had here: ${error instanceof Error ? error.message : String(error)}`;
    if (nothingMayBeMissing) throw new Error(reason, { cause: error });
    console.warn(`skipped: ${reason}`);
    return reason;
  }
}
