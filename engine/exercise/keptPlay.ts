import { fail, makeProblem, ok, type Result } from '../base/index.ts';
import { type KeptPlayContent, keptPlayContent } from '../schema/index.ts';

/** A play as it is kept against a crash. */
export type KeptPlay = Omit<KeptPlayContent, 'format' | 'version'>;

const head = '{"format":"linkwright-play",';

/** Whether a text is a play that was kept, sound or not. */
export function isKeptPlay(text: string): boolean {
  return text.startsWith(head);
}

/** The text of a play, which `readKeptPlay` reads again. */
export function writeKeptPlay(kept: KeptPlay): string {
  return JSON.stringify({ format: 'linkwright-play', version: 1, ...kept } satisfies KeptPlayContent);
}

/** Fails with a problem where it is damaged. */
export function readKeptPlay(text: string): Result<KeptPlay> {
  try {
    const { format: _format, version: _version, ...kept } = keptPlayContent.parse(JSON.parse(text));
    return ok(kept);
  } catch {
    return fail(makeProblem('play-not-restored', 'warning')); // cut off, or written by something else
  }
}
