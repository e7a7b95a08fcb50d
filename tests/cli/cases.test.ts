import { describe, expect, it } from 'vitest';
import { serializeCabinet, serializeCase } from '../../engine/cabinet/index.ts';
import { diagnose } from '../../engine/diagnosis/index.ts';
import { gatherExperience, ratesFor } from '../../engine/experience/index.ts';
import { confirmedCases } from '../samples/confirmed.ts';
import { readCabinet, readContent } from '../support/sampleCabinets.ts';
import { jsonOf, linkwright } from './runLinkwright.ts';

const folder = 'sample-cabinets/confirmed';
const [first] = Object.values(confirmedCases);
if (first === undefined) throw new Error('no sample');

describe('linkwright cases', () => {
  it('should count proved cases, name the others with the reason, and find what behaved otherwise', async () => {
    const ran = await linkwright(['cases', folder]);
    expect(ran).toMatchObject({ exit: 0, err: '' });
    expect(ran.out).toContain('3 confirmed cases are counted, 1 is left out.');
    expect(ran.out).toContain('qd2-0044.3.case.json: By what was seen and done, too much');
    expect(ran.out).toContain('“QE drive 2”, revision 07: in 1 confirmed case');
    expect(ran.out).toContain('Display of -TB4 (look 1): seen upstream loss, predicted quiet.');
  });

  it('should count a case of two files once', async () => {
    const text = serializeCase(first);
    const json = jsonOf(await linkwright(['cases', 'a.case.json', 'b.case.json', '--json'], { 'a.case.json': text, 'b.case.json': text }));
    expect(json).toMatchObject({ ok: true, exit: 0, confirmed: [{ file: 'a.case.json' }], uncounted: [{ why: 'counted-already' }] });
  });

  it('should never count what is no case of repair, and say so', async () => {
    const files = { 'mixed/x.json': serializeCabinet(readContent('three-units')), 'mixed/y.txt': 'no file of ours' };
    const ran = await linkwright(['cases', 'mixed', 'sample-cabinets/ready-02-neighbours.exercise.json'], files);
    expect(ran.exit).toBe(0);
    expect(ran.out).toContain('mixed/x.json: It is a file of another kind: cabinet file');
    expect(ran.out).toContain('another kind: exercise');
    expect(ran.out).toContain('There is no confirmed case, so all rates are as assumed.');
  });

  it('should say which file cannot be read, and count the others all the same', async () => {
    const newer = serializeCase(first).replace('"formatVersion": 1', '"formatVersion": 99');
    const ran = await linkwright(['cases', 'some', 'none.json'], {
      'some/a.case.json': serializeCase(first),
      'some/broken.json': '{"format": "linkwright-case", ',
      'some/newer.json': newer,
    });
    expect(ran.exit).toBe(3);
    expect(ran.out).toContain('1 confirmed case is counted');
    for (const file of ['some/broken.json', 'some/newer.json', 'none.json']) expect(ran.err).toContain(file);
    expect(ran.written.size).toBe(0);
  });

  it('should trust the assumed rates as much as it is told', async () => {
    const moved = async (strength: string) => {
      const { rates } = jsonOf(await linkwright(['cases', folder, '--strength', strength, '--json'])) as { rates: { factor: number }[] };
      return Math.max(...rates.map(({ factor }) => Math.abs(factor - 1)));
    };
    expect(await moved('0.5')).toBeGreaterThan(await moved('2'));
    expect(await moved('1000')).toBeLessThan(0.01);
    expect((await linkwright(['cases', folder, '--strength', '0'])).exit).toBe(2);
    expect((await linkwright(['cases'])).exit).toBe(2);
  });

  it('should sharpen the rates of a diagnosis and a plan by the cases that are named', async () => {
    const rates = ratesFor(gatherExperience(Object.values(confirmedCases)));
    const sample = 'sample-cabinets/two-chains.1.case.json';
    for (const command of ['diagnose', 'next']) {
      const answer = jsonOf(await linkwright([command, sample, '--confirmed', folder, '--json']));
      expect(answer).toMatchObject({ exit: 0, problems: [], evidence: { rates } });
    }
    const trusting = jsonOf(await linkwright(['diagnose', sample, '--confirmed', folder, '--strength', '50', '--json']));
    expect(trusting).toMatchObject({ evidence: { rates: { strength: 50 } } });
    expect((await linkwright(['diagnose', sample, '--strength', '50'])).err).toContain('--strength goes only with --confirmed');
  });

  it('should not count a case for its own rates, and say when nothing is left', async () => {
    const files = { 'a.case.json': serializeCase(first) };
    const alone = jsonOf(await linkwright(['diagnose', 'a.case.json', '--confirmed', 'a.case.json', '--json'], files));
    expect(alone).toMatchObject({ ok: true, problems: [{ code: 'no-case-confirmed', severity: 'warning' }] });
    expect(alone['evidence']).not.toHaveProperty('rates');
    const others = jsonOf(
      await linkwright(['diagnose', 'a.case.json', '--confirmed', 'a.case.json', '--confirmed', folder, '--json'], files),
    );
    expect(others).toMatchObject({ problems: [], evidence: { rates: { cases: 2 } } });
  });

  it('should not answer on other rates than were asked for', async () => {
    const ran = await linkwright(['diagnose', 'sample-cabinets/two-chains.1.case.json', '--confirmed', 'some'], {
      'some/a.case.json': serializeCase(first),
      'some/broken.json': '{"format": "linkwright-case", ',
    });
    expect(ran).toMatchObject({ exit: 3, out: '' });
    expect(ran.err).toContain('some/broken.json');
  });

  it('should leave a case replayable on the rates that it stood on', async () => {
    const rates = ratesFor(gatherExperience(Object.values(confirmedCases)));
    if (rates === undefined) throw new Error('nothing confirmed');
    const [seen] = first.evidence.snapshots;
    const evidence = { snapshots: seen ? [seen] : [], rates };
    const text = serializeCase({ ...first, evidence });
    const answer = jsonOf(await linkwright(['diagnose', 'x.case.json', '--json'], { 'x.case.json': text }));
    expect(answer['notes']).toContainEqual(expect.objectContaining({ code: 'rates-sharpened', cases: 3 }));
    const replayed = jsonOf(await linkwright(['replay', 'x.case.json', '--json'], { 'x.case.json': text })) as {
      steps: { suspects: { item: string; probability: number }[] }[];
    };
    const [best] = diagnose(readCabinet('three-units'), evidence).items;
    expect(replayed.steps.at(-1)?.suspects[0]).toMatchObject({
      item: best?.item.key,
      probability: expect.closeTo(best?.probability ?? 0, 12) as number,
    });
  });
});
