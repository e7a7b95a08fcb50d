import { type ChainId, compareNatural, type UnitId } from '../base/index.ts';
import { feedsNotDocumented, meaningWords, wordStep, doorSheetWords as words } from '../messages/index.ts';
import {
  type Block,
  displaySigns,
  middleBaseline,
  type Paper,
  type PaperSize,
  pageSize,
  placeSign,
  plainText,
  type RichText,
  type Shape,
  type TableCell,
  textWidth,
  wrapText,
} from '../paper/index.ts';
import { firstStep, groupPatterns, type PatternGroup, type Patterns, simulateSingles } from '../patterns/index.ts';
import { type DisplayMeaning, displayMeanings, type LegendRecord } from '../schema/index.ts';
import { type Step, stateNeeded } from '../steps/index.ts';
import { computeSums } from '../sums/index.ts';
import { type Cabinet, type ChainTopology, isFeedDocumented } from '../topology/index.ts';
import { codesFor, legendOf, onlyCode } from './codes.ts';
import { describeGroup } from './groupWords.ts';
import { markCell } from './markCell.ts';
import { inFull, type ShortNames, shortNames } from './shortNames.ts';
import { type DocumentSource, makePaper } from './source.ts';
import { behaviourNote } from './validity.ts';

const headSize = 12;
/** The least width of a unit's column, mm: its mark, with white around it. */
const leastColumn = 6.4;
const widestColumn = 20;
/** From this width on words stand below the marks, and heads lie. */
const captionColumn = 17;
const reportWidth = 15;
const listReportWidth = 20;
/** Least width of the column that says what it may be. */
const leastLabel = 78;
const margins = 20;

/** One sheet for each chain, and one for what is on no chain, where a fault shows there alone. A cabinet that is not sound has none. */
export function doorSheets(given: DocumentSource, paper: PaperSize): readonly Paper[] {
  const { cabinet } = given;
  if (cabinet === null) return [];
  // Columns are narrow: what all designations begin with is said once.
  const short = shortNames(given.topology, given.names);
  const { names } = short;
  const source = { ...given, names };
  const worked = workOut(cabinet);
  const { patterns } = worked;
  const makeRow = rowMaker(source, worked);
  const chains = cabinet.chains.filter(({ units }) => units.length > 0);
  const sheets = chains.map((chain) => chainSheet(source, cabinet, patterns, chain, paper, makeRow, short));
  const apart = patterns.groups.filter((group) => !chains.some((chain) => concerns(group, chain)));
  return apart.length === 0 ? sheets : [...sheets, apartSheet(source, cabinet, patterns, apart, makeRow, short)];
}

/** Numbered in one paragraph: every line that it saves is room for rows. */
const howToRead: RichText = words.how.flatMap((text, index) => [
  { text: `${index === 0 ? '' : '  '}${index + 1}.\u00a0`, face: 'bold' as const },
  { text },
]);

const opening = (short: ShortNames): readonly Block[] => [
  { kind: 'paragraph', text: howToRead, size: 9 },
  ...inFull(short).map((text): Block => ({ kind: 'paragraph', text, size: 9 })),
];

type RowMaker = (group: PatternGroup, number: number, elsewhere: string) => { readonly text: RichText; readonly ring: string };

interface WorkedOut {
  readonly patterns: Patterns;
  readonly stepOf: (group: PatternGroup) => Step | null;
}

/** Kept for each cabinet: another paper, or the preview and then the file, need not simulate everything again. */
const kept = new WeakMap<Cabinet, WorkedOut>();

function workOut(cabinet: Cabinet): WorkedOut {
  const known = kept.get(cabinet);
  if (known !== undefined) return known;
  const steps = new Map<PatternGroup, Step | null>();
  const patterns = groupPatterns(cabinet, simulateSingles(cabinet, 'while-running'), 'while-running', 'displays-and-report');
  const stepOf = (group: PatternGroup) => {
    let step = steps.get(group);
    if (step === undefined) {
      step = firstStep(cabinet, group);
      steps.set(group, step);
    }
    return step;
  };
  const found = { patterns, stepOf };
  kept.set(cabinet, found);
  return found;
}

