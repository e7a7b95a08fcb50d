import {
  behaviourParameters,
  behaviourValues,
  circumstanceKinds,
  displayMeanings,
  faultModes,
  itemKinds,
  linkEnds,
  onsets,
  ordinalGroups,
  positionKeeping,
  presences,
  unitKinds,
} from '../../engine/schema/index.ts';

/** Codes that cannot be mistaken for words: those with a hyphen or a capital inside. */
const codes = [
  ...behaviourParameters,
  ...Object.values(behaviourValues).flat(),
  ...circumstanceKinds,
  ...displayMeanings,
  ...Object.values(faultModes).flat(),
  ...itemKinds,
  ...linkEnds,
  ...onsets,
  ...ordinalGroups,
  ...positionKeeping,
  ...presences,
  ...unitKinds,
  // Terms of the simulation and of the diagnosis.
  'not-powered',
  'voltage-too-low',
  'fuse-open',
  'taken-out',
  'feedback-short',
  'board-dead-dark',
  'board-dead-lit',
  'supply-dead',
  'sender-not-alive',
  'receiver-not-alive',
  'hears-both',
  'end-of-chain',
  'off-chain',
  'supply-lit',
  'never-linked',
  'both-shown-as',
  'rates-assumed',
  'type-set-to-default',
  'presence-sampled',
  'behaviour-narrowed',
  'feeds-not-documented',
  'nothing-observed',
].filter((code) => /[-A-Z]/.test(code));

/** Codes of the program that stand in a text meant for people. */
export function rawCodesIn(text: string): readonly string[] {
  const words = new Set(text.split(/[^A-Za-z0-9-]+/));
  return [...new Set(codes)].filter((code) => words.has(code)).concat(/undefined|null|NaN|\[object/.exec(text) ?? []);
}

/** All texts in a table of words, however deep. */
export function textsIn(value: unknown): readonly string[] {
  if (typeof value === 'string') return [value];
  return typeof value === 'object' && value !== null ? Object.values(value).flatMap(textsIn) : [];
}
