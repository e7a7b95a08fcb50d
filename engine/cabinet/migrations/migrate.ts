import { fail, makeProblem, ok, type Result } from '../../base/index.ts';

/** Content of an older version: an object of unknown shape that holds JSON values only. */
export type OldContent = { readonly [key: string]: unknown };

/**
 * One step of a format from version `to − 1` to `to`. Pure; its file is named after both (`0002-….ts`) and never edited after a
 * release. It gets content that was valid in the version before, and must give content that is valid in its own.
 */
export interface Migration {
  readonly to: number;
  readonly name: string;
  readonly migrate: (content: OldContent) => OldContent;
}

/** The newest version to which a list of migrations leads. Version 1 is where formats begin; it has no migration. */
export function newestVersion(migrations: readonly Migration[]): number {
  return 1 + migrations.length;
}

/** The first place at which a list of migrations does not go up one by one from 2; `null` when it is sound. Checked by a test. */
export function findMigrationGap(migrations: readonly Migration[]): number | null {
  const gap = migrations.findIndex(({ to }, index) => to !== index + 2);
  return gap === -1 ? null : gap + 2;
}

/** Brings content of version `from` (1 or more) up to the newest version, step by step. */
export function migrate(content: OldContent, from: number, migrations: readonly Migration[]): Result<OldContent> {
  let current = content;
  for (const step of migrations.slice(from - 1)) {
    try {
      current = step.migrate(current);
    } catch {
      // A migration meets content that was never validated: files of older versions may be damaged in ways that it did not foresee.
      return fail(makeProblem('migration-failed', 'refused', { facts: { from, to: step.to } }));
    }
  }
  return ok(current);
}