function rowMaker({ names, onShare }: DocumentSource, { patterns, stepOf }: WorkedOut): RowMaker {
  const done = new Set<PatternGroup>();
  const said = (group: PatternGroup) => {
    const step = stepOf(group);
    done.add(group);
    onShare?.(done.size / patterns.groups.length);
    if (step === null) return words.noStep;
    return words.first(wordStep(names, step), stateNeeded(step) === 'open');
  };
  return (group, number, elsewhere) => ({
    ring: String(number),
    text: [
      ...describeGroup(names, group.faults),
      { text: '. ' },
      ...(elsewhere === '' ? [] : [{ text: `${words.alsoElsewhere(elsewhere)}. ` }]),
      { text: said(group) },
    ],
  });
}

const concerns = (group: PatternGroup, chain: ChainTopology): boolean =>
  (group.reports.get(chain.id) ?? 'none') !== 'none' || chain.units.some((unit) => group.displays.get(unit) !== 'quiet');

function chainSheet(
  source: DocumentSource,
  cabinet: Cabinet,
  patterns: Patterns,
  chain: ChainTopology,
  paper: PaperSize,
  makeRow: RowMaker,
  short: ShortNames,
): Paper {
  const { names } = source;
  const groups = patterns.groups.filter((group) => concerns(group, chain));
  const count = chain.units.length;
  const room = (isLandscape: boolean) => (pageSize(paper, isLandscape).width - margins - reportWidth - leastLabel) / count;
  const isLandscape = room(false) < leastColumn && room(true) >= leastColumn;
  const width = columnWidth(cabinet, chain, room(isLandscape));
  const elsewhere = (group: PatternGroup) => describeElsewhere(source, cabinet, group, chain);
  const table: Block =
    width >= leastColumn
      ? gridTable(source, cabinet, chain, groups, width, (group, number) => makeRow(group, number, elsewhere(group)))
      : listTable(source, groups, chain.id, chain.units, (group, number) => makeRow(group, number, elsewhere(group)));
  return makePaper(source, {
    id: `door-sheet-${chain.record.number}`,
    title: words.title(names.chain(chain.id)),
    subtitle: words.subtitle(cabinet.content.name),
    isLandscape,
    foot: words.validity(behaviourNote(cabinet, chain.units)),
    caution: cautionOf(cabinet),
    blocks: [...opening(short), ...feedBlock(cabinet), keyTable(cabinet, chain.units), table, ...unseenBlock(source, patterns)],
  });
}

/** What is on no chain: supplies and drives with a link of their own. */
function apartSheet(
  source: DocumentSource,
  cabinet: Cabinet,
  patterns: Patterns,
  groups: readonly PatternGroup[],
  makeRow: RowMaker,
  short: ShortNames,
): Paper {
  const units = [...cabinet.supplies, ...cabinet.offChain];
  return makePaper(source, {
    id: 'door-sheet-apart',
    title: words.offChainTitle,
    subtitle: words.subtitle(cabinet.content.name),
    foot: words.validity(behaviourNote(cabinet, units)),
    caution: cautionOf(cabinet),
    blocks: [
      ...opening(short),
      ...feedBlock(cabinet),
      keyTable(cabinet, units),
      listTable(source, groups, null, units, (group, number) => makeRow(group, number, '')),
      ...unseenBlock(source, patterns),
    ],
  });
}

/** Wide enough for a word below each mark where there is room; else as narrow as marks and codes can be, so that the text has the rest. */
function columnWidth(cabinet: Cabinet, chain: ChainTopology, room: number): number {
  if (room >= captionColumn || room < leastColumn) return Math.min(widestColumn, room);
  const codes = chain.units.flatMap((unit) =>
    displayMeanings.map((meaning) => textWidth(onlyCode(legendOf(cabinet, unit), meaning) ?? '', 9, 'mono')),
  );
  const counted = textWidth(String(chain.units.length), 9) + 2.5;
  const wanted = Math.max(leastColumn, counted, ...codes.map((code) => code + 1.4));
  return Math.min(room, wanted);
}

type Labeller = (group: PatternGroup, number: number) => TableCell;

