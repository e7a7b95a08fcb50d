import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { checkCabinet, parseCabinetFile } from '../../engine/cabinet/index.ts';
import { jsonOf, linkwright } from '../cli/runLinkwright.ts';
import { programFolder } from '../support/folders.ts';
import { readPdf } from './pdfReader.ts';

const two = 'sample-cabinets/two-chains.cabinet.json';
const three = 'sample-cabinets/three-units.cabinet.json';
const textOf = (bytes: Uint8Array | undefined) => new TextDecoder().decode(bytes);

describe('linkwright print', () => {
  it('should write every document of several cabinets, each into a file of its own, and say so', async () => {
    const ran = await linkwright(['print', two, three, '--into', 'papers', '--json']);
    expect(ran).toMatchObject({ exit: 0, err: '' });
    const names = [...ran.written.keys()];
    for (const cabinet of ['two-chains', 'three-units']) {
      for (const document of ['cabinet-drawing', 'unit-list', 'cable-schedule', 'lead-list', 'labels', 'door-sheet-1', 'pattern-sheet']) {
        expect(names).toContain(`papers/${cabinet}.${document}.pdf`);
      }
    }
    const documents = jsonOf(ran)['documents'] as { readonly written: readonly string[]; readonly pages: number }[];
    expect(documents.flatMap(({ written }) => written).sort()).toEqual([...names].sort());
    for (const { written, pages } of documents) {
      expect((await readPdf(ran.written.get(written[0] ?? '') ?? new Uint8Array())).pages).toHaveLength(pages);
    }
  });

  it('should put all into one file with contents, write beside the cabinet, and show progress when asked', async () => {
    const ran = await linkwright(['print', three, '--together', '--progress', '--paper', 'a3']);
    expect(ran.exit).toBe(0);
    expect([...ran.written.keys()]).toEqual(['sample-cabinets/three-units.documents.pdf']);
    const read = await readPdf([...ran.written.values()][0] ?? new Uint8Array());
    expect(read.outline).toEqual([
      'Cabinet drawing',
      'Unit list',
      'Cable schedule',
      'Lead list',
      'Label sheets',
      'Door sheet, chain 1',
      'Pattern sheet',
      'Sums',
    ]);
    expect(ran.err).toContain('cabinet drawing');
  });

  it('should write SVG page by page and HTML, and take only the machines of a design', async () => {
    const svg = await linkwright(['print', two, three, '--what', 'drawing', '--as', 'svg', '--design', 'qg7-c1']);
    expect([...svg.written.keys()]).toEqual(['sample-cabinets/two-chains.cabinet-drawing.svg']);
    expect(textOf([...svg.written.values()][0])).toContain('>-TB3</text>');
    const html = await linkwright(['print', two, '--what', 'cables', '--what', 'labels', '--as', 'html']);
    expect([...html.written.keys()]).toEqual(['sample-cabinets/two-chains.cable-schedule.html']);
    expect(textOf([...html.written.values()][0])).toContain('<b>-WH3</b>');
  });

  it('should replace no file unless asked to', async () => {
    const there = { 'three-units.unit-list.pdf': 'old', 'three-units.cabinet.json': '' };
    const ran = await linkwright(['print', three, '--what', 'units', '--into', '.'], { './three-units.unit-list.pdf': 'old', ...there });
    expect(ran.exit).toBe(3);
    expect(ran.err).toContain('there is such a file already');
    expect(ran.written.size).toBe(0);
    const again = await linkwright(['print', three, '--what', 'units', '--into', '.', '--replace'], {
      './three-units.unit-list.pdf': 'old',
    });
    expect(again.exit).toBe(0);
  });

  it('should print what it can of a cabinet that is not sound, and name what is left out', async () => {
    const ran = await linkwright(['print', 'sample-cabinets/with-problems.cabinet.json', '--into', 'x']);
    expect(ran.exit).toBe(1);
    expect(ran.err).toContain('door sheet was left out');
    expect([...ran.written.keys()]).toContain('x/with-problems.cable-schedule.pdf');
  });

  it.each([
    [['print'], 'no file'],
    [['print', two, '--what', 'dor-sheet'], 'door-sheet'],
    [['print', two, '--paper', 'a5'], 'a4'],
    [['print', 'missing.json'], 'no such file'],
  ])('should refuse %j with a reason', async (args, reason) => {
    const ran = await linkwright(args);
    expect(ran.exit).toBeGreaterThanOrEqual(2);
    expect(ran.err).toContain(reason);
    expect(ran.written.size).toBe(0);
  });
});

describe('linkwright isolation', () => {
  it('should give shares and mean sizes for the three ways of looking', async () => {
    const ran = await linkwright(['isolation', two, '--json']);
    expect(ran.exit).toBe(0);
    const { isolation } = jsonOf(ran) as {
      readonly isolation: Readonly<
        Record<string, { readonly detected: number; readonly isolated: { readonly one: number; readonly three: number } }>
      >;
    };
    for (const { detected, isolated } of Object.values(isolation)) {
      expect(detected).toBeGreaterThan(0.5);
      expect(detected).toBeLessThanOrEqual(1);
      expect(isolated.one).toBeLessThanOrEqual(isolated.three);
    }
    expect((await linkwright(['isolation', two])).out).toContain('displays and report');
  });
});

