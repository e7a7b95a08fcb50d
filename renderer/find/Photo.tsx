import { X } from 'lucide-react';
import { useEffect, useRef, useState } from 'react';
import { drawInto, readPhoto } from './entryPhoto.ts';

const thumbPx = 96;
const largePx = 1600;

interface PhotoProps {
  readonly data: string;
  readonly mediaType: string;
  readonly name: string;
  /** Label of what takes it out. */
  readonly remove: string;
  readonly onRemove: () => void;
}

/** A kept photo, small; a click lays it over the window so that it can be read, another one puts it back. */
export function Photo({ data, mediaType, name, remove, onRemove }: PhotoProps) {
  const [large, setLarge] = useState(false);
  const canvas = useRef<HTMLCanvasElement>(null);
  useEffect(() => {
    let gone = false;
    // Drawn, not linked: the page's policy allows no picture but its own.
    void readPhoto(data, mediaType).then((picture) => {
      if (picture && !gone && canvas.current) drawInto(canvas.current, picture, large ? largePx : thumbPx * devicePixelRatio);
      picture?.close();
    });
    return () => {
      gone = true;
    };
  }, [data, mediaType, large]);
  return (
    <span className={`photo${large ? ' large' : ''}`}>
      <button
        type="button"
        className="photo-button"
        aria-label={name}
        aria-pressed={large}
        onClick={() => setLarge(!large)}
        onKeyDown={(event) => {
          if (event.key !== 'Escape' || !large) return;
          event.stopPropagation();
          setLarge(false);
        }}
      >
        <canvas ref={canvas} />
      </button>
      <button type="button" className="icon-button" aria-label={remove} title={remove} onClick={onRemove}>
        <X size={16} aria-hidden="true" />
      </button>
    </span>
  );
}
