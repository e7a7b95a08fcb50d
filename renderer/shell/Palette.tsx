import { drawWords, windowTexts } from '../../engine/messages/index.ts';
import { Chooser } from '../draw/Chooser.tsx';
import { commands } from '../state/commands.ts';
import { useApp, useDispatch, useWindow } from '../state/useWorkbench.ts';
import { listMenuCommands } from './plainCommands.ts';
import { shortcutsOf, wordKeys } from './shortcuts.ts';

/** All commands, found by any of their words; those that cannot be run now say so. */
export function Palette() {
  const shown = useApp((state) => state.draw.dialog === 'palette');
  const { store } = useWindow();
  const dispatch = useDispatch();
  if (!shown) return null;
  const words = drawWords.chooser.palette;
  const state = store.getState();
  const choices = listMenuCommands()
    .filter((id) => id !== 'palette')
    .map((id) => {
      const [keys] = shortcutsOf(id);
      const enabled = commands[id].isEnabled(state);
      return {
        id,
        words: windowTexts.commands[commands[id].label],
        ...(keys === undefined ? {} : { keys: wordKeys(keys) }),
        ...(enabled ? {} : { disabled: words.notNow }),
      };
    });
  return (
    <Chooser
      title={words.title}
      label={words.label}
      empty={words.notNow}
      choices={[...choices.filter(({ disabled }) => disabled === undefined), ...choices.filter(({ disabled }) => disabled !== undefined)]}
      onChoose={(id) => {
        const chosen = listMenuCommands().find((one) => one === id);
        if (chosen !== undefined) dispatch(chosen);
      }}
      onClose={() => dispatch('close-draw-dialog')}
    />
  );
}
