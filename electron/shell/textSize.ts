import type { WebContents } from 'electron';

/** Levels of the runtime's zoom: each is a fifth more or less. Three up fit a 1920 screen still, two down are readable. */
const levels = { least: -2, most: 4 } as const;

/** Enlarges or lessens everything in a window by one step, within bounds. The runtime remembers it for the page. */
export function changeTextSize(
  contents: Pick<WebContents, 'getZoomLevel' | 'setZoomLevel'>,
  change: 'larger' | 'smaller' | 'normal',
): void {
  const step = { larger: 1, smaller: -1, normal: 0 }[change];
  const next = change === 'normal' ? 0 : contents.getZoomLevel() + step;
  contents.setZoomLevel(Math.max(levels.least, Math.min(levels.most, next)));
}
