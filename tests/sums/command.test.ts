import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { serializeCabinet } from '../../engine/cabinet/index.ts';
import type { CabinetContent } from '../../engine/schema/index.ts';
import { jsonOf, linkwright } from '../cli/runLinkwright.ts';
import { drive, fibre, lead, oneLink, optics, supply } from './sketch.ts';

const sample = 'sample-cabinets/two-chains.cabinet.json';

/** A cabinet with something in every list of the answer. */
const everything: CabinetContent = {
  ...oneLink(
    { lengthM: 90, bends: [{ radiusMm: 10 }] },
    { fibres: [{ ...fibre, lengthLimits: [{ dataRateMbd: 5, maximumLengthM: 20 }] }] },
  ),
  chains: [{ id: 'ch1', number: 1, optics, cycleClass: 'fast' }],
  axisLimits: [{ cycleClass: 'fast', maximumAxes: 6, cycleUs: 1000, bytesPerAxis: 8 }],
  units: [
    drive('u1', { control24: { loadA: 30, inrushA: 60, minimumV: 23.9, maximumV: 28 }, dcLinkKw: 9, dcLinkCapacitanceUf: 100 }),
    supply('s', 24, {
      supply: {
        control24: { nominalV: 24, ratedA: 5, inrushA: 10 },
        dcLink: { ratedKw: 3, capacitanceUf: 900, dischargeOhm: 22_000, lineVoltageV: 400 },
        outputs: [{ id: 'x1', name: 'X1', ratedA: 2 }],
      },
    }),
  ],
  leads: [lead('d1', 's', 'u1', { from: { unit: 's', output: 'x1' } })],
};
const files = { 'all.cabinet.json': serializeCabinet(everything) };

describe('linkwright sums', () => {
  it('should find nothing against a sample that is laid out well, and everything against one that is not', async () => {
    const well = await linkwright(['sums', sample]);
    expect(well).toMatchObject({ exit: 0, err: '' });
    expect(well.out).toContain('-TB4 fails first');
    const badly = await linkwright(['sums', 'all.cabinet.json', '--json'], files);
    expect(badly.exit).toBe(1);
    // The shape is held against its page below.
    const codes = (jsonOf(badly)['findings'] as { code: string }[]).map(({ code }) => code);
    expect([...new Set(codes)].sort()).toEqual([
      'bend-too-tight',
      'dc-link-overloaded',
      'link-too-long',
      'link-too-long-for-rate',
      'link-without-margin',
      'supply-inrush-too-high',
      'supply-output-overloaded',
      'supply-overloaded',
      'voltage-too-low',
    ]);
  });

  it('should list what the sums find among the findings of `check` too, in the order of places', async () => {
    const checked = await linkwright(['check', 'all.cabinet.json', '--json'], files);
    expect(checked.exit).toBe(1);
    const [file] = jsonOf(checked)['files'] as { sound: boolean; problems: { code: string; where: string; title: string }[] }[];
    expect(file?.sound).toBe(true);
    const summed = jsonOf(await linkwright(['sums', 'all.cabinet.json', '--json'], files))['findings'] as { code: string }[];
    const codes = file?.problems.map(({ code }) => code) ?? [];
    for (const { code } of summed) expect(codes).toContain(code);
    const plain = await linkwright(['check', 'all.cabinet.json'], files, 200);
    for (const { title } of file?.problems ?? []) expect(plain.out.replace(/\s+/g, ' ')).toContain(title.slice(0, 20));
  });

  it('should try other figures, say so, and leave the file alone', async () => {
    const before = readFileSync(new URL(`../../${sample}`, import.meta.url), 'utf8');
    const tried = await linkwright([
      'sums',
      sample,
      '--set',
      'length:-WD1=60',
      '--ambient',
      '-10',
      '--reserve=3.5',
      '--set',
      'couplers:WH3=1',
      '--set',
      'load:1/2=1.5',
    ]);
    expect(tried.exit).toBe(1);
    for (const text of [
      'length of lead -WD1 60 m',
      'temperature in the cabinet −10 °C',
      'ageing reserve 3.5 dB',
      '24 V load of -TB2 1.5 A',
      '-TB1 gets too little voltage',
    ]) {
      expect(tried.out.replace(/\s+/g, ' ')).toContain(text);
    }
    expect(readFileSync(new URL(`../../${sample}`, import.meta.url), 'utf8')).toBe(before);
  });

  it('should explain every number by its terms and their sources', async () => {
    const explained = (await linkwright(['sums', 'all.cabinet.json', '--explain'], files, 200)).out;
    for (const text of [
      'loss of the fibre = 22.5 dB, computed: attenuation × length',
      'attenuation of the fibre = 0.25 dB/m, documented; invented',
      'resistance of the conductor at 20 °C = 13.3 Ω/km, computed: greatest resistance by IEC 60228:2004',
      'temperature of the conductor = 20 °C, assumed',
      'time to discharge to 60 V',
    ]) {
      expect(explained).toContain(text);
    }
    for (const columns of [60, 100]) {
      for (const line of (await linkwright(['sums', sample, '--explain'], {}, columns)).out.split('\n'))
        expect(line.length).toBeLessThanOrEqual(columns);
    }
  });

  it('should never print a time to wait where a figure is missing, and send to the manual in either case', async () => {
    const link = { ratedKw: 3, capacitanceUf: 900, lineVoltageV: 400 };
    const unknown = {
      ...everything,
      units: [everything.units?.[0] ?? drive('u1'), supply('s', 24, { supply: { dcLink: link } })],
      leads: [lead('d1', 's', 'u1')],
    };
    const out = (await linkwright(['sums', 'x'], { x: serializeCabinet(unknown) }, 200)).out;
    expect(out).toContain('Time to discharge: not known, see the machine’s manual. Then measure.');
    expect(out).not.toMatch(/\d+ (s|min)\b/);
    expect((await linkwright(['sums', sample], {}, 200)).out).toMatch(
      /takes 6 min 34 s to fall to 60 V\. Wait at least as long as the machine’s manual says, then measure\./,
    );
  });

  it.each([
    [['sums'], 'was given no file'],
    [['sums', sample, 'more'], 'more'],
    [['sums', sample, '--set', 'lenght:-WH3=12'], 'Did you mean “length”?'],
    [['sums', sample, '--set', 'length:-WH33=12'], 'no cable'],
    [['sums', sample, '--set', 'length:-WH3=-1'], 'not a number that fits'],
    [['sums', sample, '--set', 'length:-WH3=NaN'], 'not a number that fits'],
    [['sums', sample, '--set', 'length:-WH3=1e999'], 'not a number that fits'],
    [['sums', sample, '--set', 'couplers:-WH3=1.5'], 'not a number that fits'],
    [['sums', sample, '--set', 'length'], 'does not say which figure to try'],
    [['sums', sample, '--set', 'length=3'], 'does not say which figure to try'],
    [['sums', sample, '--set', 'ambient:-TB1=3'], 'does not say which figure to try'],
    [['sums', sample, '--set', 'load:-TB10=3'], '-TB10 has no “load”'],
    [['sums', sample, '--set', 'line-voltage:-TB1=400'], '-TB1 has no “line-voltage”'],
    [['sums', sample, '--ambient', '900'], 'from -60 to 200'],
    [['sums', sample, '--reserve', '-2'], 'not a number that fits'],
  ])('should refuse %j and say what to do', async (args, text) => {
    const ran = await linkwright(args, {}, 300);
    expect(ran).toMatchObject({ exit: 2, out: '' });
    expect(ran.err).toContain(text);
  });

  it('should not reckon with a cabinet that hangs together wrongly', async () => {
    const ran = await linkwright(['sums', 'sample-cabinets/with-problems.cabinet.json']);
    expect(ran).toMatchObject({ exit: 1, out: '' });
    expect((await linkwright(['sums', 'missing.json'])).exit).toBe(3);
  });

  it('should simulate a dim fibre by its loss', async () => {
    const shown = async (loss: string) => (await linkwright(['simulate', sample, '--fault', `cable:-WH2:outbound-dim,loss=${loss}`])).out;
    expect(await shown('10')).toContain('by 10 dB');
    expect(await shown('10')).not.toContain('too dim');
    expect(await shown('10.5')).toContain('too dim');
    for (const [fault, code] of [
      ['cable:-WH2:cut,loss=3', 'loss-needs-dim'],
      ['cable:-WH2:return-dim,loss=3,loss=4', 'loss-needs-dim'],
      ['cable:-WH2:return-dim,loss=much', 'number-not-allowed'],
    ]) {
      const ran = await linkwright(['simulate', sample, '--fault', fault ?? '', '--json']);
      expect(jsonOf(ran)['problems']).toMatchObject([{ code }]);
    }
  });
});

