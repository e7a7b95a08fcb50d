import type { ChainId } from '../../base/index.ts';
import {
  headings,
  healthyLooksDark,
  meaningWords,
  momentWords,
  type Names,
  onsetWords,
  startSentence,
  statements,
  unitKindWords,
  wordAct,
  wordFault,
  wordFibreCause,
  wordList,
  wordOutcomes,
} from '../../messages/index.ts';
import type { FibreState, LinkState, MomentName, MomentState, Simulation, SimulationInput } from '../../simulation/index.ts';
import type { Topology } from '../../topology/index.ts';
import type { JsonDisplay, JsonLook, JsonSimulation } from '../answer/index.ts';
import { placeCells } from '../answer/index.ts';
import { formatTable } from '../table.ts';
import { paragraph } from '../text.ts';

/** What is to be shown of a simulation. */
export interface ShownSimulation {
  readonly topology: Topology;
  readonly names: Names;
  readonly input: Omit<SimulationInput, 'cabinet'>;
  readonly answer: JsonSimulation;
  readonly simulation: Simulation;
  readonly chains: readonly ChainId[] | null;
  readonly columns: number;
}

/** The answer of a simulation for people: what was broken, every display with its reason, the reports, and what else was asked for. */
export function formatSimulation(shown: ShownSimulation): string {
  const { answer, columns } = shown;
  const reports = answer.reports.map(({ text, reason }) =>
    paragraph(`${startSentence(text)}.${reason ? ` ${reason}` : ''}`, columns, '    ', '  '),
  );
  return [
    formatInput(shown),
    '\n',
    formatDisplays(shown, answer.displays),
    reports.length > 0 ? `\n${headings.reports}\n${reports.join('')}` : '',
    answer.moments ? formatWays(shown) : '',
    answer.looks ? formatLooks(shown, answer.looks) : '',
  ].join('');
}

function formatInput({ topology, names, input, columns }: ShownSimulation): string {
  const { faults, onset, halted, beforeTrip = [], sinceTrip = [] } = input;
  const lines =
    faults.length === 0
      ? [statements.noFaults]
      : faults.map((fault) => wordFault(names, fault) + (fault.absentNow ? statements.absentNow : ''));
  const acts = (when: string, list: readonly Parameters<typeof wordAct>[1][]) =>
    list.length === 0 ? '' : paragraph(`${when}: ${wordList(list.map((act) => wordAct(names, act, 'done')))}.`, columns);
  return [
    paragraph(topology.content.name, columns),
    paragraph(statements.simulated, columns),
    ...lines.map((line) => paragraph(line, columns, '    ', '  ')),
    acts(statements.beforeTrip, beforeTrip),
    acts(statements.sinceTrip, sinceTrip),
    paragraph(`${startSentence(halted === false ? statements.notHalted : onsetWords[onset].meaning)}.`, columns),
  ].join('');
}

function formatDisplays({ topology, names, columns }: ShownSimulation, displays: readonly JsonDisplay[]): string {
  return formatTable(
    [
      { head: headings.unit },
      { head: headings.chain, align: 'right' },
      { head: headings.position, align: 'right' },
      { head: headings.counted },
      { head: headings.display },
      { head: headings.why, grow: true },
    ],
    displays.map((display) => {
      // An id of this cabinet, straight from its simulation.
      const unit = display.unit as Parameters<typeof placeCells>[2];
      const counted = names.ordinal(unit) || (display.kind === 'supply' ? unitKindWords.supply : names.place(unit));
      return [names.unit(unit), ...placeCells(topology, counted, unit), meaningWords[display.meaning].label, display.reason];
    }),
    columns,
  );
}

/** The light's way along each chain: what passes each link outwards and back, and why not. The trip is shown where it differs. */
function formatWays(shown: ShownSimulation): string {
  const { simulation } = shown;
  const chains = simulation.now.chains.filter(({ id }) => shown.chains === null || shown.chains.includes(id));
  const way = (moment: MomentName) => chains.map(({ id }) => formatWay(shown, simulation[moment], id, moment));
  const [then, now] = [way('trip'), way('now')];
  return chains
    .map(({ id }, index) => {
      const text = (moment: MomentName, table: string) =>
        `\n${statements.lightWay(shown.names.chain(id), momentWords[moment].label)}\n${table}`;
      const atTrip = then[index] ?? '';
      const today = now[index] ?? '';
      // The wording of the trip stands in the past; the two moments are compared by their words for the present.
      const same = formatWay(shown, simulation.trip, id, 'now') === today;
      return (same ? '' : text('trip', atTrip)) + text('now', today);
    })
    .join('');
}

function formatWay({ names, columns }: ShownSimulation, state: MomentState, chainId: ChainId, tense: MomentName): string {
  const chain = state.chains.find(({ id }) => id === chainId);
  const name = (index: number) => {
    const unit = index < 0 ? undefined : chain?.units[index];
    return unit === undefined ? names.controller() : names.unit(unit);
  };
  const fibre = (link: LinkState | undefined, direction: 'outbound' | 'return') => wordFibre(names, link?.[direction], tense);
  return formatTable(
    [
      { head: headings.from },
      { head: headings.cable },
      { head: headings.to },
      { head: headings.outbound, grow: true },
      { head: headings.back, grow: true },
    ],
    (chain?.links ?? []).map((id, index) => {
      const link = state.links.get(id);
      return [name(index - 1), names.link(id), name(index), fibre(link, 'outbound'), fibre(link, 'return')];
    }),
    columns,
  );
}

function wordFibre(names: Names, fibre: FibreState | undefined, tense: MomentName): string {
  if (fibre === undefined || fibre.hears) return statements.passes;
  const causes = fibre.causes.map((cause) => wordFibreCause(names, cause, tense));
  return causes.length > 0 ? `${statements.passesNothing}: ${wordList(causes)}` : statements.passesNothing;
}

function formatLooks({ names, columns }: ShownSimulation, looks: readonly JsonLook[]): string {
  const links = [...new Set(looks.flatMap((look) => ('link' in look ? [look.link] : [])))];
  let normal = false;
  const cell = (link: string, matches: (look: JsonLook) => boolean) => {
    const look = looks.find((one) => 'link' in one && one.link === link && matches(one));
    if (!look?.outcome) return '–';
    const starred = look.outcome === 'none' && look.noLightIsNormal;
    normal ||= starred;
    return wordOutcomes(look.look, [look.outcome]) + (starred ? ' *' : '');
  };
  const rows = links.map((link) => [
    names.link(link),
    cell(link, (look) => look.look === 'light-at-plug' && look.end === 'upper'),
    cell(link, (look) => look.look === 'light-at-port' && look.end === 'upper'),
    cell(link, (look) => look.look === 'light-at-plug' && look.end === 'lower'),
    cell(link, (look) => look.look === 'light-at-port' && look.end === 'lower'),
    cell(link, (look) => look.look === 'lamp' && look.fibre === 'outbound'),
    cell(link, (look) => look.look === 'lamp' && look.fibre === 'return'),
  ]);
  const heads = [
    headings.cable,
    headings.atUpperPlug,
    headings.atUpperPort,
    headings.atLowerPlug,
    headings.atLowerPort,
    headings.lampOutbound,
    headings.lampReturn,
  ];
  const table = formatTable(
    heads.map((head) => ({ head })),
    rows,
    columns,
  );
  return `\n${paragraph(statements.lightLooks, columns)}${table}${normal ? paragraph(`* ${healthyLooksDark}`, columns) : ''}`;
}
