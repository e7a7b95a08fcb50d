import { unknownInEvidence } from '../../engine/cabinet/index.ts';
import { lookOutcomes } from '../../engine/diagnosis/index.ts';
import {
  meaningWords,
  type Names,
  startSentence,
  thingWords,
  windowTexts,
  wordGaps,
  wordList,
  wordLook,
  wordMeanings,
  wordOutcomes,
  wordStepDone,
  wordStepOutcome,
  wordStepTried,
} from '../../engine/messages/index.ts';
import { displayMeanings, type Evidence, type Snapshot, supplyMeanings } from '../../engine/schema/index.ts';
import type { Topology } from '../../engine/topology/index.ts';
import type { AppState, OpenEntry } from '../state/appState.ts';
import { namesOf } from '../state/names.ts';
import type { CaseRecord } from '../state/sitting.ts';
import type { EntryRef } from '../state/stepCommands.ts';

const words = windowTexts.log;

/** One thing that was entered and still holds. */
export interface LogEntry {
  readonly key: string;
  readonly entry: EntryRef;
  readonly at: string | undefined;
  readonly what: string;
  readonly code: string | null;
  /** How it is corrected: by the entry it was made with, or by one of these answers; neither: it can only be withdrawn. */
  readonly reopen: OpenEntry | null;
  readonly answers: readonly { readonly outcome: string; readonly words: string }[];
}

/** Everything that holds, newest look first; inside a look what was entered last comes first. */
export function listEntries(
  record: CaseRecord,
  topology: Topology,
  names: Names,
): readonly { readonly snapshot: number; readonly entries: readonly LogEntry[] }[] {
  const { snapshots } = record.evidence;
  return snapshots
    .map((snapshot, index) => {
      const isLast = index === snapshots.length - 1;
      const observed = [
        ...displayEntries(snapshot, index, isLast, topology, names),
        ...reportEntries(snapshot, index, isLast, names),
        ...lookEntries(snapshot, index, names),
      ];
      // What was entered last stands last in its list; a stable sort keeps that where times are equal or missing.
      const newestFirst = observed.reverse().sort((a, b) => momentOf(b.at) - momentOf(a.at));
      return { snapshot: index, entries: [...newestFirst, ...actEntries(record, snapshot, index, names)] };
    })
    .filter(({ entries }) => entries.length > 0)
    .reverse();
}

function displayEntries(snapshot: Snapshot, index: number, isLast: boolean, topology: Topology, names: Names): readonly LogEntry[] {
  return (snapshot.displays ?? []).map(({ unit, meanings, code, at }) => {
    const isSupply = topology.supplies.some((supply) => supply === unit);
    return {
      key: `display ${index} ${unit}`,
      entry: { kind: 'display', snapshot: index, unit },
      at,
      what: words.display(names.unit(unit), wordMeanings(meanings)),
      code: code ?? null,
      reopen: isLast ? { kind: 'display', unit, walking: false } : null,
      answers: (isSupply ? supplyMeanings : displayMeanings).map((meaning) => ({ outcome: meaning, words: meaningWords[meaning].label })),
    };
  });
}

function reportEntries(snapshot: Snapshot, index: number, isLast: boolean, names: Names): readonly LogEntry[] {
  return (snapshot.reports ?? []).map(({ chain, gaps, at }) => ({
    key: `report ${index} ${chain}`,
    entry: { kind: 'report', snapshot: index, chain },
    at,
    what: words.report(names.chain(chain), wordGaps(names, chain, gaps)),
    code: null,
    reopen: isLast ? { kind: 'report', chain, walking: false } : null,
    answers: [],
  }));
}

