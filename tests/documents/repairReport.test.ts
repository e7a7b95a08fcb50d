import { describe, expect, it } from 'vitest';
import { diagnose } from '../../engine/diagnosis/index.ts';
import { makeRepairReport } from '../../engine/documents/index.ts';
import { makeNames } from '../../engine/messages/index.ts';
import { writeHtml, writeSvg } from '../../engine/paper/index.ts';
import { writePdf } from '../../engine/pdf/index.ts';
import { endOf } from '../../engine/plan/index.ts';
import { writeReplaced } from '../../engine/repair/index.ts';
import type { Evidence, Snapshot } from '../../engine/schema/index.ts';
import { drivesContent, seenSnapshot, soundCabinet } from '../plan/smallCabinet.ts';
import { readPdf } from './pdfReader.ts';
import { findOverlaps, readInk } from './svgBoxes.ts';

const madeAt = new Date('2026-11-26T10:00:00Z');
const content = drivesContent(4, { spares: [{ id: 'b1', kind: 'board', partNumber: 'AX-100', serial: 'S-22', count: 2, fits: 'yes' }] });

/** A picture of one point. */
const dot = 'iVBORw0KGgoAAAANSUhEUgAAAAEAAAABCAYAAAAfFcSJAAAADUlEQVR42mNk+M9QDwADhgGAWjR9awAAAABJRU5ErkJggg==';

/** The report of a board that was dead and is replaced, after `more` was looked at or done. */
function reportOf(after: readonly Snapshot[], cabinetContent = content, withPhotos = false) {
  const cabinet = soundCabinet(cabinetContent);
  const first = seenSnapshot(cabinet, [{ item: 'board', unit: 'u3', mode: 'dead-dark', presence: 'steady' }]);
  const looked: Snapshot['looks'] = [
    { look: 'light-at-plug', link: 'w3', end: 'upper', outcomes: ['none'], at: '2026-11-26T09:05:00Z', photo: 'seen' },
  ];
  const evidence: Evidence = { snapshots: [{ ...first, looks: looked }, ...after] };
  const diagnosis = diagnose(cabinet, evidence);
  const record = {
    id: 'case-7',
    name: 'Night shift',
    evidence,
    result: { end: 'proved' as const, by: 'A. Fitter', checked: ['plugs' as const] },
  };
  const source = { topology: cabinet, cabinet, names: makeNames(cabinet), date: '2026-11-26', record, diagnosis, withPhotos };
  return makeRepairReport({ ...source, end: endOf(cabinet, evidence, diagnosis) }, 'a4');
}

/** It ran, and did not come again when it was waited for. */
const ran: Snapshot = { restarted: true, onset: 'at-power-up', halted: false, provoked: { how: 'wait' } };
const replaced: Snapshot = {
  interventions: [{ do: 'replace-board', unit: 'u3', spare: 'b1', serial: 'S-22' }],
  restarted: true,
  onset: 'at-power-up',
  halted: false,
};

async function textOf(report: ReturnType<typeof reportOf>): Promise<string> {
  const pdf = await writePdf([{ title: report.title, pages: report.pages }], { title: report.title, language: 'en', madeAt });
  if (pdf === null) throw new Error('given up');
  expect(pdf.missingSigns).toEqual([]);
  return (await readPdf(pdf.bytes)).pages.map(({ text }) => text.replace(/\s+/g, ' ')).join(' ');
}

