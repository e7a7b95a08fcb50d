import { mkdirSync, mkdtempSync, rmSync, symlinkSync, writeFileSync } from 'node:fs';
import { connect } from 'node:net';
import { networkInterfaces, tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { contentPolicy } from '../../electron/serve/contentPolicy.ts';
import { type LoopbackServer, startLoopbackServer } from '../../electron/serve/loopback.ts';
import { answerPageRequest, listPageFiles } from '../../electron/serve/pageFiles.ts';

const folder = mkdtempSync(join(tmpdir(), 'linkwright-loopback-'));
const root = join(folder, 'page');
const secret = 'the secret beside the page';
let server: LoopbackServer;

beforeAll(async () => {
  mkdirSync(join(root, 'assets'), { recursive: true });
  writeFileSync(join(root, 'index.html'), '<!doctype html><title>page</title>');
  writeFileSync(join(root, 'assets', 'a b.js'), 'export {};');
  writeFileSync(join(root, 'assets', 'notes.txt'), 'of a kind that the page has no use for');
  writeFileSync(join(folder, 'secret.json'), secret);
  symlinkSync(join(folder, 'secret.json'), join(root, 'linked.json'));
  symlinkSync(folder, join(root, 'out'));
  server = await startLoopbackServer({ root, port: 0 });
});

afterAll(async () => {
  await server.close();
  rmSync(folder, { recursive: true, force: true });
});

/** Sends exact bytes, because clients tidy up paths before they send them; answers everything that came back. */
function sendRaw(request: string, port = server.port): Promise<string> {
  return new Promise((resolve, reject) => {
    const socket = connect(port, '127.0.0.1', () => socket.write(request));
    let answer = '';
    socket.setEncoding('latin1').on('data', (text: string) => {
      answer += text;
    });
    socket.on('error', reject).on('close', () => resolve(answer));
  });
}

const ask = (target: string, method = 'GET', host = `127.0.0.1:${server.port}`) =>
  sendRaw(`${method} ${target} HTTP/1.1\r\nHost: ${host}\r\nConnection: close\r\n\r\n`);

describe('the loopback server', () => {
  it('should serve the page with its policy', async () => {
    const answer = await fetch(server.address);
    expect(answer.status).toBe(200);
    expect(await answer.text()).toContain('<title>page</title>');
    expect(answer.headers.get('content-type')).toBe('text/html; charset=utf-8');
    expect(answer.headers.get('content-security-policy')).toBe(contentPolicy);
    expect(answer.headers.get('x-content-type-options')).toBe('nosniff');
  });

  it('should serve an encoded name, and ignore the query', async () => {
    const answer = await fetch(`${server.address}assets/a%20b.js?v=1`);
    expect(answer.headers.get('content-type')).toBe('text/javascript; charset=utf-8');
    expect(await answer.text()).toBe('export {};');
  });

  it('should answer HEAD without a body', async () => {
    const answer = await ask('/', 'HEAD');
    expect(answer).toMatch(/^HTTP\/1\.1 200/);
    expect(answer).toMatch(/content-length: [1-9]/);
    expect(answer.endsWith('\r\n\r\n')).toBe(true);
  });

  it.each(['POST', 'PUT', 'DELETE', 'OPTIONS', 'PATCH', 'PROPFIND'])('should refuse %s', async (method) => {
    expect(await ask('/', method)).toMatch(/^HTTP\/1\.1 405/);
  });

  it.each([
    '/../secret.json',
    '/assets/../../secret.json',
    '/%2e%2e/secret.json',
    '/..%2fsecret.json',
    '/%2e%2e%2fsecret.json',
    '/..%5csecret.json',
    '/..\\secret.json',
    '/assets/..%2f..%2fsecret.json',
    '/....//secret.json',
    '/%252e%252e%252fsecret.json',
    '//secret.json',
    '/linked.json',
    '/out/secret.json',
    '/index.html%00.json',
    '/assets/notes.txt',
    '/assets',
    '/assets/',
    '/.',
    '../secret.json',
    '*',
  ])('should not be led out of the page by %s', async (target) => {
    const answer = await ask(target);
    expect(answer).toMatch(/^HTTP\/1\.1 40[04]/);
    expect(answer).not.toContain(secret);
  });

  it.each(['/%zz', '/%', '/%c0%ae%c0%ae/secret.json', '/%ff'])('should refuse the badly encoded %s', async (target) => {
    expect(await ask(target)).toMatch(/^HTTP\/1\.1 400/);
  });

  it.each(['evil.example', `evil.example:1`, '127.0.0.1', '127.0.0.1:1', 'localhost', '[::1]', ''])(
    'should refuse the foreign host name "%s"',
    async (host) => {
      const answer = await ask('/', 'GET', host);
      expect(answer).toMatch(/^HTTP\/1\.1 421/);
      expect(answer).not.toContain('<title>');
    },
  );

  it('should refuse a request without a host name', async () => {
    expect(await sendRaw('GET / HTTP/1.0\r\n\r\n')).toMatch(/^HTTP\/1\.[01] 421/);
  });

  it('should take localhost for its own name', async () => {
    expect(await ask('/', 'GET', `localhost:${server.port}`)).toMatch(/^HTTP\/1\.1 200/);
  });

  it('should survive what is no request at all', async () => {
    expect(await sendRaw('\x16\x03\x01 nonsense\r\n\r\n')).toMatch(/^HTTP\/1\.1 400/);
    expect((await fetch(server.address)).status).toBe(200);
  });

  it('should answer, and go on, when a file of the build vanishes', async () => {
    const passing = join(root, 'passing.js');
    writeFileSync(passing, 'export {};');
    const own = await startLoopbackServer({ root, port: 0 });
    expect((await fetch(`${own.address}passing.js`)).status).toBe(200);
    rmSync(passing);
    expect((await fetch(`${own.address}passing.js`)).status).toBe(503);
    expect((await fetch(own.address)).status).toBe(200);
    await own.close();
  });

  it('should not be reached from another machine', async () => {
    const outside = Object.values(networkInterfaces())
      .flatMap((addresses) => addresses ?? [])
      .filter((address) => !address.internal && address.family === 'IPv4');
    for (const { address } of outside) {
      await expect(
        new Promise((resolve, reject) => {
          const socket = connect(server.port, address, () => resolve('connected'));
          socket.on('error', reject);
        }),
      ).rejects.toThrow();
    }
  });

  it('should say so when its port is taken', async () => {
    await expect(startLoopbackServer({ root, port: server.port })).rejects.toThrow(/EADDRINUSE/);
  });

  it('should say so when the page was not built', async () => {
    await expect(startLoopbackServer({ root: join(folder, 'nowhere'), port: 0 })).rejects.toThrow(/ENOENT/);
  });

  it('should end at once, with connections open', async () => {
    const short = await startLoopbackServer({ root, port: 0 });
    const idle = connect(short.port, '127.0.0.1');
    await new Promise((resolve) => idle.on('connect', resolve));
    const ended = new Promise((resolve) => idle.on('close', resolve).on('error', () => undefined));
    await short.close();
    await ended;
    await expect(fetch(short.address)).rejects.toThrow();
  });
});

describe('the policy of the page', () => {
  const directives = new Map(contentPolicy.split('; ').map((one) => [one.slice(0, one.indexOf(' ')), one.slice(one.indexOf(' ') + 1)]));

  it('should let run what the program itself brings, and nothing else: no code from text, none from elsewhere', () => {
    for (const name of ['script-src', 'connect-src', 'img-src', 'font-src', 'worker-src'])
      expect(directives.get(name), name).toBe("'self'");
    for (const name of ['default-src', 'object-src', 'base-uri', 'form-action', 'frame-src', 'frame-ancestors'])
      expect(directives.get(name), name).toBe("'none'");
    expect(contentPolicy).not.toMatch(/unsafe-eval|https?:|data:|blob:|\*/);
  });
});

describe('a request that asks for the head alone', () => {
  it('should be told how long the file is, and get nothing of it', async () => {
    const { status, headers, body } = await answerPageRequest(await listPageFiles(root), { method: 'HEAD', path: '/index.html' });
    expect([status, headers['content-length'], body.byteLength]).toEqual([200, '34', 0]);
  });
});
