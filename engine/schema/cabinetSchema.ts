import { z } from 'zod';
import { amount, date, extra, id, level, line, picture, text } from './fields.ts';
import { actKinds, behaviourValues, displayMeanings, faultModes, machineStates, positionKeeping, unitKinds } from './vocabulary.ts';

/**
 * The content of a cabinet file, version 1. Everything that the program does not need in order to open it is optional, so that
 * an unfinished cabinet opens and lists its problems. Unknown fields are refused, but for the one `extra` bag.
 */

const orUnknown = <const V extends readonly [string, ...string[]]>(values: V) => z.enum([...values, 'unknown'] as const).optional();

/** Behaviour as written: a parameter left out has its default; `unknown` makes the diagnosis average over its values. */
const behaviour = z.strictObject({
  lossScope: orUnknown(behaviourValues.lossScope),
  onReceiveLoss: orUnknown(behaviourValues.onReceiveLoss),
  idleLight: orUnknown(behaviourValues.idleLight),
  complainsFrom: orUnknown(behaviourValues.complainsFrom),
  whenBoth: orUnknown(behaviourValues.whenBoth),
  holds: orUnknown(behaviourValues.holds),
  shortEffect: orUnknown(behaviourValues.shortEffect),
});

/** Optical figures of a kind of port; powers in dBm, mean or peak as the data sheet gives them. */
const optics = z.strictObject({
  launchPowerMinDbm: level.optional(),
  launchPowerMaxDbm: level.optional(),
  sensitivityDbm: level.optional(),
  overloadDbm: level.optional(),
  wavelengthNm: amount.optional(),
  dataRateMbd: amount.optional(),
  temperatureDbPerK: level.optional(),
  source: line.optional(),
});

const equipmentType = z.strictObject({
  id,
  name: line,
  behaviour: behaviour.optional(),
  /** Set by a staged break: when and how the behaviour was seen on the real thing. */
  behaviourVerified: z.strictObject({ on: date, how: line.optional() }).optional(),
  legend: id.optional(),
  optics: optics.optional(),
  notes: text.optional(),
});

const legend = z.strictObject({
  id,
  name: line,
  source: line.optional(),
  codes: z
    .array(
      z.strictObject({ code: z.string().min(1).max(40), meanings: z.array(z.enum(displayMeanings)).min(1).max(6), note: line.optional() }),
    )
    .max(500),
});

/** How one can tell and order a board, a cable or any other part. */
const part = { partNumber: line.optional(), revision: line.optional(), serial: line.optional() };

const axis = z.strictObject({ name: line, hanging: z.boolean().optional(), notes: text.optional() });

/** 24 V needs of a unit, and the least voltage at which it works. */
const control24Need = z.strictObject({
  loadA: amount.optional(),
  inrushA: amount.optional(),
  minimumV: amount.optional(),
  maximumV: amount.optional(),
  source: line.optional(),
});

/** What a supply can give. */
const supplyRatings = z.strictObject({
  control24: z
    .strictObject({ nominalV: amount.optional(), ratedA: amount.optional(), inrushA: amount.optional(), source: line.optional() })
    .optional(),
  dcLink: z
    .strictObject({
      ratedKw: amount.optional(),
      capacitanceUf: amount.optional(),
      dischargeOhm: amount.optional(),
      lineVoltageV: amount.optional(),
      /** How far the line voltage may be above its nominal figure. */
      lineTolerancePercent: amount.optional(),
      source: line.optional(),
    })
    .optional(),
  outputs: z
    .array(z.strictObject({ id, name: line, fuse: line.optional(), ratedA: amount.optional() }))
    .max(64)
    .optional(),
});

const unit = z.strictObject({
  id,
  kind: z.enum(unitKinds),
  designation: line,
  /** A drive with a link of its own to the controller is not on the chain. Left out: every unit but a supply is on a chain. */
  onChain: z.boolean().optional(),
  type: id.optional(),
  model: line.optional(),
  row: z.int().nonnegative().max(999).optional(),
  slot: z.int().nonnegative().max(9999).optional(),
  axes: z.array(axis).max(4).optional(),
  ...part,
  board: z.strictObject(part).optional(),
  fuse: z.strictObject({ name: line.optional(), partNumber: line.optional(), ratedA: amount.optional() }).optional(),
  ports: z.strictObject({ upMarking: line.optional(), downMarking: line.optional() }).optional(),
  control24: control24Need.optional(),
  dcLinkKw: amount.optional(),
  dcLinkCapacitanceUf: amount.optional(),
  /** The supply to whose DC link a drive is connected. Left out: the only one that has a DC link. */
  dcLinkSupply: id.optional(),
  supply: supplyRatings.optional(),
  photos: z.array(id).max(100).optional(),
  notes: text.optional(),
});

