import type { UnitId } from '../base/index.ts';
import type { Diagnosis } from '../diagnosis/index.ts';
import {
  checkWords,
  endReasonWords,
  meaningWords,
  startSentence,
  wordActsDone,
  wordCaution,
  wordDisplaced,
  wordFault,
  wordItem,
  wordList,
  wordLook,
  wordMeanings,
  wordMode,
  wordPartOwner,
  wordProbability,
  reportWords as words,
} from '../messages/index.ts';
import {
  type Block,
  bodySize,
  displaySigns,
  type FigureCell,
  inks,
  layOut,
  type Paper,
  type PaperSize,
  placeSign,
  type TableCell,
} from '../paper/index.ts';
import { type EndState, listCauses, listDisplaced, listHandBackChecks, listHandlings } from '../plan/index.ts';
import { listReplaced } from '../repair/index.ts';
import type { CaseContent, Evidence, Snapshot } from '../schema/index.ts';
import { listCautions } from '../steps/index.ts';
import { type Cabinet, inMountingOrder } from '../topology/index.ts';
import { cautionBlocks } from './cautionBlocks.ts';
import type { MadeDocument } from './makeDocument.ts';
import { photoBlocks } from './photos.ts';
import { drawPlace, placesOfFault } from './placeFigure.ts';
import { listDeeds } from './reportDeeds.ts';
import { type DocumentSource, makePaper } from './source.ts';

/** A case as it is reported: the case file without its copy of the cabinet. */
export type ReportedCase = Omit<CaseContent, 'cabinet'>;

/** What a repair report is made from. */
export interface ReportSource extends DocumentSource {
  readonly record: ReportedCase;
  /** What is suspected by everything that was seen and done. */
  readonly diagnosis: Diagnosis | null;
  readonly end: EndState;
  /** Whether the photos of what was seen, and of the place of the fault, are printed too. */
  readonly withPhotos: boolean;
}

/** Room for a heading and a caption at a figure as high as a page, mm. */
const captionRoom = 30;
/** Photos of a report are no larger, mm. */
const photoHeight = 80;
/** Suspects named in a report. */
const mostSuspects = 6;
/** Less than this is not named. */
const leastShare = 0.01;

/** The report of a repair, for a customer: what was seen, done, found and put in, and what remains to be watched. */
export function makeRepairReport(source: ReportSource, size: PaperSize): MadeDocument & { readonly paper: Paper } {
  const { record, end, names } = source;
  const frame = { id: words.id, title: words.title, foot: record.name };
  const { width, height } = bodySize(makePaper(source, { ...frame, blocks: [] }), size);
  const paper: Paper = makePaper(source, {
    ...frame,
    blocks: [
      ...headBlocks(source),
      { kind: 'heading', level: 1, text: end.end === 'open' ? words.placeOpen : words.place },
      ...drawPlace(source, { width, height: height - captionRoom }),
      { kind: 'heading', level: 1, text: words.pattern },
      ...pattern(source),
      { kind: 'heading', level: 1, text: words.steps },
      deedsTable(source),
      { kind: 'heading', level: 1, text: words.reasoning },
      ...reasoning(source),
      { kind: 'heading', level: 1, text: words.parts },
      partsTable(source),
      ...listed(words.touched, end.end === 'proved' ? [] : touched(source)),
      ...listed(
        words.displaced,
        end.displaced.map((one) => startSentence(wordDisplaced(names, one))),
      ),
      { kind: 'heading', level: 1, text: words.cautions },
      ...cautions(source),
      { kind: 'together', blocks: [...checklist(source), ...signature(source)] },
      ...photos(source),
    ],
  });
  return { id: words.id, title: words.title, paper, pages: layOut(paper, size) };
}

function headBlocks({ record, end }: ReportSource): readonly Block[] {
  const began = record.startedAt?.slice(0, 10);
  return [
    {
      kind: 'fields',
      columns: 2,
      fields: [
        { label: words.machine, ...(record.machine === undefined ? {} : { value: record.machine }) },
        { label: words.began, ...(began === undefined ? {} : { value: began }) },
      ],
    },
    { kind: 'paragraph', text: [{ text: words.ends[end.end], face: 'bold' }], size: 12 },
    ...(end.because.length === 0
      ? []
      : [{ kind: 'paragraph', text: end.because.map((reason) => endReasonWords[reason]).join(' ') } as const]),
  ];
}

