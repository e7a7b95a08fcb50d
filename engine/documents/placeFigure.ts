import type { Diagnosis } from '../diagnosis/index.ts';
import { wordList, reportWords as words } from '../messages/index.ts';
import type { Block, Size } from '../paper/index.ts';
import type { EndState } from '../plan/index.ts';
import { subjectsOf } from '../repair/index.ts';
import type { Fault } from '../schema/index.ts';
import type { Topology } from '../topology/index.ts';
import { drawCabinet } from './drawing.ts';
import { metrics } from './drawText.ts';
import type { DocumentSource } from './source.ts';

interface PlaceSource extends DocumentSource {
  readonly diagnosis: Diagnosis | null;
  readonly end: EndState;
}

/** A place this likely is marked where nothing was done yet. */
const standsOut = 0.5;
/** Nothing stands so far above the lower edge of a row, mm. */
const spare = 4;
/** A cabinet of no more rows is drawn whole. */
const mostRows = 2;

/** The drawing of the cabinet with the place of the fault marked; of a large one the rows in which that is. `room`: mm. */
export function drawPlace(source: PlaceSource, room: Size): readonly Block[] {
  const { topology, names } = source;
  const places = placesOfFault(source);
  const marked = new Set(places.flatMap((id) => drawnAs(topology, id)));
  const [whole, ...further] = drawCabinet(topology, names, room, { marked });
  const isSmall = whole !== undefined && further.length === 0 && whole.height <= mostRows * metrics.rowPitch;
  const figures = isSmall ? [whole] : drawCabinet(topology, names, room, { marked, isExtract: true });
  const said = places.length === 0 ? words.noPlace : words.placeMarked(wordList(places.map((id) => names.thing(id))));
  if (figures.length === 0) return [{ kind: 'paragraph', text: said }];
  return figures.map((figure, index) => ({
    kind: 'figure',
    figure: { ...figure, height: figure.height - spare, words: said },
    ...(index < figures.length - 1 ? {} : { caption: isSmall ? said : `${said} ${words.extract}` }),
  }));
}

/** Ids of what was the cause, or may be: what was done last where the machine runs, else what is suspected most. */
export function placesOfFault({ topology, diagnosis, end }: PlaceSource): readonly string[] {
  const controller = topology.content.controller?.id;
  const ids =
    end.end === 'open'
      ? (diagnosis?.items ?? [])
          .filter(({ probability }) => probability >= standsOut)
          .flatMap(({ item: { fault } }) => (fault.item === 'controller' ? controller : idsIn(fault)))
      : end.lastActs.flatMap((act) => (act.do === 'replace-controller' ? controller : subjectsOf(act)));
  return [...new Set(ids.filter((id) => id !== undefined))];
}

function idsIn(fault: Fault): readonly (string | undefined)[] {
  const { link, unit, lead, chain, feedback } = fault as Readonly<Record<string, string | undefined>>; // each kind has one of them
  return [link, unit, lead, chain, feedback];
}

/** What stands for a thing in the drawing: the controller at the beginning of every chain, for a feedback cable its unit. */
function drawnAs({ content, chains, feedbacks }: Topology, id: string): readonly string[] {
  if (id === content.controller?.id) return chains.map((chain) => chain.id);
  return [[...feedbacks.values()].find((one) => one.id === id)?.unit ?? id];
}
