import type { Diagnosis, RankedItem } from '../../diagnosis/index.ts';
import {
  cannotTellApart,
  cautionsDefer,
  cautionWords,
  headings,
  impossibleStatement,
  type Names,
  rankedByRatesOnly,
  statements,
  wordAnswer,
  wordBehaviourBelief,
  wordCircumstance,
  wordCodesToLookUp,
  wordContradiction,
  wordCount,
  wordItem,
  wordList,
  wordMode,
  wordNote,
  wordOnset,
  wordProbability,
  wordUnvisitedShare,
} from '../../messages/index.ts';
import type { Evidence } from '../../schema/index.ts';
import type { Cabinet } from '../../topology/index.ts';
import { formatTable } from '../table.ts';
import { paragraph } from '../text.ts';
import { formatComparison } from './comparison.ts';

/** What is to be shown of a diagnosis. */
export interface ShownDiagnosis {
  readonly cabinet: Cabinet;
  readonly names: Names;
  readonly evidence: Evidence;
  readonly diagnosis: Diagnosis;
  readonly top: number;
  readonly explain: boolean;
  readonly columns: number;
}

/** The answer of a diagnosis for people: the answer line, suspects, what cannot be told apart, what contradicts, notes, cautions. */
export function formatDiagnosis(shown: ShownDiagnosis): string {
  const { cabinet, names, evidence, diagnosis, columns } = shown;
  const answer = wordAnswer(names, diagnosis);
  const lookUp = wordCodesToLookUp(names, evidence);
  const line = (text: string) => paragraph(text, columns);
  const listed = (texts: readonly string[]) => texts.map((text) => paragraph(text, columns, '    ', '  ')).join('');
  const section = (head: string, texts: readonly string[]) => (texts.length > 0 ? `\n${head}\n${listed(texts)}` : '');
  const unvisited = wordUnvisitedShare(diagnosis.unvisitedShare);
  return [
    line(cabinet.content.name),
    diagnosis.impossible ? line(impossibleStatement) : '',
    lookUp ? line(`${lookUp.head} ${lookUp.why}`) : '',
    answer ? line(answer) : '',
    line(statements.basedOn(wordEvidence(names, evidence))),
    diagnosis.contradiction ? `\n${wordContradiction(names, evidence, diagnosis.contradiction).map(line).join('')}` : '',
    formatSuspects(shown),
    formatGroups(shown),
    shown.explain ? formatComparison(shown) : '',
    section(
      headings.behaviours,
      diagnosis.behaviours.map((belief) => wordBehaviourBelief(names, belief)),
    ),
    section(headings.notes, [
      ...(isHaltedOpen(shown) ? [statements.haltedNotSaid] : []),
      ...(diagnosis.nothingBroken > 0 ? [statements.nothingBroken(wordProbability(diagnosis.nothingBroken))] : []),
      ...(unvisited ? [unvisited] : []),
      ...diagnosis.notes.map((note) => wordNote(names, note)),
    ]),
    section(headings.cautions, [cautionWords['note-first'].meaning, cautionWords['live-cabinet'].meaning, cautionsDefer]),
  ].join('');
}

/** Whether the answer hangs on something nobody said: a machine that is not halted may well be whole. */
function isHaltedOpen({ evidence, diagnosis }: ShownDiagnosis): boolean {
  const last = evidence.snapshots[evidence.snapshots.length - 1];
  return last?.halted === undefined && diagnosis.nothingBroken > 0.5;
}

/** "5 displays, 2 reports; it was running when it stopped": what the answer rests on. */
function wordEvidence(names: Names, evidence: Evidence): string {
  const { snapshots, circumstances = [] } = evidence;
  const count = (list: 'displays' | 'reports' | 'looks') => snapshots.reduce((sum, snapshot) => sum + (snapshot[list]?.length ?? 0), 0);
  const parts = [wordCount(count('displays'), 'display'), wordCount(count('reports'), 'report')];
  if (count('looks') > 0) parts.push(wordCount(count('looks'), 'look'));
  const onset = snapshots[0]?.onset;
  const rest = [
    ...(onset === undefined ? [] : [wordOnset(onset, snapshots[0]?.halted)]),
    ...circumstances.map((circumstance) => wordCircumstance(names, circumstance)),
  ];
  const seen = wordList(parts);
  const what = snapshots.length > 1 ? statements.inSnapshots(seen, wordCount(snapshots.length, 'snapshot')) : seen;
  return [what, ...rest].join('; ');
}

function formatSuspects({ names, diagnosis, top, columns }: ShownDiagnosis): string {
  const items = diagnosis.items.slice(0, top);
  if (items.length === 0) return '';
  const rest = diagnosis.items[items.length];
  const table = formatTable(
    [{ head: headings.likely, align: 'right' }, { head: headings.item }, { head: headings.modes, grow: true }, { head: headings.group }],
    items.map((ranked) => [
      wordProbability(ranked.probability),
      wordItem(names, ranked.item.fault),
      wordModes(ranked),
      groupsOf(diagnosis, ranked.item.key),
    ]),
    columns,
  );
  const more = rest
    ? paragraph(statements.moreSuspects(diagnosis.items.length - items.length, wordProbability(rest.probability)), columns)
    : '';
  return `\n${headings.suspects}\n${table}${more}`;
}

/** The modes of a suspect that weigh something, with their shares when there are several. */
function wordModes({ item, modes, probability }: RankedItem): string {
  const weighty = modes.filter((mode) => mode.probability >= probability / 100);
  const one = weighty.length === 1;
  return weighty
    .map((mode) => {
      const words = wordMode(item.kind, mode.mode);
      return one ? words : `${words} ${wordProbability(mode.probability)}`;
    })
    .join('; ');
}

/** Ambiguity groups are lettered in their order: A, B, … Z, then by number. */
function letter(group: number, diagnosis: Diagnosis): string {
  const at = diagnosis.groups.findIndex(({ id }) => id === group);
  return at >= 0 && at < 26 ? String.fromCharCode(65 + at) : String(group);
}

/** Groups that say something: of several items, and of more than a trace of probability. */
function weightyGroups({ groups }: Diagnosis): Diagnosis['groups'] {
  return groups.filter(({ items, probability }) => items.length > 1 && probability >= 0.001);
}

function groupsOf(diagnosis: Diagnosis, item: string): string {
  const inside = weightyGroups(diagnosis).filter(({ items }) => items.some((one) => one.item === item));
  return inside.map(({ id }) => letter(id, diagnosis)).join(' ');
}

/** Items that nothing seen tells apart, group by group, for the groups that matter. */
function formatGroups({ names, diagnosis, top, columns }: ShownDiagnosis): string {
  const labels = new Map(diagnosis.items.map(({ item }) => [item.key, wordItem(names, item.fault)]));
  const groups = weightyGroups(diagnosis).slice(0, top);
  if (groups.length === 0) return '';
  const lines = groups.map(({ id, items, probability }) => {
    const members = items.slice(0, top).map((one) => `${labels.get(one.item) ?? one.item} ${wordProbability(one.probability)}`);
    const more = items.length - members.length;
    return paragraph(
      `${letter(id, diagnosis)}  ${wordProbability(probability)}: ${members.join('; ')}${more > 0 ? `; ${statements.andMore(more)}` : ''}.`,
      columns,
      '     ',
      '  ',
    );
  });
  return `\n${cannotTellApart}\n${lines.join('')}${paragraph(rankedByRatesOnly, columns, '  ')}`;
}
