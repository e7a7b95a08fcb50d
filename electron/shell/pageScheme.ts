import { protocol } from 'electron';
import { answerPageRequest, type PageAnswer, type PageFiles, refuse } from '../serve/pageFiles.ts';
import { type Failure, pageMissing, renderFailurePage } from './failurePage.ts';

const scheme = 'linkwright';
const host = 'app';
const failurePath = '/failure';

/** The origin of our page; everything else is foreign. */
export const pageOrigin = `${scheme}://${host}`;
/** Where the window starts. */
export const pageAddress = `${pageOrigin}/index.html`;
/** Where the window shows what went wrong. */
export const failureAddress = `${pageOrigin}${failurePath}`;

/** Makes the scheme one like https (own origin, fetch, workers), without any way around the content policy. Before the program is ready. */
export function declarePageScheme(): void {
  protocol.registerSchemesAsPrivileged([
    { scheme, privileges: { standard: true, secure: true, supportFetchAPI: true, corsEnabled: true, stream: true } },
  ]);
}

/** Answers the scheme from the built page; `currentFailure` tells what the failure page says. */
export function servePageScheme(files: PageFiles, currentFailure: () => Failure): void {
  protocol.handle(scheme, async (request) => {
    const answer = await answerRequest(files, currentFailure, request.method, new URL(request.url));
    return new Response(answer.body, { status: answer.status, headers: answer.headers });
  });
}

async function answerRequest(files: PageFiles, currentFailure: () => Failure, method: string, url: URL): Promise<PageAnswer> {
  if (url.host !== host) return refuse(421);
  if (url.pathname === failurePath) return renderFailurePage(currentFailure());
  const answer = await answerPageRequest(files, { method, path: url.pathname });
  // Without its first page the window would stay empty and silent.
  return answer.status !== 200 && method === 'GET' && url.pathname === new URL(pageAddress).pathname
    ? renderFailurePage(pageMissing)
    : answer;
}
