import type { SchemaName } from '../../engine/schema/index.ts';

/**
 * The fingerprint of the schema of each version of each format. When a test says that one has changed:
 *
 * - Was a program released that writes this version? Then files of it are about, and the version is frozen: undo the change, or make
 *   a new version (number in `formatVersions`, a migration in `engine/cabinet/migrations`, a golden file, a line here).
 * - Was it not? Then run `npm run schema`, which writes the published schemas anew, and put the new fingerprint here by hand.
 */
export const schemaFingerprints: Readonly<Record<SchemaName, Readonly<Record<number, string>>>> = {
  cabinet: { 1: '17c5bdf71d98367b' },
  case: { 1: 'c89e745f758f9a26' },
  truth: { 1: 'a0dfb13407f7cc4f' },
  exercise: { 1: '55583fd1cce72c48' },
  result: { 1: '304cce509292b25e' },
  'simulate-line': { 1: 'd3774abfedd23792' },
  'diagnose-line': { 1: 'fc359d0473027716' },
};
