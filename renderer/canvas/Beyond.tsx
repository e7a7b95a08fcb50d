import { ChevronDown, ChevronLeft, ChevronRight, ChevronUp } from 'lucide-react';
import { useReactFlow, useStore } from 'reactflow';
import { windowTexts } from '../../engine/messages/index.ts';

/** Less than this beyond an edge is a margin, not a part of the drawing; screen pixels. */
const least = 24;
/** Covered at the upper edge by the head of the drawing; screen pixels. */
const head = 48;
/** Of what one sees, this share moves on at a press: what stood at the edge stays in sight. */
const share = 0.7;

const words = windowTexts.cabinet.beyond;
const sides = [
  { side: 'above', Icon: ChevronUp, x: 0, y: 1 },
  { side: 'below', Icon: ChevronDown, x: 0, y: -1 },
  { side: 'left', Icon: ChevronLeft, x: 1, y: 0 },
  { side: 'right', Icon: ChevronRight, x: -1, y: 0 },
] as const;

/** Says at an edge of the picture that the drawing goes on beyond it, and leads there. */
export function Beyond({ drawn }: { readonly drawn: { readonly width: number; readonly height: number } }) {
  const flow = useReactFlow();
  const hidden = useStore(({ transform: [x, y, zoom], width, height }) =>
    [
      y < head - least ? 'above' : '',
      y + drawn.height * zoom > height + least ? 'below' : '',
      x < -least ? 'left' : '',
      x + drawn.width * zoom > width + least ? 'right' : '',
    ].join(' '),
  );
  const frame = useStore(({ width }) => width);
  const lines = useStore(({ height }) => height);
  const shown = hidden.split(' ');
  const move = (x: number, y: number) => {
    const now = flow.getViewport();
    void flow.setViewport({ ...now, x: now.x + x * share * frame, y: now.y + y * share * (lines - head) });
  };
  return sides.map(({ side, Icon, x, y }) =>
    shown.includes(side) ? (
      <button key={side} type="button" className={`beyond ${side}`} onClick={() => move(x, y)}>
        <Icon size={16} aria-hidden="true" /> {words[side]}
      </button>
    ) : null,
  );
}
