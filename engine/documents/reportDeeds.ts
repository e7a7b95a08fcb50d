import { type Diagnosis, diagnose } from '../diagnosis/index.ts';
import {
  type Names,
  startSentence,
  wordGaps,
  wordItem,
  wordList,
  wordLook,
  wordMeanings,
  wordOutcomes,
  wordProbability,
  wordStepDone,
  wordStepTried,
  reportWords as words,
} from '../messages/index.ts';
import { replayCase } from '../plan/index.ts';
import type { CaseContent, Snapshot } from '../schema/index.ts';
import type { Cabinet } from '../topology/index.ts';

type ReportedCase = Omit<CaseContent, 'cabinet'>;

/** One thing that was looked at or done, with what came of it. */
export interface Deed {
  /** Day, hours and minutes, where they were noted; else empty. */
  readonly at: string;
  readonly what: string;
  /** What was suspected most after it, with its probability; empty where the cabinet allows no diagnosis. */
  readonly suspect: string;
}

interface DeedSource {
  readonly cabinet: Cabinet | null;
  readonly record: ReportedCase;
  readonly names: Names;
}

/**
 * Everything that was looked at and done, in order, as it holds now: withdrawn entries are gone, corrected ones are right; each with
 * where the probabilities stood then.
 */
export function listDeeds({ cabinet, record, names }: DeedSource): readonly Deed[] {
  return replayCase(record.evidence).flatMap(({ kind, snapshot, look, evidence }): Deed | readonly Deed[] => {
    const part = evidence.snapshots[snapshot];
    if (part === undefined) return [];
    const deed =
      kind === 'state'
        ? acted(part, evidence.snapshots[snapshot - 1], record, names)
        : kind === 'seen'
          ? seen(part, names)
          : looked(part.looks?.[look ?? 0], names);
    return deed === null ? [] : { ...deed, suspect: cabinet === null ? '' : wordSuspect(diagnose(cabinet, evidence), names) };
  });
}

type Fact = Omit<Deed, 'suspect'> | null;

/** What was done before a look at the machine, and whether it ran then; null where nothing was. */
function acted(
  { interventions, provoked, halted, restarted }: Snapshot,
  before: Snapshot | undefined,
  { log }: ReportedCase,
  names: Names,
): Fact {
  if ((interventions ?? []).length === 0 && provoked === undefined) {
    if (restarted !== true && before?.halted === false && halted === true) return { at: '', what: words.stoppedAgain };
    return restarted === true ? { at: '', what: halted === undefined ? words.restarted : words.restartedTo(halted) } : null;
  }
  const step = provoked
    ? ({ do: 'provoke', how: provoked.how, subjects: provoked.subjects ?? [] } as const)
    : ({ do: 'act', acts: interventions ?? [] } as const);
  const what = startSentence(halted === undefined ? wordStepTried(names, step) : wordStepDone(names, step, halted ? 'halts' : 'runs'));
  // A snapshot bears no time of its own; the line of the log that was written with it does.
  const line = [...(log ?? [])].reverse().find((one) => one.what === what);
  return { at: clockOf(line?.at), what };
}

/** Displays and reports of one look at the machine: what is not quiet by name. */
function seen({ displays = [], reports = [] }: Snapshot, names: Names): Fact {
  const loud = displays.filter(({ meanings }) => meanings.length !== 1 || meanings[0] !== 'quiet');
  const quiet = displays.length - loud.length;
  const read = [
    ...loud.map(({ unit, meanings, code }) => `${names.unit(unit)} ${wordMeanings(meanings)}${code === undefined ? '' : ` (${code})`}`),
    ...(quiet === 0 ? [] : [words.quiet(quiet)]),
  ];
  const sentences = [
    ...(read.length === 0 ? [] : [words.displays(wordList(read))]),
    ...reports.map(({ chain, gaps }) => `${startSentence(words.report(names.chain(chain)))}: ${wordGaps(names, chain, gaps)}.`),
  ];
  return { at: clockOf([...displays, ...reports].find(({ at }) => at !== undefined)?.at), what: sentences.join(' ') };
}

function looked(look: NonNullable<Snapshot['looks']>[number] | undefined, names: Names): Fact {
  if (look === undefined) return null;
  return { at: clockOf(look.at), what: startSentence(`${wordLook(names, look)}: ${wordOutcomes(look.look, look.outcomes)}`) };
}

/** Only what stands out is named. */
const leastShare = 0.05;

function wordSuspect({ items: [first] }: Diagnosis, names: Names): string {
  return first === undefined || first.probability < leastShare
    ? ''
    : `${startSentence(wordItem(names, first.item.fault))}, ${wordProbability(first.probability)}`;
}

/** As it was noted, in the zone in which it was noted: the date and the time of day. */
function clockOf(at: string | undefined): string {
  return at === undefined ? '' : `${at.slice(0, 10)} ${at.slice(11, 16)}`;
}