describe('linkwright export and import', () => {
  it('should take back unchanged what it wrote, as CSV and as a graph', async () => {
    for (const what of ['units', 'cables', 'leads', 'feedbacks', 'graph']) {
      const written = await linkwright(['export', two, '--what', what, '--decimal', 'comma']);
      expect(written).toMatchObject({ exit: 0, err: '' });
      const ran = await linkwright(['import', two, 'list', '--json', ...(what === 'graph' ? [] : ['--what', what]), '--overwrite'], {
        list: written.out,
      });
      expect(ran).toMatchObject({ exit: 0, err: '' });
      const lists = jsonOf(ran)['lists'] as { readonly rows: readonly { readonly does: string }[] }[];
      expect(lists.length).toBe(what === 'graph' ? 4 : 1);
      for (const { rows } of lists) expect(rows.filter(({ does }) => does !== 'same')).toEqual([]);
    }
  });

  it('should write a new cabinet only where told, and leave the old one', async () => {
    const list = 'Designation;S/N\n-TB1;D-1\n-TB999;D-2\n';
    const preview = await linkwright(['import', two, 'list.csv', '--map', 'serial=S/N', '--what', 'units', '--overwrite'], {
      'list.csv': list,
    });
    expect(preview.exit).toBe(1);
    expect(preview.out).toContain('D-1 instead of D-55021');
    expect(preview.out).toContain('the kind of unit is missing');
    expect(preview.written.size).toBe(0);
    const done = await linkwright(
      ['import', two, 'list.csv', '--map', 'serial=S/N', '--what', 'units', '--overwrite', '--to', 'new.cabinet.json'],
      { 'list.csv': list },
    );
    const parsed = parseCabinetFile(done.written.get('new.cabinet.json') ?? new Uint8Array());
    expect(parsed.ok && parsed.value.units?.find(({ id }) => id === 'TB1')?.serial).toBe('D-1');
  });

  it('should take the second of equal heads, leave out a column on request, and hang new units where the list says', async () => {
    const list = 'Designation;Kind;Text;Text;Notes;Chain;Position\n-TB60;servo drive;a;D-9;secret;3;1\n-TB61;servo drive;a;D-10;x;3;2\n';
    const args = ['import', two, 'list.csv', '--what', 'units', '--map', 'serial=Text (2)', '--map', 'notes=', '--to', 'new.cabinet.json'];
    const done = await linkwright(args, { 'list.csv': list });
    expect(done).toMatchObject({ exit: 0, err: '' });
    const parsed = parseCabinetFile(done.written.get('new.cabinet.json') ?? new Uint8Array());
    if (!parsed.ok) throw new Error(JSON.stringify(parsed.problems));
    expect(parsed.value.units?.find(({ designation }) => designation === '-TB60')).toMatchObject({ serial: 'D-9' });
    expect(parsed.value.units?.some(({ notes }) => notes === 'secret')).toBe(false);
    const { topology } = checkCabinet(parsed.value);
    const third = topology.chains.find(({ record }) => record.number === 3);
    expect(third?.units.map((unit) => topology.units.get(unit)?.designation)).toEqual(['-TB60', '-TB61']);
    expect((await linkwright([...args.slice(0, 5), '--map', 'serial=Text (3)'], { 'list.csv': list })).err).toContain('Text (2)');
  });

  it.each([
    ['<!DOCTYPE graphml [<!ENTITY a "aaaa">]><graphml/>', 'document type'],
    ['<?xml version="1.0"?><!doctype x SYSTEM "file:///etc/passwd"><graphml><graph/></graphml>', 'document type'],
    [`${'<a>'.repeat(50)}${'</a>'.repeat(50)}`, 'deep'],
    ['<graphml><graph></graphml>', 'damaged'],
    ['<html><body/></html>', 'no graph'],
    ['', 'holds nothing'],
    ['a;b\n"never closed;1\n', 'never closed'],
    ['PK\u0003\u0004\0\0\0', 'not a list'],
  ])('should refuse a hostile or damaged list: %j', async (text, reason) => {
    const ran = await linkwright(['import', two, 'list'], { list: text });
    expect(ran.exit).toBe(3);
    expect(ran.err.replace(/\s+/g, ' ')).toContain(reason);
  });
});

describe('the JSON interface', () => {
  const page = readFileSync(join(programFolder, 'engine', 'cli', 'JSON.md'), 'utf8');
  const documented = (head: string) => {
    const section = page.split(/^## /m).find((part) => part.startsWith(head)) ?? '';
    return [...section.matchAll(/^\| `([^`]+)` +\|/gm)].map(([, path]) => path ?? '');
  };
  const pathsOf = (value: unknown, path = ''): readonly string[] => {
    if (typeof value !== 'object' || value === null || path === 'findings[]') return [path];
    const below = Array.isArray(value)
      ? value.map((one) => pathsOf(one, `${path}[]`))
      : Object.entries(value).map(([key, one]) => pathsOf(one, path === '' ? key : `${path}.${key}`));
    return below.flat().map((one) => one.replace(/^isolation\.[A-Za-z]+/, 'isolation.*'));
  };
  const list = 'Designation;Kind;Serial number\n-TB1;;D-1\n-TB60;toaster;\n';

  it.each([
    ['`print`', ['print', two, '--what', 'units', '--json']],
    ['`isolation`', ['isolation', three, '--json']],
    ['`import`', ['import', 'sample-cabinets/with-problems.cabinet.json', 'list.csv', '--what', 'units', '--json']],
  ])('should be what its page says, both ways: %s', async (head, args) => {
    const answer = jsonOf(await linkwright(args, { 'list.csv': list }));
    const common = new Set([...documented('Every answer'), 'problems']);
    const found = new Set(pathsOf(answer).filter((path) => !common.has(path) && !path.startsWith('problems[')));
    expect([...found].sort()).toEqual([...documented(head)].sort());
  });
});
