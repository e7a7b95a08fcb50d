import { fail, makeProblem, ok, type Problem } from '../base/index.ts';
import type { CabinetContent, LinkRecord, UnitRecord } from '../schema/index.ts';
import { needController } from './addThings.ts';
import { chainUnits } from './chainWork.ts';
import { nextDesignation } from './designation.ts';
import { mostUnits } from './insertUnits.ts';
import { endOfRow, nextRow, standAt, standBehind } from './places.ts';
import { readRows, type UnitRow } from './readRows.ts';
import type { EditResult } from './types.ts';
import { Work } from './work.ts';

/**
 * Makes a whole cabinet, or a part of one, of rows from a spreadsheet (`readRows`). Units of one chain are joined in the order of the
 * rows, behind what hangs on that chain already; chains that are not there are added. Each chain gets a row of its own unless rows and
 * slots are given; supplies and drives off the chain stand where the rows name them. A unit is fed from where its row says; where
 * no row says it and there is exactly one supply, from that one, by a lead of its own.
 */
export function pasteRows(content: CabinetContent, text: string): EditResult {
  const read = readRows(text);
  if (!read.ok) return read;
  const { rows } = read.value;
  if ((content.units ?? []).length + rows.length > mostUnits) {
    return fail(makeProblem('edit-too-many', 'refused', { facts: { list: 'units', maximum: mostUnits } }));
  }
  const work = new Work(content);
  const made = rows.map((row) => ({ row, id: makeUnit(work, row) }));
  const joined = joinChains(work, made);
  if (joined !== null) return fail(joined);
  const problems = [...feed(work, made), ...stand(work, made)];
  return problems.length > 0 ? fail(...problems) : ok(work.finish());
}

interface Made {
  readonly row: UnitRow;
  readonly id: string;
}

function makeUnit(work: Work, { kind, chain, texts, numbers, axes }: UnitRow): string {
  const id = work.freshId('u');
  const board = {
    ...(texts.boardPartNumber === undefined ? {} : { partNumber: texts.boardPartNumber }),
    ...(texts.boardSerial === undefined ? {} : { serial: texts.boardSerial }),
  };
  const unit: UnitRecord = {
    id,
    kind,
    designation: texts.designation ?? nextDesignation(work, kind),
    ...(kind !== 'supply' && chain === null ? { onChain: false } : {}),
    ...(texts.model === undefined ? {} : { model: texts.model }),
    ...(axes.length === 0 || kind === 'supply' ? {} : { axes: axes.map((name) => ({ name })) }),
    ...(texts.partNumber === undefined ? {} : { partNumber: texts.partNumber }),
    ...(texts.serial === undefined ? {} : { serial: texts.serial }),
    ...(Object.keys(board).length === 0 || kind === 'supply' ? {} : { board }),
    ...(numbers.loadA === undefined || kind === 'supply' ? {} : { control24: { loadA: numbers.loadA } }),
    ...(texts.notes === undefined ? {} : { notes: texts.notes }),
  };
  work.put('units', unit);
  return id;
}

function joinChains(work: Work, made: readonly Made[]): Problem | null {
  const numbers = [...new Set(made.flatMap(({ row: { chain } }) => chain ?? []))];
  for (const number of numbers) {
    const known = work.all('chains').find((chain) => chain.number === number)?.id;
    const chain = known ?? work.freshId('chain');
    if (known === undefined) work.put('chains', { id: chain, number });
    const last = known === undefined ? undefined : chainUnits(work, chain).at(-1);
    let upper: NonNullable<LinkRecord['upper']> = last === undefined ? { chain } : { unit: last };
    for (const { id, row } of made.filter((one) => one.row.chain === number)) {
      const { cable } = row.texts;
      const lengthM = row.numbers.cableLengthM;
      work.put('links', {
        id: work.freshId('w'),
        designation: cable ?? nextDesignation(work, 'link'),
        upper,
        lower: { unit: id },
        ...(lengthM === undefined ? {} : { lengthM }),
      });
      upper = { unit: id };
    }
  }
  if (numbers.length > 0) needController(work);
  return work.all('chains').length > 200 ? makeProblem('edit-too-many', 'refused', { facts: { list: 'chains', maximum: 200 } }) : null;
}

function feed(work: Work, made: readonly Made[]): readonly Problem[] {
  const consumers = made.filter(({ row }) => row.kind !== 'supply');
  const said = made.some(({ row }) => row.texts.fedBy !== undefined);
  const supplies = work.all('units').filter(({ kind }) => kind === 'supply');
  const [only] = supplies;
  const problems: Problem[] = [];
  const feeders = said ? feedersByName(work) : new Map<string, UnitRecord>();
  for (const { id, row } of consumers) {
    const named = row.texts.fedBy;
    const source = said ? named && feeders.get(bareName(named)) : supplies.length === 1 ? only : undefined;
    if (named !== undefined && (source === undefined || source === '' || source.id === id)) {
      problems.push(makeProblem('rows-feeder-unknown', 'refused', { facts: { row: row.line, word: named } }));
    } else if (source) {
      work.put('leads', { id: work.freshId('l'), designation: nextDesignation(work, 'lead'), from: { unit: source.id }, to: { unit: id } });
    }
  }
  return problems;
}

/** Units by designation, of several the first; the sign before it may be left out. */
function feedersByName(work: Work): ReadonlyMap<string, UnitRecord> {
  return new Map([...work.all('units')].reverse().map((unit) => [bareName(unit.designation), unit]));
}

function bareName(text: string): string {
  return text
    .trim()
    .replace(/^[-–−]/, '')
    .toLowerCase();
}

function stand(work: Work, made: readonly Made[]): readonly Problem[] {
  const rowOfChain = new Map<number, number>();
  /** By row, the slot behind its last thing. */
  const ends = new Map<number, number>();
  const standLast = (line: number, id: string) => {
    const slot = ends.get(line) ?? endOfRow(work, line);
    ends.set(line, slot + 1);
    return standBehind(work, id, { row: line, slot });
  };
  let current: number | null = null;
  const problems: Problem[] = [];
  for (const { id, row } of made) {
    const { row: given, slot } = row.numbers;
    if (row.chain !== null && given === undefined) {
      const known: number =
        rowOfChain.get(row.chain) ?? rowOf(work, id) ?? (current !== null && rowOfChain.size === 0 ? current : nextRow(work));
      rowOfChain.set(row.chain, known);
      current = known;
    }
    current = given ?? current ?? nextRow(work);
    const trouble = slot === undefined ? standLast(current, id) : standAt(work, id, { row: current, slot });
    // What stands in the way of a slot that is named moves on.
    if (slot !== undefined) ends.delete(current);
    if (trouble !== null) problems.push(trouble);
  }
  return problems;
}

/** The row in which the unit above in the chain stands already. */
function rowOf(work: Work, id: string): number | undefined {
  const above = work.linkInto(id)?.upper;
  return above !== undefined && 'unit' in above ? work.get('units', above.unit)?.row : undefined;
}
