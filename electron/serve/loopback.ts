import { createServer, type IncomingMessage, type Server } from 'node:http';
import { answerPageRequest, listPageFiles, type PageAnswer, type PageFiles, refuse } from './pageFiles.ts';

/** The only address we listen on: other machines cannot reach it. */
const loopbackAddress = '127.0.0.1';

export interface LoopbackServer {
  /** Where a browser on this machine finds the page, for example `http://127.0.0.1:40123/`. */
  readonly address: string;
  readonly port: number;
  /** Stops at once; open connections are cut. */
  readonly close: () => Promise<void>;
}

/**
 * Serves the built page in `root` on loopback. `port` 0 takes any free one. Fails as `listen` does when the port is taken, and as
 * `readdir` does when the page was not built.
 */
export async function startLoopbackServer(options: { readonly root: string; readonly port: number }): Promise<LoopbackServer> {
  const files = await listPageFiles(options.root);
  const server = createServer();
  const port = await listen(server, options.port);
  server.on('request', (request, response) => {
    void answer(files, request, port).then(({ status, headers, body }) => response.writeHead(status, headers).end(body));
  });
  return {
    address: `http://${loopbackAddress}:${port}/`,
    port,
    close: () =>
      new Promise((resolve) => {
        server.close(() => resolve());
        server.closeAllConnections();
      }),
  };
}

async function answer(files: PageFiles, request: IncomingMessage, port: number): Promise<PageAnswer> {
  // A page of another site whose name was made to point at 127.0.0.1 arrives with that name here.
  if (!isOwnHost(request.headers.host, port)) return refuse(421);
  const path = (request.url ?? '').split(/[?#]/, 1)[0] ?? '';
  return answerPageRequest(files, { method: request.method ?? '', path });
}

function isOwnHost(host: string | undefined, port: number): boolean {
  return host === `${loopbackAddress}:${port}` || host === `localhost:${port}`;
}

function listen(server: Server, port: number): Promise<number> {
  return new Promise((resolve, reject) => {
    server.once('error', reject);
    server.listen(port, loopbackAddress, () => {
      server.off('error', reject);
      const address = server.address();
      if (address === null || typeof address === 'string') reject(new Error('the server listens on no port'));
      else resolve(address.port);
    });
  });
}
