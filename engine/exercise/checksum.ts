/**
 * CRC-32 of a text in UTF-8, as eight hexadecimal digits: the checksum of ISO/IEC/IEEE 8802-3 and ITU-T V.42 (reflected polynomial
 * EDB88320). It finds accidents: a cut file, a changed digit. It keeps nobody from forging.
 */
export function checksum(text: string): string {
  let crc = 0xffffffff;
  for (const byte of new TextEncoder().encode(text)) crc = (crc >>> 8) ^ (table[(crc ^ byte) & 0xff] ?? 0);
  return ((crc ^ 0xffffffff) >>> 0).toString(16).padStart(8, '0');
}

const table: readonly number[] = Array.from({ length: 256 }, (_, byte) => {
  let value = byte;
  for (let bit = 0; bit < 8; bit += 1) value = value & 1 ? (value >>> 1) ^ 0xedb88320 : value >>> 1;
  return value >>> 0;
});
