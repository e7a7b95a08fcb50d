import type { ChainId, LinkId, UnitId } from '../../engine/base/index.ts';
import type { FibreCause, FibreState, LinkState, MomentState, ReportPrediction, UnitState } from '../../engine/simulation/index.ts';

/*
 * The way of the light along one chain, hop by hop: out from the controller to the last unit, back again, and what the controller
 * then reports. Nothing is worked out here that the simulation has not said.
 */

/** One hop. `from` and `to` are the ends by the way the light runs; null is the controller. */
export type Hop =
  | { readonly kind: 'start'; readonly chain: ChainId; readonly first: FibreState | null }
  | {
      readonly kind: 'outbound' | 'return';
      readonly link: LinkId;
      readonly fibre: FibreState;
      readonly from: UnitId | null;
      readonly to: UnitId | null;
      /** State of the unit at each end, for the reason why it is out of action. */
      readonly fromState: UnitState | null;
      readonly toState: UnitState | null;
      /** The unit that hears nothing here falls silent on the same link. */
      readonly silences: boolean;
      /** The unit whose display is decided with this hop. */
      readonly settles: UnitId | null;
      readonly isLast: boolean;
    }
  | { readonly kind: 'report'; readonly report: ReportPrediction };

/** All hops of a chain; none of a chain without units. */
export function listHops(moment: MomentState, chain: ChainId, report: ReportPrediction | undefined): readonly Hop[] {
  const arranged = moment.chains.find(({ id }) => id === chain);
  if (!arranged || arranged.units.length === 0) return [];
  const states = arranged.links.map((link) => moment.links.get(link)).filter((state) => state !== undefined);
  const hop = (kind: 'outbound' | 'return', state: LinkState): Hop => {
    const upper = arranged.units[state.index - 2] ?? null;
    const lower = arranged.units[state.index - 1] ?? null;
    const [from, to] = kind === 'outbound' ? [upper, lower] : [lower, upper];
    const other = kind === 'outbound' ? state.return : state.outbound;
    const isLast = state.index === arranged.units.length;
    return {
      kind,
      link: state.link,
      fibre: state[kind],
      from,
      to,
      fromState: (from && moment.units.get(from)) ?? null,
      toState: (to && moment.units.get(to)) ?? null,
      silences: !state[kind].hears && other.causes.some((cause) => cause.code === 'muted' && cause.by === to),
      settles: kind === 'outbound' ? (isLast ? lower : null) : upper,
      isLast: kind === 'outbound' && isLast,
    };
  };
  return [
    { kind: 'start', chain, first: states[0]?.outbound ?? null },
    ...states.map((state) => hop('outbound', state)),
    ...[...states].reverse().map((state) => hop('return', state)),
    ...(report ? [{ kind: 'report', report } as const] : []),
  ];
}

/** Whether the light is stopped at this hop, or the report is not whole. */
export function isStopped(hop: Hop): boolean {
  if (hop.kind === 'report') return hop.report.gap !== 'none';
  return hop.kind === 'start' ? causesAtSender(hop.first, null).length > 0 : !hop.fibre.hears;
}

/** The causes by which the sending end gives nothing out, the fibre left aside. */
export function causesAtSender(fibre: FibreState | null, sender: UnitId | null): readonly FibreCause[] {
  return (fibre?.causes ?? []).filter(
    (cause) =>
      cause.code === 'sender-not-alive' ||
      cause.code === 'muted' ||
      (cause.code === 'fault' &&
        cause.fault.item === 'board' &&
        cause.fault.unit === sender &&
        (cause.fault.mode.endsWith('-tx') || cause.fault.mode.endsWith('-port'))),
  );
}

/** Units whose display is decided once the hops up to this one are known. */
export function settledUnits(hops: readonly Hop[], upTo: number): ReadonlySet<UnitId> {
  const settled = hops.slice(0, upTo + 1).flatMap((hop) => ('settles' in hop && hop.settles ? [hop.settles] : []));
  return new Set(settled);
}

/** The next hop after this one at which something stops; null when there is none. */
export function nextStop(hops: readonly Hop[], after: number | null): number | null {
  const found = hops.findIndex((hop, index) => index > (after ?? -1) && isStopped(hop));
  return found < 0 ? null : found;
}

/** What passes one end of a link in one direction. `none`: there is no such port. */
export type LightAt = 'light' | 'dark' | 'silent' | 'none';

/** What one unit, or the controller (null), hears and sends on a chain. */
export interface LightColumn {
  readonly unit: UnitId | null;
  readonly hearsUp: LightAt;
  readonly sendsDown: LightAt;
  readonly hearsDown: LightAt;
  readonly sendsUp: LightAt;
}

/** Names of the four rows, from the controller's side outwards and back. */
export const lightRows = ['hearsUp', 'sendsDown', 'hearsDown', 'sendsUp'] as const;
export type LightRow = (typeof lightRows)[number];

/** The light on a chain as a table: a column for the controller and one for each unit. */
export function listLight(moment: MomentState, chain: ChainId): readonly LightColumn[] {
  const arranged = moment.chains.find(({ id }) => id === chain);
  if (!arranged || arranged.units.length === 0) return [];
  const linkAt = (index: number) => {
    const id = arranged.links[index - 1];
    return id === undefined ? undefined : moment.links.get(id);
  };
  const hears = (fibre: FibreState | undefined): LightAt => (fibre ? (fibre.hears ? 'light' : 'dark') : 'none');
  const sends = (fibre: FibreState | undefined, unit: UnitId | null): LightAt =>
    fibre ? (causesAtSender(fibre, unit).length === 0 ? 'light' : 'silent') : 'none';
  return [null, ...arranged.units].map((unit, position): LightColumn => {
    const above = position === 0 ? undefined : linkAt(position);
    const below = linkAt(position + 1);
    return {
      unit,
      hearsUp: hears(above?.outbound),
      sendsUp: sends(above?.return, unit),
      hearsDown: hears(below?.return),
      sendsDown: sends(below?.outbound, unit),
    };
  });
}

/** The hop that decides one cell of the table: position 0 is the controller, `units` how many units the chain has. */
export function hopOfCell(row: LightRow, position: number, units: number): number {
  switch (row) {
    case 'hearsUp':
      return position;
    case 'sendsDown':
      return position === 0 ? 0 : position + 1;
    case 'hearsDown':
      return 2 * units - position;
    case 'sendsUp':
      return 2 * units - position + 1;
  }
}
