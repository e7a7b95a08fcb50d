import { readdir, readFile } from 'node:fs/promises';
import { extname, join } from 'node:path';
import { protectiveHeaders } from './contentPolicy.ts';

const mediaTypes: Readonly<Record<string, string>> = {
  '.html': 'text/html; charset=utf-8',
  '.js': 'text/javascript; charset=utf-8',
  '.css': 'text/css; charset=utf-8',
  '.json': 'application/json; charset=utf-8',
  '.svg': 'image/svg+xml',
  '.png': 'image/png',
  '.ico': 'image/x-icon',
  '.woff': 'font/woff',
  '.woff2': 'font/woff2',
};

/** The built page: which request path stands for which file. */
export type PageFiles = ReadonlyMap<string, string>;

/** What is asked for: the method, and the path of the address as it arrived (still encoded, without query). */
export interface PageRequest {
  readonly method: string;
  readonly path: string;
}

export interface PageAnswer {
  readonly status: 200 | 400 | 404 | 405 | 421 | 503;
  readonly headers: Readonly<Record<string, string>>;
  /** Empty for HEAD and for refusals. */
  readonly body: Uint8Array<ArrayBuffer>;
}

/**
 * Lists the files of the built page under `root` (followed links left out, unknown kinds left out). Fails as `readdir` does when
 * there is no such folder, which means that the program was not built.
 */
export async function listPageFiles(root: string): Promise<PageFiles> {
  const files = new Map<string, string>();
  await walk(root, '', files);
  const index = files.get('/index.html');
  if (index) files.set('/', index);
  return files;
}

// By hand, because `readdir` of Node 18.15 (Electron 25) knows no `recursive`.
async function walk(folder: string, prefix: string, files: Map<string, string>): Promise<void> {
  for (const entry of await readdir(folder, { withFileTypes: true })) {
    const path = join(folder, entry.name);
    if (entry.isDirectory()) await walk(path, `${prefix}/${entry.name}`, files);
    else if (entry.isFile() && extname(entry.name) in mediaTypes) files.set(`${prefix}/${entry.name}`, path);
  }
}

/**
 * Answers one request for a file of the page. The path is only ever looked up in the list made before, never joined to a folder, so no
 * way of writing `..` leads outside. The one implementation behind the desktop scheme and the loopback server.
 */
export async function answerPageRequest(files: PageFiles, request: PageRequest): Promise<PageAnswer> {
  if (request.method !== 'GET' && request.method !== 'HEAD') return refuse(405, { allow: 'GET, HEAD' });
  const path = decodePath(request.path);
  if (path === undefined) return refuse(400);
  const file = files.get(path);
  if (file === undefined) return refuse(404);
  const content = await readFile(file).catch(() => undefined);
  // It was there when the list was made: a new build is under way.
  if (content === undefined) return refuse(503);
  const headers = {
    ...protectiveHeaders,
    'content-type': mediaTypes[extname(file)] ?? 'application/octet-stream',
    'content-length': String(content.byteLength),
  };
  return { status: 200, headers, body: request.method === 'HEAD' ? new Uint8Array() : new Uint8Array(content) };
}

/** A refusal that tells nothing but its number. */
export function refuse(status: Exclude<PageAnswer['status'], 200>, more: Readonly<Record<string, string>> = {}): PageAnswer {
  return { status, headers: { ...protectiveHeaders, 'content-length': '0', ...more }, body: new Uint8Array() };
}

function decodePath(path: string): string | undefined {
  try {
    return decodeURIComponent(path);
  } catch {
    return undefined;
  }
}
