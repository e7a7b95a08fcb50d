import { behaviourValues, faultModes, positionKeeping, unitKinds } from '../schema/index.ts';

/*
 * Every field of a cabinet file that can be typed, in the order in which it is shown. A test holds the table and the schema together.
 */

/**
 * What a field takes.
 * - `line`, `notes`: text; `amount`: a number of zero or more; `level`: a number of either sign; `whole`: a whole number;
 *   `share`: from 0 to 1; `flag`: yes or no, or left open.
 * - `choice`: one word of a closed set; `record`: the id of something in the cabinet.
 * - `rows`: a list of groups of fields; `pictures`: ids of photos.
 */
export type FieldForm =
  | 'line'
  | 'notes'
  | 'amount'
  | 'level'
  | 'whole'
  | 'share'
  | 'flag'
  | 'pictures'
  | { readonly choice: readonly string[] }
  | { readonly record: 'types' | 'legends' | 'fibres' | 'supplies' | 'consumers' }
  | { readonly rows: readonly FieldSpec[] };

/** One field. `path` joins the names from the record inwards with dots, as the file names them. */
export interface FieldSpec {
  readonly path: string;
  readonly form: FieldForm;
  /** Units only: the kinds for which it is shown. Left out: all. */
  readonly kinds?: readonly string[];
}

const field = <const P extends string>(path: P, form: FieldForm = 'line') => ({ path, form });
const ofKinds = <const P extends string>(kinds: readonly string[], fields: readonly { readonly path: P; readonly form: FieldForm }[]) =>
  fields.map((one) => ({ ...one, kinds }));

const drives = ['servo-drive', 'spindle-drive'];
const onChain = [...drives, 'encoder-interface'];
const supplies = ['supply'];

const part = [field('partNumber'), field('revision'), field('serial')] as const;
const optics = [
  field('optics.launchPowerMinDbm', 'level'),
  field('optics.launchPowerMaxDbm', 'level'),
  field('optics.sensitivityDbm', 'level'),
  field('optics.overloadDbm', 'level'),
  field('optics.wavelengthNm', 'amount'),
  field('optics.dataRateMbd', 'amount'),
  field('optics.temperatureDbPerK', 'level'),
  field('optics.source'),
] as const;

const axis = [field('name'), field('hanging', 'flag'), field('notes')] as const;
const output = [field('name'), field('fuse'), field('ratedA', 'amount')] as const;
const bend = [field('radiusMm', 'amount'), field('quarterTurns', 'amount')] as const;
const lengthLimit = [field('dataRateMbd', 'amount'), field('maximumLengthM', 'amount'), field('source')] as const;
const axisLimit = [
  field('cycleClass'),
  field('maximumAxes', 'whole'),
  field('cycleUs', 'amount'),
  field('bytesPerAxis', 'amount'),
  field('source'),
] as const;
const rate = [
  field('item', { choice: Object.keys(faultModes) }),
  field('mode'),
  field('perYear', 'amount'),
  field('intermittentShare', 'share'),
  field('source'),
] as const;
const rowName = [field('row', 'whole'), field('name')] as const;

