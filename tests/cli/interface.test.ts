import { readFileSync } from 'node:fs';
import { beforeAll, describe, expect, it } from 'vitest';
import { serializeCabinet, serializeCase, serializeResult } from '../../engine/cabinet/index.ts';
import { debrief, makeResult } from '../../engine/exercise/index.ts';
import type { CabinetContent, CaseContent } from '../../engine/schema/index.ts';
import { readyGame } from '../exercise/readyGames.ts';
import { jsonLinesOf, jsonOf, linkwright } from './runLinkwright.ts';

/*
 * engine/cli/JSON.md is a promise to programs. Here every field that real answers hold is looked up on the page, and every field of
 * the page is looked for in real answers.
 */

const page = readFileSync(new URL('../../engine/cli/JSON.md', import.meta.url), 'utf8');
const sample = 'sample-cabinets/two-chains.cabinet.json';
const ready = 'sample-cabinets/ready-02-neighbours.exercise.json';

function documented(head: string): ReadonlySet<string> {
  const section = page.split(/^## /m).find((part) => part.startsWith(head));
  if (section === undefined) throw new Error(`no section ${head}`);
  const paths = new Set([...section.matchAll(/^\| `([^`]+)` +\|/gm)].map(([, path]) => path ?? ''));
  if (paths.size === 0) throw new Error(`no fields under ${head}`);
  return paths;
}

const everywhere = documented('Every answer');
const fields = {
  check: new Set([...everywhere, ...documented('`check`')]),
  compare: new Set([...everywhere, ...documented('`compare`')]),
  simulate: new Set([...everywhere, ...documented('`simulate`')]),
  diagnose: new Set([...everywhere, ...documented('`diagnose`')]),
  next: new Set([...everywhere, ...documented('`next`')]),
  replay: new Set([...everywhere, ...documented('`replay`')]),
  cases: new Set([...everywhere, ...documented('`cases`')]),
  exercise: new Set([...everywhere, ...documented('`exercise`')]),
};

/** Shapes that other pages describe: paths below these are not looked at. */
const opaque = [/\.facts$/, /\.fault$/, /^input\.(faults|beforeTrip|sinceTrip)\[\]$/, /^evidence$/, /\.step$/];

/** Paths of all values in an answer: of leaves, and of everything on the way to them. */
function pathsOf(value: unknown, path = ''): { readonly leaves: readonly string[]; readonly all: readonly string[] } {
  const whole = path.replace(/^moments\.(trip|now)/, 'moments.*');
  const at = whole === '' ? [] : [whole];
  if (typeof value !== 'object' || value === null || opaque.some((pattern) => pattern.test(whole))) return { leaves: at, all: at };
  const below = Array.isArray(value)
    ? value.map((one) => pathsOf(one, `${path}[]`))
    : Object.entries(value).map(([key, one]) => pathsOf(one, path === '' ? key : `${path}.${key}`));
  // An empty list or object shows that its field is there, and nothing of what it can hold.
  return { leaves: below.flatMap(({ leaves }) => leaves), all: [...at, ...below.flatMap(({ all }) => all)] };
}

const runs: Readonly<Record<keyof typeof fields, readonly (readonly string[])[]>> = {
  check: [[sample, 'sample-cabinets/with-problems.cabinet.json', 'sample-cabinets/two-chains.1.case.json', 'missing.json']],
  compare: [
    [sample, 'sample-cabinets/three-units.cabinet.json'],
    [sample, 'missing.json'],
  ],
  simulate: [
    [sample, '--fault', 'cable:-WH3:cut', '--explain', '--light'],
    [sample, '--fault', 'lead:-WD1:open', '--fault', 'fuse:1/3:open', '--fault', 'feedback:-WG10:short', '--explain'],
    [
      sample,
      '--fault',
      'plug:-WH7/upper:loose,intermittent,absent-now',
      '--explain',
      '--before-trip',
      'unplug:-WH1/upper',
      '--since-trip',
      'unplug:-WH7/lower',
    ],
    [sample, '--fault', 'cable:-WH2:return-cut', '--fault', 'cable:-WH8:outbound-cut', '--explain'],
    ['odd.cabinet.json', '--fault', 'cable:w2:cut', '--fault', 'cable:w3:cut'],
    ['low.cabinet.json', '--fault', 'cable:w2:cut', '--explain'],
    [sample, '--fault', 'feedback:-WG12:short', '--fault', 'supply:-TB10:dead', '--explain'],
    ['sample-cabinets/drives-off-chain.cabinet.json', '--fault', 'board:1/1:dead-lit'],
    [
      'sample-cabinets/mixed-behaviours.cabinet.json',
      '--fault',
      'board:1/2:up-port',
      '--fault',
      'board:1/2:down-port',
      '--onset',
      'at-power-up',
    ],
    ...['cable:1', 'nothing'].map((fault) => [sample, '--fault', fault]),
  ],
  diagnose: [
    [sample, '--display', '-TB2=downstream-loss', '--report', '1=2|3', '--halted', 'yes'],
    [sample, '--display', '-TB2=downstream-loss'],
    [sample],
    ['sample-cabinets/mixed-behaviours.1.case.json'],
    ['sample-cabinets/two-supplies.1.case.json'],
    ['sample-cabinets/two-chains.4.case.json'],
    [sample, '--halted', 'perhaps'],
    ['odd.cabinet.json', '--display', '-U1=dark'],
    ['look.case.json'],
    [sample, '--report', '1=2|3', '--halted', 'no'],
    ['sample-cabinets/two-chains.3.case.json'],
  ],
  next: [['sample-cabinets/three-units.3.case.json'], ['look.case.json'], ['moved.case.json'], [sample, '--halted', 'perhaps']],
  replay: [['look.case.json'], ['sample-cabinets/three-units.3.case.json'], ['missing.json']],
  cases: [['sample-cabinets/confirmed', 'missing.json']],
  exercise: [
    ['check', ready],
    ['check', ready, '--passphrase', 'another'],
    ['sheet', ready],
    ['sheet', ready, '--as', 'html'],
    ['class', 'a.result.json', 'missing.json'],
    ['delete', 'a.result.json', '--yes'],
  ],
};

/** Three types of which nothing is known, all but that they show one loss where both directions are lost. */
const odd: CabinetContent = {
  id: 'odd',
  name: 'Odd',
  controller: { id: 'k', designation: '-K' },
  chains: [{ id: 'c', number: 1 }],
  units: ['u1', 'u2', 'u3', 's'].map((id) => ({
    id,
    kind: id === 's' ? 'supply' : 'servo-drive',
    designation: `-${id.toUpperCase()}`,
    type: `t-${id}`,
  })),
  links: [
    { id: 'w1', upper: { chain: 'c' }, lower: { unit: 'u1' } },
    { id: 'w2', upper: { unit: 'u1' }, lower: { unit: 'u2' } },
    { id: 'w3', upper: { unit: 'u2' }, lower: { unit: 'u3' } },
  ],
  leads: ['u1', 'u2', 'u3'].map((unit) => ({ id: `d-${unit}`, from: { unit: 's' }, to: { unit } })),
  types: ['u1', 'u2', 'u3', 's'].map((id) => ({
    id: `t-${id}`,
    name: `Type ${id}`,
    behaviour: id === 's' ? {} : { lossScope: 'unknown', holds: 'unknown', whenBoth: 'upstream' },
  })),
};

/** Everything works, but for one look that says there is no voltage at a unit whose display is lit. */
const look: CaseContent = {
  id: 'look',
  name: 'Look',
  cabinet: odd,
  evidence: {
    snapshots: [
      {
        halted: false,
        displays: ['u1', 'u2', 'u3'].map((unit) => ({ unit, meanings: ['quiet'] })),
        looks: [{ look: 'voltage', unit: 'u1', outcomes: ['absent'] }],
      },
    ],
    rates: { cases: 2, strength: 2, factors: [{ item: 'plug', mode: 'loose', factor: 1.5 }] },
  },
};

/** The last unit needs more voltage than its lead leaves. */
const low: CabinetContent = {
  ...odd,
  units: (odd.units ?? []).map((unit) =>
    unit.kind === 'supply'
      ? { ...unit, supply: { control24: { nominalV: 24 } } }
      : { ...unit, control24: { loadA: 2, ...(unit.id === 'u3' ? { minimumV: 23.5 } : {}) } },
  ),
  leads: (odd.leads ?? []).map((lead) => ({ ...lead, lengthM: 30, crossSectionMm2: 1.5, conductorClass: 'class-5' })),
};

/** A result of a ready exercise that was given up. */
function makeResultOf(code: string) {
  const { game, answer, exercise } = readyGame('neighbours');
  const looked = debrief(game, answer, [{ do: 'give-up' }]);
  if (looked === null) throw new Error('not ended');
  return makeResult(exercise, [{ do: 'give-up' }], looked, { code });
}

/** A board was moved and stands there still, and the machine runs. */
const moved: CaseContent = {
  ...look,
  id: 'moved',
  evidence: {
    snapshots: [
      { onset: 'while-running', halted: true, displays: [{ unit: 'u2', meanings: ['dark'] }] },
      { interventions: [{ do: 'exchange-boards', unit: 'u1', other: 'u2' }], restarted: true, halted: false },
    ],
  },
};

const files = {
  'moved.case.json': serializeCase(moved),
  'low.cabinet.json': serializeCabinet(low),
  'odd.cabinet.json': serializeCabinet(odd),
  'look.case.json': serializeCase(look),
  'a.result.json': serializeResult(makeResultOf('a')),
};
const found: Record<string, ReturnType<typeof pathsOf>> = {};

beforeAll(async () => {
  for (const [command, lines] of Object.entries(runs)) {
    const answers = [];
    for (const line of lines) answers.push(jsonOf(await linkwright([command, ...line, '--json'], files)));
    const paths = answers.map((answer) => pathsOf(answer));
    found[command] = { leaves: paths.flatMap(({ leaves }) => leaves), all: paths.flatMap(({ all }) => all) };
  }
  const looks = [
    { look: 'voltage', unit: 'TB1' },
    { look: 'compare-plugs', unit: 'TB1' },
    { look: 'compare-fibres', link: 'WH1' },
  ];
  const batch = jsonLinesOf(await linkwright(['simulate', sample, '--batch', '-'], { '-': JSON.stringify({ faults: [], looks }) }));
  const [{ line: _line, id: _id, ...rest } = {}] = batch;
  const more = pathsOf(rest);
  const simulated = found['simulate'];
  if (simulated) found['simulate'] = { leaves: [...simulated.leaves, ...more.leaves], all: [...simulated.all, ...more.all] };
}, 120_000);

describe('the JSON interface', () => {
  it.each(['check', 'compare', 'simulate', 'diagnose', 'next', 'replay', 'cases', 'exercise'] as const)(
    'should have every field of %s on its page',
    (command) => {
      const missing = [...new Set(found[command]?.leaves)].filter((path) => !fields[command].has(path));
      expect(missing).toEqual([]);
    },
  );

  it.each(['check', 'compare', 'simulate', 'diagnose', 'next', 'replay', 'cases', 'exercise'] as const)(
    'should really give every field that the page promises for %s',
    (command) => {
      const given = new Set(found[command]?.all);
      // An empty list, too, shows that its field is there.
      expect([...fields[command]].filter((path) => !given.has(path) && !given.has(path.replace(/\[\]$/, '')))).toEqual([]);
    },
  );

  it('should name its version, also where nothing could be computed', async () => {
    for (const args of [['check', 'missing.json'], ['simulate', sample, '--fault', 'x'], ['diagnose']]) {
      const ran = await linkwright([...args, '--json']);
      expect(jsonOf(ran)).toMatchObject({ interface: 1, command: args[0], exit: ran.exit });
      expect(ran.exit).toBeGreaterThan(1);
    }
  });

  it('should put the fields that the page names into every line of a batch', async () => {
    const ran = await linkwright(['simulate', sample, '--batch', '-'], { '-': '{"id":7,"faults":[]}\nnonsense\n' });
    const [good, bad] = jsonLinesOf(ran);
    const names = [...documented('Lines of a batch')].map((path) => path.replace('[]', ''));
    for (const name of names)
      expect(
        [good, bad].every((line) => line !== undefined && name in line),
        name,
      ).toBe(true);
  });
});
