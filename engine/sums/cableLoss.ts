import type { CabinetContent, Direction, LinkRecord } from '../schema/index.ts';
import { lossOfLength } from './formulas.ts';
import { assumed, computed, documented, type FigureCode, measured, type SumTerm, unknown } from './terms.ts';
import { count, type Db, type DbPerMetre, dbPerMetre, given, lossDb, type Metres, metres } from './units.ts';

export type FibreType = NonNullable<CabinetContent['fibres']>[number];

/** What a cable takes from the light: at most, for the margin, and at least, for the check against too much light. */
export interface CableLoss {
  readonly most: SumTerm<Db>;
  readonly least: SumTerm<Db>;
  readonly missing: readonly FigureCode[];
}

/**
 * Loss of one fibre of a cable. Measured, where it was; else greatest attenuation × length + couplers + bends + ends. The powers of
 * plastic-fibre ports include the two ends (component data sheets), so ends count only where the fibre's entry gives a figure. At
 * least: least attenuation × length alone, and nothing where that is not given, which is on the safe side.
 */
export function findCableLoss(record: LinkRecord, fibre: FibreType | undefined, direction: Direction): CableLoss {
  const of = record.id;
  const found = given(lossDb, record.measuredLossDb?.[direction]);
  if (found !== null) {
    return { most: measured('cable-loss', found, of), least: measured('least-cable-loss', found, of), missing: [] };
  }
  const missing: FigureCode[] = [];
  const length = given(metres, record.lengthM);
  const attenuation = given(dbPerMetre, fibre?.attenuationDbPerM);
  if (length === null) missing.push('cable-length');
  if (attenuation === null) missing.push('attenuation');
  const lengthTerm = documented('cable-length', length, of);
  const attenuationTerm = documented('attenuation', attenuation, of, fibre?.source);
  const others = [...couplerLoss(record, fibre, missing), ...bendLoss(record, fibre, missing), ...endLoss(record, fibre)];
  const least = leastLoss(record, fibre, length, lengthTerm);
  if (length === null || attenuation === null) {
    return { most: unknown('cable-loss', of, [lengthTerm, attenuationTerm, ...others]), least, missing };
  }
  const ofFibre = computed('fibre-loss', lossOfLength(attenuation, length), 'attenuation-times-length', [lengthTerm, attenuationTerm], {
    of,
  });
  const sum = others.reduce((total, { value }) => total + (value ?? 0), ofFibre.value ?? 0);
  return { most: computed('cable-loss', lossDb(sum), 'sum-of-losses', [ofFibre, ...others], { of }), least, missing };
}

function couplerLoss(record: LinkRecord, fibre: FibreType | undefined, missing: FigureCode[]): readonly SumTerm<Db>[] {
  const couplers = given(count, record.couplers) ?? count(0);
  if (couplers === 0) return [];
  const each = given(lossDb, fibre?.couplerDb);
  const number = documented('couplers', couplers, record.id);
  if (each === null) {
    missing.push('coupler-loss');
    return [assumed('coupler-loss', lossDb(0), 'coupler-loss-not-given', { of: record.id, from: [number] })];
  }
  const from = [number, documented('loss-per-coupler', each, record.id, fibre?.source)];
  return [computed('coupler-loss', lossDb(couplers * each), 'couplers-times-loss', from, { of: record.id })];
}

/** Every quarter turn counts the loss documented for the minimum bend radius; a wider bend loses no more. */
function bendLoss(record: LinkRecord, fibre: FibreType | undefined, missing: FigureCode[]): readonly SumTerm<Db>[] {
  const bends = record.bends ?? [];
  const turns =
    given(
      count,
      bends.reduce((sum, { quarterTurns = 1 }) => sum + quarterTurns, 0),
    ) ?? count(0);
  if (turns === 0) return [];
  const isGiven = bends.every(({ quarterTurns }) => quarterTurns !== undefined);
  const number = isGiven
    ? documented('quarter-turns', turns, record.id)
    : assumed('quarter-turns', turns, 'turn-not-given', { of: record.id });
  const each = given(lossDb, fibre?.quarterBendDb);
  if (each === null) {
    missing.push('bend-loss');
    return [assumed('bend-loss', lossDb(0), 'bend-loss-not-given', { of: record.id, from: [number] })];
  }
  const from = [number, documented('quarter-turn-loss', each, record.id, fibre?.source)];
  return [computed('bend-loss', lossDb(turns * each), 'turns-times-loss', from, { of: record.id })];
}

function endLoss(record: LinkRecord, fibre: FibreType | undefined): readonly SumTerm<Db>[] {
  const each = given(lossDb, fibre?.endDb);
  if (each === null || each === 0) return [];
  const from = [documented('loss-per-end', each, record.id, fibre?.source)];
  return [computed('end-loss', lossDb(2 * each), 'two-ends', from, { of: record.id })];
}

function leastLoss(record: LinkRecord, fibre: FibreType | undefined, length: Metres | null, lengthTerm: SumTerm<Metres>): SumTerm<Db> {
  const least: DbPerMetre | null = given(dbPerMetre, fibre?.leastAttenuationDbPerM);
  if (length === null || least === null) {
    return assumed('least-cable-loss', lossDb(0), 'least-loss-not-given', { of: record.id });
  }
  const from = [lengthTerm, documented('attenuation', least, record.id, fibre?.source)];
  return computed('least-cable-loss', lossOfLength(least, length), 'attenuation-times-length', from, { of: record.id });
}
