import fc from 'fast-check';
import {
  behaviourParameters,
  behaviourValues,
  type CabinetContent,
  type ChainRecord,
  displayMeanings,
  type FeedbackRecord,
  type LeadRecord,
  type LegendRecord,
  type LinkRecord,
  positionKeeping,
  type TypeRecord,
  type UnitRecord,
} from '../../engine/schema/index.ts';
import { Random } from './random.ts';

/** What a generated cabinet holds. What is left out is drawn. */
export interface CabinetOptions {
  /** Units on chains, all chains together; at least one for each chain. Drawn: 1 to 12. */
  readonly units?: number;
  /** Drawn: 1 to 4. */
  readonly chains?: number;
  /** Drives with a link of their own to the controller. Drawn: 0 to 2. */
  readonly offChain?: number;
  /** Drawn: 1 to 3. */
  readonly supplies?: number;
  /** Share of encoder interfaces among chain units. Default 0.25. */
  readonly encoderShare?: number;
  /** `default`: no types; `mixed`: up to three types, all settled; `unknown`: up to two of them of unknown behaviour. Drawn. */
  readonly behaviours?: 'default' | 'mixed' | 'unknown';
  /** Part numbers, texts, lengths and all the rest that decides nothing. Default true. */
  readonly details?: boolean;
}

/**
 * A cabinet that is sound and complete by construction (`checkCabinet` finds nothing), the same for the same seed and options:
 * chains of drives and encoder interfaces, drives off the chain, supplies, power trees with second feeds, feedback cables, types.
 * Its lists are in the order in which files are written.
 */
export function makeCabinet(seed: number, options: CabinetOptions = {}): CabinetContent {
  const random = new Random(seed);
  const chainCount = options.chains ?? random.whole(1, Math.min(4, options.units ?? 4));
  const unitCount = Math.max(chainCount, options.units ?? random.whole(1, 12));
  const details = options.details ?? true;
  const types = makeTypes(random, options.behaviours ?? random.pick(['default', 'mixed', 'unknown'] as const));
  const legends = details && random.chance(0.5) ? [makeLegend(random)] : [];
  const draft = new Draft(random, types, details);
  draft.addSupplies(options.supplies ?? random.whole(1, 3));
  draft.addChains(chainCount, unitCount, options.encoderShare ?? 0.25);
  draft.addOffChain(options.offChain ?? random.whole(0, 2));
  draft.addLeads();
  draft.addFeedbacks();
  return {
    id: `cab-${seed}`,
    name: `Generated cabinet ${seed}`,
    ...random.maybe(details ? 0.5 : 0, () => ({ site: 'Quillmere Gear Works', machineNumber: `QG7-${random.whole(100, 999)}` })),
    controller: { id: 'nc', designation: '-KF1' },
    chains: draft.chains,
    units: draft.units,
    links: draft.links,
    leads: draft.leads,
    ...(draft.feedbacks.length > 0 ? { feedbacks: draft.feedbacks } : {}),
    ...(types.length > 0 ? { types } : {}),
    ...(legends.length > 0 ? { legends, defaultLegend: 'legend1' } : {}),
    ...random.maybe(details ? 0.3 : 0, () => ({
      notes: 'As found.\nRow 2 could not be opened: “locked” – ask.',
      extra: { tag: [1, null, { deep: 'ü𝄞' }] },
    })),
  };
}

/** Generated cabinets for properties; they shrink towards few units. */
export function arbitraryCabinet(options: CabinetOptions & { readonly maxUnits?: number } = {}): fc.Arbitrary<CabinetContent> {
  const { maxUnits = 12, ...rest } = options;
  const units = rest.units === undefined ? fc.integer({ min: 1, max: maxUnits }) : fc.constant(rest.units);
  return fc.record({ seed: fc.nat(), units }).map(({ seed, units: count }) => makeCabinet(seed, { ...rest, units: count }));
}

