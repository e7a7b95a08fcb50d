import { z } from 'zod';
import { cabinetContent } from './cabinetSchema.ts';
import { amount, extra, id, line, moment, text } from './fields.ts';
import {
  caseEnds,
  circumstanceKinds,
  directions,
  displayMeanings,
  faultModes,
  handBackChecks,
  type ItemKind,
  itemKinds,
  linkEnds,
  machineStates,
  onsets,
  presences,
  provocations,
} from './vocabulary.ts';

/** The content of a case file, version 1: what was seen and done at a machine, with the cabinet as it was documented then. */

const end = { link: id, end: z.enum(linkEnds) };

/** The part that was put in: the spare of the cabinet's own stock (left out: one from elsewhere), and its serial number. */
const putIn = { spare: id.optional(), serial: line.optional() };

/** Something done to the cabinet. Ids name places of the cabinet (the link on which a cable lies), not the parts that lie there now. */
export const intervention = z.discriminatedUnion('do', [
  z.strictObject({ do: z.literal('unplug'), ...end }),
  z.strictObject({ do: z.literal('plug-in'), ...end }),
  z.strictObject({ do: z.literal('reseat-plug'), ...end }),
  z.strictObject({ do: z.literal('clean-plug'), ...end }),
  z.strictObject({ do: z.literal('re-route'), link: id }),
  z.strictObject({ do: z.literal('replace-cable'), link: id, ...putIn }),
  z.strictObject({ do: z.literal('exchange-cables'), link: id, other: id }),
  z.strictObject({ do: z.literal('turn-cable'), link: id }),
  z.strictObject({ do: z.literal('uncross-fibres'), link: id }),
  z.strictObject({ do: z.literal('uncross-plugs'), unit: id }),
  z.strictObject({ do: z.literal('replace-board'), unit: id, ...putIn }),
  z.strictObject({ do: z.literal('exchange-boards'), unit: id, other: id }),
  z.strictObject({ do: z.literal('replace-unit'), unit: id, ...putIn }),
  z.strictObject({ do: z.literal('reseat-unit'), unit: id }),
  z.strictObject({ do: z.literal('take-out-unit'), unit: id }),
  z.strictObject({ do: z.literal('put-back-unit'), unit: id }),
  z.strictObject({ do: z.literal('replace-fuse'), unit: id, ...putIn }),
  z.strictObject({ do: z.literal('replace-supply'), unit: id, ...putIn }),
  z.strictObject({ do: z.literal('replace-lead'), lead: id, ...putIn }),
  z.strictObject({ do: z.literal('replace-controller-port'), chain: id, ...putIn }),
  z.strictObject({ do: z.literal('replace-controller'), ...putIn }),
  z.strictObject({ do: z.literal('pull-feedback'), feedback: id }),
  z.strictObject({ do: z.literal('plug-feedback'), feedback: id }),
  z.strictObject({ do: z.literal('replace-feedback'), feedback: id, ...putIn }),
  z.strictObject({ do: z.literal('bridge-unit'), unit: id, cable: id }),
  z.strictObject({ do: z.literal('unbridge-unit'), unit: id }),
]);
export type Intervention = z.infer<typeof intervention>;
export type InterventionKind = Intervention['do'];

export const lightOutcomes = ['none', 'weak', 'bright'] as const;
export const plugLightOutcomes = [...lightOutcomes, 'wrong-hole'] as const;
export const lampOutcomes = ['none', 'weak', 'clear'] as const;
export const voltageOutcomes = ['steady', 'sags', 'absent'] as const;
export const comparisonOutcomes = ['same', 'differs'] as const;

const noted = { note: text.optional(), photo: id.optional(), at: moment.optional() };
const some = <const V extends readonly [string, ...string[]]>(values: V) => z.array(z.enum(values)).min(1).max(values.length);

/** A look other than at a display or the report, with the set of outcomes that fit what was seen. */
export const look = z.discriminatedUnion('look', [
  z.strictObject({ look: z.literal('light-at-plug'), ...end, outcomes: some(plugLightOutcomes), ...noted }),
  z.strictObject({ look: z.literal('light-at-port'), ...end, outcomes: some(['none', 'bright']), ...noted }),
  z.strictObject({ look: z.literal('lamp'), link: id, fibre: z.enum(directions), outcomes: some(lampOutcomes), ...noted }),
  z.strictObject({ look: z.literal('voltage'), unit: id, outcomes: some(voltageOutcomes), ...noted }),
  z.strictObject({ look: z.literal('compare-plugs'), unit: id, outcomes: some(comparisonOutcomes), ...noted }),
  z.strictObject({ look: z.literal('compare-fibres'), link: id, outcomes: some(comparisonOutcomes), ...noted }),
]);
export type LookObservation = z.infer<typeof look>;

/** A display as read: a non-empty set of meanings, and the raw code when the legend gave them. */
const displayObservation = z.strictObject({
  unit: id,
  meanings: z.array(z.enum(displayMeanings)).min(1).max(6),
  code: z.string().max(40).optional(),
  ...noted,
});

/** The controller's report on a chain: the gaps that fit what was read. Gap *k* lies between position *k−1* and *k*; `none` = the whole chain is reached. */
const reportObservation = z.strictObject({
  chain: id,
  gaps: z
    .array(z.union([z.int().positive().max(5_000), z.literal('none')]))
    .min(1)
    .max(5_001),
  ...noted,
});

