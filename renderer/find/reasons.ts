import { useMemo } from 'react';
import { displayAgreement, reportAgreement } from '../../engine/diagnosis/index.ts';
import {
  meaningWords,
  type Names,
  windowTexts,
  wordDisplayTerm,
  wordFaultClause,
  wordGaps,
  wordList,
  wordMeanings,
} from '../../engine/messages/index.ts';
import type { Snapshot } from '../../engine/schema/index.ts';
import type { DisplayPrediction } from '../../engine/simulation/index.ts';
import type { Topology } from '../../engine/topology/index.ts';
import { inReadingOrder } from '../canvas/projectFrame.ts';
import { countRead, currentSnapshot, findDisplay, findReport } from '../state/evidence.ts';
import { namesOf } from '../state/names.ts';
import { useApp } from '../state/useWorkbench.ts';
import { useCandidateWords } from './candidateWords.ts';
import { type FindModel, type Row, selectFindModel } from './findModel.ts';

export interface Reason {
  readonly head: string;
  readonly sentences: readonly string[];
}

const words = windowTexts.suspects;
/** More would be a page, not a reason. */
const mostSentences = 3;

/** Why the chosen candidate: what would make the complaining displays say what they say, what stands against it, what to read next. */
export function useReasons(): readonly Reason[] {
  const model = useApp(selectFindModel);
  const topology = useApp((state) => state.checked.topology);
  const snapshot = currentSnapshot(model.record);
  const { title } = useCandidateWords();
  return useMemo(
    () =>
      model.chosen ? listReasons(model, model.chosen, topology, snapshot, namesOf(topology), title(model.chosen.candidate).strong) : [],
    [model, topology, snapshot, title],
  );
}

function listReasons(model: FindModel, row: Row, topology: Topology, snapshot: Snapshot, names: Names, name: string): readonly Reason[] {
  const { prediction } = row;
  if (!prediction) return [];
  const { simulation, fitting, against } = prediction;
  const explained: string[] = [];
  const contrary: string[] = [];
  const telling: string[] = [];
  for (const unit of inReadingOrder(topology)) {
    const predicted = simulation.displays.get(unit);
    if (!predicted) continue;
    const seen = findDisplay(snapshot, unit)?.meanings ?? [];
    const agreement = displayAgreement(seen, predicted.meaning);
    if (agreement === 'fits' && predicted.meaning !== 'quiet') explained.push(words.shows(names.unit(unit), shortReason(names, predicted)));
    if (agreement === 'against')
      contrary.push(words.wouldShow(names.unit(unit), meaningWords[predicted.meaning].label, wordMeanings(seen)));
    if (agreement === 'open' && othersDiffer(model, row, unit, predicted.meaning)) {
      telling.push(words.unreadWould(names.unit(unit), meaningWords[predicted.meaning].label));
    }
  }
  for (const [chain, report] of simulation.reports) {
    const seen = findReport(snapshot, chain)?.gaps;
    if (seen && report.speaks && reportAgreement(seen, report.gap) === 'against') {
      contrary.push(words.wouldReport(names.chain(chain), wordGaps(names, chain, [report.gap]), wordGaps(names, chain, seen)));
    }
  }
  const faults = wordList(row.candidate.best.faults.map(({ fault }) => wordFaultClause(names, fault)));
  const all = words.observations(countRead(snapshot), snapshot.reports?.length ?? 0);
  const fit = against > 0 ? [words.fitsSome(fitting, fitting + against)] : all === '' ? [] : [words.fitsAll(all)];
  // Nothing is suspected where the machine is whole: there is no why.
  if (row.candidate.spots.length === 0 && contrary.length === 0) return [];
  return [
    {
      head: `${words.why} ${name}?`,
      sentences: [...(explained.length > 0 ? [words.taken(faults, explained.slice(0, mostSentences))] : []), ...fit],
    },
    ...(contrary.length > 0 ? [{ head: `${words.againstIt}:`, sentences: contrary.slice(0, mostSentences) }] : []),
    ...(telling.length > 0 ? [{ head: words.tellApart, sentences: telling.slice(0, mostSentences) }] : []),
  ];
}

/** The reason of a display; that its cause is the fault itself goes without saying, a cause that lies between is told. */
function shortReason(names: Names, { because }: DisplayPrediction): string {
  const parts = because.map((term) => {
    if (term.code !== 'lost' || term.causes.some(({ code }) => code !== 'fault')) return wordDisplayTerm(names, term);
    return term.scope === 'neighbour' && term.moment === 'now'
      ? words.hearsNothing[term.side]
      : wordDisplayTerm(names, { ...term, causes: [] });
  });
  return wordList([...new Set(parts)]);
}

/** Whether a unit that nobody has looked at would show something else if another listed candidate were the fault. */
function othersDiffer(model: FindModel, row: Row, unit: ReturnType<typeof inReadingOrder>[number], predicted: string): boolean {
  return model.rows.some((other) => {
    const meaning =
      other !== row && other.candidate.probability >= 0.01 ? other.prediction?.simulation.displays.get(unit)?.meaning : undefined;
    return meaning !== undefined && meaning !== predicted;
  });
}