function lookEntries(snapshot: Snapshot, index: number, names: Names): readonly LogEntry[] {
  return (snapshot.looks ?? []).map((look, at) => ({
    key: `look ${index} ${at}`,
    entry: { kind: 'look', snapshot: index, index: at },
    at: look.at,
    what: startSentence(`${wordLook(names, look)}: ${wordOutcomes(look.look, look.outcomes)}`),
    code: null,
    reopen: null,
    answers: lookOutcomes(look).map((outcome) => ({ outcome, words: wordOutcomes(look.look, [outcome]) })),
  }));
}

function actEntries(record: CaseRecord, snapshot: Snapshot, index: number, names: Names): readonly LogEntry[] {
  if (isNewStop(record, index)) return [stopEntry(record, index)];
  const done = doneBefore(snapshot, index, names);
  if (!done) return [];
  const { tried, found, step } = done;
  const what = startSentence(found ?? tried);
  // A restart is entered first, and what came of it afterwards.
  const written = [what, startSentence(tried)];
  return [
    {
      key: `acts ${index}`,
      entry: { kind: 'acts', snapshot: index },
      at: lineTime(record, written),
      what,
      code: null,
      reopen: null,
      answers: ['runs', 'halts'].map((outcome) => ({ outcome, words: wordStepOutcome(names, step, outcome) })),
    },
  ];
}

/** A machine that ran at the look before is halted now, and nobody restarted it in between. */
function isNewStop({ evidence: { snapshots } }: CaseRecord, index: number): boolean {
  const snapshot = snapshots[index];
  return snapshots[index - 1]?.halted === false && snapshot?.halted === true && snapshot.restarted !== true;
}

const stopEntry = (record: CaseRecord, index: number): LogEntry => ({
  key: `acts ${index}`,
  entry: { kind: 'acts', snapshot: index },
  at: lineTime(record, [startSentence(windowTexts.steps.stopped)]),
  what: startSentence(windowTexts.steps.stopped),
  code: null,
  reopen: null,
  answers: [],
});

/** A snapshot bears no time of its own; the line that was written when it was entered does. */
const lineTime = ({ log = [] }: CaseRecord, written: readonly string[]) =>
  [...log].reverse().find(({ what }) => written.includes(what))?.at;

/** What was done before a snapshot, in words without and with what came of it; null where nothing was done. */
function doneBefore({ interventions, provoked, restarted, halted }: Snapshot, index: number, names: Names) {
  const acts = interventions ?? [];
  const outcome = halted === undefined ? null : halted ? 'halts' : 'runs';
  const step = provoked
    ? ({ do: 'provoke', how: provoked.how, subjects: provoked.subjects ?? [] } as const)
    : ({ do: 'act', acts } as const);
  if (provoked || acts.length > 0) {
    return { step, tried: wordStepTried(names, step), found: outcome && wordStepDone(names, step, outcome) };
  }
  if (restarted !== true || index === 0) return null;
  const tried = windowTexts.steps.restarted;
  return { step, tried, found: outcome && `${tried}: ${wordStepOutcome(names, step, outcome)}` };
}

const mostUnknown = 10;
let lastUnknown: { readonly evidence: Evidence; readonly topology: Topology; readonly words: string } | null = null;

/** What the evidence names and the cabinet does not have, as a list in words; empty where it has everything. Asked at every change of state. */
export function wordUnknown({ caseRecord: { evidence }, checked: { topology } }: AppState): string {
  if (lastUnknown?.evidence === evidence && lastUnknown.topology === topology) return lastUnknown.words;
  const names = namesOf(topology);
  const found = unknownInEvidence(topology, evidence).map((one) =>
    one.thing === 'gap' ? words.unknownGap(names.chain(one.chain), one.gap, one.length) : `${thingWords[one.thing]} “${one.id}”`,
  );
  lastUnknown = { evidence, topology, words: wordList([...new Set(found)].slice(0, mostUnknown)) };
  return lastUnknown.words;
}

export function momentOf(at: string | undefined): number {
  const moment = at === undefined ? Number.NaN : Date.parse(at);
  return Number.isNaN(moment) ? 0 : moment;
}
