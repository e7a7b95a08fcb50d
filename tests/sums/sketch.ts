import { checkCabinet } from '../../engine/cabinet/index.ts';
import type { CabinetContent, LeadRecord, LinkRecord, UnitRecord } from '../../engine/schema/index.ts';
import { computeSums } from '../../engine/sums/index.ts';
import type { Cabinet } from '../../engine/topology/index.ts';

/** Ports of the invented equipment that the tests use. */
export const optics = {
  launchPowerMinDbm: -13.6,
  launchPowerMaxDbm: -4.5,
  sensitivityDbm: -24,
  overloadDbm: -2,
  dataRateMbd: 5,
  source: 'invented data sheet',
};

export const fibre = {
  id: 'f',
  name: 'plastic fibre',
  medium: 'plastic' as const,
  attenuationDbPerM: 0.25,
  leastAttenuationDbPerM: 0.15,
  maximumLengthM: 60,
  minimumBendMm: 25,
  quarterBendDb: 0.5,
  couplerDb: 1.5,
  source: 'invented',
};

/** A chain of one drive behind one cable, fed by one supply; everything may be overridden. */
export function oneLink(link: Partial<LinkRecord> = {}, content: Partial<CabinetContent> = {}): CabinetContent {
  return {
    id: 'c',
    name: 'One link',
    controller: { id: 'k', designation: '-KF1' },
    chains: [{ id: 'ch1', number: 1, optics }],
    units: [drive('u1'), { id: 's', kind: 'supply', designation: '-TB9', supply: { control24: { nominalV: 24 } } }],
    types: [{ id: 't', name: 'Drive', optics }],
    fibres: [fibre],
    links: [{ id: 'w1', designation: '-WH1', upper: { chain: 'ch1' }, lower: { unit: 'u1' }, fibre: 'f', lengthM: 8, ...link }],
    leads: [lead('d1', 's', 'u1')],
    ageingReserveDb: 2,
    ...content,
  };
}

export function drive(id: string, rest: Partial<UnitRecord> = {}): UnitRecord {
  return { id, kind: 'servo-drive', designation: `-${id.toUpperCase()}`, type: 't', ...rest };
}

export function lead(id: string, from: string, to: string, rest: Partial<LeadRecord> = {}): LeadRecord {
  return {
    id,
    designation: `-${id.toUpperCase()}`,
    from: { unit: from },
    to: { unit: to },
    lengthM: 1,
    crossSectionMm2: 1.5,
    conductorClass: 'class-5',
    ...rest,
  };
}

/** Drives off any chain, fed by leads; for the 24 V alone. */
export function feedOnly(units: readonly UnitRecord[], leads: readonly LeadRecord[], rest: Partial<CabinetContent> = {}): CabinetContent {
  return {
    id: 'c',
    name: 'Feed',
    types: [{ id: 't', name: 'Drive' }],
    units: units.map((unit) => (unit.kind === 'supply' ? unit : { onChain: false, ...unit })),
    leads: [...leads],
    ...rest,
  };
}

export function supply(id: string, nominalV = 24, rest: Partial<UnitRecord> = {}): UnitRecord {
  return { id, kind: 'supply', designation: `-${id.toUpperCase()}`, supply: { control24: { nominalV } }, ...rest };
}

/** The content as a sound cabinet; a test that builds an unsound one is wrong. */
export function sound(content: CabinetContent): Cabinet {
  const { cabinet, problems } = checkCabinet(content);
  if (cabinet === null) throw new Error(JSON.stringify(problems));
  return cabinet;
}

export function sumsOf(content: CabinetContent) {
  return computeSums(sound(content));
}

/** Voltages by unit id; absent where not known. */
export function voltagesOf(content: CabinetContent): Readonly<Record<string, number>> {
  return Object.fromEntries(
    sumsOf(content).feed.units.flatMap(({ unit, voltage }) => (voltage.value === null ? [] : [[unit, voltage.value] as const])),
  );
}
