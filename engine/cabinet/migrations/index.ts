export { cabinetMigrations, caseMigrations, exerciseMigrations, resultMigrations, truthMigrations } from './lists.ts';
export { findMigrationGap, type Migration, migrate, newestVersion, type OldContent } from './migrate.ts';
