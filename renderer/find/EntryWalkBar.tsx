import { entryWords } from '../../engine/messages/index.ts';
import { useApp, useDispatch } from '../state/useWorkbench.ts';
import { walkUnits } from './entryWalk.ts';

const words = entryWords.walk;

interface EntryWalkBarProps {
  readonly unit: string;
  readonly onBack: () => void;
  readonly onReport: () => void;
  /** Null where nothing was entered. */
  readonly onTakeBack: (() => void) | null;
  readonly onClose: () => void;
}

/** How far the walk has come, in which order it goes, and the ways out of it. */
export function EntryWalkBar({ unit, onBack, onReport, onTakeBack, onClose }: EntryWalkBarProps) {
  const dispatch = useDispatch();
  const topology = useApp((state) => state.checked.topology);
  const order = useApp((state) => state.walkOrder);
  const units: readonly string[] = walkUnits(topology, order);
  const at = units.indexOf(unit);
  return (
    <div className="walk-bar">
      <button type="button" className="button small" aria-keyshortcuts="Backspace" disabled={at <= 0} onClick={onBack}>
        {words.back} <kbd>⌫</kbd>
      </button>
      <span className="walk-progress">{words.progress(at + 1, units.length)}</span>
      <fieldset className="walk-order">
        <legend className="screen-reader">{words.order}</legend>
        {(['chain', 'mounting'] as const).map((choice) => (
          <button
            key={choice}
            type="button"
            className="button small"
            aria-pressed={choice === order}
            onClick={() => choice !== order && dispatch('toggle-walk-order')}
          >
            {words.orders[choice]}
          </button>
        ))}
      </fieldset>
      <button type="button" className="button small" aria-keyshortcuts="Delete" disabled={!onTakeBack} onClick={() => onTakeBack?.()}>
        {words.takeBack} <kbd>Del</kbd>
      </button>
      <button type="button" className="button small" aria-keyshortcuts="+" onClick={onReport}>
        {words.toReport} <kbd>+</kbd>
      </button>
      <button type="button" className="button small" aria-keyshortcuts="Escape" onClick={onClose}>
        {words.close}
      </button>
    </div>
  );
}
