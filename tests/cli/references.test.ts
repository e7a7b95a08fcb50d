import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { checkCabinet, parseCabinetFile } from '../../engine/cabinet/index.ts';
import { actNames, readAct } from '../../engine/cli/read/acts.ts';
import type { Asked } from '../../engine/cli/read/asked.ts';
import { checkEvidence } from '../../engine/cli/read/checkEvidence.ts';
import { checkFaults, checkOnset } from '../../engine/cli/read/checkFaults.ts';
import { readDisplay } from '../../engine/cli/read/displays.ts';
import { readCircumstance } from '../../engine/cli/read/evidence.ts';
import { readFault } from '../../engine/cli/read/faults.ts';
import { readChain, readUnit } from '../../engine/cli/read/names.ts';
import { readReport } from '../../engine/cli/read/reports.ts';
import { makeNames, wordUsage } from '../../engine/messages/index.ts';
import { type CabinetContent, fault as faultSchema, intervention, type Snapshot } from '../../engine/schema/index.ts';
import { buildTopology } from '../../engine/topology/index.ts';

const parsed = parseCabinetFile(readFileSync(new URL('../../sample-cabinets/two-chains.cabinet.json', import.meta.url)));
if (!parsed.ok) throw new Error('the sample does not open');
const { topology } = checkCabinet(parsed.value);

/** What was understood, or the codes of what was not. */
const answer = <T>(asked: Asked<T>) => (asked.ok ? asked.value : asked.problems.map(({ code }) => code));
/** The nearest name that a refusal offers. */
const near = (asked: Asked<unknown>) =>
  asked.ok ? undefined : asked.problems.map(({ facts }) => ('near' in facts ? facts.near : undefined))[0];

describe('readFault', () => {
  it.each([
    ['cable:-WH3:cut', { item: 'cable', link: 'WH3', mode: 'cut' }],
    ['cable:WH3:outbound-dim', { item: 'cable', link: 'WH3', mode: 'outbound-dim' }],
    ['plug:-WH3/upper:loose', { item: 'plug', link: 'WH3', end: 'upper', mode: 'loose' }],
    ['route:-WH3:kinked', { item: 'route', link: 'WH3', mode: 'kinked' }],
    ['board:-TB2:down-tx', { item: 'board', unit: 'TB2', mode: 'down-tx' }],
    ['board:1/2:down-tx', { item: 'board', unit: 'TB2', mode: 'down-tx' }],
    ['board:2/encoder/1:up-rx', { item: 'board', unit: 'KE3', mode: 'up-rx' }],
    ['fuse:tb2:open', { item: 'fuse', unit: 'TB2', mode: 'open' }],
    ['place:-TB2:contact-bad', { item: 'place', unit: 'TB2', mode: 'contact-bad' }],
    ['wiring:-TB2:crossed', { item: 'wiring', unit: 'TB2', mode: 'crossed' }],
    ['port:1:dead', { item: 'controller-port', chain: 'chain1', mode: 'dead' }],
    ['controller-port:chain2:dead', { item: 'controller-port', chain: 'chain2', mode: 'dead' }],
    ['controller:all-ports-dead', { item: 'controller', mode: 'all-ports-dead' }],
    ['lead:-WD4:open', { item: 'lead', lead: 'WD4', mode: 'open' }],
    ['supply:-TB10:output-lost', { item: 'supply', unit: 'TB10', mode: 'output-lost' }],
    ['feedback:-WG1:short', { item: 'feedback', feedback: 'WG1', mode: 'short' }],
    ['Cable:-WH3:cut,intermittent,absent-now', { item: 'cable', link: 'WH3', mode: 'cut', presence: 'intermittent', absentNow: true }],
  ])('should understand %s', (text, fault) => {
    expect(answer(readFault(topology, text))).toEqual(fault);
  });

  it.each([
    ['', 'fault-malformed', undefined],
    ['cable', 'fault-malformed', undefined],
    ['cable:-WH3:', 'fault-malformed', undefined],
    [':x', 'fault-malformed', undefined],
    ['controller:-KE1:all-ports-dead', 'fault-malformed', undefined],
    ['cabel:-WH3:cut', 'value-not-allowed', 'cable'],
    ['cable:-WH3:cutt', 'value-not-allowed', 'cut'],
    ['cable:-WH3:cut,intermitent', 'value-not-allowed', 'intermittent'],
    ['cable:-WH33:cut', 'name-unknown', '-WH3'],
    ['cable::cut', 'name-missing', undefined],
    ['plug:-WH3:loose', 'plug-end-missing', undefined],
    ['plug:-WH3/middle:loose', 'plug-end-missing', undefined],
    ['board:1/99:up-rx', 'place-unknown', undefined],
    ['board:1/encoder/9:up-rx', 'ordinal-unknown', undefined],
    ['board:9/1:up-rx', 'name-unknown', ''],
  ])('should refuse %j with %s', (text, code, nearest) => {
    const asked = readFault(topology, text);
    expect(answer(asked)).toEqual([code]);
    expect(near(asked)).toBe(nearest);
  });
});

