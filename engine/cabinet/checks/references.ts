import { jsonPointer, makeProblem, type Problem } from '../../base/index.ts';
import { cableName, type Topology, unitName } from '../../topology/index.ts';

/*
 * References that the simulation can do without: it goes on with what is known, and the gap is named. References between units,
 * links and leads are looked up by `buildTopology`.
 */

export function checkReferences({ content }: Topology): readonly Problem[] {
  const problems: Problem[] = [];
  const legends = idsOf(content.legends);
  const fibres = idsOf(content.fibres);
  const photos = idsOf(content.photos);

  const look = (
    known: ReadonlySet<string>,
    id: string | undefined,
    path: readonly (string | number)[],
    owner: { id: string; name: string },
  ) => {
    if (id === undefined || known.has(id)) return;
    const facts = { thing: owner.name, field: String([...path].reverse().find((part) => typeof part === 'string') ?? ''), id };
    problems.push(makeProblem('reference-unknown', 'incomplete', { where: jsonPointer(path), subjects: [owner.id], facts }));
  };

  const cabinet = { id: content.id, name: content.name };
  look(legends, content.defaultLegend, ['defaultLegend'], cabinet);
  for (const [index, photo] of (content.cabinetPhotos ?? []).entries()) look(photos, photo, ['cabinetPhotos', index], cabinet);
  for (const [index, photo] of (content.controller?.photos ?? []).entries()) {
    look(photos, photo, ['controller', 'photos', index], { id: content.controller?.id ?? '', name: content.controller?.designation ?? '' });
  }
  for (const [index, type] of (content.types ?? []).entries()) look(legends, type.legend, ['types', index, 'legend'], type);
  for (const [index, link] of (content.links ?? []).entries()) {
    look(fibres, link.fibre, ['links', index, 'fibre'], { id: link.id, name: cableName(link) });
  }
  const outputs = new Map<string, ReadonlySet<string>>();
  const supplies = idsOf((content.units ?? []).filter(({ kind }) => kind === 'supply'));
  for (const [index, unit] of (content.units ?? []).entries()) {
    outputs.set(unit.id, idsOf(unit.supply?.outputs));
    look(supplies, unit.dcLinkSupply, ['units', index, 'dcLinkSupply'], { id: unit.id, name: unitName(unit) });
    for (const [at, photo] of (unit.photos ?? []).entries()) {
      look(photos, photo, ['units', index, 'photos', at], { id: unit.id, name: unitName(unit) });
    }
  }
  for (const [index, lead] of (content.leads ?? []).entries()) {
    const known = outputs.get(lead.from?.unit ?? '');
    if (known !== undefined) look(known, lead.from?.output, ['leads', index, 'from', 'output'], { id: lead.id, name: cableName(lead) });
  }
  const subjects = new Set(
    [content.chains, content.units, content.links, content.leads, content.feedbacks].flatMap((records) => [...idsOf(records)]),
  );
  for (const [index, { subject }] of (content.repair?.acts ?? []).entries()) {
    look(subjects, subject, ['repair', 'acts', index, 'subject'], cabinet);
  }
  return problems;
}

function idsOf(records: readonly { readonly id: string }[] | undefined): ReadonlySet<string> {
  return new Set((records ?? []).map(({ id }) => id));
}
