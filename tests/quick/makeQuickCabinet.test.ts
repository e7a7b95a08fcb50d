import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { checkCabinet, parseCabinetFile, serializeCabinet } from '../../engine/cabinet/index.ts';
import { diagnose } from '../../engine/diagnosis/index.ts';
import { makeQuickCabinet, parseQuickLine } from '../../engine/quick/index.ts';
import { cabinetContent, type DisplayMeaning } from '../../engine/schema/index.ts';
import { inMountingOrder } from '../../engine/topology/index.ts';

function made(line: string) {
  const plan = parseQuickLine(line);
  if (!plan.ok) throw new Error(`not read: ${line}`);
  const content = { id: 'found', name: 'as found', ...makeQuickCabinet(plan.value, { typeName: 'as found' }) };
  return { content, ...checkCabinet(content) };
}

/** "servo off chain" and the like, in every combination that can be right. */
const arbitraryLine = fc
  .array(
    fc.record({
      off: fc.boolean(),
      items: fc.array(fc.tuple(fc.integer({ min: 1, max: 4 }), fc.constantFrom('s', 'p', 'e', 'u'), fc.boolean()), {
        minLength: 1,
        maxLength: 6,
      }),
    }),
    { minLength: 1, maxLength: 4 },
  )
  .map((rows) => {
    const text = ({ off, items }: (typeof rows)[number]) =>
      `${off ? 'off ' : ''}${items.map(([count, kind, apart]) => `${count} ${off && kind === 'e' ? 's' : kind}${apart && !off && kind !== 'e' ? ' off chain' : ''}`).join(', ')}`;
    return ['servo', ...rows.map(text)].join('; ');
  });

describe('makeQuickCabinet', () => {
  it('should leave open how equipment behaves that nobody knows, so that quiet displays do not overrule the report', () => {
    const { content, cabinet } = made('7 servo');
    if (cabinet === null) throw new Error('not sound');
    const displays = content.units.filter(({ kind }) => kind !== 'supply').map(({ id }) => ({ unit: id, meanings: ['quiet' as const] }));
    const reports = [{ chain: 'chain1', gaps: [4] }];
    const found = diagnose(cabinet, { snapshots: [{ onset: 'while-running', halted: true, displays, reports }] });
    expect(found.contradiction).toBeNull();
    expect(
      found.items
        .slice(0, 3)
        .map(({ item }) => item.key)
        .sort(),
    ).toEqual(['cable/WH4', 'plug/WH4/lower', 'plug/WH4/upper']);
    // Everybody above the break and below it complains: equipment that tells of any break in its direction.
    const wide = displays.map(({ unit }, index) => ({
      unit,
      meanings: [index < 3 ? ('downstream-loss' as const) : ('upstream-loss' as const)],
    }));
    const told = diagnose(cabinet, { snapshots: [{ onset: 'while-running', halted: true, displays: wide, reports }] });
    expect(told.contradiction).toBeNull();
    expect(told.behaviours.find(({ parameter }) => parameter === 'lossScope')?.values[0]?.value).toBe('chain');
  });

  it('should give each drive and encoder interface a feedback cable for a search, so that a short there is a suspect, and none for a drawing', () => {
    const { content, cabinet } = made('5 servo, encoder; 2 servo');
    expect(content.feedbacks.map(({ unit }) => unit)).toEqual(content.units.filter(({ kind }) => kind !== 'supply').map(({ id }) => id));
    const plan = parseQuickLine('5 servo');
    expect(plan.ok && makeQuickCabinet(plan.value, null).feedbacks).toEqual([]);
    if (cabinet === null) throw new Error('not sound');
    // One drive dark between two that complain: its board, its fuse, its lead, its place, or what hangs on its encoder plug.
    const shown = (unit: string, meaning: DisplayMeaning) => ({ unit, meanings: [meaning] });
    const { items } = diagnose(cabinet, {
      snapshots: [{ displays: [shown('TB2', 'downstream-loss'), shown('TB3', 'dark'), shown('TB4', 'upstream-loss')], halted: true }],
    });
    const kinds = items.filter(({ probability }) => probability > 0.05).map(({ item }) => item.kind);
    expect(kinds.sort()).toEqual(['board', 'feedback', 'fuse', 'lead', 'place']);
  });

  it('should make a cabinet in which nothing is wrong and nothing missing, whatever the line', () => {
    fc.assert(
      fc.property(arbitraryLine, (line) => {
        const { content, topology, problems, cabinet } = made(line);
        expect(problems, line).toEqual([]);
        expect(cabinet).not.toBeNull();
        expect(cabinetContent.parse(content)).toEqual(content);
        // On the chains: what the line puts there, in its order; all else stands apart.
        const plan = parseQuickLine(line);
        const rows = plan.ok ? plan.value.rows : [];
        expect(topology.chains.map(({ record, units }) => [record.number, units.map((id) => topology.units.get(id)?.kind)])).toEqual(
          rows.flatMap(({ chain, units }) =>
            chain === null ? [] : [[chain, units.filter(({ onChain }) => onChain).map(({ kind }) => kind)]],
          ),
        );
        expect(topology.orphans).toEqual([]);
      }),
      { seed: 4, numRuns: 200 },
    );
  });

  it('should come back from a file as it was', () => {
    fc.assert(
      fc.property(arbitraryLine, (line) => {
        const { content } = made(line);
        const back = parseCabinetFile(serializeCabinet(content));
        expect(back.ok && checkCabinet(back.value).problems).toEqual([]);
        expect(back.ok && serializeCabinet(back.value)).toBe(serializeCabinet(content));
      }),
      { seed: 4, numRuns: 50 },
    );
  });

  it('should number designations by class letters, and assume one supply with a lead to each unit', () => {
    const { content } = made('3 servo, spindle, encoder, servo');
    expect(content.units.map(({ designation, kind }) => `${designation} ${kind}`)).toEqual([
      '-TB1 servo-drive',
      '-TB2 servo-drive',
      '-TB3 servo-drive',
      '-TB4 spindle-drive',
      '-KE2 encoder-interface',
      '-TB5 servo-drive',
      '-TB6 supply',
    ]);
    expect(content.controller.designation).toBe('-KE1');
    expect(content.links.map(({ designation }) => designation)).toEqual(['-WH1', '-WH2', '-WH3', '-WH4', '-WH5', '-WH6']);
    expect(content.leads.map(({ from, to }) => `${from?.unit} ${to?.unit}`)).toEqual(
      ['TB1', 'TB2', 'TB3', 'TB4', 'KE2', 'TB5'].map((unit) => `TB6 ${unit}`),
    );
    expect(content.designationEdition).toBe('2019');
    expect(content.units[6]).not.toHaveProperty('row');
  });

  it('should feed units from the supply before them in their row, and mount them as they were named', () => {
    const { content, topology } = made('u 2s u e; s; off p');
    const feeds = new Map(content.leads.map(({ from, to }) => [to?.unit, from?.unit]));
    const supplies = content.units.filter(({ kind }) => kind === 'supply').map(({ id }) => id);
    expect(supplies.length).toBe(2);
    expect([...feeds]).toEqual([
      ['TB1', supplies[0]],
      ['TB2', supplies[0]],
      ['KE2', supplies[1]],
      ['TB3', supplies[0]],
      ['TB4', supplies[0]],
    ]);
    expect(inMountingOrder(topology)).toEqual([supplies[0], 'TB1', 'TB2', supplies[1], 'KE2', 'TB3', 'TB4']);
  });
});
