import { windowTexts } from '../../engine/messages/index.ts';
import { useApp, useDispatch } from '../state/useWorkbench.ts';

/** Large type for a whole class before one screen, which decides together. */
export function ProjectorButton() {
  const isLarge = useApp((state) => state.practiceLarge);
  const dispatch = useDispatch();
  return (
    <button type="button" className="button" aria-pressed={isLarge} onClick={() => dispatch('practice-projector')}>
      {windowTexts.commands.practiceProjector}
    </button>
  );
}
