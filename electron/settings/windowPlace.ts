/** A rectangle of the screen in device-independent pixels. */
export interface Rectangle {
  readonly x: number;
  readonly y: number;
  readonly width: number;
  readonly height: number;
}

/** Where the window stands, and whether it fills its screen. */
export interface WindowPlace {
  readonly bounds: Rectangle;
  readonly maximized: boolean;
}

/** The window of a first start; smaller screens get as much of it as fits. */
const wishedSize = { width: 1440, height: 900 };
/** Below this the page is laid out for nothing any more. */
export const leastSize = { width: 800, height: 560 };
/** So much of the upper edge must be on a screen, or the window cannot be taken hold of. */
const grip = { width: 120, height: 32 };

/**
 * Where to open the window: where it stood, if today's screens still show its upper edge, else in the middle of the first screen. It is
 * never larger than the screen it stands on. `screens` are the usable areas of today's screens, the first one first (at least one).
 */
export function placeWindow(saved: WindowPlace | undefined, screens: readonly [Rectangle, ...Rectangle[]]): WindowPlace {
  for (const screen of screens) {
    const bounds = saved && fitSize(saved.bounds, screen);
    if (bounds && showsGrip(bounds, screen)) return { bounds, maximized: saved.maximized };
  }
  return { bounds: centre(screens[0]), maximized: saved?.maximized ?? false };
}

function centre(screen: Rectangle): Rectangle {
  const width = Math.min(wishedSize.width, screen.width);
  const height = Math.min(wishedSize.height, screen.height);
  return {
    x: screen.x + Math.floor((screen.width - width) / 2),
    y: screen.y + Math.floor((screen.height - height) / 2),
    width,
    height,
  };
}

function showsGrip(bounds: Rectangle, screen: Rectangle): boolean {
  const across = Math.min(bounds.x + bounds.width, screen.x + screen.width) - Math.max(bounds.x, screen.x);
  const topIsOn = bounds.y >= screen.y && bounds.y + grip.height <= screen.y + screen.height;
  return topIsOn && across >= grip.width;
}

function fitSize({ x, y, width, height }: Rectangle, screen: Rectangle): Rectangle {
  return {
    x: Math.round(x),
    y: Math.round(y),
    width: clamp(Math.round(width), Math.min(leastSize.width, screen.width), screen.width),
    height: clamp(Math.round(height), Math.min(leastSize.height, screen.height), screen.height),
  };
}

function clamp(value: number, least: number, most: number): number {
  return Math.min(Math.max(value, least), most);
}
