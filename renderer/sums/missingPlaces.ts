import { type Names, sumsPageWords, wordList } from '../../engine/messages/index.ts';
import type { MissingFigure } from '../../engine/sums/index.ts';
import type { Topology } from '../../engine/topology/index.ts';

/** Missing figures that have the same place in the file: those of a type stand there once for all its units. */
export interface MissingPlace {
  readonly key: string;
  /** Where they are written: "-KE3", "type QE drive 2 (-TB1, -TB2)", "fibre …". */
  readonly name: string;
  /** Each figure once, with one thing of which it is missing. */
  readonly figures: readonly MissingFigure[];
}

const ofOptics: ReadonlySet<string> = new Set(['launch-power', 'greatest-launch-power', 'sensitivity', 'overload-power']);
const ofFibre: ReadonlySet<string> = new Set(['attenuation', 'coupler-loss', 'bend-loss', 'length-limit-at-rate']);
const mostNamed = 4;

/** Missing figures by the place where each is entered, in the order in which the sums name them. */
export function missingPlaces(topology: Topology, names: Names, missing: readonly MissingFigure[]): readonly MissingPlace[] {
  const found = new Map<string, { readonly figures: Map<string, MissingFigure>; readonly things: Set<string> }>();
  for (const one of missing) {
    const key = placeOf(topology, one);
    const place = found.get(key) ?? { figures: new Map(), things: new Set() };
    found.set(key, place);
    if (!place.figures.has(one.figure)) place.figures.set(one.figure, one);
    if (one.of !== null) place.things.add(one.of);
  }
  return [...found].map(([key, { figures, things }]) => ({
    key,
    name: nameOf(topology, names, key, [...things]),
    figures: [...figures.values()],
  }));
}

function placeOf({ content, units, links }: Topology, { figure, of }: MissingFigure): string {
  if (of === null) return 'cabinet/';
  if (ofOptics.has(figure)) {
    const type = (units as ReadonlyMap<string, { readonly type?: string | undefined }>).get(of)?.type;
    if (content.types?.some(({ id }) => id === type)) return `type/${type}`;
    return units.has(of as never) ? `typeless/${of}` : `thing/${of}`;
  }
  if (ofFibre.has(figure)) {
    const fibre = (links as ReadonlyMap<string, { readonly fibre?: string | undefined }>).get(of)?.fibre;
    return content.fibres?.some(({ id }) => id === fibre) ? `fibre/${fibre}` : `fibreless/${of}`;
  }
  return `thing/${of}`;
}

function nameOf({ content }: Topology, names: Names, key: string, things: readonly string[]): string {
  const at = key.indexOf('/');
  const [kind, id] = [key.slice(0, at), key.slice(at + 1)];
  switch (kind) {
    case 'type': {
      const named = things.slice(0, mostNamed).map((one) => names.thing(one));
      const more = things.length - named.length;
      return sumsPageWords.ofType(names.type(id), wordList([...named, ...(more > 0 ? [sumsPageWords.andMore(more)] : [])]));
    }
    case 'typeless':
      return sumsPageWords.ofTypeless(names.unit(id));
    case 'fibre':
      return sumsPageWords.ofFibre(content.fibres?.find((one) => one.id === id)?.name ?? id);
    case 'fibreless':
      return sumsPageWords.ofFibreless(names.link(id));
    case 'cabinet':
      return sumsPageWords.ofCabinet;
    default:
      return names.thing(id);
  }
}
