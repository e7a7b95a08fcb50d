import { useCallback, useEffect, useLayoutEffect, useMemo, useRef, useState } from 'react';
import { useReactFlow, type Viewport } from 'reactflow';
import type { CanvasControl } from '../state/command.ts';
import { useApp, useWindow } from '../state/useWorkbench.ts';
import { fitCabinet } from './fit.ts';
import { type Detail, detailAt, type Metrics } from './geometry.ts';
import { type Placement, placeCabinet } from './placement.ts';
import type { PlacementOptions } from './placementOptions.ts';
import { findSubject } from './subjects.ts';
import { narrowWindow, useMedia } from './useMedia.ts';

interface Size {
  readonly width: number;
  readonly height: number;
}

/** Room taken at the edges: the head above, a margin all around. */
const margin = { top: 48, side: 14, bottom: 4 } as const;
/** Designations under the marks of a strip need this pitch, screen pixels. */
const roomyPitch = 48;
/** How long a jump takes, milliseconds; none for those who asked for less motion. */
const glide = 200;

/** How one workspace draws the cabinet. */
export interface ViewOptions {
  /** Sizes of the modules in narrow and in wide windows. */
  readonly metrics: { readonly narrow: Metrics; readonly wide: Metrics };
  /** Ids of the chains that may be folded, with a space between. */
  readonly foldable: string;
  /** Long chains go on in the next row. */
  readonly wrap: boolean;
  /** What is too large goes on below what one sees, rather than as a strip. */
  readonly goDown?: boolean;
  readonly arrangement?: PlacementOptions['arrangement'];
  /** Share of the height that is to spare which stays above the drawing. */
  readonly shareAbove: number;
  /** Room at the lower edge that is kept free where the drawing is larger than 100 %. */
  readonly spare?: number;
  readonly above?: number;
  readonly opening?: PlacementOptions['opening'];
  /** What the picture can be asked besides to zoom. */
  readonly walkDisplays?: CanvasControl['walkDisplays'];
}

