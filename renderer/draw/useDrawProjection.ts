import { useMemo, useState } from 'react';
import type { Detail } from '../canvas/geometry.ts';
import type { Placement } from '../canvas/placement.ts';
import { railCaptions } from '../canvas/projectFrame.ts';
import { makeProjector, type Projection } from '../canvas/projector.ts';
import { namesOf } from '../state/names.ts';
import { useApp } from '../state/useWorkbench.ts';
import { selectProblems, sumsOf } from '../sums/selectSums.ts';
import type { DrawControllerView, DrawLeadView, DrawLinkView, DrawUnitView, LooseView } from './drawViews.ts';
import { type DrawSources, drawController, drawLeads, drawLinks, drawLoose, drawUnits, worstProblems } from './projectDraw.ts';

const makeOwnProjector = () =>
  makeProjector<DrawUnitView, DrawControllerView, DrawLinkView, DrawLeadView>({
    unit: 'draw-unit',
    controller: 'draw-controller',
    link: 'draw-link',
    lead: 'draw-lead',
  });

/** Nodes and edges of the drawing in Draw. */
export function useDrawProjection(
  placement: Placement,
  detail: Detail,
  gesture: Pick<DrawSources, 'carried' | 'target' | 'joinable'>,
): Projection & { readonly loose: readonly LooseView[] } {
  const topology = useApp((state) => state.checked.topology);
  const all = useApp(selectProblems);
  const chosen = useApp((state) => state.draw.chosen);
  const feedbackShown = useApp((state) => state.draw.feedbackShown);
  const problems = useMemo(() => worstProblems(all), [all]);
  const [project] = useState(makeOwnProjector);
  const { carried, target, joinable } = gesture;
  return useMemo(() => {
    const names = namesOf(topology);
    const sources: DrawSources = {
      topology,
      names,
      placement,
      detail,
      sums: sumsOf(topology),
      problems,
      chosen,
      feedbackShown,
      carried,
      target,
      joinable,
    };
    const picture = {
      units: drawUnits(sources),
      controller: drawController(sources),
      links: drawLinks(sources),
      leads: drawLeads(sources),
    };
    return { ...project(picture, placement), captions: railCaptions(sources), loose: drawLoose(sources) };
  }, [topology, placement, detail, problems, chosen, feedbackShown, carried, target, joinable, project]);
}
