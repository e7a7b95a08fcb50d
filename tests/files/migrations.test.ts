import { describe, expect, it } from 'vitest';
import { z } from 'zod';
import { cabinetFile, caseFile, type FileKind, truthFile } from '../../engine/cabinet/file/fileKinds.ts';
import { parseFile } from '../../engine/cabinet/file/parseFile.ts';
import { serializeFile } from '../../engine/cabinet/file/serializeFile.ts';
import { findMigrationGap, type Migration, newestVersion } from '../../engine/cabinet/migrations/index.ts';
import { formatVersions } from '../../engine/schema/index.ts';

describe('the migrations of our formats', () => {
  it.each([cabinetFile, caseFile, truthFile])(
    'should go up without a gap to the version that is written: $format',
    ({ format, migrations }) => {
      expect(findMigrationGap(migrations)).toBeNull();
      expect(newestVersion(migrations)).toBe(formatVersions[format]);
    },
  );

  it('should come with a new case version whenever the cabinet gets one, since a case holds a cabinet', () => {
    expect(caseFile.migrations.length).toBeGreaterThanOrEqual(cabinetFile.migrations.length);
  });
});

describe('parseFile with versions to go through', () => {
  // A format that has gone through three versions: `title` became `name`, then `name` was put into `label`.
  const steps: readonly Migration[] = [
    { to: 2, name: 'title-to-name', migrate: ({ title, ...rest }) => ({ ...rest, name: title }) },
    {
      to: 3,
      name: 'name-into-label',
      migrate: ({ name, ...rest }) => {
        if (typeof name !== 'string') throw new Error('no name');
        return { ...rest, label: { text: name.toUpperCase() } };
      },
    },
  ];
  const kind: FileKind<{ label: { text: string } }> = {
    format: 'linkwright-cabinet',
    schema: z.strictObject({ label: z.strictObject({ text: z.string() }) }),
    migrations: steps,
    doubledIds: () => [],
  };
  const open = (formatVersion: number, content: object) =>
    parseFile(kind, JSON.stringify({ format: 'linkwright-cabinet', formatVersion, content }));
  const problems = (result: ReturnType<typeof open>) => (result.ok ? [] : result.problems.map(({ code, facts }) => [code, facts]));

  it('should bring every older version up to the newest, step by step', () => {
    const value = { label: { text: 'ABC' } };
    expect(open(1, { title: 'abc' })).toEqual({ ok: true, value });
    expect(open(2, { name: 'abc' })).toEqual({ ok: true, value });
    expect(open(3, value)).toEqual({ ok: true, value });
    expect(JSON.parse(serializeFile(kind, value)).formatVersion).toBe(3);
  });

  it('should refuse a version that is still newer', () => {
    expect(problems(open(4, { label: { text: 'ABC' } }))).toEqual([['version-too-new', { version: 4, supported: 3, appVersion: '' }]]);
  });

  it('should open nothing when a step fails, and say which', () => {
    expect(problems(open(1, {}))).toEqual([['migration-failed', { from: 1, to: 3 }]]);
    expect(problems(open(2, { name: 7 }))).toEqual([['migration-failed', { from: 2, to: 3 }]]);
  });

  it('should validate what came out of the steps', () => {
    expect(problems(open(2, { name: 'abc', left: 'over' })).map(([code]) => code)).toEqual(['field-unknown']);
  });

  it('should find a gap in a list', () => {
    const [two, three] = steps as [Migration, Migration]; // the two above
    expect(findMigrationGap([])).toBeNull();
    expect(findMigrationGap([two, three])).toBeNull();
    expect(findMigrationGap([three])).toBe(2);
    expect(findMigrationGap([two, two])).toBe(3);
  });
});