const controller = z.strictObject({
  id,
  designation: line,
  model: line.optional(),
  /** Left out: powered. `false` describes a control that is known to be off. */
  powered: z.boolean().optional(),
  row: z.int().nonnegative().max(999).optional(),
  slot: z.int().nonnegative().max(9999).optional(),
  ...part,
  notes: text.optional(),
  photos: z.array(id).max(100).optional(),
});

/** A chain is the controller's chain port on which it hangs; which units follow comes from the links alone. */
const chain = z.strictObject({
  id,
  number: z.int().positive().max(999),
  name: line.optional(),
  marking: line.optional(),
  behaviour: behaviour.pick({ onReceiveLoss: true, idleLight: true }).optional(),
  /** The controller still starts this chain when units are missing (bridged). Left out: it does not. */
  toleratesFewerUnits: z.boolean().optional(),
  cycleClass: line.optional(),
  optics: optics.optional(),
  ...part,
});

const fibreType = z.strictObject({
  id,
  name: line,
  medium: z.enum(['plastic', 'hard-clad-silica', 'glass']).optional(),
  /** The greatest attenuation; the budget counts with it. */
  attenuationDbPerM: amount.optional(),
  /** The least attenuation; the check against too much light counts with it. */
  leastAttenuationDbPerM: amount.optional(),
  maximumLengthM: amount.optional(),
  /** Greatest length up to a data rate, where pulses are smeared before the light is used up. */
  lengthLimits: z
    .array(z.strictObject({ dataRateMbd: amount, maximumLengthM: amount, source: line.optional() }))
    .max(50)
    .optional(),
  minimumBendMm: amount.optional(),
  /** Loss of a quarter turn at the minimum bend radius; a wider one loses no more. */
  quarterBendDb: amount.optional(),
  /** Loss of one coupler in the run of the cable. */
  couplerDb: amount.optional(),
  /** Loss at each end, where the powers of the ports do not include it already. */
  endDb: amount.optional(),
  source: line.optional(),
});

/** One duplex cable. Its upper plug sits in a controller's chain port or a unit's `down` port, its lower plug in a unit's `up` port. */
const link = z.strictObject({
  id,
  designation: line.optional(),
  upper: z.union([z.strictObject({ chain: id }), z.strictObject({ unit: id })]).optional(),
  lower: z.strictObject({ unit: id }).optional(),
  lengthM: amount.optional(),
  fibre: id.optional(),
  ...part,
  couplers: z.int().nonnegative().max(100).optional(),
  bends: z
    .array(z.strictObject({ radiusMm: amount, quarterTurns: amount.optional() }))
    .max(100)
    .optional(),
  /** Loss found with a light meter on this link, dB; takes the place of the computed one. */
  measuredLossDb: z.strictObject({ outbound: amount.optional(), return: amount.optional() }).optional(),
  route: line.optional(),
  labelUpper: line.optional(),
  labelLower: line.optional(),
  notes: text.optional(),
});

/** A 24 V lead from a supply's output, or from the pass-through of another unit, to the unit that it feeds. */
const lead = z.strictObject({
  id,
  designation: line.optional(),
  from: z.strictObject({ unit: id, output: id.optional() }).optional(),
  to: z.strictObject({ unit: id }).optional(),
  fuse: line.optional(),
  lengthM: amount.optional(),
  crossSectionMm2: amount.optional(),
  conductorClass: z.enum(['class-1-2', 'class-5', 'class-5-tinned']).optional(),
  conductorTemperatureC: level.optional(),
  ...part,
  notes: text.optional(),
});

const feedback = z.strictObject({
  id,
  designation: line.optional(),
  unit: id,
  axis: line.optional(),
  positionKept: z.enum(positionKeeping).optional(),
  /** Left out: plugged in. */
  plugged: z.boolean().optional(),
  ...part,
  notes: text.optional(),
});

const spare = z.strictObject({
  id,
  kind: z.enum(['cable', 'board', 'unit', 'supply', 'lead', 'fuse', 'feedback-cable', 'controller-port', 'other']),
  designation: line.optional(),
  ...part,
  count: z.int().nonnegative().max(10_000).optional(),
  fits: z.enum(['yes', 'no', 'unknown']).optional(),
  lengthM: amount.optional(),
  notes: text.optional(),
});

const photo = z.strictObject({
  id,
  caption: line.optional(),
  takenOn: date.optional(),
  mediaType: z.enum(['image/png', 'image/jpeg', 'image/webp']),
  data: picture,
});

