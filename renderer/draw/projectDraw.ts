import { type LinkId, type Problem, type Severity, severities, type UnitId } from '../../engine/base/index.ts';
import { drawWords, windowTexts, wordNumber } from '../../engine/messages/index.ts';
import type { LinkRecord } from '../../engine/schema/index.ts';
import type { Sums } from '../../engine/sums/index.ts';
import type { Topology } from '../../engine/topology/index.ts';
import type { PlacedChain, PlacedUnit } from '../canvas/placement.ts';
import { type FrameSources, frameLeads, frameLink, frameLinks, frameUnits } from '../canvas/projectFrame.ts';
import type { LinkLine } from '../canvas/views.ts';
import type { Chosen, DrawChainView, DrawControllerView, DrawLeadView, DrawLinkView, DrawUnitView, LooseView } from './drawViews.ts';

export interface DrawSources extends FrameSources {
  readonly sums: Sums;
  readonly problems: ReadonlyMap<string, Severity>;
  readonly chosen: readonly string[];
  readonly feedbackShown: boolean;
  /** Units that are being dragged. */
  readonly carried: ReadonlySet<string>;
  /** The cable into which they would go, and the units at its ends. */
  readonly target: { readonly link: string | null; readonly mates: readonly string[] } | null;
  /** Keys of the sockets that would take what is pulled; null while nothing is pulled. */
  readonly joinable: ReadonlySet<string> | null;
}

/** The worst problem of each thing. */
export function worstProblems(problems: readonly Problem[]): ReadonlyMap<string, Severity> {
  const worst = new Map<string, Severity>();
  for (const { subjects, severity } of problems) {
    for (const subject of subjects) {
      const before = worst.get(subject);
      if (before === undefined || severities.indexOf(severity) < severities.indexOf(before)) worst.set(subject, severity);
    }
  }
  return worst;
}

function chosenAs({ chosen }: DrawSources, id: string): Chosen {
  if (!chosen.includes(id)) return 'no';
  return chosen[chosen.length - 1] === id ? 'first' : 'also';
}

export function drawUnits(sources: DrawSources): readonly DrawUnitView[] {
  const { topology, names, sums, problems } = sources;
  const volts = new Map(sums.feed.units.map((one) => [one.unit, one]));
  const plugged = pluggedPorts(sources);
  const fed = new Set(topology.feeds.map(({ to }) => to));
  return frameUnits(sources).map((frame): DrawUnitView => {
    const id = frame.id as UnitId; // the frame bears the id of its own unit
    const record = topology.units.get(id);
    const voltage = volts.get(id);
    const place = topology.placeOf.get(id);
    const problem = problems.get(id) ?? null;
    const hasPorts = record?.kind !== 'supply' && record?.onChain !== false;
    return {
      ...frame,
      // Ports are drawn also where no chain has reached them yet: that is how one gets there.
      onChain: hasPorts,
      chosen: chosenAs(sources, id),
      footer: place ? drawWords.counted(place.group, place.ordinal) : hasPorts ? drawWords.unreached : frame.footer,
      mate: sources.target?.mates.includes(id) ?? false,
      carried: sources.carried.has(id),
      model: record?.model?.trim() ?? '',
      partNumber: record?.partNumber?.trim() ?? '',
      volts: voltage?.voltage.value == null || voltage.voltage.bound !== null ? '' : drawWords.volts(voltage.voltage.value),
      voltsWrong: voltage?.verdict === 'too-low' || voltage?.verdict === 'too-high',
      problem,
      feedbacks: sources.feedbackShown
        ? (topology.feedbacksOf.get(id) ?? []).map((one) => topology.feedbacks.get(one)?.designation?.trim() || one)
        : [],
      upFree: hasPorts && !plugged.has(`${id} up`),
      downFree: hasPorts && !plugged.has(`${id} down`),
      fed: fed.has(id),
      takes: takenBy(sources, id),
      name: drawWords.unitName({
        unit: names.unit(id),
        kind: frame.kindWords,
        place: place ? names.place(id) : frame.footer,
        axes: frame.axes,
        problem,
        chosen: sources.chosen.includes(id),
      }),
    };
  });
}

/** Which of a unit's sockets would take what is pulled. */
function takenBy({ joinable }: DrawSources, id: string): DrawUnitView['takes'] {
  if (joinable === null) return null;
  return { up: joinable.has(`unit ${id} up`), down: joinable.has(`unit ${id} down`), feed: joinable.has(`feed ${id}`) };
}

function pluggedPorts({ topology }: DrawSources): ReadonlySet<string> {
  return new Set(
    [...topology.links.values()].flatMap(({ upper, lower }) => [
      ...(upper ? ['unit' in upper ? `${upper.unit} down` : `chain ${upper.chain}`] : []),
      ...(lower ? [`${lower.unit} up`] : []),
    ]),
  );
}

