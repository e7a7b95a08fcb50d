import { useEffect, useRef, useState } from 'react';
import type { PictureShape, Size } from '../../engine/paper/index.ts';
import { drawInto, readPhoto } from '../find/entryPhoto.ts';

/** Longest side on the screen; paper gets the whole picture. */
const shownPx = 900;

/** A picture on a page of the preview, in the place that it has on paper; where it cannot be drawn, why. */
export function PagePicture({ picture, page }: { readonly picture: PictureShape; readonly page: Size }) {
  const { x, y, width, height, data, mediaType, words, instead } = picture;
  const canvas = useRef<HTMLCanvasElement>(null);
  const [isDamaged, setDamaged] = useState(false);
  useEffect(() => {
    let isGone = false;
    // Drawn, not linked: the page's policy allows no picture but its own.
    void readPhoto(data, mediaType).then((read) => {
      if (!isGone) {
        setDamaged(read === null);
        if (read !== null && canvas.current !== null) drawInto(canvas.current, read, shownPx);
      }
      read?.close();
    });
    return () => {
      isGone = true;
    };
  }, [data, mediaType]);
  const share = (part: number, whole: number) => `${(100 * part) / whole}%`;
  const place = {
    left: share(x, page.width),
    top: share(y, page.height),
    width: share(width, page.width),
    height: share(height, page.height),
  };
  return (
    <div className="papers-picture" style={place}>
      {isDamaged ? <p>{instead}</p> : <canvas ref={canvas} role="img" aria-label={words} />}
    </div>
  );
}
