import type { z } from 'zod';
import type { Problem } from '../../base/index.ts';
import {
  type CabinetContent,
  type CaseContent,
  cabinetContent,
  caseContent,
  type ExerciseContent,
  exerciseContent,
  type FileFormat,
  type ResultContent,
  resultContent,
  type TruthContent,
  truthContent,
} from '../../schema/index.ts';
import { checkIds } from '../checks/index.ts';
import {
  cabinetMigrations,
  caseMigrations,
  exerciseMigrations,
  type Migration,
  resultMigrations,
  truthMigrations,
} from '../migrations/index.ts';

/** All that the one way in needs to know of a kind of file. */
export interface FileKind<T> {
  readonly format: FileFormat;
  readonly schema: z.ZodType<T>;
  readonly migrations: readonly Migration[];
  /** Ids given twice, with pointers into the content. */
  readonly doubledIds: (content: T) => readonly Problem[];
}

export const cabinetFile: FileKind<CabinetContent> = {
  format: 'linkwright-cabinet',
  schema: cabinetContent,
  migrations: cabinetMigrations,
  doubledIds: (content) => checkIds(content, 'refused'),
};

export const caseFile: FileKind<CaseContent> = {
  format: 'linkwright-case',
  schema: caseContent,
  migrations: caseMigrations,
  doubledIds: (content) => checkIds(content.cabinet, 'refused', '/cabinet'),
};

export const truthFile: FileKind<TruthContent> = {
  format: 'linkwright-truth',
  schema: truthContent,
  migrations: truthMigrations,
  doubledIds: () => [],
};

export const exerciseFile: FileKind<ExerciseContent> = {
  format: 'linkwright-exercise',
  schema: exerciseContent,
  migrations: exerciseMigrations,
  doubledIds: (content) => checkIds(content.cabinet, 'refused', '/cabinet'),
};

export const resultFile: FileKind<ResultContent> = {
  format: 'linkwright-result',
  schema: resultContent,
  migrations: resultMigrations,
  doubledIds: () => [],
};