const page = readFileSync(new URL('../../engine/cli/JSON.md', import.meta.url), 'utf8');
function documented(head: string): readonly string[] {
  const section = page.split(/^## /m).find((part) => part.startsWith(head)) ?? '';
  return [...section.matchAll(/^\| `([^`]+)` +\|/gm)].map(([, path]) => path ?? '');
}
const isTerm = (value: object) => 'code' in value && 'status' in value && 'from' in value;

/** Paths of an answer; a term ends its path and is handed out. */
function walk(value: unknown, path: string, terms: object[]): readonly string[] {
  if (typeof value !== 'object' || value === null || path.endsWith('.facts')) return [path];
  if (isTerm(value)) {
    terms.push(value);
    return [path];
  }
  if (Array.isArray(value)) return value.flatMap((one) => walk(one, `${path}[]`, terms));
  return Object.entries(value).flatMap(([key, one]) => walk(one, path === '' ? key : `${path}.${key}`, terms));
}

describe('the page of the JSON interface', () => {
  it('should name every field of the sums, and none that is not there', async () => {
    const terms: object[] = [];
    const runs = [
      ['sums', 'all.cabinet.json', '--set', 'length:-WH1=100', '--ambient=30', '--json'],
      ['sums', sample, '--json'],
    ];
    const found = new Set<string>();
    for (const args of runs) for (const path of walk(jsonOf(await linkwright(args, files)), '', terms)) found.add(path);
    const head = documented('Every answer');
    const told = new Set([...head, ...documented('`sums`')]);
    expect([...found].filter((path) => !told.has(path))).toEqual([]);
    expect([...told].filter((path) => !found.has(path) && !head.includes(path))).toEqual([]);

    const ofTerms = documented('A term of a sum').map((field) => field.replace('[]', ''));
    expect(terms.length).toBeGreaterThan(50);
    const check = (term: object) => {
      expect(Object.keys(term).sort()).toEqual([...ofTerms].sort());
      for (const part of 'from' in term && Array.isArray(term.from) ? term.from : []) check(part);
    };
    for (const term of terms) check(term);
  });
});
