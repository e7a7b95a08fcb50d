import { checkCabinet } from '../../cabinet/index.ts';
import type { CauseShare, Experience, SharpenedRate } from '../../experience/index.ts';
import {
  itemKindWords,
  makeNames,
  startSentence,
  wordCases,
  wordCauseKind,
  wordClue,
  wordDifference,
  wordFactor,
  wordNotCounted,
  wordProbability,
  wordRate,
  experienceWords as words,
} from '../../messages/index.ts';
import { type CaseContent, itemKinds } from '../../schema/index.ts';
import { formatTable } from '../table.ts';
import { paragraph } from '../text.ts';

export interface ShownCases {
  readonly experience: Experience;
  readonly fileOf: ReadonlyMap<CaseContent, string>;
  readonly others: readonly { readonly file: string; readonly kind: string }[];
  readonly columns: number;
}

/** So many kinds of cause are named for a case that does not tell them apart. */
const mostCauses = 3;

/** Less of a case, or less of a move, is not worth a line. */
const leastCases = 0.01;
const leastMove = 0.05;

/** What cases teach, for people. */
export function formatCases({ experience, fileOf, others, columns }: ShownCases): string {
  const { confirmed, uncounted, rates, clues, strength } = experience;
  const { heads } = words;
  const out = [paragraph(words.counted(confirmed.length, uncounted.length + others.length), columns)];
  const title = (text: string) => `\n${paragraph(text, columns)}`;
  const table = formatTable(
    [{ head: heads.case }, { head: heads.machine }, { head: heads.handedBack }, { head: heads.cause, grow: true }],
    confirmed.map(({ content, causes }) => [
      content.id,
      content.machine ?? content.cabinet.machineNumber ?? '',
      content.result?.at?.slice(0, 10) ?? '',
      wordCauses(causes),
    ]),
    columns,
  );
  if (table !== '') out.push(`\n${table}`);
  const left = [
    ...uncounted.map(({ content, reason }) => `${fileOf.get(content) ?? content.id}: ${wordNotCounted(reason)}`),
    ...others.map(({ file, kind }) => `${file}: ${words.otherFile(kind)}`),
  ];
  if (left.length > 0) out.push(title(words.left), ...left.map((line) => paragraph(line, columns, '    ', '  ')));
  if (confirmed.length === 0) return [...out, `\n${paragraph(words.noCases, columns)}`].join('');
  out.push(
    `\n${byClass(rates, columns)}`,
    `\n${byMode(rates, columns)}`,
    paragraph(`${words.how(words.worth(strength))} ${words.model}`, columns),
  );
  const behaved = confirmed.filter(({ differences }) => differences.length > 0);
  if (behaved.length === 0) return [...out, `\n${paragraph(words.noneBehaved, columns)}`].join('');
  out.push(title(words.behaved), ...clues.map((clue) => paragraph(wordClue(clue), columns, '    ', '  ')));
  for (const { content, differences } of behaved) {
    const names = makeNames(checkCabinet(content.cabinet).topology);
    out.push(
      paragraph(words.behavedIn(content.id), columns, '    ', '  '),
      ...differences.map((one) => paragraph(wordDifference(names, content.evidence, one), columns, '      ', '    ')),
    );
  }
  return out.join('');
}

function wordCauses(causes: readonly CauseShare[]): string {
  const worth = causes.filter(({ share }) => share >= leastCases);
  const said = worth.slice(0, mostCauses).map((cause) => `${wordCauseKind(cause)} ${wordProbability(cause.share)}`);
  return [...said, ...(worth.length > mostCauses ? [words.moreCauses(worth.length - mostCauses)] : [])].join('; ');
}

/** What could have been the cause of any case, part by part. */
function byClass(rates: readonly SharpenedRate[], columns: number): string {
  const { heads } = words;
  const rows = itemKinds.flatMap((item) => {
    const ofItem = rates.filter((rate) => rate.item === item);
    const sum = (of: (rate: SharpenedRate) => number) => ofItem.reduce((total, rate) => total + of(rate), 0);
    const expected = sum((rate) => rate.expected);
    return expected === 0 ? [] : [[startSentence(itemKindWords[item].label), wordCases(sum((rate) => rate.cases)), wordCases(expected)]];
  });
  return formatTable(
    [
      { head: heads.kind, grow: true },
      { head: heads.confirmed, align: 'right' },
      { head: heads.expected, align: 'right' },
    ],
    rows,
    columns,
  );
}

/** Kinds with a confirmed case, and those that moved; the rest is counted. */
function byMode(rates: readonly SharpenedRate[], columns: number): string {
  const { heads } = words;
  const possible = rates.filter(({ expected }) => expected > 0);
  const shown = possible.filter(({ cases, factor }) => cases >= leastCases || Math.abs(factor - 1) >= leastMove);
  const table = formatTable(
    [
      { head: heads.kind, grow: true },
      { head: heads.confirmed, align: 'right' },
      { head: heads.expected, align: 'right' },
      { head: heads.assumed, align: 'right' },
      { head: heads.sharpened, align: 'right' },
      { head: heads.factor, align: 'right' },
    ],
    shown.map((rate) => [
      startSentence(wordCauseKind(rate)),
      wordCases(rate.cases),
      wordCases(rate.expected),
      wordRate(rate.assumed),
      wordRate(rate.sharpened),
      wordFactor(rate.factor),
    ]),
    columns,
  );
  const more = possible.length - shown.length;
  return table + (more === 0 ? '' : paragraph(words.moreKinds(more), columns));
}
