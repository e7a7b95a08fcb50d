import { useMemo, useState } from 'react';
import { injectWords } from '../../engine/messages/index.ts';
import type { Detail } from '../canvas/geometry.ts';
import type { Placement } from '../canvas/placement.ts';
import { projectCaptions } from '../canvas/projectLinks.ts';
import { makeProjector, type Projection } from '../canvas/projector.ts';
import type { Sources } from '../canvas/projectUnits.ts';
import type { CaptionView } from '../canvas/views.ts';
import { namesOf } from '../state/names.ts';
import { useApp } from '../state/useWorkbench.ts';
import { selectInjectModel } from './injectModel.ts';
import {
  type SimControllerView,
  type SimLeadView,
  type SimLinkView,
  type SimUnitView,
  simController,
  simLeads,
  simLinks,
  simSources,
  simUnits,
} from './simViews.ts';

const makeOwnProjector = () =>
  makeProjector<SimUnitView, SimControllerView, SimLinkView, SimLeadView>({
    unit: 'sim-unit',
    controller: 'sim-controller',
    link: 'sim-link',
    lead: 'sim-lead',
  });

/** Nodes and edges of the drawing while a fault is simulated; null while it is off. */
export function useInjectProjection(placement: Placement, detail: Detail): Projection | null {
  const model = useApp(selectInjectModel);
  const target = useApp(({ inject }) => (inject.target?.kind === 'unit' ? inject.target.unit : null));
  const [project] = useState(makeOwnProjector);
  return useMemo(() => {
    if (!model) return null;
    const topology = model.cabinet;
    const sources = simSources(model, { topology, names: namesOf(topology), placement, detail }, target);
    const picture = {
      units: simUnits(model, sources),
      controller: simController(model, sources),
      links: simLinks(model, sources),
      leads: simLeads(model, sources),
    };
    return { ...project(picture, placement), captions: captionsOf(sources, model.hop !== null) };
  }, [model, target, placement, detail, project]);
}

/** Rails keep their names; what stands beside the windows is now the display and its reason. */
function captionsOf(sources: Sources, stepping: boolean): readonly CaptionView[] {
  // The numbers of the hops stand where the names of the lines would.
  const all = projectCaptions(sources).filter(({ kind }) => kind === 'rail' || !stepping);
  return all.map((caption) =>
    caption.kind === 'rail'
      ? caption
      : { ...caption, kind: 'predicted', words: caption.kind === 'seen' ? injectWords.shows : injectWords.why },
  );
}
