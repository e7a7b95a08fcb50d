import type { CabinetContent } from '../../engine/schema/index.ts';

/** How good a picture stays that is packed anew: nobody sees a difference on paper. */
const quality = 0.9;

/**
 * The cabinet with its photos in a form that a PDF can hold: WebP becomes JPEG. What cannot be read stays as it is, and is told when it
 * is printed.
 */
export async function withPrintablePhotos(content: CabinetContent): Promise<CabinetContent> {
  if (content.photos?.some(({ mediaType }) => mediaType === 'image/webp') !== true) return content;
  const photos = await Promise.all(
    content.photos.map(async (photo) => {
      const data = photo.mediaType === 'image/webp' ? await toJpeg(photo.data, photo.mediaType) : null;
      return data === null ? photo : { ...photo, mediaType: 'image/jpeg' as const, data };
    }),
  );
  return { ...content, photos };
}

async function toJpeg(data: string, type: string): Promise<string | null> {
  try {
    const picture = await createImageBitmap(new Blob([bytesOf(data)], { type }));
    const canvas = new OffscreenCanvas(picture.width, picture.height);
    const context = canvas.getContext('2d');
    if (context === null) return null;
    // Paper is white behind what is transparent.
    context.fillStyle = '#ffffff';
    context.fillRect(0, 0, picture.width, picture.height);
    context.drawImage(picture, 0, 0);
    picture.close();
    const bytes = new Uint8Array(await (await canvas.convertToBlob({ type: 'image/jpeg', quality })).arrayBuffer());
    let signs = '';
    for (const byte of bytes) signs += String.fromCharCode(byte);
    return btoa(signs);
  } catch {
    return null;
  }
}

const bytesOf = (data: string) => Uint8Array.from(atob(data), (sign) => sign.charCodeAt(0));
