/**
 * The closed sets of the domain. Each is an array, so that the type, the file schema, select boxes and test tables all come from
 * one place. Meaning: the glossary in DEVELOPERS.md.
 */

/** What can stand in a cabinet besides the controller. */
export const unitKinds = ['servo-drive', 'spindle-drive', 'encoder-interface', 'supply'] as const;
export type UnitKind = (typeof unitKinds)[number];

/** The two groups in which a chain is counted; each has its own ordinals on each chain. */
export const ordinalGroups = ['drive', 'encoder-interface'] as const;
export type OrdinalGroup = (typeof ordinalGroups)[number];

/** What a unit's display can say. */
export const displayMeanings = ['dark', 'quiet', 'upstream-loss', 'downstream-loss', 'both-losses', 'other'] as const;
export type DisplayMeaning = (typeof displayMeanings)[number];

/** What a supply's display can say. */
export const supplyMeanings = ['dark', 'quiet', 'other'] as const satisfies readonly DisplayMeaning[];

/** The parameters of a unit's behaviour and their values; the first value of each is the default. */
export const behaviourValues = {
  lossScope: ['neighbour', 'chain'],
  onReceiveLoss: ['mute', 'keep'],
  idleLight: ['yes', 'no'],
  complainsFrom: ['link-up', 'power-on'],
  whenBoth: ['both', 'upstream', 'downstream'],
  holds: ['until-reset', 'live'],
  shortEffect: ['dark', 'code', 'code-linked'],
} as const;
export type BehaviourParameter = keyof typeof behaviourValues;
/** The behaviour parameters in the order in which they are listed and written. */
export const behaviourParameters = Object.keys(behaviourValues) as readonly BehaviourParameter[];
/** A unit's behaviour with every parameter settled. */
export type Behaviour = { readonly [P in BehaviourParameter]: (typeof behaviourValues)[P][number] };

/** When a loss came: the machine was running, or it was being switched on. */
export const onsets = ['while-running', 'at-power-up'] as const;
export type Onset = (typeof onsets)[number];

/** Whether a fault is there all the time, or comes and goes. */
export const presences = ['steady', 'intermittent'] as const;
export type Presence = (typeof presences)[number];

/** The two fibres of a link: controller outwards, and back. */
export const directions = ['outbound', 'return'] as const;
export type Direction = (typeof directions)[number];

/** The two ends of a link: the upper one is nearer the controller. */
export const linkEnds = ['upper', 'lower'] as const;
export type LinkEnd = (typeof linkEnds)[number];

/** How a machine's reference position is kept while everything is off. */
export const positionKeeping = ['battery-in-unit', 'battery-in-cabinet', 'none-needed', 'unknown'] as const;

/** States of the machine: powered and closed, powered with its doors open, or off, locked and discharged. */
export const machineStates = ['closed', 'open', 'isolated'] as const;
export type MachineState = (typeof machineStates)[number];

/** Ways to see whether something that comes and goes comes again: after a restart wait, move cables, or let it get warm. */
export const provocations = ['wait', 'flex', 'warm'] as const;
export type Provocation = (typeof provocations)[number];

/** How a search can end (DOMAIN.md section 7); `open`: the machine is handed over with the cause not found. */
export const caseEnds = ['proved', 'not-proved', 'running-provisionally', 'open'] as const;
export type CaseEnd = (typeof caseEnds)[number];

/** What is checked before a machine is handed back. */
export const handBackChecks = ['displays', 'put-back', 'plugs', 'reference', 'hanging-axes', 'safety', 'closed', 'ran', 'told'] as const;
export type HandBackCheck = (typeof handBackChecks)[number];

/** Everything that can be done to a cabinet. */
export const actKinds = [
  'unplug',
  'plug-in',
  'reseat-plug',
  'clean-plug',
  're-route',
  'replace-cable',
  'exchange-cables',
  'turn-cable',
  'uncross-fibres',
  'uncross-plugs',
  'replace-board',
  'exchange-boards',
  'replace-unit',
  'reseat-unit',
  'take-out-unit',
  'put-back-unit',
  'replace-fuse',
  'replace-supply',
  'replace-lead',
  'replace-controller-port',
  'replace-controller',
  'pull-feedback',
  'plug-feedback',
  'replace-feedback',
  'bridge-unit',
  'unbridge-unit',
] as const;
export type ActKind = (typeof actKinds)[number];

/** Things that make some faults likelier; ticked by the user. `not-reworked`: nobody wired anything since the machine last ran. */
export const circumstanceKinds = [
  'transport-or-crash',
  'work-at-door',
  'recent-exchange',
  'oil-or-coolant',
  'heat',
  'storm',
  'not-reworked',
] as const;
export type CircumstanceKind = (typeof circumstanceKinds)[number];

/** Every kind of item or place that can be at fault, with its modes. */
export const faultModes = {
  cable: ['cut', 'outbound-cut', 'return-cut', 'outbound-dim', 'return-dim', 'fibres-crossed'],
  plug: ['loose', 'fouled'],
  route: ['kinked'],
  board: ['dead-dark', 'dead-lit', 'up-rx', 'up-tx', 'down-rx', 'down-tx', 'up-port', 'down-port'],
  fuse: ['open'],
  place: ['contact-bad'],
  wiring: ['crossed'],
  'controller-port': ['dead'],
  controller: ['all-ports-dead'],
  lead: ['open'],
  supply: ['output-lost', 'dead'],
  feedback: ['short'],
} as const;
export type ItemKind = keyof typeof faultModes;
export const itemKinds = Object.keys(faultModes) as readonly ItemKind[];
export type FaultMode<K extends ItemKind = ItemKind> = (typeof faultModes)[K][number];
