import { describe, expect, it } from 'vitest';
import { jsonOf, linkwright } from './runLinkwright.ts';

const sample = 'sample-cabinets/two-chains.cabinet.json';
/** A table row as its cells. */
const row = (text: string, start: string) =>
  text
    .split('\n')
    .find((line) => line.startsWith(start))
    ?.split(/ {2,}/);

describe('linkwright', () => {
  it('should say once what is said of several places, name each place, and count what are too many', async () => {
    const units = (count: number) => Array.from({ length: count }, (_, index) => ({ id: `u${index}`, kind: 'servo-drive', colour: 'red' }));
    const file = (count: number) =>
      JSON.stringify({ format: 'linkwright-cabinet', formatVersion: 1, content: { id: 'c', name: 'n', units: units(count) } });
    const told = async (count: number) => (await linkwright(['check', 'x.json'], { 'x.json': file(count) })).err;
    const few = await told(3);
    expect(few.match(/There is no field/g)).toHaveLength(3);
    expect(few.match(/Unknown fields are refused/g)).toHaveLength(1);
    const many = await told(12);
    expect(many.match(/There is no field/g)).toHaveLength(5);
    expect(many).toContain('… and 7 more of the kind.');
  });

  it('should tell its version and its help on standard output', async () => {
    expect(await linkwright(['--version'])).toMatchObject({ exit: 0, out: expect.stringMatching(/^linkwright \d+\.\d+\.\d+\n$/), err: '' });
    for (const args of [['--help'], ['-h'], ['help']]) expect(await linkwright(args)).toMatchObject({ exit: 0, err: '' });
  });

  it('should say what can be done when it is asked for nothing or for something unknown', async () => {
    const nothing = await linkwright([]);
    expect(nothing).toMatchObject({ exit: 2, out: '' });
    expect(nothing.err.replace(/\s+/g, ' ')).toContain(
      'check, compare, simulate, diagnose, next, replay, cases, sums, print, isolation, export, import, exercise or schema',
    );
    const unknown = await linkwright(['simualte', sample]);
    expect(unknown).toMatchObject({ exit: 2, out: '' });
    expect(unknown.err).toContain('Did you mean “simulate”?');
  });
});

