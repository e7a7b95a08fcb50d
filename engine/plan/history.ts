import type { Evidence, Intervention, LinkEnd } from '../schema/index.ts';
import { arrange } from '../simulation/index.ts';
import type { Cabinet } from '../topology/index.ts';
import type { Displaced, Handling } from './types.ts';

/** Everything that was done, newest first. */
export function listHandlings({ snapshots }: Evidence): readonly Handling[] {
  return snapshots.flatMap(({ interventions }, snapshot) => (interventions ?? []).map((act): Handling => ({ act, snapshot }))).reverse();
}

/** What stands elsewhere than documented, hangs free, or is gone round: it stays so until it is put back. */
export function listDisplaced(cabinet: Cabinet, { snapshots }: Evidence): readonly Displaced[] {
  const done: readonly Intervention[] = snapshots.flatMap(({ interventions }) => interventions ?? []);
  const { boardIn, cableOn, unplugged, takenOut, bridged, pulledFeedbacks } = arrange(cabinet, done);
  const list: Displaced[] = [];
  for (const [unit, from] of boardIn) {
    // A new board belongs where it is.
    if (from !== null && from !== unit) list.push({ kind: 'board', unit, from });
  }
  for (const [link, { cable, turned }] of cableOn) {
    if (cable !== null && (cable !== link || turned)) list.push({ kind: 'cable', link, from: cable, turned });
  }
  for (const key of unplugged) {
    const [link = '', end] = key.split('/');
    list.push({ kind: 'unplugged', link, end: end as LinkEnd }); // keys are `link/end`
  }
  for (const unit of takenOut) list.push({ kind: 'taken-out', unit });
  for (const [unit, cable] of bridged) list.push({ kind: 'bridged', unit, cable });
  for (const feedback of pulledFeedbacks) {
    if (cabinet.feedbacks.get(feedback)?.plugged !== false) list.push({ kind: 'feedback-pulled', feedback });
  }
  return list;
}

/** Acts that plug in again what was pulled to see whether it is the cause; an axis without its encoder must not be left so. */
export function plugsToPutBack(cabinet: Cabinet, evidence: Evidence): readonly Intervention[] {
  return listDisplaced(cabinet, evidence).flatMap((displaced) => (displaced.kind === 'feedback-pulled' ? putBack(displaced) : []));
}

/** The acts that put a displaced thing back where it was documented; empty where that is not the search's to do. */
export function putBack(displaced: Displaced): readonly Intervention[] {
  switch (displaced.kind) {
    case 'board':
      return [{ do: 'exchange-boards', unit: displaced.unit, other: displaced.from }];
    case 'cable':
      return displaced.from === displaced.link
        ? [{ do: 'turn-cable', link: displaced.link }]
        : [{ do: 'exchange-cables', link: displaced.link, other: displaced.from }];
    case 'unplugged':
      return [{ do: 'plug-in', link: displaced.link, end: displaced.end }];
    case 'taken-out':
      return [{ do: 'put-back-unit', unit: displaced.unit }];
    case 'bridged':
      return [{ do: 'unbridge-unit', unit: displaced.unit }];
    case 'feedback-pulled':
      return [{ do: 'plug-feedback', feedback: displaced.feedback }];
  }
}
