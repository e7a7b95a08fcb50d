import fc from 'fast-check';
import Graph from 'graphology';
import { parse } from 'graphology-graphml';
import { describe, expect, it } from 'vitest';
import { checkCabinet } from '../../engine/cabinet/index.ts';
import { tableWords } from '../../engine/messages/index.ts';
import type { CabinetContent } from '../../engine/schema/index.ts';
import { guessMapping, makeTable, planImport, readGraphml, tableKinds, writeGraphml } from '../../engine/tables/index.ts';
import { makeCabinet } from '../generators/cabinets.ts';

describe('GraphML', () => {
  it('should be read by a general graph library as the units, cables, leads and feedback cables that there are', () => {
    for (const seed of [1, 2, 3, 4, 5, 6]) {
      const content = makeCabinet(seed);
      const { topology } = checkCabinet(content);
      const graph = parse(Graph, writeGraphml(topology, tableWords));
      for (const unit of content.units ?? []) expect(graph.getNodeAttribute(unit.id, 'designation') ?? '').toBe(unit.designation);
      for (const { id, upper, lower } of content.links ?? []) {
        expect(graph.getEdgeAttribute(id, 'list')).toBe('cables');
        if (upper && 'unit' in upper) expect(graph.source(id)).toBe(upper.unit);
        else expect(graph.getNodeAttribute(graph.source(id), 'list')).toBe(upper ? 'controller' : 'open-end');
        if (lower) expect(graph.target(id)).toBe(lower.unit);
        else expect(graph.getNodeAttribute(graph.target(id), 'list')).toBe('open-end');
      }
      for (const { id, from, to } of content.leads ?? []) {
        if (from) expect(graph.source(id)).toBe(from.unit);
        if (to) expect(graph.target(id)).toBe(to.unit);
      }
      for (const { id, unit } of content.feedbacks ?? []) {
        expect(graph.source(id)).toBe(unit);
        expect(graph.getNodeAttribute(graph.target(id), 'list')).toBe('encoder');
      }
      expect(graph.size).toBe((content.links?.length ?? 0) + (content.leads?.length ?? 0) + (content.feedbacks?.length ?? 0));
    }
  });

  it('should leave out the signs that XML cannot hold, and nothing else', () => {
    const notes = 'first\u0000\u0008 line\tnext \uffff<&"\u001f end';
    const units = [{ id: 'u', kind: 'servo-drive' as const, designation: '-TB1', notes }];
    const written = writeGraphml(checkCabinet({ id: 'c', name: 'c', units }).topology, tableWords);
    // biome-ignore lint/suspicious/noControlCharactersInRegex: these are what must not be there.
    expect(written).not.toMatch(/[\u0000-\u0008\u000b\u000c\u000e-\u001f\uffff]/);
    expect(parse(Graph, written).getNodeAttribute('u', 'notes')).toBe('first line\tnext <&" end');
  });

  it('should build every list anew from a graph, with its ids', () => {
    fc.assert(
      fc.property(fc.integer({ min: 1, max: 1e6 }), (seed) => {
        const whole = makeCabinet(seed);
        const read = readGraphml(writeGraphml(checkCabinet(whole).topology, tableWords));
        if (!read.ok) throw new Error(JSON.stringify(read.problems));
        const { units: _units, links: _links, leads: _leads, feedbacks: _feedbacks, ...bare } = whole;
        let content: CabinetContent = bare;
        for (const kind of tableKinds) {
          const table = read.value[kind];
          const plan = planImport(content, kind, table, tableWords, {
            mapping: guessMapping(kind, table, tableWords),
            replace: false,
          });
          expect(plan.rows.filter(({ does }) => does !== 'add')).toEqual([]);
          content = plan.content;
        }
        for (const kind of tableKinds) {
          expect(makeTable(checkCabinet(content).topology, kind, tableWords)).toEqual(
            makeTable(checkCabinet(whole).topology, kind, tableWords),
          );
        }
      }),
      { seed: 4, numRuns: 60 },
    );
  });

  it('should keep the controller apart from a unit of that id', () => {
    const content: CabinetContent = {
      id: 'x',
      name: 'x',
      chains: [{ id: 'c', number: 1 }],
      units: [{ id: 'controller', designation: '-TB1', kind: 'servo-drive' }],
      links: [{ id: 'w', upper: { chain: 'c' }, lower: { unit: 'controller' } }],
    };
    const graph = parse(Graph, writeGraphml(checkCabinet(content).topology, tableWords));
    expect(graph.order).toBe(2);
    expect(graph.source('w')).not.toBe('controller');
  });

  // In the manner of the GraphML Primer (Brandes, Eiglsperger, Lerner): keys by short ids, attributes named by `attr.name`.
  it('should take a graph of other programs, by the names of its attributes', () => {
    const read = readGraphml(`<?xml version="1.0" encoding="UTF-8"?>
<graphml xmlns="http://graphml.graphdrawing.org/xmlns">
  <key id="d0" for="node" attr.name="designation" attr.type="string"/>
  <key id="d1" for="node" attr.name="kind" attr.type="string"/>
  <key id="d2" for="edge" attr.name="lengthM" attr.type="double"/>
  <graph id="G" edgedefault="undirected">
    <node id="a"><data key="d0">-TA1</data><data key="d1">servo drive</data></node>
    <node id="b"><data key="d0">-TA2 &lt;&amp;&gt;</data><data key="d1"><![CDATA[servo-drive]]></data></node>
    <edge id="w1" source="a" target="b"><data key="d2">0.4</data></edge>
  </graph>
</graphml>`);
    if (!read.ok) throw new Error(JSON.stringify(read.problems));
    const { units, cables } = read.value;
    const options = { replace: false };
    const first = planImport({ id: 'x', name: 'x' }, 'units', units, tableWords, {
      ...options,
      mapping: guessMapping('units', units, tableWords),
    });
    expect(first.content.units).toEqual([
      { id: 'a', designation: '-TA1', kind: 'servo-drive' },
      { id: 'b', designation: '-TA2 <&>', kind: 'servo-drive' },
    ]);
    const second = planImport(first.content, 'cables', cables, tableWords, {
      ...options,
      mapping: guessMapping('cables', cables, tableWords),
    });
    expect(second.content.links).toMatchObject([{ upper: { unit: 'a' }, lower: { unit: 'b' }, lengthM: 0.4 }]);
  });

  it('should refuse what is made to exhaust or to mislead, in words and in a time that grows with the length alone', () => {
    const codeOf = (text: string) => {
      const read = readGraphml(text);
      return read.ok ? 'read' : read.problems[0]?.code;
    };
    const bomb = '<!DOCTYPE graphml [<!ENTITY a "AAAA"><!ENTITY b "&a;&a;">]>';
    const graph = (inner: string) => `<graphml><graph>${inner}</graph></graphml>`;
    const attacks: readonly (readonly [string, string])[] = [
      [`${bomb}${graph('<node id="&b;"/>')}`, 'graph-document-type'],
      // Hidden from whoever takes these for the beginning of a comment.
      [`<?x <!-- ?>${bomb}${graph('<node id="&b;"/>')}<!-- -->`, 'graph-document-type'],
      [graph(`<data><![CDATA[<!--]]></data>${bomb}<node id="-->"/>`), 'graph-document-type'],
      [graph(`<node id="<!--"/>${bomb}<node id="-->"/>`), 'graph-damaged'],
      [graph('<__proto__><node id="a"/></__proto__>'), 'graph-damaged'],
      [graph('<x:constructor/>'), 'graph-damaged'],
      [graph(`${'<a>'.repeat(20)}${'</a>'.repeat(20)}`), 'graph-too-deep'],
      [graph('<a/>'.repeat(200_001)), 'graph-too-many'],
      // Let pass by the parser's own validator.
      [`<?"?>${graph('')}`, 'graph-damaged'],
      ['<!--'.repeat(1_000_000), 'graph-damaged'],
      ['<![CDATA['.repeat(500_000), 'graph-damaged'],
      ['<a'.repeat(2_000_000), 'graph-damaged'],
      [`<a${' b'.repeat(2_000_000)}`, 'graph-damaged'],
    ];
    expect(attacks.map(([text]) => codeOf(text))).toEqual(attacks.map(([, code]) => code));
    const before = process.cpuUsage();
    for (const [text] of attacks.slice(-4)) readGraphml(text);
    expect(process.cpuUsage(before).user / 1e6).toBeLessThan(5);
  });

  it('should answer every mixture of markup, and never throw', () => {
    const pieces =
      '<graphml> </graphml> <graph> </graph> <node_id="a"> <node_id="b"/> </node> <data_key="designation"> </data> <key_id="k"/>';
    const odd =
      '<!-- --> <![CDATA[ ]]> <?xml <? ?> <hasOwnProperty/> <a_toString="1"_a="2"/> &amp; &bad &#xD800; text " < > / = <x:y/> <#text>';
    const piece = fc.constantFrom(...`${pieces} ${odd}`.split(' ').map((one) => one.replaceAll('_', ' ')));
    fc.assert(
      fc.property(fc.array(piece, { maxLength: 14 }), fc.boolean(), (parts, isWithin) => {
        const text = parts.join('');
        readGraphml(isWithin ? `<graphml><graph>${text}</graph></graphml>` : text);
      }),
      { seed: 3, numRuns: 10_000 },
    );
  });
});
