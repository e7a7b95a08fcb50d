import type { FieldPath } from '../edit/index.ts';
import { faultModes, type ItemKind } from '../schema/index.ts';
import { behaviourWords } from './behaviour.ts';
import { itemKindWords, modeWords } from './faults.ts';
import { ownWord } from './ownWord.ts';
import { sumsPageWords } from './sumsPage.ts';
import { unitKindWords } from './words.ts';

/*
 * Words of the fields that take one of a closed set, and the groups in which fields are shown.
 */

type Words = Readonly<Record<string, string>>;

const spareKinds: Words = {
  cable: 'optical cable',
  board: 'board',
  unit: 'unit',
  supply: 'supply',
  lead: 'lead',
  fuse: 'fuse',
  'feedback-cable': 'feedback cable',
  'controller-port': 'port board of the controller',
  other: 'something else',
};

const valuesOf = (parameter: 'onReceiveLoss' | 'idleLight'): Words => ({
  ...Object.fromEntries(Object.entries(behaviourWords[parameter].values).map(([value, { label }]) => [value, label])),
  unknown: 'not known',
});

const choices: { readonly [P in FieldPath]?: Words } = {
  kind: { ...spareKinds, ...unitKindWords },
  designationEdition: { '2019': 'edition 2019', '2009': 'edition 2009' },
  'behaviour.onReceiveLoss': valuesOf('onReceiveLoss'),
  'behaviour.idleLight': valuesOf('idleLight'),
  conductorClass: sumsPageWords.conductorClasses,
  positionKept: {
    'battery-in-unit': 'battery in the unit',
    'battery-in-cabinet': 'battery in the cabinet',
    'none-needed': 'no battery needed',
    unknown: 'not known',
  },
  fits: { yes: 'yes', no: 'no', unknown: 'not known' },
  medium: { plastic: 'plastic', 'hard-clad-silica': 'hard-clad silica', glass: 'glass' },
  item: Object.fromEntries(Object.entries(itemKindWords).map(([item, { label }]) => [item, label])),
  mode: Object.fromEntries(
    // The keys of the table are its items.
    (Object.keys(faultModes) as ItemKind[]).flatMap((item) =>
      Object.entries(modeWords[item] as Readonly<Record<string, { readonly label: string }>>).map(([mode, { label }]) => [mode, label]),
    ),
  ),
};

/** A value of a field in words: one of a closed set by its label, yes and no, and everything else as it is written. */
export function wordFieldValue(path: string, value: unknown): string {
  if (typeof value === 'boolean') return value ? 'yes' : 'no';
  if (typeof value === 'number') return String(value);
  // The table is read by paths that come from edits; one without a closed set is not found.
  if (typeof value === 'string') return ownWord(ownWord<Words>(choices, path) ?? {}, value) ?? value;
  if (Array.isArray(value)) return value.length === 1 ? '1 entry' : `${value.length} entries`;
  return '';
}

/** Groups of fields, in the order in which they are shown. */
export const fieldGroups = [
  'main',
  'part',
  'board',
  'fuse',
  'ports',
  'place',
  'control24',
  'dcLink',
  'light',
  'behaviour',
  'times',
  'tables',
  'notes',
] as const;
export type FieldGroup = (typeof fieldGroups)[number];

export const fieldGroupWords: { readonly [G in FieldGroup]: string } = {
  main: '',
  part: 'Part',
  board: 'Communication board',
  fuse: 'Control fuse',
  ports: 'Optical ports',
  place: 'Place',
  control24: '24 V',
  dcLink: 'DC link',
  light: 'Light',
  behaviour: 'Behaviour of the port',
  times: 'Times',
  tables: 'Tables',
  notes: 'Notes and pictures',
};

const groupOfPath: readonly (readonly [RegExp, FieldGroup])[] = [
  [/^(partNumber|revision|serial|count|fits)$/, 'part'],
  [/^board\./, 'board'],
  [/^fuse\./, 'fuse'],
  [/^ports\./, 'ports'],
  [/^(row|slot)$/, 'place'],
  [/control24|^supply\.outputs/, 'control24'],
  [/^dcLink|dcLink\./, 'dcLink'],
  [/^optics|^measuredLoss|^couplers|^bends|^ageingReserveDb|Db(PerM)?$|^minimumBendMm|^lengthLimits/, 'light'],
  [/^behaviour/, 'behaviour'],
  [/^times/, 'times'],
  [/^(rows|axisLimits|rates)$/, 'tables'],
  [/^(notes|photos|cabinetPhotos)$/, 'notes'],
];

/** The group in which a field is shown. */
export function groupOfField(table: string, path: string): FieldGroup {
  if (table === 'cabinet' && path === 'revision') return 'main';
  return groupOfPath.find(([form]) => form.test(path))?.[1] ?? 'main';
}
