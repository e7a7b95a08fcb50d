import { fileURLToPath } from 'node:url';
import { describe, expect, it } from 'vitest';
import { fileFormats, formatVersions } from '../../engine/schema/index.ts';
import { schemaFingerprints } from './fingerprints.ts';
import { fingerprint, publishedPath, publishedSchema } from './publish.ts';

describe('the published schemas', () => {
  // `npm run schema` writes them anew.
  it.each(fileFormats)('should be current: %s', async (format) => {
    const path = fileURLToPath(new URL(`../../${publishedPath(format)}`, import.meta.url));
    await expect(publishedSchema(format)).toMatchFileSnapshot(path);
  });

  it.each(fileFormats)('should not change within a version: %s', (format) => {
    const version = formatVersions[format];
    const found = fingerprint(publishedSchema(format));
    const help = `the schema of ${format} changed; see tests/files/fingerprints.ts for what to do. Its fingerprint is now ${found}`;
    expect(found, help).toBe(schemaFingerprints[format][version]);
  });

  it('should have a fingerprint for every version up to the present one', () => {
    for (const format of fileFormats) {
      const versions = Array.from({ length: formatVersions[format] }, (_, index) => String(index + 1));
      expect(Object.keys(schemaFingerprints[format])).toEqual(versions);
    }
  });
});
