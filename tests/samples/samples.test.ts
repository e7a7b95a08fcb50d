import { readdirSync, readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { describe, expect, it } from 'vitest';
import {
  checkCabinet,
  parseCabinetFile,
  parseCaseFile,
  parseTruthFile,
  serializeCabinet,
  serializeCase,
  serializeTruth,
} from '../../engine/cabinet/index.ts';
import { predictBySolver } from '../outside/solver/solve.ts';
import { confirmedCases } from './confirmed.ts';
import { readyExercises } from './exercises.ts';
import { soundSamples, unsoundSamples } from './index.ts';
import { makeCase, makeTruth, reallyContent } from './makeCase.ts';

const folder = new URL('../../sample-cabinets/', import.meta.url);
const inFolder = (file: string) => fileURLToPath(new URL(file, folder));

// Every file of the folder with the text that it must have. After a change of a sample: npx vitest run tests/samples -u
const files: ReadonlyMap<string, string> = new Map([
  ...Object.entries(unsoundSamples).map(([name, content]) => [`${name}.cabinet.json`, serializeCabinet(content)] as const),
  ...soundSamples.flatMap((sample) => [
    [`${sample.name}.cabinet.json`, serializeCabinet(sample.content)] as const,
    ...sample.cases.flatMap((_, i) => [
      [`${sample.name}.${i + 1}.case.json`, serializeCase(makeCase(sample, i))] as const,
      [`${sample.name}.${i + 1}.truth.json`, serializeTruth(makeTruth(sample, i))] as const,
    ]),
  ]),
  ...Object.entries(confirmedCases).map(([file, content]) => [`confirmed/${file}`, serializeCase(content)] as const),
]);

const cases = soundSamples.flatMap((sample) =>
  sample.cases.map((sampleCase, i) => ({ name: `${sample.name}.${i + 1}`, sample, sampleCase, i })),
);

describe('the sample files', () => {
  it.each([...files])('should be current: %s', async (file, text) => {
    await expect(text).toMatchFileSnapshot(inFolder(file));
  });

  it('should be all that lies in the folder, besides the read-me', () => {
    const flat = [...files.keys()].filter((file) => !file.includes('/'));
    expect(readdirSync(folder).sort()).toEqual([...flat, ...readyExercises.map(({ file }) => file), 'README.md', 'confirmed'].sort());
    expect(readdirSync(new URL('confirmed/', folder)).sort()).toEqual(Object.keys(confirmedCases).sort());
  });

  it.each([...files.keys()])('should open: %s', (file) => {
    const source = readFileSync(inFolder(file));
    const parse = file.endsWith('.case.json') ? parseCaseFile : file.endsWith('.truth.json') ? parseTruthFile : parseCabinetFile;
    const result = parse(source);
    expect(result.ok ? [] : result.problems).toEqual([]);
  });

  it('should be named in the read-me, each', () => {
    const readMe = readFileSync(inFolder('README.md'), 'utf8');
    for (const name of [...soundSamples.map((sample) => sample.name), ...Object.keys(unsoundSamples)])
      expect(readMe).toContain(`\`${name}\``);
  });
});

describe('the sound samples', () => {
  it.each(soundSamples.map((sample) => [sample.name, sample] as const))('should have no problem at all: %s', (_name, sample) => {
    expect(checkCabinet(sample.content).problems).toEqual([]);
  });

  it.each(soundSamples.map((sample) => [sample.name, sample] as const))('should have two to four cases: %s', (_name, sample) => {
    expect(sample.cases.length).toBeGreaterThanOrEqual(2);
    expect(sample.cases.length).toBeLessThanOrEqual(4);
  });

  // The displays in the case files come from our own simulation; a general solver on an encoding of the domain text (see
  // tests/outside/solver) says the same of the first look of every case.
  it.each(cases)('should show at first what a general solver derives: $name', async ({ sample, sampleCase, i }) => {
    const [look] = sampleCase.looks;
    const [snapshot] = makeCase(sample, i).evidence.snapshots;
    if (look === undefined || snapshot === undefined) throw new Error('no look');
    const content = reallyContent(sample.content, sampleCase.really);
    const { displays, reports } = await predictBySolver(content, look.faults ?? sampleCase.faults, look.onset);
    for (const { unit, meanings } of snapshot.displays ?? []) {
      if (look.misread?.[unit] === undefined) expect([unit, meanings]).toEqual([unit, expect.arrayContaining([displays[unit]])]);
      else expect(meanings).not.toContain(displays[unit]);
    }
    for (const { chain, gaps } of snapshot.reports ?? []) expect([chain, gaps]).toEqual([chain, [reports[chain]]]);
  });
});

describe('the unsound samples', () => {
  it('should list what the unfinished one lacks, and still let it be simulated', () => {
    const { cabinet, problems } = checkCabinet(unsoundSamples['unfinished'] ?? { id: 'none', name: '' });
    expect(cabinet).not.toBeNull();
    expect(new Set(problems.map((problem) => problem.severity))).toEqual(new Set(['incomplete']));
    expect(problems.map((problem) => problem.code)).toEqual(
      expect.arrayContaining([
        'chain-empty',
        'controller-missing',
        'designation-missing',
        'lead-end-open',
        'link-end-open',
        'unit-not-fed',
      ]),
    );
  });

  it('should name everything that is wrong in the one with problems, and not simulate it', () => {
    const { cabinet, problems } = checkCabinet(unsoundSamples['with-problems'] ?? { id: 'none', name: '' });
    expect(cabinet).toBeNull();
    expect(problems.map((problem) => problem.code)).toEqual(
      expect.arrayContaining([
        'axis-limit-exceeded',
        'axis-limit-missing',
        'chain-loop',
        'chain-number-doubled',
        'designation-doubled',
        'feed-loop-without-supply',
        'feedback-axis-unknown',
        'lead-into-supply',
        'legend-code-doubled',
        'place-doubled',
        'reference-unknown',
        'spare-unequal',
        'unit-fork',
        'unit-not-fed',
        'unit-off-chain-linked',
        'unit-orphan',
      ]),
    );
  });
});