class Draft {
  readonly chains: ChainRecord[] = [];
  readonly units: UnitRecord[] = [];
  readonly links: LinkRecord[] = [];
  readonly leads: LeadRecord[] = [];
  readonly feedbacks: FeedbackRecord[] = [];
  readonly #random: Random;
  readonly #types: readonly TypeRecord[];
  readonly #details: boolean;

  constructor(random: Random, types: readonly TypeRecord[], details: boolean) {
    this.#random = random;
    this.#types = types;
    this.#details = details;
  }

  addSupplies(count: number) {
    for (let i = 0; i < count; i++) {
      const outputs = this.#maybe(0.4, () => ({
        supply: {
          outputs: [
            { id: 'x1', name: 'X1' },
            { id: 'x2', name: 'X2', fuse: '-FC1', ratedA: 6 },
          ],
        },
      }));
      this.#addUnit({ kind: 'supply', ...outputs });
    }
  }

  addChains(count: number, unitCount: number, encoderShare: number) {
    // Every chain gets one unit; the others fall where they fall.
    const lengths = Array.from({ length: count }, () => 1);
    for (let i = count; i < unitCount; i++) {
      const chain = this.#random.whole(0, count - 1);
      lengths[chain] = (lengths[chain] ?? 0) + 1;
    }
    for (const [index, length] of lengths.entries()) {
      const chain = `ch${index + 1}`;
      this.chains.push({ id: chain, number: index + 1, ...this.#portBehaviour() });
      let upper: LinkRecord['upper'] = { chain };
      for (let position = 1; position <= length; position++) {
        const unit = this.#addUnit(this.#random.chance(encoderShare) ? { kind: 'encoder-interface' } : this.#drive());
        this.#addLink(upper, unit);
        upper = { unit };
      }
    }
  }

  addOffChain(count: number) {
    for (let i = 0; i < count; i++) this.#addUnit({ ...this.#drive(), onChain: false });
  }

  /** Every unit is fed by a supply, or by a unit that was fed before; now and then twice. */
  addLeads() {
    const sources = this.units.filter(({ kind }) => kind === 'supply');
    for (const unit of this.#random.shuffled(this.units.filter(({ kind }) => kind !== 'supply'))) {
      const feeds = this.#random.chance(0.2) ? 2 : 1;
      for (let i = 0; i < feeds; i++) this.#addLead(this.#random.pick(sources), unit);
      if (this.#random.chance(0.5)) sources.push(unit);
    }
  }

  addFeedbacks() {
    for (const unit of this.units) {
      if (unit.kind === 'supply' || !this.#random.chance(0.6)) continue;
      const id = `g${this.feedbacks.length + 1}`;
      const axis = unit.axes?.[0] === undefined ? {} : this.#maybe(0.5, () => ({ axis: unit.axes?.[0]?.name ?? '' }));
      const plugged = this.#maybe(0.15, () => ({ plugged: false }));
      this.feedbacks.push({
        id,
        ...this.#maybe(0.7, () => ({ designation: `-WG${this.feedbacks.length + 1}` })),
        unit: unit.id,
        ...axis,
        ...this.#maybe(0.5, () => ({ positionKept: this.#random.pick(positionKeeping) })),
        ...plugged,
      });
    }
  }

  #drive(): Pick<UnitRecord, 'kind' | 'axes'> {
    if (this.#random.chance(0.2)) return { kind: 'spindle-drive' };
    const count = this.#random.whole(0, 4);
    if (count === 0) return { kind: 'servo-drive' };
    const axes = Array.from({ length: count }, (_, index) => ({
      name: `${'XYZUVW'[index] ?? 'A'}${this.units.length}`,
      ...this.#maybe(0.2, () => ({ hanging: true })),
    }));
    return { kind: 'servo-drive', axes };
  }

  #addUnit(rest: Omit<UnitRecord, 'id' | 'designation'>): string {
    const number = this.units.length + 1;
    const id = `u${number}`;
    const { kind, onChain, ...others } = rest;
    this.units.push({
      id,
      kind,
      designation: `-T${number}`,
      ...(onChain === undefined ? {} : { onChain }),
      ...(this.#types.length > 0 && kind !== 'supply' ? this.#maybe(0.8, () => ({ type: this.#random.pick(this.#types).id })) : {}),
      ...this.#maybe(0.3, () => ({ model: 'invented model' })),
      ...(this.#details ? { row: Math.floor(number / 10), slot: number % 10 } : {}),
      ...others,
      ...this.#maybe(0.3, () => ({
        partNumber: `P-${this.#random.whole(1, 5)}`,
        revision: 'B',
        serial: `S${this.#random.whole(1000, 9999)}`,
      })),
      ...(kind === 'supply'
        ? {}
        : this.#maybe(0.3, () => ({
            board: { partNumber: `B-${this.#random.whole(1, 3)}` },
            ports: { upMarking: 'IN', downMarking: 'OUT' },
          }))),
      ...this.#maybe(0.1, () => ({ notes: 'has a dent' })),
    });
    return id;
  }

  #addLink(upper: NonNullable<LinkRecord['upper']>, unit: string) {
    const number = this.links.length + 1;
    this.links.push({
      id: `w${number}`,
      ...this.#maybe(0.8, () => ({ designation: `-WH${number}` })),
      upper,
      lower: { unit },
      ...this.#maybe(0.5, () => ({ lengthM: this.#random.tenth(0, 12), couplers: this.#random.whole(0, 2) })),
      ...this.#maybe(0.2, () => ({ bends: [{ radiusMm: 25, quarterTurns: 1 }], route: 'through the door' })),
    });
  }

  #addLead(from: UnitRecord, to: UnitRecord) {
    const number = this.leads.length + 1;
    const output =
      from.supply?.outputs?.[0] === undefined ? {} : this.#maybe(0.6, () => ({ output: this.#random.pick(from.supply?.outputs ?? []).id }));
    this.leads.push({
      id: `l${number}`,
      ...this.#maybe(0.8, () => ({ designation: `-WD${number}` })),
      from: { unit: from.id, ...output },
      to: { unit: to.id },
      ...this.#maybe(0.3, () => ({
        fuse: `-FC${number}`,
        lengthM: this.#random.tenth(0, 20),
        crossSectionMm2: this.#random.pick([0.75, 1, 1.5, 2.5]),
      })),
    });
  }

  #portBehaviour(): Pick<ChainRecord, 'behaviour'> {
    return this.#random.maybe(0.3, () => ({
      behaviour: {
        onReceiveLoss: this.#random.pick(behaviourValues.onReceiveLoss),
        idleLight: this.#random.pick(behaviourValues.idleLight),
      },
    }));
  }

  /** Details come with a probability, or never. */
  #maybe<T extends object>(probability: number, members: () => T): T | Record<string, never> {
    return this.#random.maybe(this.#details ? probability : 0, members);
  }
}

function makeTypes(random: Random, kind: 'default' | 'mixed' | 'unknown'): TypeRecord[] {
  if (kind === 'default') return [];
  const count = random.whole(1, 3);
  return Array.from({ length: count }, (_, index) => {
    const settled = behaviourParameters.map((parameter) => [parameter, random.pick<string>(behaviourValues[parameter])] as const);
    const written = settled.filter(() => random.chance(0.6));
    // At most two types are unknown: more than that is a warning.
    const unknown =
      kind === 'unknown' && index < 2
        ? written.map(([parameter, value]) => [parameter, random.chance(0.4) ? 'unknown' : value] as const)
        : written;
    // Each value was drawn from its own parameter's list, or is `unknown`.
    return {
      id: `type${index + 1}`,
      name: `Invented type ${index + 1}`,
      behaviour: Object.fromEntries(unknown) as NonNullable<TypeRecord['behaviour']>,
    };
  });
}

function makeLegend(random: Random): LegendRecord {
  const codes = Array.from({ length: random.whole(1, 6) }, (_, index) => ({ code: `E${index}`, meanings: [random.pick(displayMeanings)] }));
  return { id: 'legend1', name: 'Invented legend', codes };
}
