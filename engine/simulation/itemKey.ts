import { assertNever } from '../base/index.ts';
import type { Fault } from '../schema/index.ts';

/** The stable key of the item or place that a fault sits on, whatever its mode: `cable/w3`, `plug/w3/upper`, `controller`. */
export function itemKey(fault: Fault): string {
  switch (fault.item) {
    case 'cable':
    case 'route':
      return `${fault.item}/${fault.link}`;
    case 'plug':
      return `plug/${fault.link}/${fault.end}`;
    case 'board':
    case 'fuse':
    case 'place':
    case 'wiring':
    case 'supply':
      return `${fault.item}/${fault.unit}`;
    case 'controller-port':
      return `controller-port/${fault.chain}`;
    case 'controller':
      return 'controller';
    case 'lead':
      return `lead/${fault.lead}`;
    case 'feedback':
      return `feedback/${fault.feedback}`;
    default:
      return assertNever(fault);
  }
}

/** The stable key of an item with one of its modes: `cable/w3:cut`. */
export function modeKey(fault: Fault): string {
  return `${itemKey(fault)}:${fault.mode}`;
}
