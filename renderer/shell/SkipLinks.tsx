import { drawWords, injectWords, practiceSkipWords, windowTexts } from '../../engine/messages/index.ts';
import { useApp } from '../state/useWorkbench.ts';

const targets = ['answer', 'cabinet', 'suspects', 'step', 'grid'] as const;
const drawTargets = ['cabinet', 'shelf', 'inspector', 'problems'] as const;
const practiceTargets = ['practice', 'make-plan'] as const;

/** The first stops of Tab: past everything to one part of the window. */
export function SkipLinks() {
  const injecting = useApp((state) => state.inject.on);
  const workspace = useApp((state) => state.workspace);
  const making = useApp((state) => state.practice === 'make');
  const links: readonly (readonly [string, string | null])[] =
    workspace === 'practice'
      ? practiceTargets.map((target) => [target, target === 'make-plan' && !making ? null : practiceSkipWords[target]])
      : workspace === 'draw'
        ? drawTargets.map((target) => [target, drawWords.skipTo[target]])
        : targets.map((target) => [
            target,
            injecting ? (target === 'step' ? null : injectWords.skipTo[target]) : windowTexts.skipTo[target],
          ]);
  return (
    <nav className="skip-links" aria-label={windowTexts.skipTo.label}>
      {links.map(([target, words]) => {
        return words === null ? null : (
          <a
            key={target}
            href={`#${target}`}
            onClick={(event) => {
              // The address stays as it is; only the focus moves.
              event.preventDefault();
              document.getElementById(target)?.focus();
            }}
          >
            {words}
          </a>
        );
      })}
    </nav>
  );
}

/** Goes to the next part of the window, or with `back` to the one before. */
export function moveToRegion(back: boolean): void {
  const regions = [...new Set([...targets, ...drawTargets, ...practiceTargets])]
    .map((target) => document.getElementById(target))
    .filter((region) => region !== null);
  const now = regions.findIndex((region) => region.contains(document.activeElement));
  const next = now < 0 ? 0 : (now + (back ? regions.length - 1 : 1)) % regions.length;
  regions[next]?.focus();
}
