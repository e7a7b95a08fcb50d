import type { CaptionView } from './views.ts';

/** Small words on the drawing that belong to no module. */
export function Captions({ captions }: { readonly captions: readonly CaptionView[] }) {
  return captions.map(({ key, at, words, kind }) => (
    <span key={key} className={`caption ${kind}`} style={{ transform: `translate(${at.x}px, ${at.y}px)` }} aria-hidden={kind !== 'rail'}>
      {words}
    </span>
  ));
}
