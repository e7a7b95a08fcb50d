import { port } from './geometry.ts';

/**
 * An optical port. The ring hears, the disc sends; outbound above, return below, on both sides of a unit alike. What hears nothing is
 * filled yellow; a cap is filled grey.
 */
export function PortMark({ side, deaf, capped }: { readonly side: 'up' | 'down'; readonly deaf: boolean; readonly capped: boolean }) {
  const above = side === 'up' ? 'hears' : 'sends';
  const below = side === 'up' ? 'sends' : 'hears';
  return (
    <svg
      className={`port ${side}${deaf ? ' deaf' : ''}${capped ? ' capped' : ''}`}
      width={port.width}
      height={port.height}
      viewBox="0 0 15 38"
      aria-hidden="true"
    >
      <rect x="1" y="1" width="13" height="36" rx="2" />
      {!capped && (
        <>
          <circle className={above} cx="7.5" cy="11" r="3.6" />
          <circle className={below} cx="7.5" cy="27" r="3.6" />
        </>
      )}
    </svg>
  );
}
