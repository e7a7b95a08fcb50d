import { windowTexts } from '../../engine/messages/index.ts';

const targets = ['answer', 'cabinet', 'suspects', 'grid'] as const;

/** The first stops of Tab: past everything to one part of the window. */
export function SkipLinks() {
  return (
    <nav className="skip-links" aria-label={windowTexts.skipTo.label}>
      {targets.map((target) => (
        <a
          key={target}
          href={`#${target}`}
          onClick={(event) => {
            // The address stays as it is; only the focus moves.
            event.preventDefault();
            document.getElementById(target)?.focus();
          }}
        >
          {windowTexts.skipTo[target]}
        </a>
      ))}
    </nav>
  );
}

/** Goes to the next part of the window, or with `back` to the one before. */
export function moveToRegion(back: boolean): void {
  const regions = targets.map((target) => document.getElementById(target)).filter((region) => region !== null);
  const now = regions.findIndex((region) => region.contains(document.activeElement));
  const next = now < 0 ? 0 : (now + (back ? regions.length - 1 : 1)) % regions.length;
  regions[next]?.focus();
}
