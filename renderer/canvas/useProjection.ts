import { useMemo, useState } from 'react';
import { selectFindModel } from '../find/findModel.ts';
import { selectDisplaced } from '../find/touched.ts';
import { currentSnapshot } from '../state/evidence.ts';
import { namesOf } from '../state/names.ts';
import { useApp } from '../state/useWorkbench.ts';
import type { Detail } from './geometry.ts';
import { litUnits } from './litUnits.ts';
import type { Placement } from './placement.ts';
import { projectCaptions, projectController, projectLeads, projectLinks } from './projectLinks.ts';
import { makeProjector, type Projection } from './projector.ts';
import { projectUnits, type Sources } from './projectUnits.ts';
import type { ControllerView, LeadView, LinkView, UnitView } from './views.ts';

const makeOwnProjector = () =>
  makeProjector<UnitView, ControllerView, LinkView, LeadView>({ unit: 'unit', controller: 'controller', link: 'link', lead: 'lead' });

/** Nodes and edges of the drawing in Find: what was seen, and what the chosen candidate predicts. */
export function useProjection(placement: Placement, detail: Detail): Projection {
  const topology = useApp((state) => state.checked.topology);
  const snapshot = useApp((state) => currentSnapshot(state.caseRecord));
  const model = useApp(selectFindModel);
  const lit = useApp(litUnits);
  const displaced = useApp(selectDisplaced);
  const entering = useApp(({ entry }) => (entry?.kind === 'display' ? entry.unit : null));
  const [project] = useState(makeOwnProjector);
  return useMemo(() => {
    const sources: Sources = { topology, names: namesOf(topology), snapshot, model, placement, detail, lit, displaced, entering };
    const picture = {
      units: projectUnits(sources),
      controller: projectController(sources),
      links: projectLinks(sources),
      leads: projectLeads(sources),
    };
    return { ...project(picture, placement), captions: projectCaptions(sources) };
  }, [topology, snapshot, model, placement, detail, lit, displaced, entering, project]);
}
