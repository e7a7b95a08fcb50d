import type { Names } from '../../engine/messages/index.ts';
import type { InjectTarget } from './injectState.ts';

/** What a thing is called in which faults are put; a port of the controller goes by the controller's name. */
export function targetName(names: Names, target: InjectTarget): string {
  switch (target.kind) {
    case 'unit':
      return names.unit(target.unit);
    case 'link':
      return names.link(target.link);
    case 'chain':
      return names.controller();
    case 'lead':
      return names.lead(target.lead);
  }
}