describe('linkwright check', () => {
  it('should end with 0 for a sound cabinet, 1 for findings, 3 for a file that cannot be read', async () => {
    expect(await linkwright(['check', sample])).toMatchObject({ exit: 0, err: '' });
    const findings = await linkwright(['check', 'sample-cabinets/with-problems.cabinet.json']);
    expect(findings).toMatchObject({ exit: 1, err: '' });
    expect(findings.out).toContain('loop');
    const missing = await linkwright(['check', sample, 'nowhere.cabinet.json']);
    expect(missing.exit).toBe(3);
    expect(missing.err).toContain('nowhere.cabinet.json cannot be read: there is no such file');
    expect(missing.out).toContain('nothing wrong was found');
    expect(await linkwright(['check'])).toMatchObject({ exit: 2, out: '' });
  });

  it('should check the cabinet in a case', async () => {
    const ran = await linkwright(['check', 'sample-cabinets/two-chains.1.case.json', '--json']);
    expect(jsonOf(ran)).toMatchObject({ exit: 0, files: [{ kind: 'case', sound: true, cabinet: { id: 'qg7-0117-c1' }, problems: [] }] });
  });

  it('should say of every damaged file what, where and what to do', async () => {
    const files = {
      'empty.json': '',
      'damaged.json': '{"format":"linkwright-cabinet",\n"formatVersion":1,,',
      'foreign.json': '{"format":"something-else"}',
      'newer.json': '{"format":"linkwright-cabinet","formatVersion":99,"content":{}}',
      'shape.json': '{"format":"linkwright-cabinet","formatVersion":1,"content":{"id":"x","name":7}}',
      'truth.json': '{"format":"linkwright-truth","formatVersion":1,"content":{"case":"x","faults":[]}}',
    };
    for (const file of Object.keys(files)) {
      const ran = await linkwright(['check', file], files);
      expect(ran, file).toMatchObject({ exit: 3, out: '' });
      expect(ran.err, file).toMatch(new RegExp(`^linkwright: ${file}`));
      expect(ran.err.split('\n').length, file).toBeGreaterThan(2);
      expect(ran.err).not.toMatch(/undefined|\[object/);
    }
  });

  it('should let no file write to the terminal but words', async () => {
    const content = { id: 'x', name: '\u001b[2Jgone', units: [{ id: 'u', kind: 'servo-drive', designation: '\u001b[31m-TB\u202e1\n\n' }] };
    const files = { 'x.json': JSON.stringify({ format: 'linkwright-cabinet', formatVersion: 1, content }) };
    const ran = await linkwright(['check', 'x.json'], files);
    expect(ran.exit).toBe(1);
    // biome-ignore lint/suspicious/noControlCharactersInRegex: these are looked for.
    expect(ran.out + ran.err).not.toMatch(/[\u0000-\u0009\u000b-\u001f\u007f-\u009f\u202e]/);
  });
});

describe('linkwright simulate', () => {
  it('should show two neighbours that complain about each other when their cable is cut', async () => {
    const ran = await linkwright(['simulate', sample, '--fault', 'cable:-WH3:cut']);
    expect(ran).toMatchObject({ exit: 0, err: '' });
    expect(row(ran.out, '-TB1')).toContain('quiet');
    expect(row(ran.out, '-TB2')).toEqual(expect.arrayContaining(['drive 2', 'downstream loss', 'Hears nothing from below: cable -WH3']));
    expect(row(ran.out, '-TB3')).toEqual(expect.arrayContaining(['drive 3', 'upstream loss', 'Hears nothing from above: cable -WH3']));
    expect(row(ran.out, '-KE2')).toEqual(expect.arrayContaining(['encoder interface 1', 'quiet']));
    expect(ran.out).toContain('Chain 1 is lost between drive 2 (-TB2) and drive 3 (-TB3)');
    expect(ran.out).toContain('Chain 2: all units reached');
  });

  it('should list units in chain order, then the supply', async () => {
    const { displays } = jsonOf(await linkwright(['simulate', sample, '--json'])) as { displays: { unit: string }[] };
    expect(displays.map(({ unit }) => unit)).toEqual(['TB1', 'TB2', 'TB3', 'KE2', 'TB4', 'TB5', 'TB6', 'KE3', 'TB7', 'TB10']);
  });

  it('should tell trip and now apart', async () => {
    const gone = ['--fault', 'plug:-WH3/lower:loose,intermittent,absent-now'];
    const held = jsonOf(await linkwright(['simulate', sample, ...gone, '--json']));
    expect(held['displays']).toContainEqual(
      expect.objectContaining({ unit: 'TB3', meaning: 'upstream-loss', because: expect.arrayContaining([{ code: 'held' }]) }),
    );
    const pulled = jsonOf(await linkwright(['simulate', sample, '--since-trip', 'unplug:-WH3/upper', '--json']));
    expect(pulled['reports']).toContainEqual(expect.objectContaining({ chain: 'chain1', gap: 'none' }));
    expect(pulled['displays']).toContainEqual(expect.objectContaining({ unit: 'TB3', meaning: 'upstream-loss' }));
    const before = jsonOf(await linkwright(['simulate', sample, '--before-trip', 'unplug:-WH3/upper', '--json']));
    expect(before['reports']).toContainEqual(expect.objectContaining({ chain: 'chain1', gap: 3, between: ['TB2', 'TB3'] }));
    const notHalted = jsonOf(await linkwright(['simulate', sample, ...gone, '--not-halted', '--json']));
    expect(notHalted['displays']).toContainEqual(expect.objectContaining({ unit: 'TB3', meaning: 'quiet' }));
  });

  it('should show losses of a failed start only where the type complains from switching on', async () => {
    const ran = await linkwright(['simulate', sample, '--fault', 'cable:-WH3:cut', '--onset', 'at-power-up']);
    expect(row(ran.out, '-TB3')).toContain('quiet');
    expect(ran.out.replace(/\s+/g, ' ')).toContain('Says nothing of losses, because the whole chain has not been up');
    expect(ran.out).toContain('Chain 1 is lost between');
  });

  it('should follow the light hop by hop, and show the trip where it was different', async () => {
    const steady = await linkwright(['simulate', sample, '--fault', 'cable:-WH3:outbound-cut', '--explain', '--chain', '1']);
    expect(steady.out).toContain('The light’s way along chain 1, now');
    expect(steady.out).not.toContain('at the trip\nFrom');
    expect(steady.out).not.toContain('chain 2');
    expect(steady.out).toMatch(/-TB2 +cable -WH3 +-TB3 +nothing valid: the outbound fibre of +nothing valid: -TB3 hears nothing/);
    const gone = await linkwright(['simulate', sample, '--fault', 'cable:-WH3:cut,intermittent,absent-now', '--explain', '--chain', '1']);
    expect(gone.out).toContain('The light’s way along chain 1, at the trip');
    expect(gone.out).toContain('cable -WH3 was cut');
  });

  it('should say what would be seen at plugs and ports', async () => {
    const ran = await linkwright(['simulate', sample, '--fault', 'cable:-WH3:outbound-dim', '--light', '--chain', '1']);
    // Upper plug: return light; lower plug: outbound light; the lamp sees the dim fibre.
    expect(row(ran.out, 'cable -WH3')).toEqual(['cable -WH3', 'bright', 'bright', 'weak', 'bright', 'weak', 'clear']);
    expect(row(ran.out, 'cable -WH4')).toEqual(['cable -WH4', 'bright', 'bright', 'bright', 'bright', 'clear', 'clear']);
    expect(ran.out).toContain('Never look into a fibre end');
  });

  it('should mark where a healthy link shows no light either', async () => {
    const content = {
      id: 'x',
      name: 'x',
      chains: [{ id: 'c', number: 1 }],
      units: [
        { id: 'u', kind: 'servo-drive', designation: '-U', type: 't' },
        { id: 's', kind: 'supply', designation: '-S' },
      ],
      links: [{ id: 'w', designation: '-W', upper: { chain: 'c' }, lower: { unit: 'u' } }],
      leads: [{ id: 'd', from: { unit: 's' }, to: { unit: 'u' } }],
      types: [{ id: 't', name: 't', behaviour: { onReceiveLoss: 'mute', idleLight: 'no' } }],
    };
    const files = { 'x.json': JSON.stringify({ format: 'linkwright-cabinet', formatVersion: 1, content }) };
    const ran = await linkwright(['simulate', 'x.json', '--light'], files);
    // The unit's port goes dark when it hears nothing; the controller's port keeps its idle light.
    expect(row(ran.out, 'cable -W')?.slice(1, 5)).toEqual(['none *', 'bright', 'bright', 'none *']);
    expect(ran.out).toContain('* A healthy link shows no light here either');
  });

  it('should refuse everything that is wrong at once, and compute nothing', async () => {
    const args = ['simulate', sample, '--fault', 'cabel:-WH3:cut', '--fault', 'cable:-WH33:cut', '--onset', 'soon', '--before-trip', 'x'];
    const ran = await linkwright(args);
    expect(ran).toMatchObject({ exit: 2, out: '' });
    for (const said of ['“cable”', '“-WH3”', 'while-running or at-power-up', '“x”']) expect(ran.err).toContain(said);
    expect(jsonOf(await linkwright([...args, '--json']))).toMatchObject({ ok: false, exit: 2, problems: [{}, {}, {}, {}] });
  });

  it('should not compute from an unsound cabinet, and list what must be mended', async () => {
    const ran = await linkwright(['simulate', 'sample-cabinets/with-problems.cabinet.json', '--fault', 'cable:1:cut']);
    expect(ran).toMatchObject({ exit: 1, out: '' });
    expect(ran.err).toContain('has errors that must be mended');
  });

  it('should compute from an unfinished cabinet, and say that something is missing', async () => {
    const ran = await linkwright(['simulate', 'sample-cabinets/unfinished.cabinet.json']);
    expect(ran.exit).toBe(0);
    expect(ran.out).toContain('Display');
    expect(ran.err).toContain('See linkwright check sample-cabinets/unfinished.cabinet.json');
  });
});

describe('linkwright diagnose', () => {
  const seen = [
    '--display',
    '-TB2=s7',
    '--display',
    'TB3=n7',
    '--report',
    '1=drive 2|drive 3',
    '--onset',
    'while-running',
    '--halted',
    'yes',
  ];

  it('should find what lies between two neighbours that complain about each other', async () => {
    const ran = await linkwright(['diagnose', sample, ...seen]);
    expect(ran).toMatchObject({ exit: 0, err: '' });
    expect(ran.out).toMatch(/^Look at the (lower|upper) plug of cable -WH3 first/m);
    expect(ran.out).toContain('What was seen cannot tell these apart');
    expect(ran.out).toContain('rates behind the percentages are assumed');
    expect(ran.out).toContain('This is not a complete list.');
    const { suspects, contradiction, exit } = jsonOf(await linkwright(['diagnose', sample, ...seen, '--json'])) as {
      suspects: { item: string; probability: number }[];
      contradiction: unknown;
      exit: number;
    };
    expect([contradiction, exit]).toEqual([null, 0]);
    const first = suspects.slice(0, 6).map(({ item }) => item);
    expect([...first].sort()).toEqual(['board/TB2', 'board/TB3', 'cable/WH3', 'plug/WH3/lower', 'plug/WH3/upper', 'route/WH3']);
  });

  it('should answer alike however the same thing is said', async () => {
    const answers = [];
    for (const said of [
      ['--display', '-TB2=downstream-loss', '--report', '1=2|3'],
      ['--display', 'TB2=Downstream Loss', '--report', 'chain1=2..3'],
      ['--display', '1/2=downstream-loss', '--report', '1=-TB2|-TB3'],
      ['--display', '1/drive/2=downstream-loss', '--report', 'Grinding axes=drive 2|3'],
    ]) {
      const { suspects } = jsonOf(await linkwright(['diagnose', sample, ...said, '--halted', 'yes', '--json']));
      answers.push(suspects);
    }
    for (const answer of answers) expect(answer).toEqual(answers[0]);
  });

  it('should put what is given here into the last snapshot of a case', async () => {
    const file = 'sample-cabinets/two-chains.1.case.json';
    const { evidence } = jsonOf(
      await linkwright(['diagnose', file, '--display', '-TB1=dark', '--days', '2.5', '--circumstance', 'heat', '--json']),
    ) as {
      evidence: { snapshots: { displays: { unit: string; meanings: string[] }[]; reports: unknown[] }[] };
    };
    const [snapshot, ...others] = evidence.snapshots;
    expect(others).toEqual([]);
    expect(snapshot?.displays.filter(({ unit }) => unit === 'TB1')).toEqual([{ unit: 'TB1', meanings: ['dark'] }]);
    expect(snapshot?.displays.length).toBe(5);
    expect(snapshot?.reports.length).toBe(2);
    expect(evidence).toMatchObject({ daysSinceWhole: 2.5, circumstances: [{ kind: 'heat' }] });
  });

  it('should say what there is where a name is not known, and what number fits', async () => {
    const said = async (...args: string[]) => (await linkwright(args)).err.replace(/\s+/g, ' ');
    const unknown = await said('diagnose', 'sample-cabinets/three-units.cabinet.json', '--display', 'XX99=dark');
    expect(unknown).toContain('It has -TB1, -TB2, -TB3');
    const top = await said('next', 'sample-cabinets/three-units.1.case.json', '--top', '0');
    expect(top).toContain('Give a whole number of 1 or more.');
  });

  it('should refuse two displays of one unit, or two reports of one chain, that say different things', async () => {
    const diagnosed = (...args: string[]) => linkwright(['diagnose', 'sample-cabinets/two-chains.cabinet.json', ...args]);
    const displays = await diagnosed('--display', 'TB2=dark', '--display', '1/2=quiet', '--display', 'TB1=dark');
    expect([displays.exit, displays.out]).toEqual([2, '']);
    expect(displays.err.replace(/\s+/g, ' ')).toContain('--display says different things of -TB2: TB2=dark and 1/2=quiet.');
    const reports = await diagnosed('--report', '1=2|3', '--report', '1=none');
    expect(reports.err.replace(/\s+/g, ' ')).toContain('--report says different things of chain 1: 1=2|3 and 1=none.');
    expect((await diagnosed('--display', 'TB2=dark', '--display', '-TB2=dark')).err).toBe('');
  });

  it('should end with 1 when what was seen contradicts itself, and say what does', async () => {
    const ran = await linkwright(['diagnose', 'sample-cabinets/two-chains.3.case.json', '--explain']);
    expect(ran.exit).toBe(1);
    expect(ran.out).toContain('does not fit everything that was seen');
    expect(ran.out).toMatch(/Display of -TB4 misread\? Then all the rest/);
    expect(ran.out).toMatch(/^-TB4 .*≠/m);
  });

  it('should set what was seen against what the best explanation predicts', async () => {
    const ran = await linkwright(['diagnose', sample, ...seen, '--explain']);
    expect(row(ran.out, '-TB2')).toEqual(expect.arrayContaining(['downstream loss (s7)', 'downstream loss', '=']));
    expect(row(ran.out, '-TB1')).toEqual(expect.arrayContaining(['not looked at', 'quiet']));
  });

  it('should take what comes and goes as gone where that fits, and unknown behaviour as likely', async () => {
    const later = await linkwright(['diagnose', 'sample-cabinets/two-chains.4.case.json', '--explain']);
    expect(later.out.replace(/\s+/g, ' ')).toContain('What comes and goes is taken as gone here');
    expect(later.out.replace(/\s+/g, ' ')).toContain('loose, intermittent');
    const unknown = await linkwright(['diagnose', 'sample-cabinets/mixed-behaviours.1.case.json', '--explain']);
    expect(unknown.out.replace(/\s+/g, ' ')).toContain('its likeliest values are taken');
    for (const { out, exit } of [later, unknown]) {
      expect(exit).toBe(0);
      expect(out).not.toContain('≠');
    }
  });

  it('should not point at a part when it is likelier that nothing is broken, and say what would change that', async () => {
    const ran = await linkwright(['diagnose', sample]);
    expect(ran.out).toContain('Most likely nothing is broken');
    expect(ran.out).toContain('--halted yes');
  });

  it('should list as many suspects as are asked for', async () => {
    for (const top of [1, 3]) {
      const { suspects } = jsonOf(await linkwright(['diagnose', sample, ...seen, '--top', String(top), '--json'])) as {
        suspects: unknown[];
      };
      expect(suspects.length).toBe(top);
    }
    for (const bad of ['0', '-1', '1.5', 'x', ''])
      expect(await linkwright(['diagnose', sample, '--top', bad])).toMatchObject({ exit: 2, out: '' });
  });

  it('should refuse a case that speaks of what its cabinet does not have', async () => {
    const content = {
      id: 'c',
      name: 'c',
      cabinet: { id: 'x', name: 'x', chains: [{ id: 'c1', number: 1 }] },
      evidence: { snapshots: [{ displays: [{ unit: 'ghost', meanings: ['dark'] }], reports: [{ chain: 'c1', gaps: [4] }] }] },
    };
    const files = { 'ghost.case.json': JSON.stringify({ format: 'linkwright-case', formatVersion: 1, content }) };
    const ran = await linkwright(['diagnose', 'ghost.case.json'], files);
    expect(ran).toMatchObject({ exit: 3, out: '' });
    expect(ran.err).toContain('“ghost”');
    expect(ran.err).toContain('has no such position');
  });
});

describe('linkwright schema', () => {
  it('should print the schemas of files, and name what there is', async () => {
    for (const name of ['cabinet', 'case', 'truth', 'simulate-line', 'diagnose-line']) {
      const ran = await linkwright(['schema', name]);
      expect(ran).toMatchObject({ exit: 0, err: '' });
      expect(jsonOf(ran)).toMatchObject({ $schema: 'https://json-schema.org/draft/2020-12/schema', type: 'object' });
    }
    const unknown = await linkwright(['schema', 'cabinets']);
    expect(unknown).toMatchObject({ exit: 2, out: '' });
    expect(unknown.err).toContain('Did you mean “cabinet”?');
    expect(await linkwright(['schema'])).toMatchObject({ exit: 2, out: '' });
  });
});
