import { mkdir } from 'node:fs/promises';
import { fileURLToPath } from 'node:url';

/** The program's own folder. */
export const programFolder = fileURLToPath(new URL('../..', import.meta.url));
/** Where the build put the page. */
export const pageFolder = fileURLToPath(new URL('../../dist/page', import.meta.url));

/** Path of a picture for people to look at, in a folder that git ignores. */
export async function shotPath(name: string): Promise<string> {
  const folder = fileURLToPath(new URL('../../.shots', import.meta.url));
  await mkdir(folder, { recursive: true });
  return `${folder}/${name.replace(/[^\w.-]+/g, '-')}.png`;
}