/** All cables with two ends: those of the chains, and those between units that no chain reaches. */
export function drawLinks(sources: DrawSources): readonly DrawLinkView[] {
  const { topology, names, problems } = sources;
  const lines = frameLinks(sources);
  const drawn = new Set(lines.map(({ id }) => id));
  const lanes = new Map<number, number>();
  const apart = [...topology.links].flatMap(([id, { upper, lower }]): LinkLine[] => {
    if (drawn.has(id) || !lower || !upper) return [];
    const place = {
      chain: 'chain' in upper ? upper.chain : '',
      gap: 0,
      upper: 'unit' in upper ? (upper.unit as UnitId) : null, // what is not placed is not drawn
      lower: lower.unit as UnitId,
    };
    const line = frameLink(sources, id, place, lanes);
    return line ? [line] : [];
  });
  return [...lines, ...apart].map((line): DrawLinkView => {
    const length = topology.links.get(line.id as LinkId)?.lengthM; // the line bears the id of its own link
    return {
      ...line,
      chosen: chosenAs(sources, line.id),
      length: length === undefined ? '' : `${wordNumber(length)} m`,
      problem: problems.get(line.id) ?? null,
      target: sources.target?.link === line.id,
      name: drawWords.linkName(
        names.link(line.id),
        line.upper === null ? names.controller() : names.unit(line.upper),
        names.unit(line.lower),
        sources.chosen.includes(line.id),
      ),
    };
  });
}

/** Ports at which a cable sits, of those that are drawn. */
function endsDrawn({ topology, placement }: Pick<DrawSources, 'topology' | 'placement'>, link: LinkRecord) {
  const units: ReadonlyMap<string, unknown> = placement.units;
  const chains: ReadonlyMap<string, unknown> = placement.chains;
  const { upper, lower } = topology.links.get(link.id as LinkId) ?? link; // a link of this very topology
  return {
    upper: upper !== undefined && ('chain' in upper ? chains.has(upper.chain) : units.has(upper.unit)) ? upper : null,
    lower: lower !== undefined && units.has(lower.unit) ? lower : null,
  };
}

/** Cables with one end plugged in: a short piece at that port. */
export function drawLoose(sources: DrawSources): readonly LooseView[] {
  const { topology, names, placement, detail } = sources;
  const boxes = new Map<string, PlacedUnit>(placement.units);
  const ports = new Map<string, PlacedChain>(placement.chains);
  return (topology.content.links ?? []).flatMap((link): LooseView[] => {
    const { upper, lower } = endsDrawn(sources, link);
    const there = upper ?? lower;
    if (there === null || (upper !== null && lower !== null)) return [];
    const box = 'unit' in there ? boxes.get(there.unit) : undefined;
    const port = 'chain' in there ? ports.get(there.chain) : undefined;
    const inset = box && detail === 'strip' ? box.width / 2 : 0;
    const at = box
      ? { x: lower ? box.x + inset : box.x + box.width - inset, y: box.y + box.port }
      : { x: (placement.controller?.x ?? 0) + (placement.controller?.width ?? 0), y: port?.portY ?? 0 };
    const where = 'chain' in there ? names.chain(there.chain) : `${names.unit(there.unit)} ${lower ? 'up' : 'down'}`;
    return [
      {
        id: link.id,
        designation: link.designation?.trim() ?? '',
        end: lower ? 'upper' : 'lower',
        detail,
        at,
        chosen: chosenAs(sources, link.id),
        name: drawWords.looseName(names.link(link.id), where, sources.chosen.includes(link.id)),
      },
    ];
  });
}

/** Cables of which no end is plugged into anything: they lie nowhere on the drawing. */
export function looseCables(topology: Topology): readonly string[] {
  const { links = [], chains = [], units = [] } = topology.content;
  const there = new Set([...chains, ...units].map(({ id }) => id));
  return links
    .filter(({ upper, lower }) => ![upper && 'chain' in upper ? upper.chain : upper?.unit, lower?.unit].some((id) => id && there.has(id)))
    .map(({ id }) => id);
}

export function drawLeads(sources: DrawSources): readonly DrawLeadView[] {
  return frameLeads(sources).map((line) => ({
    ...line,
    chosen: chosenAs(sources, line.id),
    problem: sources.problems.get(line.id) ?? null,
    name: sources.names.lead(line.id),
  }));
}

export function drawController(sources: DrawSources): DrawControllerView | null {
  const { topology, names, placement, sums } = sources;
  const box = placement.controller;
  if (!box) return null;
  const id = topology.content.controller?.id ?? '';
  const plugged = pluggedPorts(sources);
  return {
    id,
    designation: topology.content.controller?.designation.trim() || windowTexts.cabinet.controller,
    width: box.width,
    height: box.height,
    chosen: chosenAs(sources, id),
    chains: topology.chains.flatMap((chain): DrawChainView[] => {
      const placed = placement.chains.get(chain.id);
      const axes = sums.axes.find((one) => one.chain === chain.id);
      if (!placed) return [];
      return [
        {
          chain: chain.id,
          label: windowTexts.cabinet.chain(chain.record.number),
          axes: drawWords.axes(axes?.axes.value ?? 0, axes?.limit.value ?? null),
          rowY: placed.y - box.y,
          portY: placed.portY - box.y,
          takes: sources.joinable === null ? null : sources.joinable.has(`chain ${chain.id}`),
          empty: chain.units.length === 0 && !plugged.has(`chain ${chain.id}`),
          chosen: chosenAs(sources, chain.id),
          name: drawWords.chainName(names.chain(chain.id), chain.units.length),
        },
      ];
    }),
    name: drawWords.controllerName(names.controller(), topology.chains.length),
  };
}
