import {
  injectWords,
  type Names,
  type ShownChange,
  startSentence,
  wordDisplayReason,
  wordHop,
  wordHopStart,
  wordReport,
  wordReportReason,
  wordShows,
} from '../../engine/messages/index.ts';
import type { DisplayMeaning } from '../../engine/schema/index.ts';
import type { MomentName, ReportPrediction } from '../../engine/simulation/index.ts';
import type { InjectModel } from './injectModel.ts';
import { causesAtSender, type Hop } from './lightWay.ts';

/** What is not as in the whole cabinet: displays in the order of the chains, reports chain by chain. */
export function listChanges({ cabinet, simulation, whole }: InjectModel): {
  readonly displays: readonly ShownChange[];
  readonly reports: readonly ReportPrediction[];
} {
  const order = [...cabinet.chains.flatMap(({ units }) => units), ...cabinet.orphans, ...cabinet.offChain, ...cabinet.supplies];
  return {
    displays: order.flatMap((unit) => {
      const shown = simulation.displays.get(unit)?.meaning;
      return shown !== undefined && shown !== whole.displays.get(unit)?.meaning ? [{ unit, meaning: shown }] : [];
    }),
    reports: cabinet.chains.flatMap(({ id }) => {
      const report = simulation.reports.get(id);
      return report && report.gap !== whole.reports.get(id)?.gap ? [report] : [];
    }),
  };
}

/** What happens at one hop. */
export function sayStep(names: Names, hop: Hop, moment: MomentName): string {
  switch (hop.kind) {
    case 'start':
      return wordHopStart(names, hop.chain, causesAtSender(hop.first, null), moment);
    case 'report':
      return `${startSentence(wordReport(names, hop.report))}. ${wordReportReason(names, hop.report)}`.trim();
    default:
      return wordHop(names, { ...hop, direction: hop.kind, hears: hop.fibre.hears, causes: hop.fibre.causes }, moment);
  }
}

interface Settled {
  readonly meaning: DisplayMeaning;
  readonly shows: string;
  readonly why: string;
}

/** What the unit whose display is decided here shows, and why; null where none is. */
export function saySettled(names: Names, hop: Hop, { simulation }: InjectModel): Settled | null {
  const unit = 'settles' in hop ? hop.settles : null;
  const display = unit && simulation.displays.get(unit);
  return display
    ? { meaning: display.meaning, shows: wordShows(names, unit, display.meaning), why: wordDisplayReason(names, display) }
    : null;
}

/** One hop as it is announced: "Step 5 of 11. … -TB3 shows upstream loss. …" */
export function sayHop(names: Names, model: InjectModel, index: number, moment: MomentName): string {
  const hop = model.hops[index];
  if (!hop) return '';
  const settled = saySettled(names, hop, model);
  const words = [sayStep(names, hop, moment), ...(settled ? [settled.shows, settled.why] : [])].join(' ');
  return injectWords.saidHop(injectWords.step(index + 1, model.hops.length), words);
}
