import { useCallback } from 'react';
import type { Topology } from '../../engine/topology/index.ts';
import { walkLines } from '../canvas/walkLines.ts';
import { useWindow } from '../state/useWorkbench.ts';
import { focusTarget } from './elements.ts';
import type { InjectTarget } from './injectState.ts';

/** The things of the picture line by line, as arrows walk them: controller, cable, unit, cable, unit …; then what is on no chain. */
export function listLines(topology: Topology): readonly (readonly InjectTarget[])[] {
  const apart = [...topology.orphans, ...topology.offChain, ...topology.supplies];
  const chains = topology.chains.map(({ id, units, links }) => [
    { kind: 'chain', chain: id } as const,
    ...units.flatMap((unit, index) => [
      ...(links[index] ? [{ kind: 'link', link: links[index] } as const] : []),
      { kind: 'unit', unit } as const,
    ]),
  ]);
  return [...chains, apart.map((unit) => ({ kind: 'unit', unit }) as const)].filter((line) => line.length > 0);
}

/** Where an arrow key leads on the picture; null at its edge. */
export function nextTarget(topology: Topology, from: InjectTarget, key: string): InjectTarget | null {
  return walkLines(listLines(topology), (target) => JSON.stringify(target) === JSON.stringify(from), key);
}

/** Keys on the simulated picture: arrows walk along cables and units; Enter and space, which click, ask what is wrong there. */
export function useInjectKeys() {
  const { store } = useWindow();
  return useCallback(
    (event: React.KeyboardEvent) => {
      if (event.ctrlKey || event.metaKey || event.altKey || !(event.target instanceof HTMLElement)) return;
      const from = targetOf(event.target);
      const next = from && nextTarget(store.getState().checked.topology, from, event.key);
      if (!next) return;
      event.preventDefault();
      focusTarget(next);
    },
    [store],
  );
}

/** What of the picture an element stands for; the ids were written by the picture itself. */
function targetOf({ dataset }: HTMLElement): InjectTarget | null {
  const { unit, link, chain } = dataset;
  if (unit !== undefined) return { kind: 'unit', unit: unit };
  if (link !== undefined) return { kind: 'link', link: link };
  return chain === undefined ? null : { kind: 'chain', chain: chain };
}
