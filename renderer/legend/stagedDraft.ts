import type { ChainId, LinkId, TypeId, UnitId } from '../../engine/base/index.ts';
import type { StagedBreak } from '../../engine/behaviour/index.ts';
import { linkEnds } from '../../engine/schema/index.ts';
import type { Cabinet, ChainTopology } from '../../engine/topology/index.ts';
import type { StagedDraft, StagedEntry } from './equipmentState.ts';

/** The chain of a link; undefined when the link is not in the cabinet. */
export function chainOf(cabinet: Cabinet, link: string): ChainTopology | undefined {
  return cabinet.chains.find(({ links }) => links.some((one) => one === link));
}

/** The links that a unit of the type has an end of, those at which two of them meet first. */
export function linksOfType(cabinet: Cabinet, type: string): readonly LinkId[] {
  const isOfType = (unit: UnitId | undefined) => unit !== undefined && cabinet.units.get(unit)?.type === type;
  const all = cabinet.chains.flatMap((chain) =>
    chain.links.map((link, index) => ({
      link,
      ends: [chain.units[index - 1], chain.units[index]].filter(isOfType).length,
      inMiddle: Number(index > 0 && index < chain.links.length - 1),
    })),
  );
  return [...all].sort((a, b) => b.ends - a.ends || b.inMiddle - a.inMiddle).map(({ link }) => link);
}

export function emptyEntry(link: string): StagedEntry {
  return {
    id: 0,
    link,
    end: 'lower',
    onset: 'while-running',
    pluggedAgain: false,
    displays: [],
    gap: null,
    light: { upper: null, lower: null },
  };
}

/** The draft of a type that nothing was staged of yet. */
export function freshDraft(cabinet: Cabinet, type: string): StagedDraft | null {
  const [link] = linksOfType(cabinet, type);
  return link === undefined ? null : { breaks: [emptyEntry(link)], at: 0, confirmed: false, thoroughly: false };
}

/** What was entered, as the engine takes it; breaks of which no display was read are left out. */
export function toBreaks(cabinet: Cabinet, draft: StagedDraft): readonly StagedBreak[] {
  return draft.breaks
    .filter(({ displays }) => displays.length > 0)
    .map(({ link, end, onset, pluggedAgain, displays, gap, light }): StagedBreak => {
      const chain: ChainId | undefined = chainOf(cabinet, link)?.id;
      return {
        link: link as LinkId, // chosen from the cabinet's own links
        end,
        onset,
        pluggedAgain,
        displays: displays.map(({ unit, meanings }) => ({ unit: unit as UnitId, meanings })), // the cabinet's own units
        reports: chain === undefined || gap === null ? [] : [{ chain, gaps: [gap] }],
        looks: linkEnds.flatMap((one) => {
          const seen = light[one];
          return seen === null ? [] : [{ look: 'light-at-port' as const, link, end: one, outcomes: [seen] }];
        }),
      };
    });
}

/** The type as the engine asks for it, where its documented parameters are to be tested too. */
export const thoroughType = (draft: StagedDraft, type: string): TypeId | undefined => (draft.thoroughly ? (type as TypeId) : undefined); // the cabinet's own type