export const fieldSpecs = {
  cabinet: [
    field('name'),
    field('revision'),
    field('site'),
    field('location'),
    field('machineNumber'),
    field('basedOn.design'),
    field('basedOn.revision'),
    field('designationEdition', { choice: ['2019', '2009'] }),
    field('defaultLegend', { record: 'legends' }),
    field('ambientC', 'level'),
    field('ageingReserveDb', 'amount'),
    field('times.openMinutes', 'amount'),
    field('times.dischargeMinutes', 'amount'),
    field('times.bootMinutes', 'amount'),
    field('times.referencingMinutes', 'amount'),
    field('rows', { rows: rowName }),
    field('axisLimits', { rows: axisLimit }),
    field('rates', { rows: rate }),
    field('cabinetPhotos', 'pictures'),
    field('notes', 'notes'),
  ],
  controller: [
    field('designation'),
    field('model'),
    field('powered', 'flag'),
    ...part,
    field('row', 'whole'),
    field('slot', 'whole'),
    field('photos', 'pictures'),
    field('notes', 'notes'),
  ],
  chains: [
    field('number', 'whole'),
    field('name'),
    field('marking'),
    field('cycleClass'),
    field('toleratesFewerUnits', 'flag'),
    field('behaviour.onReceiveLoss', { choice: [...behaviourValues.onReceiveLoss, 'unknown'] }),
    field('behaviour.idleLight', { choice: [...behaviourValues.idleLight, 'unknown'] }),
    ...part,
    ...optics,
  ],
  units: [
    field('designation'),
    field('kind', { choice: unitKinds }),
    field('type', { record: 'types' }),
    field('model'),
    ...ofKinds(drives, [field('onChain', 'flag')]),
    ...ofKinds(onChain, [field('axes', { rows: axis })]),
    ...part,
    ...ofKinds(onChain, [
      field('board.partNumber'),
      field('board.revision'),
      field('board.serial'),
      field('fuse.name'),
      field('fuse.partNumber'),
      field('fuse.ratedA', 'amount'),
      field('ports.upMarking'),
      field('ports.downMarking'),
      field('control24.loadA', 'amount'),
      field('control24.inrushA', 'amount'),
      field('control24.minimumV', 'amount'),
      field('control24.maximumV', 'amount'),
      field('control24.source'),
      field('dcLinkKw', 'amount'),
      field('dcLinkSupply', { record: 'supplies' }),
    ]),
    field('dcLinkCapacitanceUf', 'amount'),
    ...ofKinds(supplies, [
      field('supply.control24.nominalV', 'amount'),
      field('supply.control24.ratedA', 'amount'),
      field('supply.control24.inrushA', 'amount'),
      field('supply.control24.source'),
      field('supply.outputs', { rows: output }),
      field('supply.dcLink.ratedKw', 'amount'),
      field('supply.dcLink.capacitanceUf', 'amount'),
      field('supply.dcLink.dischargeOhm', 'amount'),
      field('supply.dcLink.lineVoltageV', 'amount'),
      field('supply.dcLink.lineTolerancePercent', 'amount'),
      field('supply.dcLink.source'),
    ]),
    field('row', 'whole'),
    field('slot', 'whole'),
    field('photos', 'pictures'),
    field('notes', 'notes'),
  ],
  links: [
    field('designation'),
    field('lengthM', 'amount'),
    field('fibre', { record: 'fibres' }),
    field('route'),
    field('labelUpper'),
    field('labelLower'),
    field('couplers', 'whole'),
    field('bends', { rows: bend }),
    field('measuredLossDb.outbound', 'amount'),
    field('measuredLossDb.return', 'amount'),
    ...part,
    field('notes', 'notes'),
  ],
  leads: [
    field('designation'),
    field('fuse'),
    field('lengthM', 'amount'),
    field('crossSectionMm2', 'amount'),
    field('conductorClass', { choice: ['class-1-2', 'class-5', 'class-5-tinned'] }),
    field('conductorTemperatureC', 'level'),
    ...part,
    field('notes', 'notes'),
  ],
  feedbacks: [
    field('designation'),
    field('unit', { record: 'consumers' }),
    field('axis'),
    field('positionKept', { choice: positionKeeping }),
    field('plugged', 'flag'),
    ...part,
    field('notes', 'notes'),
  ],
  spares: [
    field('designation'),
    field('kind', { choice: ['cable', 'board', 'unit', 'supply', 'lead', 'fuse', 'feedback-cable', 'controller-port', 'other'] }),
    ...part,
    field('count', 'whole'),
    field('fits', { choice: ['yes', 'no', 'unknown'] }),
    field('lengthM', 'amount'),
    field('notes', 'notes'),
  ],
  types: [field('name'), field('legend', { record: 'legends' }), ...optics, field('notes', 'notes')],
  fibres: [
    field('name'),
    field('medium', { choice: ['plastic', 'hard-clad-silica', 'glass'] }),
    field('attenuationDbPerM', 'amount'),
    field('leastAttenuationDbPerM', 'amount'),
    field('maximumLengthM', 'amount'),
    field('lengthLimits', { rows: lengthLimit }),
    field('minimumBendMm', 'amount'),
    field('quarterBendDb', 'amount'),
    field('couplerDb', 'amount'),
    field('endDb', 'amount'),
    field('source'),
  ],
} as const satisfies Readonly<Record<string, readonly FieldSpec[]>>;

/** What has fields. */
export type FieldTable = keyof typeof fieldSpecs;

type Tables = typeof fieldSpecs;
type Spec = Tables[FieldTable][number];
type PathsOf<S> = S extends { readonly path: infer P extends string } ? P : never;
type Inner =
  | (typeof axis)[number]
  | (typeof output)[number]
  | (typeof bend)[number]
  | (typeof lengthLimit)[number]
  | (typeof axisLimit)[number]
  | (typeof rate)[number]
  | (typeof rowName)[number];

/** The path of every field, also of those within rows; each has its words in the catalogue. */
export type FieldPath = PathsOf<Spec> | PathsOf<Inner>;
