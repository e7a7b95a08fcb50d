import { chainElementId, unitElementId } from '../canvas/unitElement.ts';
import type { InjectTarget } from './injectState.ts';

/** Ids of the elements on the picture, by which they are focused and a pop-up is hung on them. */
export function linkElementId(link: string): string {
  return `link-${link}`;
}

function leadElementId(lead: string): string {
  return `lead-${lead}`;
}

export function targetElementId(target: InjectTarget): string {
  switch (target.kind) {
    case 'unit':
      return unitElementId(target.unit);
    case 'link':
      return linkElementId(target.link);
    case 'chain':
      return chainElementId(target.chain);
    case 'lead':
      return leadElementId(target.lead);
  }
}

/** Moves the focus to a thing of the picture; the drawing follows by itself. */
export function focusTarget(target: InjectTarget): void {
  document.getElementById(targetElementId(target))?.focus({ preventScroll: true });
}
