import { execFileSync, spawnSync } from 'node:child_process';
import { createDecipheriv, createHmac, hkdfSync, scryptSync } from 'node:crypto';
import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { parseExerciseFile } from '../../engine/cabinet/index.ts';
import { openSeal, readyPassphrase, sealAnswer, weighPassphrase } from '../../engine/sealing/index.ts';
import { readyGame } from './readyGames.ts';

/** Little work for tests; the ready files have the usual work. */
const low = { workFactor: 8 };
const { answer } = readyGame('neighbours');
const begin = '-----BEGIN AGE ENCRYPTED FILE-----';
const end = '-----END AGE ENCRYPTED FILE-----';

const codesOf = (opened: Awaited<ReturnType<typeof openSeal>>) => (opened.ok ? [] : opened.problems.map(({ code }) => code));
const bytesOf = (sealed: string) => Buffer.from(sealed.replace(/-----[^-]+-----/g, ''), 'base64');
const armored = (bytes: Uint8Array) => `${begin}\n${Buffer.from(bytes).toString('base64').replace(/.{64}/g, '$&\n').trim()}\n${end}\n`;

/**
 * Another reader of the format, written for this test after the text of the age specification (C2SP, age.md, v1.1.0; from memory)
 * with the primitives of Node alone: scrypt recipient, header MAC, payload in chunks of 64 KiB.
 */
function openOtherwise(sealed: string, passphrase: string): string {
  const bytes = bytesOf(sealed);
  const text = bytes.toString('latin1');
  const match = /^age-encryption\.org\/v1\n-> scrypt (\S+) (\d+)\n(\S+)\n--- (\S+)\n/.exec(text);
  if (match === null) throw new Error('no header');
  const [header, salt = '', work = '', body = '', mac = ''] = match;
  const unchaining = (key: Uint8Array, nonce: Uint8Array, data: Uint8Array) => {
    const decipher = createDecipheriv('chacha20-poly1305', key, nonce, { authTagLength: 16 });
    decipher.setAuthTag(data.subarray(-16));
    return Buffer.concat([decipher.update(data.subarray(0, -16)), decipher.final()]);
  };
  const scryptSalt = Buffer.concat([Buffer.from('age-encryption.org/v1/scrypt'), Buffer.from(salt, 'base64')]);
  const wrapping = scryptSync(passphrase, scryptSalt, 32, { N: 2 ** Number(work), r: 8, p: 1, maxmem: 2 ** 28 });
  const fileKey = unchaining(wrapping, new Uint8Array(12), Buffer.from(body, 'base64'));
  const macKey = Buffer.from(hkdfSync('sha256', fileKey, '', 'header', 32));
  const said = createHmac('sha256', macKey)
    .update(header.slice(0, header.indexOf('---') + 3), 'latin1')
    .digest('base64')
    .replace(/=+$/, '');
  if (said !== mac) throw new Error('header MAC');
  const payload = bytes.subarray(header.length);
  const key = Buffer.from(hkdfSync('sha256', fileKey, payload.subarray(0, 16), 'payload', 32));
  const chunk = payload.subarray(16);
  if (chunk.length > 2 ** 16 + 16) throw new Error('more than one chunk');
  // One chunk, number 0, marked as the last.
  return unchaining(key, Buffer.from([...new Uint8Array(11), 1]), chunk).toString('utf8');
}