describe('names on the command line', () => {
  const odd: CabinetContent = {
    id: 'odd',
    name: 'Odd designations',
    chains: [{ id: 'c1', number: 1, name: 'A=B' }],
    units: [
      { id: 'a', kind: 'servo-drive', designation: '=A1+K1-TB2' },
      { id: 'b', kind: 'servo-drive', designation: '+K1-TB3:5/6' },
      { id: 'c', kind: 'supply', designation: '-TB9' },
      { id: 'd', kind: 'supply', designation: '-TB9' },
    ],
    links: [{ id: 'w', designation: '-WH1/2:3', upper: { chain: 'c1' }, lower: { unit: 'a' } }],
  };
  const { topology: oddOnes } = buildTopology(odd);

  it('should refuse a fault that is there all the time and comes and goes', () => {
    expect(answer(readFault(topology, 'cable:-WH3:cut,steady,intermittent'))).toEqual(['presence-both']);
    expect(answer(readFault(topology, 'cable:-WH3:cut,steady'))).toEqual({ item: 'cable', link: 'WH3', mode: 'cut' });
  });

  it('should take designations with any of the signs = + - : /', () => {
    expect(answer(readUnit(oddOnes, '=A1+K1-TB2'))).toBe('a');
    expect(answer(readUnit(oddOnes, 'A1+K1-TB2'))).toBe('a');
    expect(answer(readFault(oddOnes, 'fuse:+K1-TB3:5/6:open'))).toEqual({ item: 'fuse', unit: 'b', mode: 'open' });
    expect(answer(readFault(oddOnes, 'plug:-WH1/2:3/lower:loose'))).toEqual({ item: 'plug', link: 'w', end: 'lower', mode: 'loose' });
    expect(answer(readDisplay(oddOnes, '=A1+K1-TB2=dark'))).toEqual({ unit: 'a', meanings: ['dark'] });
    expect(answer(readReport(oddOnes, 'A=B=none'))).toEqual({ chain: 'c1', gaps: ['none'] });
    expect(answer(readReport(oddOnes, '1=controller|=A1+K1-TB2'))).toEqual({ chain: 'c1', gaps: [1] });
  });

  it('should not guess between two things of one name, and name their ids', () => {
    const asked = readUnit(oddOnes, '-TB9');
    expect(asked).toEqual({ ok: false, problems: [{ code: 'name-of-several', facts: { thing: 'unit', name: '-TB9', ids: ['c', 'd'] } }] });
    expect(answer(readUnit(oddOnes, 'c'))).toBe('c');
  });
});

