import { describe, expect, it } from 'vitest';
import { type LabelSheetName, labelSheets } from '../../engine/documents/labelSheets.ts';
import { labelPages, listLabels } from '../../engine/documents/labels.ts';
import { pageSize } from '../../engine/paper/index.ts';
import type { CabinetContent } from '../../engine/schema/index.ts';
import { buildTopology } from '../../engine/topology/index.ts';
import { drivesContent } from '../plan/smallCabinet.ts';

const plain = drivesContent(3);
const topologyOf = (content: CabinetContent) => buildTopology(content).topology;

describe('what stands on labels', () => {
  it('should go along the chain whatever the order of the file, each cable above and below, with loose ones behind', () => {
    const loose = { id: 'w0', designation: '-WH0' };
    const links = [loose, ...[...(plain.links ?? [])].reverse()];
    expect(listLabels(topologyOf({ ...plain, links })).slice(0, 8)).toEqual([
      '-WH1 / -KE1 chain 1',
      '-WH1 / -TB1',
      '-WH2 / -TB1',
      '-WH2 / -TB2',
      '-WH3 / -TB2',
      '-WH3 / -TB3',
      '-WH0',
      '-WH0',
    ]);
  });

  it('should be the own text of a plug where it has one', () => {
    const links = (plain.links ?? []).map((link) => (link.id === 'w2' ? { ...link, labelUpper: 'A12', labelLower: 'A13 ' } : link));
    expect(listLabels(topologyOf({ ...plain, links })).slice(2, 4)).toEqual(['A12', 'A13']);
  });

  it('should name a lead at both of its ends, and a unit with its model; what has no name gets no label', () => {
    const leads = (plain.leads ?? []).map((lead) => (lead.id === 'p2' ? { ...lead, designation: '-WD2' } : lead));
    const units = (plain.units ?? []).map((unit) => (unit.id === 'u1' ? { ...unit, model: 'AX 100' } : unit));
    const labels = listLabels(topologyOf({ ...plain, leads, units }));
    expect(labels.slice(6)).toEqual(['-WD2 / -TB9', '-WD2 / -TB2', '-TB9', '-TB1\nAX 100', '-TB2', '-TB3']);
  });
});

describe('sheets of labels', () => {
  it.each(Object.keys(labelSheets) as LabelSheetName[])('should have room for every label on its own place: %s', (name) => {
    const sheet = labelSheets[name];
    const perPage = sheet.columns * sheet.rows;
    const content = drivesContent(40);
    const count = listLabels(topologyOf(content)).length;
    const pages = labelPages(topologyOf(content), sheet);
    expect(pages).toHaveLength(Math.ceil(count / perPage));
    const { width, height } = pageSize(sheet.paper, false);
    const frames = pages.map(({ shapes }) => shapes.flatMap((shape) => (shape.kind === 'box' ? [shape] : [])));
    expect(frames.map((list) => list.length)).toEqual(pages.map((_, index) => Math.min(perPage, count - index * perPage)));
    for (const list of frames) {
      for (const [index, { x, y }] of list.entries()) {
        expect(x).toBeGreaterThanOrEqual(0);
        expect(y).toBeGreaterThanOrEqual(0);
        expect(x + sheet.width).toBeLessThanOrEqual(width);
        expect(y + sheet.height).toBeLessThanOrEqual(height);
        const others = list.slice(0, index);
        expect(others.some((one) => Math.abs(one.x - x) < sheet.width - 1e-9 && Math.abs(one.y - y) < sheet.height - 1e-9)).toBe(false);
      }
    }
    // One page goes on where the one before ended.
    const texts = pages.map(({ shapes }) => shapes.flatMap((shape) => (shape.kind === 'text' ? [JSON.stringify(shape)] : [])).length);
    expect(texts.every((number) => number > 0)).toBe(true);
    const words = (page: number) => JSON.stringify(pages[page]?.shapes);
    if (pages.length > 1) expect(words(1)).not.toBe(words(0));
  });
});
