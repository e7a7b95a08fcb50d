import { type ExerciseWish, type MadeExercise, makeExercise } from '../../engine/exercise/index.ts';
import { exerciseKindTexts } from '../../engine/messages/index.ts';
import type { AllowedStep, ExerciseKind, Fault } from '../../engine/schema/index.ts';
import { schoolCabinet } from './schoolCabinet.ts';

/*
 * The exercises that come with the program, first lesson to hard. What is hidden stands here and, sealed, in their files; the files are
 * written by `npm run exercises`.
 */

const all = ['TB1', 'TB2', 'BG1', 'TB3', 'BG2', 'TB4', 'TB5', 'TB6', 'TB9'];
const evenly = (...faults: readonly Fault[]) =>
  faults.map((fault) => ({ faults: [{ ...fault, presence: fault.presence ?? ('steady' as const) }], weight: 1 }));
const plug = (link: string, end: 'upper' | 'lower'): Fault => ({ item: 'plug', link, end, mode: 'loose', presence: 'steady' });
const cable = (link: string): Fault => ({ item: 'cable', link, mode: 'cut', presence: 'steady' });

type Step = AllowedStep['step'];
const steps = (...list: readonly (readonly [minutes: number, step: Step])[]): AllowedStep[] =>
  list.map(([minutes, step], index) => ({ id: `s${index + 1}`, step, minutes }));
const display = (unit: string): [number, Step] => [1, { do: 'read-display', unit }];
const lightAtPlug = (link: string, end: 'upper' | 'lower'): [number, Step] => [
  3,
  { do: 'look', look: { look: 'light-at-plug', link, end } },
];
const lightAtPort = (link: string, end: 'upper' | 'lower'): [number, Step] => [
  3,
  { do: 'look', look: { look: 'light-at-port', link, end } },
];
const volts = (unit: string): [number, Step] => [4, { do: 'look', look: { look: 'voltage', unit } }];
const reportOf = (chain: string): [number, Step] => [1, { do: 'read-report', chain }];
const act = (minutes: number, ...acts: Extract<Step, { do: 'act' }>['acts']): [number, Step] => [minutes, { do: 'act', acts }];
const both = (link: string) => [{ do: 'reseat-plug', link, end: 'upper' } as const, { do: 'reseat-plug', link, end: 'lower' } as const];

type Ready = Omit<ExerciseWish, 'id' | 'name' | 'task' | 'lesson' | 'cabinet' | 'seed' | 'onset' | 'kind'> &
  Partial<Pick<ExerciseWish, 'onset' | 'seed' | 'name' | 'task'>>;