describe('readChain', () => {
  const { topology: odd } = buildTopology({
    id: 'o',
    name: 'o',
    chains: [
      { id: '2', number: 1 },
      { id: 'b', number: 2, name: 'left row' },
      { id: 'c', number: 3 },
    ],
  });

  it('should know a chain by its number, its id and its name, and take “chain 2” as the number always', () => {
    expect(['1', 'chain 1', 'chain 2', 'b', 'left row', 'c', 'Chain 3'].map((name) => answer(readChain(odd, name)))).toEqual([
      '2',
      '2',
      'b',
      'b',
      'b',
      'c',
      'c',
    ]);
  });

  it('should refuse what is the number of one chain and the id of another, and say how to name each', () => {
    const asked = readChain(odd, '2');
    expect(answer(asked)).toEqual(['chain-of-two']);
    if (!asked.ok)
      expect(asked.problems.map((problem) => wordUsage(problem).whatToDo)).toEqual([
        'Write “chain 2” or “chain 1”: that is always the number.',
      ]);
  });
});

describe('checkFaults', () => {
  const check = (...faults: object[]) =>
    checkFaults(
      topology,
      makeNames(topology),
      faults.map((fault) => faultSchema.parse(fault)),
    ).map(({ code }) => code);

  it('should let every fault pass that the domain allows together', () => {
    expect(check({ item: 'cable', link: 'WH3', mode: 'outbound-cut' }, { item: 'cable', link: 'WH3', mode: 'return-dim' })).toEqual([]);
    expect(
      check({ item: 'plug', link: 'WH3', end: 'upper', mode: 'loose' }, { item: 'plug', link: 'WH3', end: 'lower', mode: 'loose' }),
    ).toEqual([]);
    expect(check({ item: 'cable', link: 'WH3', mode: 'cut', presence: 'intermittent', absentNow: true })).toEqual([]);
  });

  it('should refuse what the domain rules out', () => {
    expect(check({ item: 'cable', link: 'WH3', mode: 'outbound-cut' }, { item: 'cable', link: 'WH3', mode: 'outbound-dim' })).toEqual([
      'faults-exclude',
    ]);
    expect(check({ item: 'cable', link: 'WH3', mode: 'return-dim' }, { item: 'cable', link: 'WH3', mode: 'cut' })).toEqual([
      'faults-exclude',
    ]);
    expect(check({ item: 'board', unit: 'TB2', mode: 'up-rx' }, { item: 'board', unit: 'TB2', mode: 'up-tx' })).toEqual(['faults-exclude']);
    expect(check({ item: 'fuse', unit: 'TB2', mode: 'open', presence: 'intermittent' })).toEqual(['presence-only-steady']);
    expect(check({ item: 'cable', link: 'WH3', mode: 'fibres-crossed', presence: 'intermittent' })).toEqual(['presence-only-steady']);
    expect(check({ item: 'cable', link: 'WH3', mode: 'cut', absentNow: true })).toEqual(['absent-needs-intermittent']);
    expect(check({ item: 'supply', unit: 'TB2', mode: 'dead' })).toEqual(['supply-needed']);
    expect(check({ item: 'board', unit: 'TB10', mode: 'up-rx' })).toEqual(['unit-needed']);
    expect(check({ item: 'cable', link: 'nowhere', mode: 'cut' })).toEqual(['name-unknown']);
  });

  it('should let wiring mistakes be found at power-up only, unless something was done before', () => {
    const crossed = [
      { item: 'wiring', unit: 'TB2', mode: 'crossed' },
      { item: 'cable', link: 'WH3', mode: 'fibres-crossed' },
      { item: 'cable', link: 'WH4', mode: 'cut' },
    ].map((fault) => faultSchema.parse(fault));
    const found = (onset: 'while-running' | 'at-power-up', isTouched: boolean) =>
      checkOnset(makeNames(topology), crossed, onset, isTouched).map(({ code }) => code);
    expect(found('while-running', false)).toEqual(['only-at-power-up', 'only-at-power-up']);
    expect(found('at-power-up', false)).toEqual([]);
    expect(found('while-running', true)).toEqual([]);
  });

  it('should know that a unit off the chain has no board that could fail', () => {
    const off = checkCabinet({
      id: 'o',
      name: 'o',
      units: [{ id: 'u', kind: 'servo-drive', designation: '-U', onChain: false }],
    });
    const problems = checkFaults(off.topology, makeNames(off.topology), [{ item: 'wiring', unit: 'u', mode: 'crossed' }]);
    expect(problems.map(({ code }) => code)).toEqual(['board-needs-chain-unit']);
  });
});

