import { paperKindWords, startSentence, photoWords as words } from '../messages/index.ts';
import type { Block, Paper } from '../paper/index.ts';
import { inMountingOrder } from '../topology/index.ts';
import { type DocumentSource, makePaper } from './source.ts';

const photoHeight = 105;

/**
 * Gives the photos of a cabinet under a title, each photo once however often it is asked for. A photo that cannot be drawn is named.
 * `height`: the greatest, mm.
 */
export function photoBlocks(
  { topology }: DocumentSource,
  height = photoHeight,
): (title: string, ids: readonly string[] | undefined) => readonly Block[] {
  const shown = new Set<string>();
  return (title, ids) => {
    const photos = (ids ?? []).flatMap((id) => {
      const photo = topology.content.photos?.find((one) => one.id === id);
      if (photo === undefined || shown.has(id)) return [];
      shown.add(id);
      return [photo];
    });
    return photos.map(({ caption, takenOn, mediaType, data }, index): Block => {
      const name = caption?.trim() || words.untitled;
      const photo = {
        mediaType,
        data,
        words: `${title}: ${name}`,
        instead: (mediaType === 'image/webp' ? words.cannotPrintWebp : words.cannotPrint)(name),
      };
      const said = [caption?.trim(), takenOn === undefined ? '' : words.takenOn(takenOn)].filter(Boolean).join(', ');
      const block: Block = { kind: 'photo', photo, height, ...(said === '' ? {} : { caption: said }) };
      return index === 0 ? { kind: 'together', blocks: [{ kind: 'heading', level: 2, text: title }, block] } : block;
    });
  };
}

/** The photos of the cabinet, then of each unit; each photo once. Null when there is none. */
export function photoPages(source: DocumentSource): Paper | null {
  const { topology, names } = source;
  const { content } = topology;
  const blocksOf = photoBlocks(source);
  const blocks = [
    ...blocksOf(words.ofCabinet, content.cabinetPhotos),
    ...blocksOf(names.controller(), content.controller?.photos),
    ...inMountingOrder(topology).flatMap((unit) => blocksOf(names.unit(unit), topology.units.get(unit)?.photos)),
    // What nothing refers to is kept in the file all the same.
    ...blocksOf(
      words.others,
      content.photos?.map(({ id }) => id),
    ),
  ];
  return blocks.length === 0 ? null : makePaper(source, { id: 'photos', title: startSentence(paperKindWords.photos.label), blocks });
}
