import { chainElementId, unitElementId } from '../canvas/unitElement.ts';

/** Id of the element of a cable, by which it is found to be focused. */
export function linkElementId(link: string): string {
  return `drawn-link-${link}`;
}

/** Moves the focus to a thing of the drawing, which follows by itself. Answers whether it is drawn already. */
export function focusThing(id: string): boolean {
  const ids = [unitElementId(id), linkElementId(id), chainElementId(id)];
  const element = ids.map((one) => document.getElementById(one)).find((one) => one !== null);
  element?.focus({ preventScroll: true });
  return element !== undefined;
}

/** What of the drawing an element stands for; the ids were written by the drawing itself. */
export function thingOf({ dataset }: HTMLElement): string | null {
  return dataset['unit'] ?? dataset['link'] ?? dataset['chain'] ?? dataset['controller'] ?? null;
}