const ready: { readonly [K in ExerciseKind]: Ready } = {
  counting: {
    faults: [cable('WH4')],
    known: { displays: [], reports: [] },
    solved: 'item',
    possible: evenly(cable('WH2'), cable('WH3'), cable('WH4'), cable('WH5'), cable('WH6')),
    steps: steps(reportOf('chain1'), display('TB1'), display('TB2'), display('BG1'), display('TB3'), display('BG2'), reportOf('chain2')),
    hints: [{ text: 'Encoder interfaces are counted apart from drives.', minutes: 2 }],
    story: '-WH4 was pinched by the lid of its duct.',
  },
  neighbours: {
    faults: [cable('WH3')],
    known: { displays: all, reports: ['chain1'] },
    solved: 'place',
    possible: evenly(
      cable('WH3'),
      { item: 'plug', link: 'WH3', end: 'upper', mode: 'fouled' },
      { item: 'board', unit: 'TB2', mode: 'down-tx' },
      { item: 'board', unit: 'BG1', mode: 'up-tx' },
    ),
    steps: steps(
      lightAtPlug('WH3', 'lower'),
      lightAtPlug('WH3', 'upper'),
      lightAtPort('WH3', 'upper'),
      lightAtPort('WH3', 'lower'),
      volts('BG1'),
      volts('TB2'),
    ),
    hints: [{ text: 'A unit that complains is usually healthy.', minutes: 2 }],
    story: 'A tool box was set down on -WH3.',
  },
  'quiet-unit': {
    faults: [{ item: 'board', unit: 'TB3', mode: 'dead-lit', presence: 'steady' }],
    known: { displays: ['BG1'], reports: ['chain1'] },
    solved: 'place',
    possible: evenly(
      cable('WH4'),
      { item: 'plug', link: 'WH4', end: 'lower', mode: 'fouled' },
      { item: 'board', unit: 'BG1', mode: 'down-tx' },
      { item: 'board', unit: 'TB3', mode: 'dead-lit' },
      { item: 'board', unit: 'TB3', mode: 'dead-dark' },
      { item: 'board', unit: 'TB3', mode: 'up-tx' },
    ),
    steps: steps(
      display('TB2'),
      display('TB3'),
      display('BG2'),
      display('TB4'),
      lightAtPlug('WH4', 'upper'),
      lightAtPlug('WH4', 'lower'),
      lightAtPort('WH4', 'upper'),
      lightAtPort('WH4', 'lower'),
      volts('BG1'),
      volts('TB3'),
      act(4, ...both('WH4')),
      act(20, { do: 'replace-board', unit: 'BG1' }),
      act(20, { do: 'replace-board', unit: 'TB3' }),
    ),
    hints: [{ text: 'What should -TB3 show if only the cable were broken?', minutes: 2 }],
    story: 'The communication board of -TB3 hung itself up: its display is lit, and it says nothing.',
  },
  'first-hop': {
    faults: [{ item: 'controller-port', chain: 'chain1', mode: 'dead', presence: 'steady' }],
    known: { displays: all, reports: ['chain1', 'chain2'] },
    solved: 'place',
    hints: [{ text: 'Which end of -WH1 can give light at all?', minutes: 2 }],
    story: 'The port board of chain 1 in the controller gives no light any more.',
  },
  'one-fibre': {
    faults: [{ item: 'cable', link: 'WH5', mode: 'return-cut', presence: 'steady' }],
    known: { displays: all, reports: ['chain1'] },
    solved: 'item',
    possible: evenly(
      { item: 'cable', link: 'WH5', mode: 'outbound-cut' },
      { item: 'cable', link: 'WH5', mode: 'return-cut' },
      { item: 'board', unit: 'TB3', mode: 'down-tx' },
      { item: 'board', unit: 'BG2', mode: 'up-tx' },
      { item: 'board', unit: 'BG2', mode: 'up-port' },
    ),
    steps: steps(
      lightAtPlug('WH5', 'upper'),
      lightAtPlug('WH5', 'lower'),
      lightAtPort('WH5', 'upper'),
      lightAtPort('WH5', 'lower'),
      act(16, { do: 'exchange-cables', link: 'WH5', other: 'WH6' }),
    ),
    story: 'One of the two fibres of -WH5, the return one, is broken inside its plug.',
  },
  power: {
    faults: [{ item: 'lead', lead: 'WD5', mode: 'open', presence: 'steady' }],
    known: { displays: ['TB3'], reports: ['chain1'] },
    solved: 'item',
    possible: evenly(
      cable('WH5'),
      { item: 'plug', link: 'WH5', end: 'lower', mode: 'loose' },
      { item: 'board', unit: 'BG2', mode: 'up-port' },
      { item: 'board', unit: 'BG2', mode: 'dead-dark' },
      { item: 'fuse', unit: 'BG2', mode: 'open' },
      { item: 'place', unit: 'BG2', mode: 'contact-bad' },
      { item: 'lead', lead: 'WD5', mode: 'open' },
    ),
    steps: steps(
      display('BG1'),
      display('BG2'),
      display('TB9'),
      volts('TB3'),
      volts('BG2'),
      volts('TB4'),
      lightAtPlug('WH5', 'upper'),
      lightAtPlug('WH5', 'lower'),
      lightAtPort('WH5', 'lower'),
      act(4, ...both('WH5')),
      act(5, { do: 'replace-fuse', unit: 'BG2' }),
      act(6, { do: 'reseat-unit', unit: 'BG2' }),
      act(20, { do: 'replace-board', unit: 'BG2' }),
    ),
    story: 'The lead -WD5 slipped out of its terminal; everything behind it is dark.',
  },
  'do-not-switch-off': {
    faults: [{ item: 'plug', link: 'WH6', end: 'lower', mode: 'loose', presence: 'intermittent' }],
    known: { displays: [], reports: [] },
    solved: 'place',
    possible: evenly(
      { item: 'plug', link: 'WH3', end: 'lower', mode: 'loose', presence: 'intermittent' },
      { item: 'plug', link: 'WH4', end: 'lower', mode: 'loose', presence: 'intermittent' },
      { item: 'plug', link: 'WH5', end: 'lower', mode: 'loose', presence: 'intermittent' },
      { item: 'plug', link: 'WH6', end: 'lower', mode: 'loose', presence: 'intermittent' },
    ),
    steps: steps(
      display('TB2'),
      display('BG1'),
      display('TB3'),
      display('BG2'),
      display('TB4'),
      act(0),
      ...['WH6', 'WH5', 'WH4', 'WH3'].map((link) => lightAtPlug(link, 'lower')),
    ),
    limits: { minutes: 60 },
    seed: 3,
    story: 'The lower plug of -WH6 was never pushed home and lost its light when the spindle ran up.',
  },
  'two-faults': {
    name: 'Is that all?',
    task: 'The machine has stopped after a crash. The control names the first break only. Mend the machine, and hand it over when it runs.',
    faults: [cable('WH2'), { item: 'plug', link: 'WH6', end: 'upper', mode: 'loose', presence: 'steady' }],
    known: { displays: ['TB1', 'TB2'], reports: ['chain1'] },
    solved: 'mended',
    possible: [cable('WH2'), plug('WH2', 'upper')].flatMap((first) =>
      [[], [plug('WH4', 'upper')], [cable('WH6')], [plug('WH6', 'upper')]].map((more) => ({ faults: [first, ...more], weight: 1 })),
    ),
    steps: steps(
      display('BG1'),
      display('TB3'),
      display('BG2'),
      display('TB4'),
      ...['WH2', 'WH4', 'WH6'].flatMap((link) => [lightAtPlug(link, 'upper'), lightAtPlug(link, 'lower')]),
      ...['WH2', 'WH6'].flatMap((link) => [act(4, ...both(link)), act(12, { do: 'replace-cable', link })]),
      act(4, ...both('WH4')),
    ),
    hints: [{ text: 'The report tells of the break that is nearest to the controller. What do the displays behind it say?', minutes: 3 }],
    story: 'A crash shook the cabinet: -WH2 broke, and the upper plug of -WH6 came loose.',
  },
  intermittent: {
    faults: [{ item: 'plug', link: 'WH4', end: 'upper', mode: 'loose', presence: 'intermittent' }],
    known: { displays: ['BG1', 'TB3'], reports: ['chain1'] },
    solved: 'mended',
    possible: evenly(
      { item: 'plug', link: 'WH4', end: 'upper', mode: 'loose', presence: 'intermittent' },
      { item: 'plug', link: 'WH4', end: 'lower', mode: 'fouled', presence: 'intermittent' },
      { item: 'cable', link: 'WH4', mode: 'cut', presence: 'intermittent' },
      { item: 'board', unit: 'TB3', mode: 'up-port', presence: 'intermittent' },
    ),
    steps: steps(
      lightAtPlug('WH4', 'lower'),
      lightAtPort('WH4', 'lower'),
      act(4, ...both('WH4')),
      act(12, { do: 'replace-cable', link: 'WH4' }),
      act(20, { do: 'replace-board', unit: 'TB3' }),
      act(0),
      lightAtPort('WH4', 'upper'),
      volts('TB3'),
      act(20, { do: 'replace-board', unit: 'BG1' }),
    ),
    seed: 5,
    story: 'The upper plug of -WH4 sits loosely; with every vibration it may open.',
  },
  place: {
    faults: [{ item: 'route', link: 'WH5', mode: 'kinked', presence: 'steady' }],
    known: { displays: all, reports: ['chain1'] },
    solved: 'mended',
    possible: evenly(
      { item: 'cable', link: 'WH5', mode: 'outbound-dim' },
      { item: 'plug', link: 'WH5', end: 'lower', mode: 'fouled' },
      { item: 'route', link: 'WH5', mode: 'kinked' },
    ),
    steps: steps(
      lightAtPlug('WH5', 'lower'),
      lightAtPlug('WH5', 'upper'),
      [6, { do: 'look', look: { look: 'lamp', link: 'WH5', fibre: 'outbound' } }],
      [6, { do: 'look', look: { look: 'lamp', link: 'WH5', fibre: 'return' } }],
      act(16, { do: 'exchange-cables', link: 'WH5', other: 'WH4' }),
      act(12, { do: 'replace-cable', link: 'WH5' }),
      act(4, { do: 'clean-plug', link: 'WH5', end: 'lower' }),
      act(15, { do: 're-route', link: 'WH5' }),
    ),
    story: '-WH5 is bent over the edge of the rail, too tightly for the light.',
  },
};

/** First lesson to hard. */
const course: readonly ExerciseKind[] = [
  'counting',
  'neighbours',
  'quiet-unit',
  'first-hop',
  'one-fibre',
  'do-not-switch-off',
  'place',
  'power',
  'intermittent',
  'two-faults',
];

/** File names begin with the place in the course. */
export const readyExercises = course.map((kind, index) => {
  const wish = ready[kind];
  const { name, task, lesson } = exerciseKindTexts[kind];
  const id = `ready-${String(index + 1).padStart(2, '0')}-${kind}`;
  return {
    file: `${id}.exercise.json`,
    make(): MadeExercise {
      const made = makeExercise({ onset: 'while-running', seed: 1, name, task, ...wish, id, kind, lesson, cabinet: schoolCabinet });
      if (!made.ok) throw new Error(`${id}: ${JSON.stringify(made.problems)}`);
      return made.value;
    },
  };
});
