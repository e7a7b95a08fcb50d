import type { CabinetContent, Evidence, Intervention } from '../schema/index.ts';

/** Where a part stands in the cabinet file. */
export interface PartOwner {
  readonly kind: 'board' | 'unit' | 'link' | 'lead' | 'feedback' | 'fuse' | 'chain' | 'controller';
  readonly id: string;
}

/** A part that was put in, and what the cabinet file says of the one before. */
export interface ReplacedPart {
  readonly owner: PartOwner;
  readonly act: Intervention;
  readonly before: PartFigures;
  /** What is known of the new one: that of the spare, and the serial that was noted with the act. */
  readonly proposed: PartFigures;
  /** The spare of the cabinet's stock that was used. */
  readonly spare: string | null;
}

export interface PartFigures {
  readonly partNumber: string;
  readonly serial: string;
}

/** What is to be written down of a part that was put in. */
export interface NewPart extends PartFigures {
  readonly owner: PartOwner;
  readonly spare: string | null;
}

/** The parts that were put in, each place once: what stands there now is the last one. */
export function listReplaced(content: CabinetContent, { snapshots }: Evidence): readonly ReplacedPart[] {
  const found = new Map<string, ReplacedPart>();
  for (const act of snapshots.flatMap(({ interventions }) => interventions ?? [])) {
    const owner = ownerOf(act, content);
    if (owner === null) {
      continue;
    }
    const before = figuresOf(content, owner);
    const spareId = 'spare' in act ? (act.spare ?? null) : null;
    const spare = content.spares?.find(({ id }) => id === spareId);
    const serial = ('serial' in act ? act.serial : undefined) ?? spare?.serial ?? '';
    const proposed = { partNumber: spare?.partNumber ?? before.partNumber, serial };
    const key = `${owner.kind}/${owner.id}`;
    found.delete(key);
    found.set(key, { owner, act, before, proposed, spare: spare?.id ?? null });
  }
  return [...found.values()];
}

function ownerOf(act: Intervention, content: CabinetContent): PartOwner | null {
  switch (act.do) {
    case 'replace-cable':
      return { kind: 'link', id: act.link };
    case 'replace-board':
      return { kind: 'board', id: act.unit };
    case 'replace-unit':
    case 'replace-supply':
      return { kind: 'unit', id: act.unit };
    case 'replace-fuse':
      return { kind: 'fuse', id: act.unit };
    case 'replace-lead':
      return { kind: 'lead', id: act.lead };
    case 'replace-feedback':
      return { kind: 'feedback', id: act.feedback };
    case 'replace-controller-port':
      return { kind: 'chain', id: act.chain };
    case 'replace-controller':
      return content.controller === undefined ? null : { kind: 'controller', id: content.controller.id };
    default:
      return null;
  }
}

interface Part {
  readonly partNumber?: string | undefined;
  readonly serial?: string | undefined;
}

function figuresOf(content: CabinetContent, owner: PartOwner): PartFigures {
  const part = partOf(content, owner);
  return { partNumber: part?.partNumber ?? '', serial: part?.serial ?? '' };
}

function partOf(content: CabinetContent, { kind, id }: PartOwner): Part | undefined {
  const unit = content.units?.find((one) => one.id === id);
  switch (kind) {
    case 'board':
      return unit?.board;
    case 'fuse':
      return unit?.fuse;
    case 'unit':
      return unit;
    case 'link':
      return content.links?.find((one) => one.id === id);
    case 'lead':
      return content.leads?.find((one) => one.id === id);
    case 'feedback':
      return content.feedbacks?.find((one) => one.id === id);
    case 'chain':
      return content.chains?.find((one) => one.id === id);
    case 'controller':
      return content.controller;
  }
}

/** The cabinet with the parts written down that were put in, and one spare less of each that came out of its stock. */
export function writeReplaced(content: CabinetContent, parts: readonly NewPart[]): CabinetContent {
  return parts.reduce((before, part) => takeSpare(writePart(before, part), part.spare), content);
}

function writePart(content: CabinetContent, part: NewPart): CabinetContent {
  const { kind, id } = part.owner;
  const at = <T extends { readonly id: string }>(list: readonly T[] | undefined, change: (one: T) => T) =>
    list?.map((one) => (one.id === id ? change(one) : one));
  const set = <T extends Part>(one: T): T => withFigures(one, part);
  switch (kind) {
    case 'board':
      return { ...content, units: at(content.units, (unit) => ({ ...unit, board: withFigures(unit.board ?? {}, part) })) };
    case 'fuse': {
      // A fuse bears no serial number.
      const fuse = (one: NonNullable<CabinetContent['units']>[number]['fuse']) => {
        const { partNumber: _old, ...rest } = one ?? {};
        return part.partNumber === '' ? rest : { ...rest, partNumber: part.partNumber };
      };
      return { ...content, units: at(content.units, (unit) => ({ ...unit, fuse: fuse(unit.fuse) })) };
    }
    case 'unit':
      return { ...content, units: at(content.units, set) };
    case 'link':
      return { ...content, links: at(content.links, set) };
    case 'lead':
      return { ...content, leads: at(content.leads, set) };
    case 'feedback':
      return { ...content, feedbacks: at(content.feedbacks, set) };
    case 'chain':
      return { ...content, chains: at(content.chains, set) };
    case 'controller':
      return content.controller === undefined ? content : { ...content, controller: set(content.controller) };
  }
}

/** What is left empty is left out: nobody knows the number of the new part, and that of the old one no longer holds. */
function withFigures<T extends Part>(one: T, { partNumber, serial }: PartFigures): T {
  const { partNumber: _number, serial: _serial, ...rest } = one;
  // The two fields left out are put in again where they are known.
  return { ...rest, ...(partNumber === '' ? {} : { partNumber }), ...(serial === '' ? {} : { serial }) } as T;
}

function takeSpare(content: CabinetContent, spare: string | null): CabinetContent {
  if (spare === null) {
    return content;
  }
  const spares = content.spares?.flatMap((one) => {
    if (one.id !== spare) return [one];
    const left = (one.count ?? 1) - 1;
    const { serial: _gone, ...rest } = one;
    return [{ ...rest, count: Math.max(0, left) }];
  });
  return spares === undefined ? content : { ...content, spares };
}
