import { armor, Decrypter, Encrypter } from 'age-encryption';
import { fail, makeProblem, ok, type Result } from '../base/index.ts';
import { type AnswerContent, answerContent } from '../schema/index.ts';

/** Work factor of scrypt (2^16): some tenths of a second for us, and as much for each guess at the passphrase. */
const usualWork = 16;
/** A seal that asks for more than this was made to keep the program busy. */
const mostWork = 20;

/**
 * Seals an answer: JSON in the open format age-encryption.org/v1, locked with a passphrase, as armored text. Any other program for
 * that format opens it with the passphrase too. The seal is different each time: its salt is drawn by chance. `workFactor`: the
 * exponent of scrypt; less than the usual is for tests alone.
 */
export function sealAnswer(answer: AnswerContent, passphrase: string, options: { readonly workFactor?: number } = {}): Promise<string> {
  return sealText(JSON.stringify(answer), passphrase, options);
}

/** Seals any text in the same way. */
export async function sealText(text: string, passphrase: string, { workFactor = usualWork } = {}): Promise<string> {
  const encrypter = new Encrypter();
  encrypter.setPassphrase(passphrase);
  encrypter.setScryptWorkFactor(workFactor);
  return armor.encode(await encrypter.encrypt(text));
}

/** Opens a seal. Fails with a problem when the passphrase is wrong, or what is sealed is no answer. */
export async function openSeal(sealed: string, passphrase: string): Promise<Result<AnswerContent>> {
  const opened = await openBytes(sealed, passphrase);
  if (!opened.ok) return opened;
  const parsed = answerContent.safeParse(parseJson(new TextDecoder().decode(opened.value)));
  return parsed.success ? ok(parsed.data) : fail(makeProblem('exercise-seal-damaged', 'refused', { where: '/sealed' }));
}

/** What is sealed, whatever it is. Fails with a problem when the passphrase is wrong, or the seal is none. */
export async function openBytes(sealed: string, passphrase: string): Promise<Result<Uint8Array>> {
  const bytes = decodeArmor(sealed);
  if (bytes === null || workOf(bytes) > mostWork) return fail(makeProblem('exercise-seal-damaged', 'refused', { where: '/sealed' }));
  const opened = await decrypt(bytes, passphrase);
  return opened === null ? fail(makeProblem('exercise-seal-closed', 'refused', { where: '/sealed' })) : ok(opened);
}

function decodeArmor(sealed: string): Uint8Array | null {
  try {
    return armor.decode(sealed);
  } catch {
    return null; // not armored text at all
  }
}

/** The work factor that the head of a seal asks for; more than any where it says none. */
function workOf(bytes: Uint8Array): number {
  const head = new TextDecoder().decode(bytes.subarray(0, 200));
  return Number(/\n-> scrypt \S+ (\d{1,3})\n/.exec(head)?.[1] ?? Number.POSITIVE_INFINITY);
}

async function decrypt(bytes: Uint8Array, passphrase: string): Promise<Uint8Array | null> {
  try {
    const decrypter = new Decrypter();
    decrypter.addPassphrase(passphrase);
    return await decrypter.decrypt(bytes);
  } catch {
    return null; // the library throws for a wrong passphrase and for a changed seal alike
  }
}

function parseJson(text: string): unknown {
  try {
    return JSON.parse(text);
  } catch {
    return null; // sealed by something else
  }
}

/** The passphrase of the exercises that come with the program: no secret, only a lid against reading the answer by accident. */
export const readyPassphrase = 'quillmere';
