import type { Draft } from 'immer';
import type { CaseRecord } from './sitting.ts';

/** As many lines as a case file may hold; beyond, the oldest go. */
const mostLines = 10_000;
const longestLine = 500;

/** Writes a line into the case's log; `goesOn`: in the place of the last one, which said the same a moment ago. */
export function writeLog(
  record: Draft<CaseRecord>,
  line: { readonly what: string; readonly at: string | undefined },
  goesOn: boolean,
): void {
  const log = record.log ?? [];
  if (goesOn) log.pop();
  while (log.length >= mostLines) log.shift();
  log.push({ ...(line.at === undefined ? {} : { at: line.at }), what: line.what.slice(0, longestLine) });
  record.log = log;
}
