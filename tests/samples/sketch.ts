import type {
  Behaviour,
  CabinetContent,
  CaseContent,
  Circumstance,
  DisplayMeaning,
  Fault,
  FeedbackRecord,
  Intervention,
  LeadRecord,
  LinkRecord,
  Onset,
} from '../../engine/schema/index.ts';

/** One sample: a cabinet, and what happened at it. */
export interface Sample {
  /** File name without its ending: `NAME.cabinet.json`, `NAME.1.case.json`, `NAME.1.truth.json`. */
  readonly name: string;
  readonly content: CabinetContent;
  readonly cases: readonly SampleCase[];
}

/** One case: what was really wrong, and who read what of it. What the displays say is simulated, never typed in here. */
export interface SampleCase {
  readonly name: string;
  /** Moment at which somebody came to the machine. */
  readonly startedAt: string;
  readonly faults: readonly Fault[];
  /** For the truth file: what had happened. */
  readonly story: string;
  /** How equipment of unknown behaviour really behaves. */
  readonly really?: Readonly<Record<string, Partial<Behaviour>>>;
  readonly circumstances?: readonly Circumstance[];
  readonly looks: readonly SampleLook[];
  readonly log?: CaseContent['log'];
  readonly notes?: string;
}

/** One snapshot of a case. */
export interface SampleLook {
  readonly onset: Onset;
  /** `false`: the control runs. */
  readonly halted: boolean;
  readonly restarted?: boolean;
  readonly interventions?: readonly Intervention[];
  /** What is really wrong at this moment, where it differs from the case's faults (one that came and went). */
  readonly faults?: readonly Fault[];
  /** Units whose displays were read, or all but these. */
  readonly read: { readonly only: readonly string[] } | { readonly allBut: readonly string[] };
  /** Displays that were read as a set of possible meanings. */
  readonly asSet?: Readonly<Record<string, readonly DisplayMeaning[]>>;
  /** Displays that were read wrongly. */
  readonly misread?: Readonly<Record<string, DisplayMeaning>>;
  /** Chains whose report was read. */
  readonly reports: readonly string[];
  readonly note?: string;
}

type Ending = { readonly chain: string } | { readonly unit: string };

/** A link between two ends, with what is written on and about it. */
export function link(id: string, upper: Ending, lower: string, lengthM: number, rest: Partial<LinkRecord> = {}): LinkRecord {
  return { id, designation: `-${id}`, upper, lower: { unit: lower }, lengthM, ...rest };
}

/** Links of one chain, first unit first, named WH`first`, WH`first+1`, …; labels say where each end goes. */
export function chainLinks(
  chain: string,
  port: string,
  units: readonly string[],
  first: number,
  lengthsM: readonly number[],
  rest: Partial<LinkRecord> = {},
): LinkRecord[] {
  return units.map((unit, i) => {
    const above = units[i - 1];
    const id = `WH${first + i}`;
    return link(id, above === undefined ? { chain } : { unit: above }, unit, lengthsM[i] ?? 0.6, {
      labelUpper: `-${id} / ${above === undefined ? port : `-${above}`}`,
      labelLower: `-${id} / -${unit}`,
      ...rest,
    });
  });
}

/** A 24 V lead, 1.5 mm², flexible. */
export function lead(
  id: string,
  from: string,
  to: string,
  lengthM: number,
  rest: Partial<LeadRecord> & { readonly output?: string } = {},
): LeadRecord {
  const { output, ...more } = rest;
  return {
    id,
    designation: `-${id}`,
    from: { unit: from, ...(output === undefined ? {} : { output }) },
    to: { unit: to },
    lengthM,
    crossSectionMm2: 1.5,
    conductorClass: 'class-5',
    ...more,
  };
}

/** An encoder's cable. */
export function feedback(id: string, unit: string, axis: string, rest: Partial<FeedbackRecord> = {}): FeedbackRecord {
  return { id, designation: `-${id}`, unit, axis, ...rest };
}
