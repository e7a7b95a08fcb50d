import { protocol } from 'electron';
import { answerPageRequest, type PageFiles, refuse } from '../serve/pageFiles.ts';
import { type Failure, renderFailurePage } from './failurePage.ts';

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
    const { host: asked, pathname } = new URL(request.url);
    const answer =
      asked !== host
        ? refuse(421)
        : pathname === failurePath
          ? renderFailurePage(currentFailure())
          : await answerPageRequest(files, { method: request.method, path: pathname });
    return new Response(answer.body, { status: answer.status, headers: answer.headers });
  });
}
