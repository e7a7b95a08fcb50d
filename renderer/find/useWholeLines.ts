import { type RefObject, useEffect } from 'react';

/**
 * Ends a box that scrolls between two lines where its greatest height would cut one in half, before anything is scrolled: half a line
 * reads as a flaw, and hides whether more follows.
 */
export function useWholeLines(box: RefObject<HTMLElement | null>): void {
  useEffect(() => {
    const element = box.current;
    if (!element) return;
    const sizes = new ResizeObserver(() => endBetweenLines(element));
    // What is newly observed is told with the next frame, after its layout: measuring here would lay everything out once more.
    const watch = () => {
      sizes.disconnect();
      sizes.observe(document.documentElement);
      for (const child of element.children) sizes.observe(child);
    };
    const changes = new MutationObserver(watch);
    changes.observe(element, { childList: true, characterData: true, subtree: true });
    watch();
    return () => {
      changes.disconnect();
      sizes.disconnect();
    };
  }, [box]);
}

function endBetweenLines(element: HTMLElement): void {
  element.style.maxHeight = '';
  // Scrolled, it ends where it was scrolled to.
  if (element.scrollTop > 0 || element.scrollHeight <= element.clientHeight) return;
  const frame = element.offsetHeight - element.clientHeight;
  const start = element.getBoundingClientRect().top + element.clientTop;
  const lines = linesOf(element).map(({ top, bottom }) => ({ top: top - start, bottom: bottom - start }));
  let edge = element.clientHeight;
  for (let cut = lines.find(isCutAt(edge)); cut; cut = lines.find(isCutAt(edge))) edge = Math.floor(cut.top);
  if (edge > 0 && edge < element.clientHeight) element.style.maxHeight = `${edge + frame}px`;
}

/** Lines that only touch the edge, or the line before, are not cut. */
const isCutAt = (edge: number) => (line: { readonly top: number; readonly bottom: number }) =>
  line.top < edge - 1 && line.bottom > edge + 1;

/** The lines of all texts in it, and its buttons as wholes. */
function linesOf(element: HTMLElement): readonly DOMRect[] {
  const range = document.createRange();
  const walker = document.createTreeWalker(element, NodeFilter.SHOW_TEXT);
  const lines: DOMRect[] = [...element.querySelectorAll('button')].map((button) => button.getBoundingClientRect());
  while (walker.nextNode()) {
    range.selectNodeContents(walker.currentNode);
    lines.push(...range.getClientRects());
  }
  return lines;
}
