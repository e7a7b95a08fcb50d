import type { ChainId, LinkId, UnitId } from '../base/index.ts';
import type { Diagnosis } from '../diagnosis/index.ts';
import { listExchangePartners } from '../repair/index.ts';
import { directions, type Evidence, type Fault, type Intervention, linkEnds } from '../schema/index.ts';
import { type Arrangement, arrange, type Look, otherEnd } from '../simulation/index.ts';
import type { Step } from '../steps/index.ts';
import type { Cabinet } from '../topology/index.ts';
import { listDisplaced, putBack } from './history.ts';
import { faultsOf, type World } from './worlds.ts';

/** An item less probable than this does not make a step worth listing. */
const worthAStep = 0.005;
/** Of each part so many partners are offered for an exchange. */
const mostPartners = 2;

/** What concerns the suspects: looks, and acts one by one. */
export interface Candidates {
  readonly looks: readonly Exclude<Step, { do: 'act' | 'provoke' }>[];
  readonly acts: readonly Intervention[];
}

/** Everything that can be looked at or done about what is suspected, displays and reports always. */
export function listCandidates(cabinet: Cabinet, evidence: Evidence, diagnosis: Diagnosis, extra: readonly World[]): Candidates {
  const looks = new Map<string, Candidates['looks'][number]>();
  const acts = new Map<string, Intervention>();
  for (const unit of cabinet.units.keys()) {
    looks.set(`display/${unit}`, { do: 'read-display', unit });
  }
  for (const chain of cabinet.chains) {
    if (chain.units.length > 0) {
      looks.set(`report/${chain.id}`, { do: 'read-report', chain: chain.id });
    }
  }
  const suspicion = new Map(diagnosis.items.map(({ item, probability }) => [item.key, probability]));
  const lies = arrange(
    cabinet,
    evidence.snapshots.flatMap(({ interventions }) => interventions ?? []),
  );
  const concern = (named: Fault, modes: ReadonlySet<string>) => {
    const fault = whereItLies(named, lies);
    for (const look of looksAt(fault, cabinet)) {
      looks.set(JSON.stringify(look), { do: 'look', look });
    }
    for (const act of actsOn(fault, modes, cabinet, suspicion)) {
      acts.set(JSON.stringify(act), act);
    }
  };
  for (const { item, probability, modes } of diagnosis.items) {
    if (probability >= worthAStep) {
      concern(item.fault, new Set(modes.filter((mode) => mode.probability >= worthAStep / 10).map(({ mode }) => mode)));
    }
  }
  // A feedback plug goes back in with whatever is done next: see `plugsToPutBack`.
  const displaced = listDisplaced(cabinet, evidence).filter(({ kind }) => kind !== 'feedback-pulled');
  for (const act of displaced.flatMap(putBack)) {
    acts.set(JSON.stringify(act), act);
  }
  for (const fault of extra.flatMap(faultsOf)) {
    concern(fault, new Set([fault.mode]));
  }
  return { looks: [...looks.values()], acts: [...acts.values()] };
}

/** The fault named by the place where its item lies now: parts travel, and one goes to where they are. */
function whereItLies(fault: Fault, { boardIn, cableOn }: Arrangement): Fault {
  if (fault.item === 'board') {
    const unit = [...boardIn].find(([, board]) => board === fault.unit)?.[0];
    return unit === undefined ? fault : { ...fault, unit };
  }
  if (fault.item === 'cable' || fault.item === 'plug') {
    const [link, lie] = [...cableOn].find(([, { cable }]) => cable === fault.link) ?? [];
    if (link === undefined || lie === undefined) {
      return fault;
    }
    return fault.item === 'plug' ? { ...fault, link, end: lie.turned ? otherEnd(fault.end) : fault.end } : { ...fault, link };
  }
  return fault;
}

function looksAt(fault: Fault, cabinet: Cabinet): readonly Look[] {
  switch (fault.item) {
    case 'cable':
      return [...linkLooks(fault.link as LinkId), { look: 'compare-fibres', link: fault.link }];
    case 'plug':
    case 'route':
      return linkLooks(fault.link as LinkId);
    case 'board':
      return portLooks(fault.unit as UnitId, cabinet);
    case 'fuse':
    case 'place':
      return [{ look: 'voltage', unit: fault.unit }];
    case 'wiring':
      return [{ look: 'compare-plugs', unit: fault.unit }];
    case 'controller-port':
      return firstLooks(fault.chain as ChainId, cabinet);
    case 'controller':
      return cabinet.chains.flatMap(({ id }) => firstLooks(id, cabinet));
    case 'lead':
    case 'supply':
      return cabinet.feeds
        .filter((feed) => (fault.item === 'lead' ? feed.lead === fault.lead : feed.from === fault.unit))
        .map(({ to }) => ({ look: 'voltage', unit: to }));
    case 'feedback':
      return [];
  }
}