const rate = z.strictObject({
  item: z.enum(Object.keys(faultModes) as [keyof typeof faultModes, ...(keyof typeof faultModes)[]]),
  mode: line,
  perYear: amount,
  intermittentShare: z.number().min(0).max(1).optional(),
  source: line.optional(),
});

/**
 * Figures of the repair table that differ from the usual ones. `subject` is the unit, link, lead, chain or feedback cable concerned;
 * left out, the figure holds for all. Costs that are no time are given in minutes all the same: what they are worth.
 */
const repair = z.strictObject({
  acts: z
    .array(
      z.strictObject({
        act: z.enum(actKinds),
        subject: id.optional(),
        minutes: amount.optional(),
        partMinutes: amount.optional(),
        state: z.enum(machineStates).optional(),
        source: line.optional(),
      }),
    )
    .max(2_000)
    .optional(),
  weights: z
    .strictObject({
      liveWork: amount.optional(),
      referencePosition: amount.optional(),
      spoiledPart: amount.optional(),
      partWait: amount.optional(),
      comeback: amount.optional(),
      outsideHelp: amount.optional(),
      source: line.optional(),
    })
    .optional(),
  chances: z
    .strictObject({
      handlingFault: z.number().min(0).max(1).optional(),
      badSpare: z.number().min(0).max(1).optional(),
      unknownFit: z.number().min(0).max(1).optional(),
      source: line.optional(),
    })
    .optional(),
});

export const cabinetContent = z.strictObject({
  id,
  name: line,
  revision: line.optional(),
  site: line.optional(),
  location: line.optional(),
  machineNumber: line.optional(),
  basedOn: z.strictObject({ design: id, revision: line.optional() }).optional(),
  designationEdition: z.enum(['2009', '2019']).optional(),
  controller: controller.optional(),
  chains: z.array(chain).max(200).optional(),
  units: z.array(unit).max(5_000).optional(),
  links: z.array(link).max(5_000).optional(),
  leads: z.array(lead).max(10_000).optional(),
  feedbacks: z.array(feedback).max(20_000).optional(),
  types: z.array(equipmentType).max(500).optional(),
  legends: z.array(legend).max(200).optional(),
  defaultLegend: id.optional(),
  fibres: z.array(fibreType).max(200).optional(),
  spares: z.array(spare).max(2_000).optional(),
  rates: z.array(rate).max(200).optional(),
  axisLimits: z
    .array(
      z.strictObject({
        cycleClass: line,
        maximumAxes: z.int().nonnegative().max(10_000),
        /** Length of the control cycle, and bytes that each axis takes of it in one direction: a limit beyond the wire is told. */
        cycleUs: amount.optional(),
        bytesPerAxis: amount.optional(),
        source: line.optional(),
      }),
    )
    .max(100)
    .optional(),
  ageingReserveDb: amount.optional(),
  /** Minutes that a change of the machine's state costs: opening its doors, discharging, booting, finding its reference again. */
  times: z
    .strictObject({
      openMinutes: amount.optional(),
      dischargeMinutes: amount.optional(),
      bootMinutes: amount.optional(),
      referencingMinutes: amount.optional(),
    })
    .optional(),
  repair: repair.optional(),
  ambientC: level.optional(),
  cabinetPhotos: z.array(id).max(100).optional(),
  rows: z
    .array(z.strictObject({ row: z.int().nonnegative().max(999), name: line }))
    .max(100)
    .optional(),
  notes: text.optional(),
  extra: extra.optional(),
  /** Last, because they are long. */
  photos: z.array(photo).max(500).optional(),
});

/** A cabinet whose shape is right. It may be unfinished or unsound; `checkCabinet` tells. */
export type CabinetContent = z.infer<typeof cabinetContent>;
export type UnitRecord = NonNullable<CabinetContent['units']>[number];
export type ChainRecord = NonNullable<CabinetContent['chains']>[number];
export type LinkRecord = NonNullable<CabinetContent['links']>[number];
export type LeadRecord = NonNullable<CabinetContent['leads']>[number];
export type FeedbackRecord = NonNullable<CabinetContent['feedbacks']>[number];
export type TypeRecord = NonNullable<CabinetContent['types']>[number];
export type LegendRecord = NonNullable<CabinetContent['legends']>[number];
export type ControllerRecord = NonNullable<CabinetContent['controller']>;

/** The shape of one record of each list of things with ids, and of the controller: for checking a single one that is edited. */
export const recordSchemas = {
  controller,
  chains: chain,
  units: unit,
  links: link,
  leads: lead,
  feedbacks: feedback,
  spares: spare,
  types: equipmentType,
  legends: legend,
  fibres: fibreType,
  photos: photo,
} as const;
