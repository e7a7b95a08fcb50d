import { describe, expect, it } from 'vitest';
import { fileFormats, formatVersions, makeJsonSchema, schemaNames } from '../../engine/schema/index.ts';
import { schemaFingerprints } from './fingerprints.ts';
import { fingerprint, publishedPath, publishedText } from './publish.ts';

describe('the published schemas', () => {
  // `npm run schema` writes them anew.
  it.each(schemaNames)('should be current: %s', async (name) => {
    await expect(publishedText(name)).toMatchFileSnapshot(publishedPath(name));
  });

  it.each(schemaNames)('should not change within a version: %s', (name) => {
    const known = schemaFingerprints[name];
    const found = fingerprint(publishedText(name));
    const help = `the schema ${name} changed; see tests/files/fingerprints.ts for what to do. Its fingerprint is now ${found}`;
    expect(found, help).toBe(known[Object.keys(known).length]);
  });

  it('should have a fingerprint for every version of each format up to the present one', () => {
    for (const format of fileFormats) {
      const name = schemaNames.find((candidate) => `linkwright-${candidate}` === format);
      const versions = Array.from({ length: formatVersions[format] }, (_, index) => String(index + 1));
      expect(Object.keys(name === undefined ? {} : schemaFingerprints[name])).toEqual(versions);
    }
  });

  it.each(schemaNames)('should say what they are, and in which version: %s', (name) => {
    const version = Object.keys(schemaFingerprints[name]).length;
    expect(makeJsonSchema(name)).toMatchObject({
      $schema: 'https://json-schema.org/draft/2020-12/schema',
      $id: `urn:linkwright-${name}:${version}`,
    });
  });
});
