import { unzlibSync } from 'fflate';

const headBytes = 44;
const entryBytes = 20;
const recordBytes = 16;

/**
 * Unpacks a WOFF 1.0 font file (W3C Recommendation, 13 December 2012) into the plain form: the same tables, unpacked, with a directory
 * before them. Order and checksums of the directory are taken over.
 */
export function unpackWoff(file: Uint8Array): Uint8Array {
  const view = new DataView(file.buffer, file.byteOffset, file.byteLength);
  const count = view.getUint16(12);
  const tables = Array.from({ length: count }, (_, index) => {
    const at = headBytes + index * entryBytes;
    const [offset, packed, length] = [view.getUint32(at + 4), view.getUint32(at + 8), view.getUint32(at + 12)];
    const data = file.subarray(offset, offset + packed);
    return { tag: view.getUint32(at), checksum: view.getUint32(at + 16), data: packed < length ? unzlibSync(data) : data };
  });
  const padded = (length: number) => Math.ceil(length / 4) * 4;
  const size = tables.reduce((sum, { data }) => sum + padded(data.length), 12 + count * recordBytes);
  const bytes = new Uint8Array(size);
  const out = new DataView(bytes.buffer);
  const power = 2 ** Math.floor(Math.log2(count));
  out.setUint32(0, view.getUint32(4));
  out.setUint16(4, count);
  out.setUint16(6, power * 16);
  out.setUint16(8, Math.log2(power));
  out.setUint16(10, (count - power) * 16);
  let offset = 12 + count * recordBytes;
  tables.forEach(({ tag, checksum, data }, index) => {
    const at = 12 + index * recordBytes;
    out.setUint32(at, tag);
    out.setUint32(at + 4, checksum);
    out.setUint32(at + 8, offset);
    out.setUint32(at + 12, data.length);
    bytes.set(data, offset);
    offset += padded(data.length);
  });
  return bytes;
}
