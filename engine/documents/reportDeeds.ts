import {
  type Names,
  startSentence,
  wordGaps,
  wordLook,
  wordMeanings,
  wordOutcomes,
  wordStepDone,
  wordStepTried,
  reportWords as words,
} from '../messages/index.ts';
import type { CaseContent, Snapshot } from '../schema/index.ts';

/** One thing that was looked at or done, with what came of it. `at`: hours and minutes, where they were noted. */
export interface Deed {
  readonly at: string;
  readonly what: string;
}

/** Everything that was looked at and done, in order, as it holds now: withdrawn entries are gone, corrected ones are right. */
export function listDeeds({ record, names }: { readonly record: Omit<CaseContent, 'cabinet'>; readonly names: Names }): readonly Deed[] {
  return record.evidence.snapshots.flatMap((snapshot) => [...acts(snapshot, record, names), ...observations(snapshot, names)]);
}

function acts({ interventions, provoked, halted }: Snapshot, { log }: Omit<CaseContent, 'cabinet'>, names: Names): readonly Deed[] {
  if ((interventions ?? []).length === 0 && provoked === undefined) return [];
  const step = provoked
    ? ({ do: 'provoke', how: provoked.how, subjects: provoked.subjects ?? [] } as const)
    : ({ do: 'act', acts: interventions ?? [] } as const);
  const what = startSentence(halted === undefined ? wordStepTried(names, step) : wordStepDone(names, step, halted ? 'halts' : 'runs'));
  // A snapshot bears no time of its own; the line of the log that was written with it does.
  const line = [...(log ?? [])].reverse().find((one) => one.what === what);
  return [{ at: clockOf(line?.at), what }];
}

function observations({ displays, reports, looks }: Snapshot, names: Names): readonly Deed[] {
  return [
    ...(displays ?? []).map(({ unit, meanings, code, at }) => ({
      at,
      what: `${names.unit(unit)} ${wordMeanings(meanings)}${code === undefined ? '' : ` (${code})`}`,
    })),
    ...(reports ?? []).map(({ chain, gaps, at }) => ({
      at,
      what: startSentence(`${words.report(names.chain(chain))}: ${wordGaps(names, chain, gaps)}`),
    })),
    ...(looks ?? []).map((look) => ({
      at: look.at,
      what: startSentence(`${wordLook(names, look)}: ${wordOutcomes(look.look, look.outcomes)}`),
    })),
  ].map(({ at, what }) => ({ at: clockOf(at), what }));
}

/** As it was noted, in the zone in which it was noted: the date and the time of day. */
function clockOf(at: string | undefined): string {
  return at === undefined ? '' : `${at.slice(0, 10)} ${at.slice(11, 16)}`;
}
