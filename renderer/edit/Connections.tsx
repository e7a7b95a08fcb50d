import { Fragment } from 'react';
import { editWords } from '../../engine/messages/index.ts';
import type { LinkRecord } from '../../engine/schema/index.ts';
import type { Topology } from '../../engine/topology/index.ts';
import { namesOf } from '../state/names.ts';
import { useApp, useDispatch } from '../state/useWorkbench.ts';
import type { Inspected } from './inspected.ts';

const words = editWords.inspector.connections;

interface Line {
  readonly label: string;
  /** Things one can go to. */
  readonly things: readonly { readonly id: string; readonly name: string }[];
  readonly text: string;
}

/** What one chosen thing hangs on: worked out, and ways to go there. */
export function Connections({ inspected: { table, owners } }: { readonly inspected: Inspected }) {
  const dispatch = useDispatch();
  const topology = useApp((state) => state.checked.topology);
  const [owner] = owners;
  if (owner === undefined || owners.length !== 1 || !('id' in owner)) return null;
  const lines =
    table === 'units' ? ofUnit(topology, owner.id) : table === 'links' ? ofLink(topology, owner.id) : ofOthers(topology, table, owner.id);
  if (lines.length === 0) return null;
  return (
    <section className="inspector-group">
      <h3 className="section-head">{words.title}</h3>
      <dl className="connections" title={words.derived}>
        {lines.map(({ label, things, text }) => (
          <Fragment key={label}>
            <dt>{label}</dt>
            <dd>
              {things.length === 0
                ? text
                : things.map(({ id, name }) => (
                    <button key={id} type="button" className="link-button" onClick={() => dispatch('choose', { ids: [id], how: 'only' })}>
                      {name}
                    </button>
                  ))}
            </dd>
          </Fragment>
        ))}
      </dl>
    </section>
  );
}

const line = (topology: Topology, label: string, ids: readonly string[], text: string = words.nothing): Line => ({
  label,
  things: ids.map((id) => ({ id, name: namesOf(topology).thing(id) })),
  text,
});

function ofUnit(topology: Topology, id: string): readonly Line[] {
  const unit = topology.content.units?.find((one) => one.id === id);
  if (unit === undefined) return [];
  const { links = [], leads = [], feedbacks = [] } = topology.content;
  const place = namesOf(topology).place(id);
  const fed = leads.filter(({ to }) => to?.unit === id).map((lead) => lead.id);
  const feeds = leads.filter(({ from }) => from?.unit === id).map((lead) => lead.id);
  if (unit.kind === 'supply') return [line(topology, words.feeds, feeds)];
  const above = links.filter(({ lower }) => lower?.unit === id).map((link) => link.id);
  const below = links.filter(({ upper }) => upper !== undefined && 'unit' in upper && upper.unit === id).map((link) => link.id);
  const own = feedbacks.filter((cable) => cable.unit === id).map((cable) => cable.id);
  return [
    line(topology, words.place, [], place),
    ...(unit.onChain === false ? [] : [line(topology, words.above, above), line(topology, words.below, below, words.cap)]),
    line(topology, words.fedBy, fed),
    ...(feeds.length > 0 ? [line(topology, words.feeds, feeds)] : []),
    ...(own.length > 0 ? [line(topology, words.feedbacks, own)] : []),
  ];
}

const endOf = (end: LinkRecord['upper']): readonly string[] => (end === undefined ? [] : 'chain' in end ? [end.chain] : [end.unit]);

function ofLink(topology: Topology, id: string): readonly Line[] {
  const link = topology.content.links?.find((one) => one.id === id);
  return link === undefined ? [] : [line(topology, words.upper, endOf(link.upper)), line(topology, words.lower, endOf(link.lower))];
}

function ofOthers(topology: Topology, table: Inspected['table'], id: string): readonly Line[] {
  const { leads, chains } = topology.content;
  if (table === 'leads') {
    const lead = leads?.find((one) => one.id === id);
    return lead === undefined ? [] : [line(topology, words.from, endOf(lead.from)), line(topology, words.to, endOf(lead.to))];
  }
  if (table !== 'chains' || !chains?.some((one) => one.id === id)) return [];
  const units: readonly string[] = topology.chains.find((chain) => (chain.id as string) === id)?.units ?? [];
  return [line(topology, words.units, units)];
}
