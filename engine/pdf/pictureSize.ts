/** Size of a picture in pixels. */
export interface PixelSize {
  readonly width: number;
  readonly height: number;
}

/** More pixels than this are not unpacked: a picture made to exhaust the memory. */
const mostPixels = 40_000_000;

/**
 * Reads the size of a PNG or JPEG from its head, without unpacking it; null when it is neither, is cut off, has no pixels or too many
 * of them. Formats: ISO/IEC 15948 (PNG), ITU-T T.81 (JPEG).
 */
export function readPictureSize(bytes: Uint8Array): PixelSize | null {
  const size = isPng(bytes) ? pngSize(bytes) : jpegSize(bytes);
  return size === null || size.width === 0 || size.height === 0 || size.width * size.height > mostPixels ? null : size;
}

const pngHead = [0x89, 0x50, 0x4e, 0x47, 0x0d, 0x0a, 0x1a, 0x0a];

const isPng = (bytes: Uint8Array): boolean => pngHead.every((byte, index) => bytes[index] === byte);

const word = (bytes: Uint8Array, at: number): number => ((bytes[at] ?? 0) << 8) | (bytes[at + 1] ?? 0);
const long = (bytes: Uint8Array, at: number): number => word(bytes, at) * 65536 + word(bytes, at + 2);

function pngSize(bytes: Uint8Array): PixelSize | null {
  // Cut off before its last chunk, the library would wait for ever or throw: ask for it here.
  const end = String.fromCharCode(...bytes.subarray(bytes.length - 8, bytes.length - 4));
  return bytes.length < 45 || end !== 'IEND' ? null : { width: long(bytes, 16), height: long(bytes, 20) };
}

/** Frames that hold a size: SOF0 to SOF15 without the tables that lie between them. */
const isFrame = (marker: number): boolean => marker >= 0xc0 && marker <= 0xcf && ![0xc4, 0xc8, 0xcc].includes(marker);

function jpegSize(bytes: Uint8Array): PixelSize | null {
  if (word(bytes, 0) !== 0xffd8) return null;
  let at = 2;
  while (at + 9 < bytes.length) {
    if (bytes[at] !== 0xff) return null;
    const marker = bytes[at + 1] ?? 0;
    if (marker === 0xff) {
      at += 1;
      continue;
    }
    if (isFrame(marker)) return { width: word(bytes, at + 7), height: word(bytes, at + 5) };
    const length = word(bytes, at + 2);
    if (length < 2) return null;
    at += 2 + length;
  }
  return null;
}
