import { describe, expect, it } from 'vitest';
import { diagnose } from '../../engine/diagnosis/index.ts';
import { makeRepairReport } from '../../engine/documents/index.ts';
import { makeNames } from '../../engine/messages/index.ts';
import { writeHtml } from '../../engine/paper/index.ts';
import { writePdf } from '../../engine/pdf/index.ts';
import { endOf } from '../../engine/plan/index.ts';
import { writeReplaced } from '../../engine/repair/index.ts';
import type { Evidence, Snapshot } from '../../engine/schema/index.ts';
import { drivesContent, seenSnapshot, soundCabinet } from '../plan/smallCabinet.ts';
import { readPdf } from './pdfReader.ts';

const madeAt = new Date('2026-11-26T10:00:00Z');
const content = drivesContent(4, { spares: [{ id: 'b1', kind: 'board', partNumber: 'AX-100', serial: 'S-22', count: 2, fits: 'yes' }] });

/** The report of a board that was dead and is replaced, after `more` was looked at or done. */
function reportOf(after: readonly Snapshot[], cabinetContent = content) {
  const cabinet = soundCabinet(cabinetContent);
  const first = seenSnapshot(cabinet, [{ item: 'board', unit: 'u3', mode: 'dead-dark', presence: 'steady' }]);
  const looked: Snapshot['looks'] = [{ look: 'light-at-plug', link: 'w3', end: 'upper', outcomes: ['none'], at: '2026-11-26T09:05:00Z' }];
  const evidence: Evidence = { snapshots: [{ ...first, looks: looked }, ...after] };
  const diagnosis = diagnose(cabinet, evidence);
  const record = {
    id: 'case-7',
    name: 'Night shift',
    evidence,
    result: { end: 'proved' as const, by: 'A. Fitter', checked: ['plugs' as const] },
  };
  const source = { topology: cabinet, cabinet, names: makeNames(cabinet), date: '2026-11-26', record, diagnosis };
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
