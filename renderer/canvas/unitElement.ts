/** Id of the element of a unit, by which it is found to be focused and to hang a pop-up on. */
export function unitElementId(unit: string): string {
  return `unit-${unit}`;
}

export function chainElementId(chain: string): string {
  return `report-${chain}`;
}

/** Moves the focus to a unit; the drawing follows by itself. */
export function focusUnit(unit: string): void {
  document.getElementById(unitElementId(unit))?.focus({ preventScroll: true });
}
