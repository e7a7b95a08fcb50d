import type { UnitKind } from '../../engine/schema/index.ts';
import type { Port } from './port.ts';

/** A port that can be taken hold of. It is found by its data, like the units; with the keyboard one connects by “Connect to…”. */
export function PortHit({ port, top, free }: { readonly port: Port; readonly top: number; readonly free: boolean }) {
  const side = 'chain' in port ? 'down' : port.side;
  return (
    <span
      className={`port-hit ${side}${free ? ' free' : ''}`}
      style={{ top }}
      aria-hidden="true"
      data-port={'chain' in port ? `chain ${port.chain}` : `unit ${port.unit} ${port.side}`}
    />
  );
}

/** Where 24 V come in, or go out: at the lower edge. */
export function FeedPort({ unit, kind, fed }: { readonly unit: string; readonly kind: UnitKind; readonly fed: boolean }) {
  return (
    <span
      className={`feed-hit${kind === 'supply' ? ' gives' : ''}${fed || kind === 'supply' ? '' : ' free'}`}
      aria-hidden="true"
      data-feed={unit}
    />
  );
}
