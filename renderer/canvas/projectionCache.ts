import type { Edge, Node } from 'reactflow';

/** Anything that is projected: plain data with an id. */
type Plain = object;

/**
 * Keeps the projected nodes and edges: as long as a thing looks the same, it stays the same object, and React Flow does not draw it
 * again. Views are compared by value. Things that are gone are forgotten.
 */
export function makeProjectionCache<V extends Plain, P extends Node | Edge>(
  build: (view: V) => P,
): (views: readonly V[], idOf: (view: V) => string) => P[] {
  let kept = new Map<string, { readonly text: string; readonly product: P }>();
  return (views, idOf) => {
    const next: typeof kept = new Map();
    for (const view of views) {
      const id = idOf(view);
      const text = JSON.stringify(view);
      const before = kept.get(id);
      next.set(id, before?.text === text ? before : { text, product: build(view) });
    }
    kept = next;
    return [...next.values()].map(({ product }) => product);
  };
}