/** What was seen at first, and what every display must show now: chain by chain, what stands apart last. */
function pattern({ topology, names, record, end }: ReportSource): readonly Block[] {
  const first = record.evidence.snapshots.find(({ displays }) => (displays?.length ?? 0) > 0);
  const now = new Map(end.expected.displays.map(({ unit, meaning }) => [String(unit), meaningWords[meaning].label]));
  const onChains = topology.chains.flatMap(({ units }) => units);
  const units = [...onChains, ...inMountingOrder(topology).filter((unit) => !onChains.includes(unit))];
  const isTold = (unit: UnitId) => first?.displays?.some((one) => one.unit === unit) === true || (now.get(unit) ?? quiet) !== quiet;
  const told = units.filter(isTold);
  const others = units.filter((unit) => !isTold(unit));
  const hasCodes = first?.displays?.some(({ code }) => code !== undefined) === true;
  const rows = told.map((unit): readonly TableCell[] => {
    const seen = first?.displays?.find((one) => one.unit === unit);
    const [meaning = null] = seen?.meanings.length === 1 ? seen.meanings : [];
    const isLoud = seen !== undefined && meaning !== 'quiet';
    return [
      [{ text: names.unit(unit), face: 'bold' }],
      names.place(unit),
      signCell(meaning ?? 'not-looked-at', isLoud),
      [{ text: seen ? wordMeanings(seen.meanings) : words.notSeen, face: isLoud ? 'bold' : 'regular' }],
      ...(hasCodes ? [seen?.code === undefined ? '' : [{ text: seen.code, face: 'mono' as const }]] : []),
      ...(end.end === 'open' ? [] : [now.get(unit) ?? '']),
    ];
  });
  const table: Block = {
    kind: 'table',
    words: words.pattern,
    tight: true,
    columns: [
      { head: words.unit },
      { head: words.place2, grow: 1 },
      { head: '', width: 7, align: 'center' },
      { head: words.seen, grow: 1 },
      ...(hasCodes ? [{ head: words.code }] : []),
      ...(end.end === 'open' ? [] : [{ head: words.mustShow }]),
    ],
    rows,
  };
  const notRead = words.notRead(wordList(others.map((unit) => names.unit(unit))));
  return [
    ...(rows.length === 0 ? [] : [table]),
    ...(others.length === 0 ? [] : [{ kind: 'paragraph', text: end.end === 'open' ? notRead : `${notRead} ${words.quietToo}` } as const]),
  ];
}

const quiet = meaningWords.quiet.label;

const signSize = 3.8;

/** The mark of a display, without words: these stand beside it. */
function signCell(sign: keyof typeof displaySigns, isLoud: boolean): FigureCell {
  const shapes = placeSign(displaySigns[sign], 0, 0, signSize, isLoud ? inks.black : inks.soft);
  return { figure: { width: signSize, height: signSize, shapes, words: '' }, ...(isLoud ? { fill: inks.loss } : {}) };
}

function deedsTable(source: ReportSource): Block {
  const deeds = listDeeds(source);
  if (deeds.length === 0) return { kind: 'paragraph', text: words.noSteps };
  const hasTimes = deeds.some(({ at }) => at !== '');
  const hasSuspects = deeds.some(({ suspect }) => suspect !== '');
  return {
    kind: 'table',
    words: words.steps,
    tight: true,
    columns: [
      ...(hasTimes ? [{ head: words.time, width: 33 }] : []),
      { head: words.what, grow: 1 },
      ...(hasSuspects ? [{ head: words.suspectThen, width: 45 }] : []),
    ],
    rows: deeds.map(({ at, what, suspect }) => [...(hasTimes ? [at] : []), what, ...(hasSuspects ? [suspect] : [])]),
  };
}

/** What is suspected by everything that was seen, likeliest first. */
function reasoning(source: ReportSource): readonly Block[] {
  const { diagnosis, names, end, record } = source;
  const suspects = (diagnosis?.hypotheses ?? []).filter(({ faults, probability }) => faults.length > 0 && probability >= leastShare);
  if (suspects.length === 0) return [{ kind: 'paragraph', text: words.noPlace }];
  const items = suspects
    .slice(0, mostSuspects)
    .map(({ faults, probability }) =>
      words.suspected(faults.map(({ fault }) => wordFault(names, fault)).join(' + '), wordProbability(probability)),
    );
  const confirmed = record.evidence.rates?.cases ?? null;
  const alike = suspects.some(({ group }, index) => suspects.findIndex((other) => other.group === group) !== index);
  const found = end.end === 'open' ? null : wordFound(source);
  return [
    ...(found === null ? [] : [{ kind: 'paragraph', text: [{ text: words.found(found), face: 'bold' }] } as const]),
    { kind: 'paragraph', text: (end.end === 'open' ? words.left : words.suspects)(confirmed) },
    { kind: 'list', items },
    ...(alike ? [{ kind: 'paragraph', text: words.alike } as const] : []),
  ];
}

/** What somebody saw to be wrong; null where nobody named it, or where it is not among what was mended. */
function wordFound({ cabinet, diagnosis, names, record }: ReportSource): string | null {
  const { item, mode } = record.result ?? {};
  if (item === undefined || cabinet === null || diagnosis === null) return null;
  const causes = listCauses(cabinet, record.evidence, diagnosis).filter(({ key }) => key === item);
  const [first] = causes;
  if (first === undefined) return null;
  const named = causes.find(({ fault }) => fault.mode === mode);
  if (mode !== undefined && named === undefined) return null;
  return named === undefined
    ? wordItem(names, first.fault)
    : `${wordItem(names, named.fault)}, ${wordMode(named.fault.item, named.fault.mode)}`;
}

