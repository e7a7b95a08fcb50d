import Papa from 'papaparse';
import { describe, expect, it } from 'vitest';
import { checkCabinet } from '../../engine/cabinet/index.ts';
import { makeDocument, writeList } from '../../engine/documents/index.ts';
import { listThings } from '../../engine/documents/sumsPaper.ts';
import { makeNames, termWords } from '../../engine/messages/index.ts';
import { plainText, writeHtml } from '../../engine/paper/index.ts';
import type { CabinetContent } from '../../engine/schema/index.ts';
import { computeSums, type SumTerm } from '../../engine/sums/index.ts';
import { plainContent } from '../bench/cabinets.ts';
import { readContent } from '../support/sampleCabinets.ts';

const allTerms = (terms: readonly SumTerm[]): readonly SumTerm[] => terms.flatMap((term) => [term, ...allTerms(term.from)]);

function sumsOf(content: CabinetContent) {
  const { topology, cabinet } = checkCabinet(content);
  const [made] = makeDocument({ topology, cabinet, names: makeNames(topology), date: '2026-11-26' }, 'sums', 'a4', 'a4-63x16');
  if (!made?.paper) throw new Error('no sums');
  const rows = (words: string): readonly (readonly string[])[] =>
    (made.paper?.blocks ?? []).flatMap((block) =>
      block.kind === 'table' && block.words === words
        ? block.rows.map((row) => row.map((cell) => plainText(typeof cell === 'object' && 'text' in cell ? cell.text : (cell as string))))
        : [],
    );
  return { topology, sums: computeSums(topology), paper: made.paper, pages: made.pages, rows };
}

describe('the sums as a document', () => {
  it('should hold the margin of both fibres of every link, and name every source that the cabinet gives', () => {
    const { sums, rows, topology } = sumsOf(readContent('two-chains'));
    const names = makeNames(topology);
    const light = rows('Light on every fibre');
    expect(light.map((row) => `${row[0]} ${row[1]}`)).toEqual(
      sums.optical.map(({ link, direction }) => `${names.link(link)} ${direction}`),
    );
    const figures = rows('Figures, and where they come from');
    const leaves = allTerms(sums.optical.flatMap(({ margin, overloadMargin }) => [margin, overloadMargin])).filter(
      ({ from, status, value }) => from.length === 0 && status !== 'computed' && value !== null,
    );
    expect(leaves.length).toBeGreaterThan(20);
    for (const { code, source } of leaves) {
      const line = figures.find((row) => row[0]?.toLowerCase() === termWords[code].toLowerCase() && (source === null || row[4] === source));
      expect({ code, source, found: line !== undefined }).toEqual({ code, source, found: true });
    }
  });

  it('should say how each computed quantity is worked out, and never a waiting time that nobody gave', () => {
    const full = sumsOf(readContent('two-chains'));
    const formulas = full.rows('How it is worked out').map((row) => row[0]);
    expect(formulas).toEqual(expect.arrayContaining(['Margin', 'Drop in the lead', 'Axes left']));
    const bare = writeHtml(sumsOf(plainContent(1, 3)).paper, { language: 'en' });
    expect(bare).toContain('not known, see the machine’s manual');
    expect(bare).toContain('-TB1.2');
    expect(bare).toContain('not written down');
  });

  it('should put what is beyond its limit first', () => {
    const { paper, rows } = sumsOf(readContent('with-problems'));
    const found = rows('Findings');
    expect(found.length).toBeGreaterThan(0);
    expect(paper.blocks[1]).toMatchObject({ kind: 'heading', text: 'Findings' });
  });

  it('should come out as CSV that a spreadsheet reads, values as numbers, every row with how it is known', () => {
    const { topology } = checkCabinet(readContent('two-chains'));
    const text = writeList(topology, 'sums', { separator: ';', decimal: ',', byteOrderMark: true, designations: 'guarded' });
    const { data: lines, errors } = Papa.parse<string[]>(text.replace(/^\ufeff/, ''), { delimiter: ';', skipEmptyLines: true });
    const [heads = [], ...rest] = lines;
    const data = rest.map((row): Record<string, string> => Object.fromEntries(row.map((cell, index) => [heads[index] ?? '', cell])));
    expect(errors).toEqual([]);
    const margin = data.find((row) => row['Quantity'] === 'Margin' && row['About'] === 'cable -WH1, outbound');
    const budget = computeSums(topology).optical[0];
    expect(Number(margin?.['Value']?.replace(',', '.'))).toBeCloseTo(budget?.margin.value ?? Number.NaN, 9);
    expect(margin).toMatchObject({ Unit: 'dB', 'How known': 'computed' });
    expect(data.every((row) => row['How known'] !== '')).toBe(true);
    expect(data.some((row) => row['Source']?.includes('data sheet'))).toBe(true);
  });
});

describe('listThings', () => {
  it.each([
    [['cable -WH10', 'cable -WH2', 'cable -WH1', 'cable -WH3'], 'cable -WH1 to -WH3, -WH10'],
    [['-TB1', '-TB2', '-KE3'], '-KE3, -TB1, -TB2'],
    [['chain 2', 'chain 1'], 'chain 1, 2'],
    [['lead -WD1', '-TB1'], '-TB1, lead -WD1'],
    [[], ''],
  ])('%j is said as "%s"', (names, said) => expect(listThings(names)).toBe(said));
});