function linkLooks(link: LinkId): readonly Look[] {
  return [
    ...linkEnds.flatMap((end): Look[] => [
      { look: 'light-at-plug', link, end },
      { look: 'light-at-port', link, end },
    ]),
    ...directions.map((fibre): Look => ({ look: 'lamp', link, fibre })),
  ];
}

function firstLooks(chain: ChainId, cabinet: Cabinet): readonly Look[] {
  const [link] = cabinet.chainById.get(chain)?.links ?? [];
  return link === undefined ? [] : linkLooks(link);
}

/** 24 V of a unit, light at its ports. */
function portLooks(unit: UnitId, cabinet: Cabinet): readonly Look[] {
  const place = cabinet.placeOf.get(unit);
  const links = place === undefined ? [] : (cabinet.chainById.get(place.chain)?.links ?? []);
  const [above, below] = place === undefined ? [] : [links[place.position - 1], links[place.position]];
  return [
    { look: 'voltage', unit },
    ...(above === undefined ? [] : ([{ look: 'light-at-port', link: above, end: 'lower' }] as const)),
    ...(below === undefined ? [] : ([{ look: 'light-at-port', link: below, end: 'upper' }] as const)),
  ];
}

/** Acts that concern an item; what each of them mends the simulation says. */
function actsOn(
  fault: Fault,
  modes: ReadonlySet<string>,
  cabinet: Cabinet,
  suspicion: ReadonlyMap<string, number>,
): readonly Intervention[] {
  const partners = (ids: readonly string[], item: string) =>
    [...ids].sort((a, b) => (suspicion.get(`${item}/${a}`) ?? 0) - (suspicion.get(`${item}/${b}`) ?? 0)).slice(0, mostPartners);
  switch (fault.item) {
    case 'cable': {
      const { link } = fault;
      return [
        { do: 'replace-cable', link },
        ...partners(listExchangePartners(cabinet, { link: link as LinkId }), 'cable').map(
          (other) => ({ do: 'exchange-cables', link, other }) as const,
        ),
        ...(modes.has('fibres-crossed') ? ([{ do: 'uncross-fibres', link }] as const) : []),
        ...([...modes].some((mode) => mode.includes('-')) ? ([{ do: 'turn-cable', link }] as const) : []),
      ];
    }
    case 'plug':
      return [
        { do: 'reseat-plug', link: fault.link, end: fault.end },
        { do: 'clean-plug', link: fault.link, end: fault.end },
        { do: 'replace-cable', link: fault.link },
      ];
    case 'route':
      return [{ do: 're-route', link: fault.link }];
    case 'board': {
      const { unit } = fault;
      return [
        { do: 'replace-board', unit },
        ...partners(listExchangePartners(cabinet, { unit: unit as UnitId }), 'board').map(
          (other) => ({ do: 'exchange-boards', unit, other }) as const,
        ),
        ...bridges(unit as UnitId, cabinet),
      ];
    }
    case 'fuse':
      return [{ do: 'replace-fuse', unit: fault.unit }];
    case 'place':
      return [{ do: 'reseat-unit', unit: fault.unit }];
    case 'wiring':
      return [{ do: 'uncross-plugs', unit: fault.unit }];
    case 'controller-port':
      return [{ do: 'replace-controller-port', chain: fault.chain }];
    case 'controller':
      return [{ do: 'replace-controller' }];
    case 'lead':
      return [{ do: 'replace-lead', lead: fault.lead }];
    case 'supply':
      return [{ do: 'replace-supply', unit: fault.unit }];
    case 'feedback':
      return [
        { do: 'pull-feedback', feedback: fault.feedback },
        { do: 'replace-feedback', feedback: fault.feedback },
      ];
  }
}

/** A bridge is worth a restart only where the controller starts with fewer units: else it halts in any case, and reports nothing. */
function bridges(unit: UnitId, cabinet: Cabinet): readonly Intervention[] {
  const place = cabinet.placeOf.get(unit);
  const chain = place && cabinet.chainById.get(place.chain);
  const cable = chain?.links[(place?.position ?? 0) - 1];
  return chain?.record.toleratesFewerUnits === true && cable !== undefined ? [{ do: 'bridge-unit', unit, cable }] : [];
}
