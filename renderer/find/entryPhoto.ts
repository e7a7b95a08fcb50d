import type { CabinetContent } from '../../engine/schema/index.ts';

/** How large photos may be. A file is refused above 20 MB; base64 makes three bytes four signs. */
export const photoLimits = {
  longestSidePx: 1600,
  /** What is aimed at, and what is taken at the worst. */
  usualSigns: 700_000,
  mostSigns: 2_000_000,
  /** All photos of a cabinet together. */
  allSigns: 14_000_000,
  /** A picture of the camera, before it is made smaller. */
  fileBytes: 64_000_000,
} as const;

export type PhotoTrouble = 'not-a-picture' | 'too-large' | 'case-full';
export type ShrunkPhoto = { readonly ok: true; readonly data: string } | { readonly ok: false; readonly trouble: PhotoTrouble };

const qualities = [0.85, 0.7, 0.5] as const;

/** Makes a picture a JPEG of bounded size, as base64. What the camera wrote besides (place, owner) is left out by that. */
export async function shrinkPhoto(file: Blob): Promise<ShrunkPhoto> {
  if (file.size > photoLimits.fileBytes) return { ok: false, trouble: 'too-large' };
  let picture: ImageBitmap;
  try {
    picture = await createImageBitmap(file);
  } catch {
    return { ok: false, trouble: 'not-a-picture' };
  }
  const canvas = document.createElement('canvas');
  drawInto(canvas, picture, photoLimits.longestSidePx);
  picture.close();
  let data = '';
  for (const quality of qualities) {
    data = await encode(canvas, quality);
    if (data !== '' && data.length <= photoLimits.usualSigns) break;
  }
  if (data === '') return { ok: false, trouble: 'not-a-picture' };
  return data.length <= photoLimits.mostSigns ? { ok: true, data } : { ok: false, trouble: 'too-large' };
}

/** Whether the cabinet has room for one more photo. */
export function hasRoom({ photos }: CabinetContent, data: string): boolean {
  return (photos ?? []).reduce((sum, photo) => sum + photo.data.length, data.length) <= photoLimits.allSigns;
}

/** Draws a picture no larger than its longest side may be; white behind what is transparent. */
export function drawInto(canvas: HTMLCanvasElement, picture: ImageBitmap, longestSidePx: number): void {
  const scale = Math.min(1, longestSidePx / Math.max(picture.width, picture.height));
  canvas.width = Math.max(1, Math.round(picture.width * scale));
  canvas.height = Math.max(1, Math.round(picture.height * scale));
  const context = canvas.getContext('2d');
  if (!context) return;
  context.fillStyle = 'white';
  context.fillRect(0, 0, canvas.width, canvas.height);
  context.imageSmoothingQuality = 'high';
  context.drawImage(picture, 0, 0, canvas.width, canvas.height);
}

async function encode(canvas: HTMLCanvasElement, quality: number): Promise<string> {
  const blob = await new Promise<Blob | null>((resolve) => canvas.toBlob(resolve, 'image/jpeg', quality));
  if (!blob) return '';
  const bytes = new Uint8Array(await blob.arrayBuffer());
  let text = '';
  // In pieces: a call takes only so many arguments.
  for (let at = 0; at < bytes.length; at += 0x8000) text += String.fromCharCode(...bytes.subarray(at, at + 0x8000));
  return btoa(text);
}

/** The picture of a kept photo; null when its data are damaged. */
export async function readPhoto(data: string, mediaType: string): Promise<ImageBitmap | null> {
  try {
    const bytes = Uint8Array.from(atob(data), (sign) => sign.charCodeAt(0));
    return await createImageBitmap(new Blob([bytes], { type: mediaType }));
  } catch {
    return null;
  }
}