function gridTable(
  source: DocumentSource,
  cabinet: Cabinet,
  chain: ChainTopology,
  groups: readonly PatternGroup[],
  width: number,
  label: Labeller,
): Block {
  const { names } = source;
  const legends = new Map(chain.units.map((unit) => [unit, legendOf(cabinet, unit)]));
  const isNarrow = width < captionColumn;
  const numbered = (unit: UnitId, index: number) => `${index + 1} · ${names.ordinal(unit)}`;
  const hasOrdinals = chain.units.every((unit, index) => textWidth(numbered(unit, index), 9) <= width - 2.4);
  return {
    kind: 'table',
    words: words.title(names.chain(chain.id)),
    headSize,
    tight: true,
    columns: [
      { head: words.itMayBe, grow: 1 },
      ...chain.units.map((unit, index) => ({
        head: names.unit(unit),
        under: hasOrdinals ? numbered(unit, index) : String(index + 1),
        align: 'center' as const,
        width,
        turned: isNarrow,
      })),
      { head: words.report, under: words.gap, align: 'center', width: reportWidth },
    ],
    rows: groups.map((group, index) => [
      label(group, index + 1),
      ...chain.units.map((unit) => {
        const meaning = group.displays.get(unit) ?? 'quiet';
        return markCell(meaning, onlyCode(legends.get(unit), meaning), width - 1.2);
      }),
      reportCell(source, group, chain.id, reportWidth),
    ]),
  };
}

/** Where the report says that the chain is lost; by the positions in the heads, where the designations are too long for the column. */
function reportCell({ names }: DocumentSource, group: PatternGroup, chain: ChainId, width: number): RichText {
  const gap = group.reports.get(chain) ?? 'none';
  const name = names.gap(chain, gap);
  // Two lines: every line more is room that a row is lost for.
  if (gap !== 'none' && wrapText([{ text: name, face: 'bold' }], 9, width - 2.4).length > 2)
    return [{ text: words.gapAt(gap), face: 'bold' }];
  return [{ text: names.gap(chain, gap), face: 'bold' }];
}

/** The same in words, where there are too many units for a column each. */
function listTable(
  source: DocumentSource,
  groups: readonly PatternGroup[],
  chain: ChainId | null,
  units: readonly UnitId[],
  label: Labeller,
): Block {
  return {
    kind: 'table',
    words: words.shows,
    headSize,
    columns: [
      { head: words.itMayBe, width: leastLabel },
      { head: words.shows, grow: 1 },
      ...(chain === null ? [] : [{ head: words.report, under: words.gap, align: 'center' as const, width: listReportWidth }]),
    ],
    rows: groups.map((group, index) => [
      label(group, index + 1),
      describeDisplays(source, group, units),
      ...(chain === null ? [] : [reportCell(source, group, chain, listReportWidth)]),
    ]),
  };
}

/** "downstream loss -TB5; upstream loss -TB6 to -TB9, -TB12; all others quiet": each meaning once, in the order of the key. */
function describeDisplays({ names }: DocumentSource, group: PatternGroup, units: readonly UnitId[]): RichText {
  const runs: { meaning: DisplayMeaning; first: UnitId; last: UnitId }[] = [];
  for (const unit of units) {
    const meaning = group.displays.get(unit) ?? 'quiet';
    const last = runs.at(-1);
    if (last?.meaning === meaning) last.last = unit;
    else runs.push({ meaning, first: unit, last: unit });
  }
  const loud = displayMeanings.filter((meaning) => meaning !== 'quiet' && runs.some((run) => run.meaning === meaning));
  if (loud.length === 0) return words.allQuiet;
  const said = loud.flatMap((meaning, index) => {
    const where = runs
      .filter((run) => run.meaning === meaning)
      .map(({ first, last }) => (first === last ? names.unit(first) : words.range(names.unit(first), names.unit(last))));
    return [{ text: `${index === 0 ? '' : '; '}${meaningWords[meaning].label} ` }, { text: where.join(', '), face: 'bold' as const }];
  });
  return runs.some(({ meaning }) => meaning === 'quiet') ? [...said, { text: `; ${words.allOthersQuiet}` }] : said;
}

