import type { AppState } from '../state/appState.ts';
import { viewCommand } from '../state/command.ts';
import { alongChain, type ChooseHow, changeChosen, chosenThings, everyUnit } from './chosen.ts';
import type { DrawState, DrawView } from './drawState.ts';

/*
 * The commands of Draw that change how one looks at the cabinet, and what is chosen in it.
 */

/** Draw is what one sees. */
export const inDraw = (state: AppState) => state.workspace === 'draw' && state.question === null && !state.sums.shown;
const draw = (state: AppState, change: Partial<DrawState>) => ({ draw: { ...state.draw, ...change } });

const chooseAlong = (part: 'all' | 'upstream' | 'downstream') => (state: AppState) => {
  const along = alongChain(state.checked.topology, state.draw.chosen, part);
  return along.length === 0 ? {} : draw(state, { chosen: along });
};

export const drawCommands = {
  'go-draw': viewCommand({
    label: 'goDraw',
    shortcuts: ['Alt+1'],
    isEnabled: (state) => state.question === null,
    // Nothing is edited while a fault is simulated: what it would change could not be seen.
    run: (state) => ({
      workspace: 'draw',
      entry: null,
      sums: { ...state.sums, shown: false },
      inject: { ...state.inject, on: false, target: null, taking: false },
    }),
  }),
  'go-find': viewCommand({
    label: 'goFind',
    shortcuts: ['Alt+2'],
    isEnabled: (state) => state.question === null,
    run: (state) => ({ workspace: 'find', sums: { ...state.sums, shown: false }, ...draw(state, { dialog: null, held: null }) }),
  }),

  choose: viewCommand<{ readonly ids: readonly string[]; readonly how: ChooseHow }>({
    label: 'choose',
    isEnabled: inDraw,
    run: (state, { ids, how }) => draw(state, { chosen: changeChosen(chosenThings(state), ids, how) }),
  }),
  'choose-all': viewCommand({
    label: 'chooseAll',
    shortcuts: ['Mod+A'],
    keysIn: 'draw',
    isEnabled: inDraw,
    run: (state) => draw(state, { chosen: everyUnit(state.checked.topology) }),
  }),
  'choose-none': viewCommand({
    label: 'chooseNone',
    shortcuts: ['Escape'],
    keysIn: 'draw',
    isEnabled: (state) => inDraw(state) && (state.draw.chosen.length > 0 || state.draw.held !== null),
    run: (state) => draw(state, { chosen: [], held: null }),
  }),
  'choose-chain': viewCommand({
    label: 'chooseChain',
    shortcuts: ['Mod+Shift+A'],
    keysIn: 'draw',
    isEnabled: (state) => inDraw(state) && state.draw.chosen.length > 0,
    run: chooseAlong('all'),
  }),
  'choose-upstream': viewCommand({
    label: 'chooseUpstream',
    shortcuts: ['Shift+Home'],
    keysIn: 'draw',
    isEnabled: (state) => inDraw(state) && state.draw.chosen.length > 0,
    run: chooseAlong('upstream'),
  }),
  'choose-downstream': viewCommand({
    label: 'chooseDownstream',
    shortcuts: ['Shift+End'],
    keysIn: 'draw',
    isEnabled: (state) => inDraw(state) && state.draw.chosen.length > 0,
    run: chooseAlong('downstream'),
  }),

  'set-draw-view': viewCommand<{ readonly view: DrawView }>({
    label: 'toggleDrawView',
    isEnabled: inDraw,
    run: (state, { view }) => draw(state, { view }),
  }),
  'toggle-draw-view': viewCommand({
    label: 'toggleDrawView',
    shortcuts: ['T'],
    keysIn: 'draw',
    isEnabled: inDraw,
    run: (state) => draw(state, { view: state.draw.view === 'drawing' ? 'lists' : 'drawing' }),
  }),
  'toggle-arrangement': viewCommand({
    label: 'toggleArrangement',
    shortcuts: ['O'],
    keysIn: 'draw',
    isEnabled: (state) => inDraw(state) && state.draw.view === 'drawing',
    run: (state) => draw(state, { arrangement: state.draw.arrangement === 'chain' ? 'mounting' : 'chain' }),
  }),
  'toggle-feedback': viewCommand({
    label: 'toggleFeedback',
    shortcuts: ['B'],
    keysIn: 'draw',
    isEnabled: (state) => inDraw(state) && state.draw.view === 'drawing',
    run: (state) => draw(state, { feedbackShown: !state.draw.feedbackShown }),
  }),
} as const;
