import { createHash } from 'node:crypto';
import { inflateSync } from 'node:zlib';
import { armor } from 'age-encryption';
import * as vectors from 'cctv-age';
import { describe, expect, it } from 'vitest';
import { openBytes } from '../../engine/sealing/sealing.ts';

/*
 * The published test vectors of the age format (C2SP, community cryptography test vectors, package `cctv-age`; read), as far as they
 * concern a seal: those with a passphrase, and those about armor. A vector is a head of `name: value` lines, an empty line, and a file.
 */

interface Vector {
  readonly name: string;
  readonly expected: string;
  readonly passphrases: readonly string[];
  readonly payload: string;
  readonly armored: boolean;
  readonly file: Buffer;
}

const all: readonly Vector[] = Object.entries(vectors as unknown as Readonly<Record<string, Uint8Array>>).map(([name, bytes]) => {
  const whole = Buffer.from(bytes);
  const end = whole.indexOf('\n\n');
  const lines = whole.subarray(0, end).toString('latin1').split('\n');
  const valuesOf = (field: string) => lines.filter((line) => line.startsWith(`${field}: `)).map((line) => line.slice(field.length + 2));
  const file = whole.subarray(end + 2);
  return {
    name,
    expected: valuesOf('expect')[0] ?? '',
    passphrases: valuesOf('passphrase'),
    payload: valuesOf('payload')[0] ?? '',
    armored: valuesOf('armored')[0] === 'yes',
    file: valuesOf('compressed')[0] === 'zlib' ? inflateSync(file) : file,
  };
});
const withPassphrase = all.filter(({ passphrases }) => passphrases.length > 0);
const aboutArmor = all.filter(({ armored }) => armored);

describe('the published vectors of the age format', () => {
  it('should be there', () => {
    expect(withPassphrase.length).toBeGreaterThanOrEqual(24);
    expect(aboutArmor.length).toBeGreaterThanOrEqual(30);
  });

  it.each(withPassphrase)('should open with the passphrase exactly where they must: $name', async (vector) => {
    const sealed = vector.armored ? vector.file.toString('latin1') : armor.encode(vector.file);
    for (const passphrase of vector.passphrases) {
      const opened = await openBytes(sealed, passphrase);
      expect(opened.ok, vector.expected).toBe(vector.expected === 'success');
      if (opened.ok) expect(createHash('sha256').update(opened.value).digest('hex')).toBe(vector.payload);
    }
  });

  it.each(aboutArmor)('should be taken as armored exactly where they must: $name', ({ expected, file }) => {
    const decode = () => armor.decode(file.toString('latin1'));
    if (expected === 'armor failure') expect(decode).toThrow();
    else expect(decode).not.toThrow();
  });
});
