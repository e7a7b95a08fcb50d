import type { UnitKind } from '../../engine/schema/index.ts';
import type { AppState } from '../state/appState.ts';
import { type DrawActions, effectCommand, viewCommand } from '../state/command.ts';
import { buildCommands } from './buildCommands.ts';
import { alongChain, type ChooseHow, changeChosen, chosenThings, everyUnit } from './chosen.ts';
import type { DrawDialog, DrawState, DrawView } from './drawState.ts';
import { movable } from './preview.ts';

/*
 * The commands of Draw that change how one looks at the cabinet, and what is chosen in it.
 */

/** Runs the browser's own event, whose listener writes the clipboard: that needs no permission. */
const execute = (deed: 'copy' | 'cut') => void document.execCommand(deed);

/** Draw is what one sees. */
export const inDraw = (state: AppState) => state.workspace === 'draw' && state.question === null && !state.sums.shown;
const draw = (state: AppState, change: Partial<DrawState>) => ({ draw: { ...state.draw, ...change } });

const chooseAlong = (part: 'all' | 'upstream' | 'downstream') => (state: AppState) => {
  const along = alongChain(state.checked.topology, state.draw.chosen, part);
  return along.length === 0 ? {} : draw(state, { chosen: along });
};

const someChosen = (state: AppState) => inDraw(state) && chosenThings(state).length > 0;
/** A key of Draw that does something with what is chosen. */
const act = (
  label: Parameters<typeof effectCommand>[0]['label'],
  shortcuts: readonly string[],
  run: (draw: DrawActions) => void | Promise<void>,
  isEnabled: (state: AppState) => boolean = someChosen,
) => effectCommand({ label, shortcuts, keysIn: 'draw', isEnabled, run: ({ draw: actions }) => (actions ? run(actions) : undefined) });
const openDialog = (label: Parameters<typeof effectCommand>[0]['label'], dialog: DrawDialog, shortcuts: readonly string[]) =>
  viewCommand({ label, shortcuts, keysIn: 'draw', isEnabled: inDraw, run: (state) => draw(state, { dialog }) });

export const drawCommands = {
  ...buildCommands,

  'insert-servo': act('insertServo', ['S'], (actions) => actions.insert('servo-drive'), inDraw),
  'insert-spindle': act('insertSpindle', ['P'], (actions) => actions.insert('spindle-drive'), inDraw),
  'insert-encoder': act('insertEncoder', ['E'], (actions) => actions.insert('encoder-interface'), inDraw),
  'insert-supply': act('insertSupply', ['U'], (actions) => actions.insert('supply'), inDraw),
  'new-chain': effectCommand({
    label: 'addChain',
    shortcuts: ['C'],
    keysIn: 'draw',
    isEnabled: inDraw,
    run: ({ draw: actions }) => actions?.addChain(),
  }),
  'insert-cable': effectCommand({
    label: 'layCable',
    shortcuts: ['L'],
    keysIn: 'draw',
    isEnabled: inDraw,
    run: ({ draw: actions }) => actions?.addCable(),
  }),
  hold: viewCommand<{ readonly kind: UnitKind | null }>({
    label: 'hold',
    isEnabled: inDraw,
    run: (state, { kind }) => draw(state, { held: kind }),
  }),

  'remove-chosen': act('removeThings', ['Delete', 'Backspace'], (actions) => actions.remove()),
  duplicate: act('duplicate', ['Mod+D'], (actions) => actions.duplicate()),
  cut: { ...act('cut', ['Mod+X'], () => execute('cut')), byEvent: true } as const,
  copy: { ...act('copy', ['Mod+C'], () => execute('copy')), byEvent: true } as const,
  paste: { ...act('paste', ['Mod+V'], (actions) => actions.pasteLast(), inDraw), byEvent: true } as const,
  'move-back': act('moveBack', ['Mod+ArrowLeft'], (actions) => actions.move('left')),
  'move-on': act('moveOn', ['Mod+ArrowRight'], (actions) => actions.move('right')),
  'move-up': act('moveUp', ['Mod+ArrowUp'], (actions) => actions.move('up')),
  'move-down': act('moveDown', ['Mod+ArrowDown'], (actions) => actions.move('down')),

  'take-off-chain': effectCommand({
    label: 'takeOffChain',
    isEnabled: (state) =>
      inDraw(state) && alongChain(state.checked.topology, movable(state.checked.topology, chosenThings(state)), 'all').length > 0,
    run: ({ draw: actions }) => actions?.takeOff(),
  }),

  'connect-to': viewCommand({
    label: 'connectTo',
    shortcuts: ['W'],
    keysIn: 'draw',
    isEnabled: someChosen,
    run: (state) => draw(state, { dialog: 'connect-to' }),
  }),
  'find-thing': openDialog('findThing', 'find-thing', ['Mod+F']),
  palette: viewCommand({
    label: 'palette',
    shortcuts: ['Mod+Shift+P'],
    isEnabled: (state) => state.question === null,
    run: (state) => draw(state, { dialog: 'palette' }),
  }),
  'paste-rows': openDialog('pasteRows', 'paste-rows', ['Mod+Shift+V']),
  'close-draw-dialog': viewCommand({
    label: 'closeDrawDialog',
    isEnabled: (state) => state.draw.dialog !== null,
    run: (state) => draw(state, { dialog: null }),
  }),
  'edit-chosen': effectCommand({
    label: 'editChosen',
    shortcuts: ['F2'],
    keysIn: 'draw',
    isEnabled: someChosen,
    run: ({ draw: actions }) => actions?.goToInspector(),
  }),

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
  'go-practice': viewCommand({
    label: 'goPractice',
    shortcuts: ['Alt+3'],
    isEnabled: (state) => state.question === null,
    run: (state) => ({
      workspace: 'practice',
      entry: null,
      sums: { ...state.sums, shown: false },
      inject: { ...state.inject, on: false, target: null, taking: false },
      ...draw(state, { dialog: null, held: null }),
    }),
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
