import type { Names } from '../messages/index.ts';
import { paperWords } from '../messages/index.ts';
import type { Paper } from '../paper/index.ts';
import type { Cabinet, Topology } from '../topology/index.ts';

/** What documents are made from. */
export interface DocumentSource {
  readonly topology: Topology;
  /** The same, where it is sound; null: what needs a simulation is left out. */
  readonly cabinet: Cabinet | null;
  readonly names: Names;
  /** The day on which it is made: 2026-11-26. */
  readonly date: string;
  /** Told how much of a document is done (0 to 1), where that takes long. */
  readonly onShare?: (share: number) => void;
}

type Given = Pick<Paper, 'id' | 'blocks'> & {
  readonly title: string;
  readonly subtitle?: string;
  readonly foot?: string;
  readonly caution?: NonNullable<Paper['foot']['caution']>;
  readonly isLandscape?: boolean;
};

/** A document with the title block of its cabinet. */
export function makePaper({ topology, date }: DocumentSource, { id, title, subtitle, blocks, foot, caution, isLandscape }: Given): Paper {
  const { content } = topology;
  const lines = [
    [content.site, content.machineNumber === undefined ? '' : paperWords.machine(content.machineNumber)],
    [
      content.revision === undefined ? '' : paperWords.revision(content.revision),
      content.basedOn === undefined ? '' : paperWords.basedOn(content.basedOn.design, content.basedOn.revision ?? ''),
    ],
  ];
  return {
    id,
    head: {
      title,
      subtitle: subtitle ?? paperWords.of(content.name, content.location ?? ''),
      right: lines
        .map((parts) =>
          parts
            .map((part) => part?.trim())
            .filter(Boolean)
            .join(' · '),
        )
        .filter(Boolean),
    },
    foot: {
      left: foot ?? paperWords.of(content.name, content.location ?? ''),
      right: paperWords.printed(date),
      ...(caution === undefined ? {} : { caution }),
    },
    pageOf: paperWords.page,
    ...(isLandscape === true ? { isLandscape } : {}),
    blocks,
  };
}