/** Where the drawing stands and how much of it is drawn; moves it so that what matters is in view. */
export function useCabinetView(frame: React.RefObject<HTMLElement | null>, size: Size | null, options: ViewOptions) {
  const {
    metrics,
    foldable,
    wrap,
    goDown = false,
    arrangement = 'chain',
    above = 0,
    opening = null,
    shareAbove,
    spare = 0,
    walkDisplays,
  } = options;
  const flow = useReactFlow();
  const topology = useApp((state) => state.checked.topology);
  const source = useApp((state) => state.source);
  const spotlight = useApp((state) => state.spotlight);
  const entering = useApp((state) => state.entry !== null);
  const reduceMotion = useApp((state) => state.reduceMotion);
  const narrow = useMedia(narrowWindow);
  const lessMotion = useMedia('(prefers-reduced-motion: reduce)');
  const { registerCanvas } = useWindow();
  const [zoomed, setZoomed] = useState<Detail | null>(null);
  /** Whether a strip to which one zoomed by hand has room for designations; null: nobody did. */
  const [zoomedRoomy, setZoomedRoomy] = useState<boolean | null>(null);

  const fit = useMemo(
    () =>
      fitCabinet({
        topology,
        room: { width: (size?.width ?? 1000) - 2 * margin.side, height: (size?.height ?? 500) - margin.top - margin.bottom },
        metrics: narrow ? metrics.narrow : metrics.wide,
        foldable: new Set(foldable === '' ? [] : foldable.split(' ')),
        wrap,
        goDown,
        arrangement,
        above,
        spare,
      }),
    [topology, size, narrow, metrics, foldable, wrap, goDown, arrangement, above, spare],
  );
  const pitch = fit.options.metrics.module + fit.options.metrics.gap;
  const detail = zoomed ?? fit.detail;
  const still = useMemo(() => placeCabinet(topology, { ...fit.options, detail }), [topology, fit, detail]);
  const placement = useMemo(
    () => (opening === null ? still : placeCabinet(topology, { ...fit.options, detail, opening })),
    [still, topology, fit, detail, opening],
  );
  const duration = reduceMotion || lessMotion ? 0 : glide;

  const setScale = useCallback(
    (zoom: number) => {
      // Middle and strip keep their words at a size that can be read: they undo the zoom.
      frame.current?.style.setProperty('--zoom', String(zoom));
    },
    [frame],
  );

  const { module } = fit.options.metrics;
  useLayoutEffect(() => {
    frame.current?.style.setProperty('--module', String(module));
  }, [frame, module]);

  const whole = useCallback((): Viewport => {
    const drawn = placeCabinet(topology, { ...fit.options, detail: fit.detail });
    const room = { width: (size?.width ?? 0) - 2 * margin.side, height: (size?.height ?? 0) - margin.top - margin.bottom };
    const slack = { x: room.width - drawn.width * fit.zoom, y: room.height - drawn.height * fit.zoom };
    return {
      x: Math.round(margin.side + Math.max(0, slack.x / 2)),
      y: Math.round(margin.top + Math.max(0, Math.min(slack.y * shareAbove, Math.max(0, slack.y - spare)))),
      zoom: fit.zoom,
    };
  }, [topology, fit, size, shareAbove, spare]);

  const showWhole = useCallback(() => {
    setZoomed(null);
    setZoomedRoomy(null);
    const viewport = whole();
    setScale(viewport.zoom);
    void flow.setViewport(viewport);
  }, [flow, whole, setScale]);

  // A new document, a new size or another way of drawing: show all of it again. Zooming by hand lasts until then.
  // biome-ignore lint/correctness/useExhaustiveDependencies: the document's source is a reason to fit again although it is not read
  useLayoutEffect(() => {
    if (size) showWhole();
  }, [showWhole, size, source]);

  /** The picture was moved for what is asked, not by hand. */
  const moved = useRef(false);
  const onMove = useCallback(
    (event: unknown, viewport: Viewport) => {
      if (event !== null) moved.current = false;
      setScale(viewport.zoom);
      const now = detailAt(viewport.zoom);
      setZoomed(now === fit.detail ? null : now);
      setZoomedRoomy(now === fit.detail ? null : viewport.zoom * pitch >= roomyPitch);
    },
    [fit.detail, setScale, pitch],
  );

  const latest = useRef<Placement>(placement);
  latest.current = placement;

  const bringIntoView = useCallback(
    (subject: string) => {
      const { width, height } = size ?? { width: 0, height: 0 };
      const box = findSubject(subject, topology, latest.current);
      if (!box || width === 0) return;
      const { x, y, zoom } = flow.getViewport();
      const left = x + box.x * zoom;
      const top = y + box.y * zoom;
      const dx = shift(left, left + box.width * zoom, margin.side, width - margin.side);
      const lowest = Math.min(height - margin.bottom, coveredFrom(frame.current, left, left + box.width * zoom));
      const dy = shift(top, top + box.height * zoom, margin.top, lowest);
      if (dx === 0 && dy === 0) return;
      moved.current = true;
      void flow.setViewport({ x: x + dx, y: y + dy, zoom }, { duration });
    },
    [flow, topology, size, duration, frame],
  );

  useEffect(() => {
    if (spotlight) bringIntoView(spotlight.subject);
  }, [spotlight, bringIntoView]);

  // Once nothing is asked any more all of the picture stands there again, where it has room.
  useEffect(() => {
    if (entering || !moved.current || !size) return;
    moved.current = false;
    const { x, y, zoom } = whole();
    const { width, height } = latest.current;
    const fits = x + width * zoom <= size.width && y + height * zoom <= size.height;
    if (fits && Math.abs(flow.getZoom() - zoom) < 0.001) void flow.setViewport({ x, y, zoom }, { duration });
  }, [entering, size, whole, flow, duration]);

  const onFocus = useCallback(
    (event: React.FocusEvent) => {
      // Only for the keyboard: what moves under a mouse that is being pressed is not clicked.
      if (!event.target.matches(':focus-visible')) return;
      const { unit: own, link } = event.target instanceof HTMLElement ? event.target.dataset : {};
      const unit = own ?? link;
      if (unit !== undefined) bringIntoView(unit);
    },
    [bringIntoView],
  );

  useEffect(() => {
    registerCanvas({
      zoomBy: (factor) => void flow.zoomTo(flow.getZoom() * factor, { duration }),
      fit: showWhole,
      ...(walkDisplays ? { walkDisplays } : {}),
    });
    return () => registerCanvas(null);
  }, [flow, duration, showWhole, registerCanvas, walkDisplays]);

  // In a strip with room to spare every mark has its designation under it, else every fifth its number.
  return { detail, placement, still, onMove, onFocus, roomy: zoomedRoomy ?? fit.options.stripZoom * pitch >= roomyPitch };
}

/** From what height on an open entry lies over a span of the drawing. */
function coveredFrom(frame: HTMLElement | null, left: number, right: number): number {
  const over = document.querySelector('.entry-popover')?.getBoundingClientRect();
  const own = frame?.getBoundingClientRect();
  if (!over || !own || over.right < own.left + left || over.left > own.left + right) return Number.POSITIVE_INFINITY;
  return over.top - own.top - 8;
}

/** How far a span must move to lie between two limits; nothing when it is longer than the room. */
function shift(from: number, to: number, least: number, most: number): number {
  if (from < least) return least - from;
  if (to > most) return Math.max(most - to, least - from);
  return 0;
}
