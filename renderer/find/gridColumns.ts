import type { ChainId, LinkId, UnitId } from '../../engine/base/index.ts';
import type { Topology } from '../../engine/topology/index.ts';

interface Common {
  readonly key: string;
}

/** Columns of the pattern grid: a narrow one for every link, one for every unit, one for the report of every chain; room between chains. */
export type GridColumn =
  | (Common & { readonly kind: 'space' })
  | (Common & { readonly kind: 'link'; readonly link: LinkId; readonly chain: ChainId; readonly gap: number })
  | (Common & { readonly kind: 'unit'; readonly unit: UnitId; readonly position: number | null })
  | (Common & { readonly kind: 'report'; readonly chain: ChainId; readonly chainNumber: number });

/** Chain by chain in chain order, then what is on no chain, then the reports. */
export function listColumns(topology: Topology): readonly GridColumn[] {
  const columns: GridColumn[] = [];
  const space = () => {
    if (columns.length > 0) columns.push({ kind: 'space', key: `space ${columns.length}` });
  };
  for (const chain of topology.chains) {
    space();
    chain.units.forEach((unit, index) => {
      const link = chain.links[index];
      if (link) columns.push({ kind: 'link', key: `link ${link}`, link, chain: chain.id, gap: index + 1 });
      columns.push({ kind: 'unit', key: `unit ${unit}`, unit, position: index + 1 });
    });
  }
  const apart = [...topology.orphans, ...topology.offChain, ...topology.supplies];
  if (apart.length > 0) space();
  for (const unit of apart) columns.push({ kind: 'unit', key: `unit ${unit}`, unit, position: null });
  space();
  for (const chain of topology.chains) {
    columns.push({ kind: 'report', key: `report ${chain.id}`, chain: chain.id, chainNumber: chain.record.number });
  }
  return columns;
}