describe('the seal', () => {
  it('should be armored age with a passphrase, and open with that passphrase only', async () => {
    const sealed = await sealAnswer(answer, 'correct horse', low);
    expect(sealed).toMatch(/^-----BEGIN AGE ENCRYPTED FILE-----\n[A-Za-z0-9+/=\n]+\n-----END AGE ENCRYPTED FILE-----\n?$/);
    const body = bytesOf(sealed).toString('latin1');
    for (const hidden of ['WH3', 'cut', answer.story ?? '-']) expect(body).not.toContain(hidden);
    expect(await openSeal(sealed, 'correct horse')).toEqual({ ok: true, value: answer });
    expect(codesOf(await openSeal(sealed, 'Correct horse'))).toEqual(['exercise-seal-closed']);
    expect(await sealAnswer(answer, 'correct horse', low)).not.toBe(sealed);
  });

  it('should be opened by another reader, written after the text of the format', async () => {
    const sealed = await sealAnswer(answer, 'correct horse', low);
    expect(JSON.parse(openOtherwise(sealed, 'correct horse'))).toEqual(answer);
    expect(() => openOtherwise(sealed, 'wrong')).toThrow();
    // A ready exercise as it lies in the program, with the usual work.
    const file = parseExerciseFile(readFileSync('sample-cabinets/ready-02-neighbours.exercise.json'));
    if (!file.ok) throw new Error('damaged');
    expect(bytesOf(file.value.sealed).toString('latin1')).toMatch(/^age-encryption\.org\/v1\n-> scrypt \S+ 16\n/);
    expect(JSON.parse(openOtherwise(file.value.sealed, readyPassphrase))).toEqual(answer);
  });

  it.each(['', 'nonsense', `${begin}\nAAAA\n${end}\n`])('should refuse what is no seal: %j', async (text) => {
    expect(codesOf(await openSeal(text, 'x'))).toEqual(['exercise-seal-damaged']);
  });

  it('should notice each changed byte, and a seal that is cut off', async () => {
    const bytes = bytesOf(await sealAnswer(answer, 'x', low));
    for (let at = 0; at < bytes.length; at += 37) {
      const changed = Uint8Array.from(bytes);
      changed[at] = (changed[at] ?? 0) ^ 0x11;
      const opened = await openSeal(armored(changed), 'x');
      expect(opened.ok, `byte ${at}`).toBe(false);
    }
    for (const length of [0, 20, 100, bytes.length - 1]) {
      expect((await openSeal(armored(bytes.subarray(0, length)), 'x')).ok).toBe(false);
    }
  });

  it('should refuse a seal that asks for huge work, at once', async () => {
    const text = bytesOf(await sealAnswer(answer, 'x', low)).toString('latin1');
    for (const work of ['21', '30', '64', '999', '-1', '1e3', '']) {
      const began = process.cpuUsage();
      const huge = Buffer.from(text.replace(/(-> scrypt \S+) 8\n/, `$1 ${work}\n`), 'latin1');
      expect(codesOf(await openSeal(armored(huge), 'x')), work).toEqual(['exercise-seal-damaged']);
      expect(process.cpuUsage(began).user).toBeLessThan(1_000_000);
    }
  });
});

/*
 * The program `age` (1.1 and later), where it and `script`, which gives it a terminal for the passphrase, are installed.
 */
const hasAge = spawnSync('age', ['--version']).status === 0 && spawnSync('script', ['--version']).status === 0;
if (!hasAge) console.warn('skipped: the program age, or script, is not installed here');

describe.skipIf(!hasAge)('the seal and the program age', () => {
  it('should be opened by it', async () => {
    const folder = mkdtempSync(join(tmpdir(), 'linkwright-age-'));
    writeFileSync(join(folder, 'sealed.age'), await sealAnswer(answer, 'correct horse', low));
    const command = `age --decrypt --output '${join(folder, 'out.json')}' '${join(folder, 'sealed.age')}'`;
    execFileSync('script', ['--quiet', '--return', '--command', command, '/dev/null'], { input: 'correct horse\n', timeout: 20_000 });
    expect(JSON.parse(readFileSync(join(folder, 'out.json'), 'utf8'))).toEqual(answer);
    rmSync(folder, { recursive: true });
  });
});

describe('a passphrase', () => {
  it.each(['', 'x', 'abcdefghijkl', 'aaaaaaaaaaaaaa', '123456789', 'kiln', '4711', 'Password', readyPassphrase])(
    'should be too weak: %j',
    (typed) => {
      expect(weighPassphrase(typed).isEnough).toBe(false);
    },
  );
  it.each(['kiln and quartz', 'take your time', 'xkvrwqpt', 'Tr7#pm0'])('should be enough: %j', (typed) => {
    expect(weighPassphrase(typed).isEnough).toBe(true);
  });
  it('should be bounded as if drawn by chance: 26 to the 4th, half of them tried, a fifth of a second each', () => {
    expect(weighPassphrase('kilt').seconds).toBeCloseTo((26 ** 4 / 2) * 0.2, 6);
  });
});