describe('the repair report', () => {
  it('should say in its PDF what was seen, done, put in and proved, with cautions, checklist and fields', async () => {
    const text = await textOf(reportOf([replaced, ran]));
    expect(text).toContain('The cause is proved');
    expect(text).toMatch(/-TB3 chain 1, position 3, drive 3 dark quiet/);
    expect(text).toContain('Light at the upper plug of cable -WH3: none');
    expect(text).toContain('Replaced the board of -TB3: machine runs');
    expect(text).toMatch(/Board of -TB3 AX-100 S-22/);
    expect(text).toContain('Marked: -TB3.');
    expect(text).toMatch(/Lock out\. Lock the main switch/);
    expect(text).toMatch(/Every plug that was touched is seated.* yes/);
    expect(text).toContain('A. Fitter');
    expect(text).toContain('Signature');
    expect(text).toContain('2026-11-26');
  });

  it('should say the same in its web page, with nothing that runs', () => {
    const html = writeHtml(reportOf([replaced, ran]).paper, { language: 'en' });
    expect(html).toContain('Replaced the board of -TB3: machine runs');
    expect(html).toContain('The cause is proved');
    expect(html).not.toMatch(/<script|onload=|javascript:/i);
  });

  it('should not claim what is not proved, and name what does not stand in its place', async () => {
    const swapped: Snapshot = { ...replaced, interventions: [{ do: 'exchange-boards', unit: 'u3', other: 'u2' }] };
    const text = await textOf(reportOf([swapped]));
    expect(text).not.toContain('The cause is proved');
    expect(text).toContain('runs provisionally');
    expect(text).toContain('The board of -TB3 stands in -TB2');
    const open = await textOf(reportOf([]));
    expect(open).toContain('The machine is not repaired.');
    expect(open).toContain('Board of -TB3');
  });

  it('should say beside each point of the checklist that nobody confirmed that it is not confirmed', async () => {
    const text = await textOf(reportOf([replaced, ran]));
    expect(text).toMatch(/Every display and every report shows what it must\. not confirmed/);
    expect(text).toMatch(/Every plug that was touched is seated[^.]*\. yes/);
  });

  it('should name the cautions of restarts with nothing touched as well', async () => {
    const seen: Snapshot = { restarted: true, onset: 'at-power-up', halted: true };
    expect(await textOf(reportOf([]))).not.toContain('Hanging axes. An axis that hangs may drop');
    expect(await textOf(reportOf([seen]))).toContain('Hanging axes. An axis that hangs may drop');
    const moved = await textOf(reportOf([{ ...seen, provoked: { how: 'flex', subjects: ['w2'] } }]));
    expect(moved).toContain('Hanging axes. An axis that hangs may drop');
  });

  it('should say step by step where the probabilities stood, with what is quiet counted only', async () => {
    const text = await textOf(reportOf([replaced, ran]));
    expect(text).toMatch(
      /Displays: -TB2 downstream loss, -TB3 dark, -TB4 upstream loss and 2 quiet\..* (Board of -TB3|Control fuse of -TB3), \d+ %/,
    );
    expect(text).toMatch(/2026-11-26 09:05 Light at the upper plug of cable -WH3: none/);
    const [, before, after] = text.match(/none Board of -TB3, (\d+) % .*machine runs Board of -TB3, (\d+) %/) ?? [];
    expect(Number(before)).toBeLessThan(50);
    expect(Number(after)).toBeGreaterThan(80);
  });

  it('should draw of a large cabinet the row with the place alone, the place in a frame, and nothing over anything', async () => {
    const report = reportOf([replaced], drivesContent(14, { spares: content.spares ?? [] }));
    const text = await textOf(report);
    expect(text).toContain('These are the rows with what is marked');
    // The row of -TB3 begins at the controller and ends where it goes on to -TB4; further rows are not there.
    expect(text).toMatch(/to -TB4/);
    expect(text).not.toMatch(/from -TB6/);
    const frames = report.pages.flatMap(({ shapes }) => shapes).filter((shape) => shape.kind === 'box' && shape.line?.dash !== undefined);
    expect(frames).toHaveLength(1);
    for (const page of report.pages) expect(findOverlaps(readInk(writeSvg(page, report.title)))).toEqual([]);
  });

  it('should print the photos of what was seen and of the place, each once, if that is wanted', async () => {
    const photos = [{ id: 'seen', caption: 'no light', mediaType: 'image/png' as const, data: dot }];
    const withPhoto = { ...content, photos };
    expect(await textOf(reportOf([replaced], withPhoto))).not.toContain('no light');
    const wanted = reportOf([replaced], withPhoto, true);
    expect(await textOf(wanted)).toMatch(/Photos Light at the upper plug of cable -WH3.* no light/);
    expect(wanted.pages.flatMap(({ shapes }) => shapes).filter(({ kind }) => kind === 'picture')).toHaveLength(1);
    expect(await textOf(reportOf([replaced], content, true))).toContain('No photos were taken');
  });

  it('should bear the numbers that were written into the cabinet', async () => {
    const written = writeReplaced(content, [{ owner: { kind: 'board', id: 'u3' }, partNumber: 'AX-101', serial: 'S-99', spare: 'b1' }]);
    const text = await textOf(reportOf([{ ...replaced, interventions: [{ do: 'replace-board', unit: 'u3', serial: 'S-99' }] }], written));
    expect(text).toMatch(/Board of -TB3 AX-101 S-99/);
  });

  it('should give equal pages for equal input, and hold a hostile text on its page', () => {
    expect(JSON.stringify(reportOf([replaced]).pages)).toBe(JSON.stringify(reportOf([replaced]).pages));
    const long = drivesContent(4, { name: 'W'.repeat(200) });
    for (const { shapes, width } of reportOf([replaced], long).pages) {
      for (const shape of shapes) if (shape.kind === 'text' && shape.align === undefined) expect(shape.x).toBeLessThan(width);
    }
  });
});
