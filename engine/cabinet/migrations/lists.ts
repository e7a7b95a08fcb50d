import type { Migration } from './migrate.ts';

/*
 * The migrations of each format, from version 2 upwards without a gap. All formats are at version 1, which has none.
 * A case holds a cabinet: a new cabinet version therefore needs a new case version too, whose migration hands `content.cabinet`
 * to the cabinet's.
 */

export const cabinetMigrations: readonly Migration[] = [];
export const caseMigrations: readonly Migration[] = [];
export const truthMigrations: readonly Migration[] = [];
export const exerciseMigrations: readonly Migration[] = [];
export const resultMigrations: readonly Migration[] = [];