/** One state of the machine, and what was seen of it. `interventions` were done since the snapshot before. */
export const snapshot = z.strictObject({
  id: id.optional(),
  interventions: z.array(intervention).max(1_000).optional(),
  /** Switched off and on (or reset) since the snapshot before: a new trip. The first snapshot needs none. */
  restarted: z.boolean().optional(),
  onset: z.enum([...onsets, 'unknown'] as const).optional(),
  /** Whether the control is halted by an alarm of a chain. Left out: not observed. */
  halted: z.boolean().optional(),
  displays: z.array(displayObservation).max(5_000).optional(),
  reports: z.array(reportObservation).max(200).optional(),
  looks: z.array(look).max(5_000).optional(),
  /** The state in which the machine was left. Left out: open where something in the cabinet was looked at, else closed. */
  state: z.enum(machineStates).optional(),
  /** After the restart it was waited, cables were moved, or it got warm, to see whether the fault comes again; `subjects`: what was moved or warmed. */
  provoked: z.strictObject({ how: z.enum(provocations), subjects: z.array(id).max(5_000).optional() }).optional(),
  note: text.optional(),
  /** Taken over from a simulation; nobody saw it, so the case never counts as a confirmed one. */
  simulated: z.literal(true).optional(),
});
export type Snapshot = z.infer<typeof snapshot>;

/** What makes some faults likelier; `subjects` are the units and links concerned (empty: all). */
export const circumstance = z.strictObject({ kind: z.enum(circumstanceKinds), subjects: z.array(id).max(5_000).optional() });
export type Circumstance = z.infer<typeof circumstance>;

/**
 * The rates on which a case stands, where confirmed cases sharpened the assumed ones: how often a mode occurs, as a multiple of what is
 * assumed. Modes left out stay as assumed. Kept with the case, so that the same file gives the same answer on every laptop.
 */
export const sharpenedRates = z.strictObject({
  /** How many confirmed cases were counted, and how many of its own kind each assumed rate was worth. */
  cases: z.int().positive().max(1_000_000),
  strength: z.number().positive().max(1_000_000),
  factors: z
    .array(
      z.strictObject({
        item: z.enum(itemKinds as [ItemKind, ...ItemKind[]]),
        mode: line,
        factor: z.number().positive().max(1_000_000),
      }),
    )
    .max(200),
});
export type SharpenedRates = z.infer<typeof sharpenedRates>;

/** Everything the diagnosis works from, besides the cabinet. */
export const evidence = z.strictObject({
  snapshots: z.array(snapshot).max(200),
  circumstances: z.array(circumstance).max(50).optional(),
  /** Days since the machine was last known whole. Left out: a week. */
  daysSinceWhole: amount.optional(),
  /** Left out: the assumed rates, and the cabinet's own. */
  rates: sharpenedRates.optional(),
});
export type Evidence = z.infer<typeof evidence>;

export const caseContent = z.strictObject({
  id,
  name: line,
  machine: line.optional(),
  startedAt: moment.optional(),
  cabinetRevision: line.optional(),
  /** The cabinet as it was when the case was begun. */
  cabinet: cabinetContent,
  evidence,
  log: z
    .array(z.strictObject({ at: moment.optional(), what: text, by: line.optional() }))
    .max(10_000)
    .optional(),
  result: z
    .strictObject({
      end: z.enum(caseEnds),
      item: line.optional(),
      mode: line.optional(),
      note: text.optional(),
      at: moment.optional(),
      /** Who hands the machine back. */
      by: line.optional(),
      /** What was checked before. */
      checked: z.array(z.enum(handBackChecks)).max(handBackChecks.length).optional(),
    })
    .optional(),
  notes: text.optional(),
  extra: extra.optional(),
});
export type CaseContent = z.infer<typeof caseContent>;

/** A fault as a person or a file names it: which item or place, which mode, and how steadily. */
const steadiness = { presence: z.enum(presences).optional(), absentNow: z.boolean().optional() };
const at = <K extends keyof typeof faultModes, R extends z.ZodRawShape>(kind: K, ref: R) =>
  z.strictObject({ item: z.literal(kind), ...ref, mode: z.enum(faultModes[kind]), ...steadiness });

const cable = { item: z.literal('cable'), link: id };
const dimModes = ['outbound-dim', 'return-dim'] as const satisfies readonly (typeof faultModes.cable)[number][];
/** A dim fibre may say by how much: what it loses more than when it was new, in dB. Left out: too much for telegrams. */
const cableFault = z.discriminatedUnion('mode', [
  z.strictObject({ ...cable, mode: z.enum(faultModes.cable).exclude(dimModes), ...steadiness }),
  z.strictObject({ ...cable, mode: z.enum(dimModes), ...steadiness, lossDb: amount.optional() }),
]);

export const fault = z.discriminatedUnion('item', [
  cableFault,
  at('plug', end),
  at('route', { link: id }),
  at('board', { unit: id }),
  at('fuse', { unit: id }),
  at('place', { unit: id }),
  at('wiring', { unit: id }),
  at('controller-port', { chain: id }),
  at('controller', {}),
  at('lead', { lead: id }),
  at('supply', { unit: id }),
  at('feedback', { feedback: id }),
]);
/** One fault. `absentNow` says of an intermittent fault that it was there at the trip and is gone now. */
export type Fault = z.infer<typeof fault>;

/** What was really wrong in a sample case; kept in a file of its own so that nobody reads it by accident. */
export const truthContent = z.strictObject({ case: id, faults: z.array(fault).max(20), story: text.optional() });
export type TruthContent = z.infer<typeof truthContent>;
