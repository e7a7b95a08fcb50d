import { useEffect, useMemo, useState } from 'react';

/** Size of an element in whole pixels, null before it is known. */
export function useSize(element: React.RefObject<HTMLElement | null>) {
  const [size, setSize] = useState<{ readonly width: number; readonly height: number } | null>(null);
  useEffect(() => {
    const target = element.current;
    if (!target) return undefined;
    const observer = new ResizeObserver(([entry]) => {
      if (!entry) return;
      const width = Math.round(entry.contentRect.width);
      const height = Math.round(entry.contentRect.height);
      setSize((before) => (before?.width === width && before.height === height ? before : { width, height }));
    });
    observer.observe(target);
    return () => observer.disconnect();
  }, [element]);
  return useMemo(() => size, [size]);
}