/** What a pattern shows outside of this chain: supplies, other chains and their reports. */
function describeElsewhere(source: DocumentSource, cabinet: Cabinet, group: PatternGroup, chain: ChainTopology): string {
  const { names } = source;
  // What hangs on no chain comes first: a supply's own display is often all that tells two patterns apart.
  const onChains = new Set(cabinet.chains.flatMap(({ units }) => units));
  const others = [...cabinet.units.keys()]
    .filter((unit) => !chain.units.includes(unit) && group.displays.get(unit) !== 'quiet')
    .sort((a, b) => Number(onChains.has(a)) - Number(onChains.has(b)));
  const shown = others
    .slice(0, mostElsewhere)
    .map((unit) => `${names.unit(unit)} ${meaningWords[group.displays.get(unit) ?? 'quiet'].label}`);
  const more = others.length > mostElsewhere ? [words.andMore(others.length - mostElsewhere)] : [];
  const reports = [...group.reports].flatMap(([id, gap]) =>
    id === chain.id || gap === 'none' ? [] : [words.reportOf(names.chain(id), names.gap(id, gap))],
  );
  return [...shown, ...more, ...reports].join(', ');
}

const mostElsewhere = 3;

/** The marks with their words, and the codes that the equipment on this sheet shows for them. */
function keyTable(cabinet: Cabinet, units: readonly UnitId[]): Block {
  const legends = [...new Set(units.map((unit) => legendOf(cabinet, unit)).filter((legend) => legend !== undefined))].sort((a, b) =>
    compareNatural(a.name, b.name),
  );
  return {
    kind: 'table',
    words: words.key,
    tight: true,
    columns: [{ head: '' }, ...displayMeanings.map(() => ({ head: '', align: 'center' as const, grow: 1 }))],
    rows: [
      ['', ...displayMeanings.map(keyCell)],
      ...legends.map((legend): readonly TableCell[] => [legend.name, ...displayMeanings.map((meaning) => codesCell(legend, meaning))]),
    ],
  };
}

const keySign = 4.6;

/** A mark with its word beside it. */
function keyCell(meaning: DisplayMeaning): TableCell {
  const { label } = meaningWords[meaning];
  const x = keySign + 1.6;
  const shapes: readonly Shape[] = [
    ...placeSign(displaySigns[meaning], 0, 0, keySign),
    { kind: 'text', x, y: middleBaseline(0, keySign, 9), text: label, size: 9 },
  ];
  return { figure: { width: x + textWidth(label, 9), height: keySign, shapes, words: label } };
}

const mostCodes = 4;

function codesCell(legend: LegendRecord, meaning: DisplayMeaning): RichText {
  const codes = codesFor(legend, meaning);
  const shown = codes.slice(0, mostCodes).join(' ');
  return [{ text: shown, face: 'mono' }, ...(codes.length > mostCodes ? [{ text: ' …' }] : [])];
}

/** The waiting time of the DC link, where every figure of it is known; else the machine's manual tells. */
function cautionOf(cabinet: Cabinet) {
  const { waitingTimeS } = computeSums(cabinet);
  return {
    kind: 'caution' as const,
    title: waitingTimeS === null ? words.cautionTitleUnknown : words.cautionTitle(waitingTimeS),
    text: words.caution,
  };
}

/** That nothing is known of the feeds, where it is so. */
function feedBlock(cabinet: Cabinet): readonly Block[] {
  return isFeedDocumented(cabinet) ? [] : [{ kind: 'paragraph', size: 9, text: [{ text: feedsNotDocumented, face: 'bold' }] }];
}

const mostUnseen = 12;

function unseenBlock({ names }: DocumentSource, { unseen }: Patterns): readonly Block[] {
  if (unseen.length === 0) return [];
  const text = plainText(describeGroup(names, unseen.slice(0, mostUnseen)));
  const more = unseen.length > mostUnseen ? `, ${words.andMore(unseen.length - mostUnseen)}` : '';
  return [{ kind: 'paragraph', size: 9, text: words.unseen(unseen.length, `${text}${more}`) }];
}