function partsTable({ topology, names, record }: ReportSource): Block {
  const parts = listReplaced(topology.content, record.evidence);
  if (parts.length === 0) return { kind: 'paragraph', text: words.noParts };
  return {
    kind: 'table',
    words: words.parts,
    columns: [{ head: words.partHeads.place, grow: 1 }, { head: words.partHeads.number }, { head: words.partHeads.serial }],
    rows: parts.map(({ owner, before, proposed }) => [
      startSentence(wordPartOwner(names, owner)),
      before.partNumber || proposed.partNumber || '–',
      proposed.serial || before.serial || '–',
    ]),
  };
}

function touched({ record, names }: ReportSource): readonly string[] {
  return [...new Set(listHandlings(record.evidence).map(({ act }) => startSentence(wordActsDone(names, [act]))))];
}

const listed = (title: string, items: readonly string[]): readonly Block[] =>
  items.length === 0
    ? []
    : [
        { kind: 'heading', level: 1, text: title },
        { kind: 'list', items },
      ];

/** The cautions that concerned what was done, each once. */
function cautions({ cabinet, record }: ReportSource): readonly Block[] {
  const codes = new Map(
    (cabinet === null ? [] : cautionsOf(cabinet, record))
      .filter(({ code }) => code !== 'note-first')
      .map((caution) => [caution.code, caution]),
  );
  return cautionBlocks([...codes.values()].map(wordCaution));
}

function cautionsOf(cabinet: Cabinet, { evidence }: ReportedCase) {
  const acts = evidence.snapshots.flatMap(({ interventions }) => interventions ?? []);
  return [
    ...(acts.length === 0 ? [] : listCautions(cabinet, evidence, { do: 'act', acts })),
    ...evidence.snapshots.flatMap((snapshot) => restartCautions(cabinet, evidence, snapshot)),
    ...evidence.snapshots.flatMap(({ looks }) => (looks ?? []).flatMap((look) => listCautions(cabinet, evidence, { do: 'look', look }))),
  ];
}

/** Of a restart with nothing touched, be it that cables were moved, that it got warm, or that nothing but time went by. */
function restartCautions(cabinet: Cabinet, evidence: Evidence, { provoked, restarted, interventions }: Snapshot) {
  if (restarted !== true || (interventions?.length ?? 0) > 0) return [];
  return listCautions(cabinet, evidence, { do: 'provoke', how: provoked?.how ?? 'wait', subjects: provoked?.subjects ?? [] });
}

function checklist({ cabinet, record, end }: ReportSource): readonly Block[] {
  if (cabinet === null) return [];
  const checked = record.result?.checked ?? [];
  return [
    { kind: 'heading', level: 1, text: words.checklist },
    {
      kind: 'table',
      words: words.checklist,
      columns: [
        { head: words.what, grow: 1 },
        { head: '', align: 'right' },
      ],
      rows: listHandBackChecks(cabinet, record.evidence, end).map((check) => [
        checkWords[check],
        [{ text: checked.includes(check) ? words.yes : words.notConfirmed, face: 'bold' }],
      ]),
    },
  ];
}

function signature({ record, date, cabinet }: ReportSource): readonly Block[] {
  const { by, note } = record.result ?? {};
  const displaced = cabinet === null ? [] : listDisplaced(cabinet, record.evidence);
  return [
    { kind: 'heading', level: 1, text: words.sign },
    ...(note === undefined || note === '' ? [] : [{ kind: 'paragraph', text: `${words.fields.remark}: ${note}` } as const]),
    ...(displaced.length === 0 ? [] : [{ kind: 'paragraph', text: endReasonWords['parts-displaced'] } as const]),
    {
      kind: 'fields',
      columns: 2,
      fields: [
        { label: words.fields.name, ...(by === undefined || by === '' ? {} : { value: by }) },
        { label: words.fields.date, value: date },
        { label: words.fields.customer },
        { label: words.fields.signature },
      ],
    },
  ];
}

/** Photos that were taken of what was seen, then those of the place of the fault; each once. */
function photos(source: ReportSource): readonly Block[] {
  const { topology, names, record, withPhotos } = source;
  if (!withPhotos) return [];
  const blocksOf = photoBlocks(source, photoHeight);
  const noted = record.evidence.snapshots.flatMap(({ displays, reports, looks }) => [
    ...(displays ?? []).map(({ unit, photo }) => ({ title: names.unit(unit), photo })),
    ...(reports ?? []).map(({ chain, photo }) => ({ title: startSentence(words.report(names.chain(chain))), photo })),
    ...(looks ?? []).map((look) => ({ title: startSentence(wordLook(names, look)), photo: look.photo })),
  ]);
  const places = placesOfFault(source);
  const units = [...topology.units.values()].filter(({ id }) => places.includes(id));
  const blocks = [
    ...noted.flatMap(({ title, photo }) => (photo === undefined ? [] : blocksOf(title, [photo]))),
    ...units.flatMap((unit) => blocksOf(names.unit(unit.id), unit.photos)),
  ];
  const head: Block = { kind: 'heading', level: 1, text: words.photos };
  const [first = { kind: 'paragraph', text: words.noPhotos } as const, ...rest] = blocks;
  return [{ kind: 'together', blocks: [head, first] }, ...rest];
}
