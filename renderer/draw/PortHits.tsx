import type { Port } from '../../engine/edit/index.ts';
import type { UnitKind } from '../../engine/schema/index.ts';
import { socketKey } from './gesture.ts';

const state = (free: boolean, takes: boolean | null) => `${free ? ' free' : ''}${takes === null ? '' : takes ? ' takes' : ' not'}`;

/** A port that can be taken hold of. It is found by its data, like the units; with the keyboard one connects by “Connect to…”. */
export function PortHit({
  port,
  top,
  free,
  takes,
}: {
  readonly port: Port;
  readonly top: number;
  readonly free: boolean;
  readonly takes: boolean | null;
}) {
  const side = 'chain' in port ? 'down' : port.side;
  return (
    <span
      className={`port-hit nopan ${side}${state(free, takes)}`}
      style={{ top }}
      aria-hidden="true"
      data-port={socketKey({ kind: 'port', port })}
    />
  );
}

/** Where 24 V come in, or go out: at the lower edge. */
export function FeedPort({
  unit,
  kind,
  fed,
  takes,
}: {
  readonly unit: string;
  readonly kind: UnitKind;
  readonly fed: boolean;
  readonly takes: boolean | null;
}) {
  return (
    <span
      className={`feed-hit nopan${kind === 'supply' ? ' gives' : ''}${state(!fed && kind !== 'supply', takes)}`}
      aria-hidden="true"
      data-feed={unit}
    />
  );
}
