import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { placeWindow, type Rectangle } from '../../electron/settings/windowPlace.ts';

const laptop: Rectangle = { x: 0, y: 25, width: 1280, height: 695 };
const large: Rectangle = { x: 1280, y: 0, width: 2560, height: 1400 };

describe('placeWindow', () => {
  it('should open a first window in the middle of the first screen, as large as fits', () => {
    expect(placeWindow(undefined, [large])).toEqual({ bounds: { x: 1840, y: 250, width: 1440, height: 900 }, maximized: false });
    expect(placeWindow(undefined, [laptop])).toEqual({ bounds: laptop, maximized: false });
  });

  it('should open where the window stood', () => {
    const saved = { bounds: { x: 1400, y: 100, width: 1000, height: 700 }, maximized: true };
    expect(placeWindow(saved, [laptop, large])).toEqual(saved);
  });

  it.each([
    ['its screen is gone', { x: 1400, y: 100, width: 1000, height: 700 }],
    ['its upper edge is above the screen', { x: 100, y: 0, width: 1000, height: 600 }],
    ['its upper edge is below the screen', { x: 100, y: 710, width: 1000, height: 600 }],
    ['hardly a corner of it is left', { x: 1270, y: 100, width: 1000, height: 600 }],
    ['hardly a corner of it is left on the other side', { x: -990, y: 100, width: 1000, height: 600 }],
  ])('should come back to the middle when %s', (_why, bounds) => {
    expect(placeWindow({ bounds, maximized: false }, [laptop])).toEqual({ bounds: laptop, maximized: false });
  });

  it('should shrink to a screen that became smaller', () => {
    const saved = { bounds: { x: 0, y: 25, width: 2000, height: 1200 }, maximized: false };
    expect(placeWindow(saved, [laptop]).bounds).toEqual({ x: 0, y: 25, width: 1280, height: 695 });
  });

  it('should always leave the upper edge within reach, and be no larger than a screen', () => {
    const whole = (least: number, most: number) => fc.integer({ min: least, max: most });
    const screen = fc.record({ x: whole(-4000, 4000), y: whole(-4000, 4000), width: whole(640, 4000), height: whole(480, 3000) });
    const number = fc.double({ min: -10_000, max: 10_000, noNaN: true });
    const size = fc.double({ min: 1, max: 10_000, noNaN: true });
    const saved = fc.record({ bounds: fc.record({ x: number, y: number, width: size, height: size }), maximized: fc.boolean() });
    fc.assert(
      fc.property(fc.option(saved, { nil: undefined }), screen, fc.array(screen, { maxLength: 2 }), (place, first, others) => {
        const { bounds } = placeWindow(place, [first, ...others]);
        const within = [first, ...others].some(
          (area) =>
            bounds.y >= area.y &&
            bounds.y + 32 <= area.y + area.height &&
            Math.min(bounds.x + bounds.width, area.x + area.width) - Math.max(bounds.x, area.x) >= 120 &&
            bounds.width <= area.width &&
            bounds.height <= area.height,
        );
        expect(within).toBe(true);
        expect(Object.values(bounds).every(Number.isInteger)).toBe(true);
      }),
      { numRuns: 500 },
    );
  });
});