describe('readAct', () => {
  it('should know every act of the schema', () => {
    expect([...actNames].sort()).toEqual(intervention.options.map((option) => option.shape.do.value).sort());
  });

  it.each([
    ['reseat-plug:-WH3/upper', { do: 'reseat-plug', link: 'WH3', end: 'upper' }],
    ['exchange-boards:-TB2/-TB3', { do: 'exchange-boards', unit: 'TB2', other: 'TB3' }],
    ['exchange-boards:1/2/1/3', { do: 'exchange-boards', unit: 'TB2', other: 'TB3' }],
    ['exchange-cables:-WH3/-WH9', { do: 'exchange-cables', link: 'WH3', other: 'WH9' }],
    ['bridge-unit:-TB2/-WH3', { do: 'bridge-unit', unit: 'TB2', cable: 'WH3' }],
    ['replace-controller', { do: 'replace-controller' }],
    ['replace-controller-port:2', { do: 'replace-controller-port', chain: 'chain2' }],
    ['pull-feedback:-WG1', { do: 'pull-feedback', feedback: 'WG1' }],
    ['replace-lead:-WD4', { do: 'replace-lead', lead: 'WD4' }],
  ])('should understand %s', (text, act) => {
    expect(answer(readAct(topology, text))).toEqual(act);
  });

  it('should refuse what is no act, with the nearest one', () => {
    expect(near(readAct(topology, 'reseet-plug:-WH3/upper'))).toBe('reseat-plug');
    for (const text of ['', 'unplug', 'replace-controller:x', 'exchange-boards:-TB2'])
      expect(answer(readAct(topology, text))).toEqual(['act-malformed']);
    expect(answer(readAct(topology, 'exchange-boards:-TB2/-TB99'))).toEqual(['name-unknown']);
  });
});

describe('readDisplay', () => {
  it.each([
    ['-TB2=dark', ['dark'], undefined],
    ['-TB2=upstream loss', ['upstream-loss'], undefined],
    ['-TB2=dark,quiet', ['dark', 'quiet'], undefined],
    ['-TB2=lit', ['quiet', 'upstream-loss', 'downstream-loss', 'both-losses', 'other'], undefined],
    ['-TB2=complains', ['upstream-loss', 'downstream-loss', 'both-losses'], undefined],
    ['-TB2=s7', ['downstream-loss'], 's7'],
    ['-TB2=S7', ['downstream-loss'], 'S7'.toLowerCase()],
    ['-TB2=x7', ['upstream-loss', 'downstream-loss', 'both-losses'], 'x7'],
    ['-TB2=go,n7', ['quiet', 'upstream-loss'], 'go,n7'],
    ['TB10=lit', ['quiet', 'other'], undefined],
    ['TB10=w1', ['other'], 'w1'],
  ])('should understand %s', (text, meanings, code) => {
    expect(answer(readDisplay(topology, text))).toEqual({
      unit: text.includes('TB10') ? 'TB10' : 'TB2',
      meanings,
      ...(code ? { code } : {}),
    });
  });

  it('should refuse the rest', () => {
    for (const text of ['', '-TB2', '=dark', '-TB2=']) expect(answer(readDisplay(topology, text))).toEqual(['display-malformed']);
    expect(near(readDisplay(topology, '-TB2=upstream-los'))).toBe('upstream-loss');
    expect(answer(readDisplay(topology, '-TB2=zz'))).toEqual(['code-unknown']);
    expect(answer(readDisplay(topology, '-TB10=upstream-loss'))).toEqual(['meaning-not-of-supply']);
    expect(answer(readDisplay(topology, '-TB99=dark'))).toEqual(['name-unknown']);
    const { topology: bare } = buildTopology({ id: 'b', name: 'b', units: [{ id: 'u', kind: 'servo-drive', designation: '-U' }] });
    expect(answer(readDisplay(bare, '-U=E7'))).toEqual(['code-without-legend']);
    expect(near(readDisplay(bare, '-U=drak'))).toBe('dark');
  });
});

