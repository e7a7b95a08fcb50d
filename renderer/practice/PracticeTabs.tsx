import { makeWords, practiceTabWords } from '../../engine/messages/index.ts';
import { useApp, useDispatch } from '../state/useWorkbench.ts';
import { practiceScreens } from './practiceScreens.ts';

const commandOf = {
  exercises: 'practice-exercises',
  make: 'practice-make',
  generate: 'practice-generate',
  class: 'practice-class',
} as const;

/** The screens of Practice beside each other. */
export function PracticeTabs() {
  const shown = useApp((state) => state.practice);
  const dispatch = useDispatch();
  return (
    <nav className="practice-tabs" aria-label={makeWords.screens}>
      {practiceScreens.map((screen) => (
        <button key={screen} type="button" aria-current={screen === shown ? 'page' : undefined} onClick={() => dispatch(commandOf[screen])}>
          {practiceTabWords[screen]}
        </button>
      ))}
    </nav>
  );
}
