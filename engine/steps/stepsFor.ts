import type { ChainId, LinkId, UnitId } from '../base/index.ts';
import { directions, type Fault, linkEnds } from '../schema/index.ts';
import type { Cabinet } from '../topology/index.ts';
import type { Step } from './types.ts';

/** The looks and acts that concern one thing that may be at fault. */
export function stepsFor(fault: Fault, cabinet: Cabinet): readonly Step[] {
  switch (fault.item) {
    case 'cable':
    case 'route':
      return [...linkSteps(fault.link as LinkId, cabinet), ...(fault.item === 'route' ? [act({ do: 're-route', link: fault.link })] : [])];
    case 'plug':
      return linkSteps(fault.link as LinkId, cabinet);
    case 'board':
      return [...unitSteps(fault.unit as UnitId, cabinet), ...boardExchanges(fault.unit as UnitId, cabinet)];
    case 'fuse':
      return [voltage(fault.unit), act({ do: 'replace-fuse', unit: fault.unit })];
    case 'place':
      return [voltage(fault.unit), act({ do: 'reseat-unit', unit: fault.unit })];
    case 'wiring':
      return [{ do: 'look', look: { look: 'compare-plugs', unit: fault.unit } }, act({ do: 'uncross-plugs', unit: fault.unit })];
    case 'controller-port':
      return [...firstLinkSteps(fault.chain as ChainId, cabinet), act({ do: 'replace-controller-port', chain: fault.chain })];
    case 'controller':
      return [...cabinet.chains.flatMap(({ id }) => firstLinkSteps(id, cabinet)), act({ do: 'replace-controller' })];
    case 'lead': {
      const to = cabinet.leads.get(fault.lead as never)?.to?.unit;
      return [...(to === undefined ? [] : [voltage(to)]), act({ do: 'replace-lead', lead: fault.lead })];
    }
    case 'supply':
      return [
        ...cabinet.feeds.filter(({ from }) => from === fault.unit).map(({ to }) => voltage(to)),
        act({ do: 'replace-supply', unit: fault.unit }),
      ];
    case 'feedback':
      return [act({ do: 'pull-feedback', feedback: fault.feedback })];
  }
}

function act(...acts: Extract<Step, { do: 'act' }>['acts']): Step {
  return { do: 'act', acts };
}

function voltage(unit: string): Step {
  return { do: 'look', look: { look: 'voltage', unit } };
}

function linkSteps(link: LinkId, cabinet: Cabinet): readonly Step[] {
  const record = cabinet.links.get(link);
  const spare = [...cabinet.links].find(([id, other]) => id !== link && isLikeCable(record, other))?.[0];
  return [
    ...linkEnds.flatMap((end): Step[] => [
      { do: 'look', look: { look: 'light-at-plug', link, end } },
      { do: 'look', look: { look: 'light-at-port', link, end } },
      act({ do: 'reseat-plug', link, end }),
      act({ do: 'clean-plug', link, end }),
    ]),
    ...directions.map((fibre): Step => ({ do: 'look', look: { look: 'lamp', link, fibre } })),
    act(...linkEnds.map((end) => ({ do: 'reseat-plug', link, end }) as const)),
    act({ do: 'replace-cable', link }),
    ...(spare === undefined ? [] : [act({ do: 'exchange-cables', link, other: spare })]),
  ];
}

/** Only cables of equal, known part number may take each other's place. */
function isLikeCable(
  one: { readonly partNumber?: string | undefined } | undefined,
  other: { readonly partNumber?: string | undefined },
): boolean {
  return one?.partNumber !== undefined && one.partNumber !== '' && one.partNumber === other.partNumber;
}

function firstLinkSteps(chain: ChainId, cabinet: Cabinet): readonly Step[] {
  const [link] = cabinet.chainById.get(chain)?.links ?? [];
  return link === undefined ? [] : linkSteps(link, cabinet);
}

/** Light at the ports of a unit, and its 24 V. */
function unitSteps(unit: UnitId, cabinet: Cabinet): readonly Step[] {
  const place = cabinet.placeOf.get(unit);
  const links = place === undefined ? [] : (cabinet.chainById.get(place.chain)?.links ?? []);
  const [above, below] = place === undefined ? [] : [links[place.position - 1], links[place.position]];
  return [
    voltage(unit),
    ...(above === undefined ? [] : ([{ do: 'look', look: { look: 'light-at-port', link: above, end: 'lower' } }] as const)),
    ...(below === undefined ? [] : ([{ do: 'look', look: { look: 'light-at-port', link: below, end: 'upper' } }] as const)),
  ];
}

/** Boards are exchanged only with one of equal, known part number: a wrong board may do damage. */
function boardExchanges(unit: UnitId, cabinet: Cabinet): readonly Step[] {
  const part = cabinet.units.get(unit)?.board?.partNumber;
  const partner =
    part === undefined || part === ''
      ? undefined
      : [...cabinet.units].find(([id, other]) => id !== unit && other.board?.partNumber === part)?.[0];
  return [act({ do: 'replace-board', unit }), ...(partner === undefined ? [] : [act({ do: 'exchange-boards', unit, other: partner })])];
}
