import { shellWords } from '../../engine/messages/index.ts';
import { protectiveHeaders } from '../serve/contentPolicy.ts';
import type { PageAnswer } from '../serve/pageFiles.ts';

/** What went wrong, and what to do. Shown as text. */
export interface Failure {
  readonly title: string;
  readonly text: string;
}

/** The build is missing or cannot be read. */
export const pageMissing: Failure = { title: shellWords.pageMissingTitle, text: shellWords.pageMissing };

/** A page that needs no file of the build and no script, for when these are what failed. */
export function renderFailurePage(failure: Failure): PageAnswer {
  const html = `<!doctype html>
<html lang="en">
  <head>
    <meta charset="utf-8" />
    <title>${escapeHtml(failure.title)}</title>
    <style>
      :root { color-scheme: light dark; }
      body { margin: 0; padding: 48px; font: 16px/1.5 "DejaVu Sans", "Segoe UI", sans-serif; background: #d5dbd7; color: #152023; }
      main { max-width: 40em; padding: 24px; border-left: 6px solid #b3211b; background: #f6f8f6; }
      h1 { margin: 0 0 12px; font-size: 24px; }
      p { margin: 0; }
      @media (prefers-color-scheme: dark) {
        body { background: #0b1012; color: #e9efec; }
        main { border-color: #ff8273; background: #192124; }
      }
    </style>
  </head>
  <body><main role="alert"><h1>${escapeHtml(failure.title)}</h1><p>${escapeHtml(failure.text)}</p></main></body>
</html>
`;
  const body = new TextEncoder().encode(html);
  return { status: 200, headers: { ...protectiveHeaders, 'content-type': 'text/html; charset=utf-8' }, body };
}

function escapeHtml(text: string): string {
  const entities: Readonly<Record<string, string>> = { '&': '&amp;', '<': '&lt;', '>': '&gt;', '"': '&quot;', "'": '&#39;' };
  return text.replace(/[&<>"']/g, (character) => entities[character] ?? character);
}