describe('readReport', () => {
  it.each([
    ['1=2|3', [3]],
    ['1=2..3', [3]],
    ['1=0|1', [1]],
    ['1=controller|1', [1]],
    ['1=-KE1|-TB1', [1]],
    ['1=drive 2|drive 3', [3]],
    ['1=drive 2|3', [3]],
    ['1=drive 3|encoder 1', [4]],
    ['1=encoder interface 1|drive 4', [5]],
    ['1=-TB3|-KE2', [4]],
    ['chain 1=none', ['none']],
    ['1=2|3,none', [3, 'none']],
  ])('should understand %s', (text, gaps) => {
    expect(answer(readReport(topology, text))).toEqual({ chain: 'chain1', gaps });
  });

  it('should count the second drive of chain 2 as position 2, and the drive behind the encoder interface as the third', () => {
    expect(answer(readReport(topology, '2=encoder 1|drive 3'))).toEqual({ chain: 'chain2', gaps: [4] });
  });

  it.each([
    ['', 'report-malformed'],
    ['1', 'report-malformed'],
    ['1=3', 'report-malformed'],
    ['1=2|', 'report-malformed'],
    ['1=2|4', 'gap-not-neighbours'],
    ['1=3|2', 'gap-not-neighbours'],
    ['1=5|6', 'gap-not-neighbours'],
    ['1=drive 3|4', 'gap-not-neighbours'],
    ['1=-TB5|-TB6', 'gap-not-neighbours'],
    ['9=none', 'name-unknown'],
    ['1=drive 9|encoder 1', 'ordinal-unknown'],
  ])('should refuse %j with %s', (text, code) => {
    expect(answer(readReport(topology, text))).toEqual([code]);
  });
});

describe('readCircumstance', () => {
  it('should take a kind, and what it concerns', () => {
    expect(answer(readCircumstance(topology, 'storm'))).toEqual({ kind: 'storm' });
    expect(answer(readCircumstance(topology, 'work-at-door:-TB2,-WH3,-WD4'))).toEqual({
      kind: 'work-at-door',
      subjects: ['TB2', 'WH3', 'WD4'],
    });
    expect(near(readCircumstance(topology, 'strom'))).toBe('storm');
    expect(answer(readCircumstance(topology, 'storm:nobody'))).toEqual(['name-unknown']);
  });
});

describe('checkEvidence', () => {
  const codes = (snapshot: Snapshot) => checkEvidence(topology, makeNames(topology), { snapshots: [snapshot] });

  it('should name what was moved or warmed, and the spare that was put in, where the cabinet has none such', () => {
    expect(codes({ provoked: { how: 'flex', subjects: ['WH3', 'WH99'] } })).toEqual([
      { code: 'name-unknown', facts: { thing: 'any', name: 'WH99', near: expect.any(String) } },
    ]);
    expect(codes({ interventions: [{ do: 'replace-cable', link: 'WH3', spare: 'sp9' }] })).toEqual([
      { code: 'name-unknown', facts: { thing: 'spare', name: 'sp9', near: '' } },
    ]);
    expect(codes({ provoked: { how: 'wait' }, interventions: [{ do: 'replace-cable', link: 'WH3' }] })).toEqual([]);
  });
});

describe('what is told to the user', () => {
  it('should say what, where and what to do for every refusal, and show the text that was refused', () => {
    const refusals = [
      readFault(topology, 'cabel:-WH3:cut'),
      readFault(topology, 'cable:-WH33:cut'),
      readAct(topology, 'unplug'),
      readDisplay(topology, '-TB2=zz'),
      readReport(topology, '1=2|4'),
    ];
    const shown = ['cabel', '-WH33', 'unplug', 'zz', '2|4'];
    for (const [i, refusal] of refusals.entries()) {
      if (refusal.ok) throw new Error('was understood');
      for (const problem of refusal.problems) {
        const { title, whatToDo } = wordUsage(problem);
        expect(title).toContain(shown[i]);
        expect(whatToDo.length).toBeGreaterThan(10);
        expect(title + whatToDo).not.toMatch(/undefined|\[object|“”/);
      }
    }
  });
});
