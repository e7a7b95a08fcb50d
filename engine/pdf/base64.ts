const alphabet = 'ABCDEFGHIJKLMNOPQRSTUVWXYZabcdefghijklmnopqrstuvwxyz0123456789+/';
const values = new Uint8Array(128);
for (const [value, sign] of [...alphabet].entries()) values[sign.charCodeAt(0)] = value;

/** The bytes of a base64 text (RFC 4648); signs that do not belong to it count as zero. */
export function decodeBase64(text: string): Uint8Array {
  const signs = text.replace(/=+$/, '');
  const bytes = new Uint8Array(Math.floor((signs.length * 3) / 4));
  let at = 0;
  for (let index = 0; index < signs.length; index += 4) {
    let group = 0;
    for (let sign = 0; sign < 4; sign++) group = (group << 6) | (values[signs.charCodeAt(index + sign)] ?? 0);
    for (const shift of [16, 8, 0]) {
      if (at < bytes.length) bytes[at++] = (group >> shift) & 255;
    }
  }
  return bytes;
}
