import { windowTexts } from '../../engine/messages/index.ts';
import { commands } from '../state/commands.ts';
import { useApp, useDispatch } from '../state/useWorkbench.ts';

/** Beside everything that is offered while the machine runs: it may stop again, and what is shown then must be noted first. */
export function StoppedAgain() {
  const dispatch = useDispatch();
  const runs = useApp(commands['enter-stop'].isEnabled);
  if (!runs) return null;
  const enter = () => {
    dispatch('enter-stop');
    dispatch('announce', { text: windowTexts.seenPane.stopped });
    dispatch('show-step', { step: null });
    dispatch('walk-displays');
  };
  return (
    <button type="button" className="button small" title={windowTexts.seenPane.stopped} onClick={enter}>
      {windowTexts.commands.enterStop}
    </button>
  );
}
