import type { CaseContent } from '../../engine/schema/index.ts';
import { makeCase } from './makeCase.ts';
import type { Sample, SampleCase } from './sketch.ts';
import { threeUnits } from './threeUnits.ts';
import { twoChains } from './twoChains.ts';

/** A machine of a design that is a sample already, with what happened at it. Photos of it are another machine's. */
function machine({ content: { photos: _, ...content }, name }: Sample, id: string, number: string, cases: readonly SampleCase[]): Sample {
  const units = (content.units ?? []).map(({ photos: _photos, ...unit }) => unit);
  return { name, content: { ...content, units, id, machineNumber: number, cabinetPhotos: [] }, cases };
}

const all = { allBut: [] };
const runs = { onset: 'at-power-up', halted: false, restarted: true, read: { only: [] }, reports: [] } as const;
const stopped = { onset: 'while-running', halted: true, read: all, reports: ['chain1'] } as const;

const qd44 = machine(threeUnits, 'qd2-0044', 'QD2-0044', [
  {
    name: 'Halted in the night shift',
    startedAt: '2026-08-03T22:10:00Z',
    faults: [{ item: 'cable', link: 'WH2', mode: 'cut', presence: 'steady' }],
    story: 'cut',
    looks: [stopped, { ...runs, interventions: [{ do: 'replace-cable', link: 'WH2' }] }],
  },
  {
    name: 'First drive dark',
    startedAt: '2026-09-14T06:55:00Z',
    faults: [{ item: 'board', unit: 'TB1', mode: 'dead-dark', presence: 'steady' }],
    story: 'board dead',
    looks: [stopped, { ...runs, interventions: [{ do: 'replace-board', unit: 'TB1' }] }],
  },
  {
    name: 'Runs again after a plug was reseated',
    startedAt: '2026-10-01T11:20:00Z',
    faults: [{ item: 'plug', link: 'WH3', end: 'upper', mode: 'loose', presence: 'steady' }],
    story: 'loose',
    looks: [stopped, { ...runs, interventions: [{ do: 'reseat-plug', link: 'WH3', end: 'upper' }] }],
  },
]);

const qg203 = machine(twoChains, 'qg7-0203-c1', 'QG7-0203', [
  {
    name: 'More drives complain than should',
    startedAt: '2026-10-19T13:05:00Z',
    faults: [{ item: 'cable', link: 'WH2', mode: 'cut', presence: 'steady' }],
    story: 'cut',
    really: { 'qe-drive-2': { lossScope: 'chain' } },
    looks: [stopped, { ...runs, interventions: [{ do: 'replace-cable', link: 'WH2' }] }],
  },
]);

const handedBack = (sample: Sample, index: number, end: 'proved' | 'not-proved', at: string): CaseContent => ({
  ...makeCase(sample, index),
  cabinet: sample.content,
  result: { end, at },
});

/** Finished repairs, by the names of their files in the folder `confirmed`. */
export const confirmedCases: Readonly<Record<string, CaseContent>> = {
  'qd2-0044.1.case.json': handedBack(qd44, 0, 'proved', '2026-08-03T23:40:00Z'),
  'qd2-0044.2.case.json': handedBack(qd44, 1, 'proved', '2026-09-14T08:30:00Z'),
  'qd2-0044.3.case.json': handedBack(qd44, 2, 'not-proved', '2026-10-01T12:00:00Z'),
  'qg7-0203.1.case.json': handedBack(qg203, 0, 'proved', '2026-10-19T15:15:00Z'),
};
