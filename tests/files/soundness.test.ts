import { describe, expect, it } from 'vitest';
import { checkCabinet } from '../../engine/cabinet/index.ts';
import { wordProblem } from '../../engine/messages/index.ts';
import type { CabinetContent, UnitRecord } from '../../engine/schema/index.ts';
import { line } from '../topology/small.ts';

const brief = (content: CabinetContent) => checkCabinet(content).problems.map(({ code, severity, where }) => [code, severity, where]);
const facts = (content: CabinetContent, code: string) =>
  checkCabinet(content)
    .problems.filter((problem) => problem.code === code)
    .map((problem) => problem.facts);
const change = (content: CabinetContent, id: string, more: Partial<UnitRecord>): CabinetContent => ({
  ...content,
  units: (content.units ?? []).map((unit) => (unit.id === id ? { ...unit, ...more } : unit)),
});

describe('checkCabinet', () => {
  it('should find nothing in a sound and complete cabinet, and hand it out for simulation', () => {
    const { problems, cabinet, topology } = checkCabinet(line(4));
    expect(problems).toEqual([]);
    expect(cabinet).toBe(topology);
  });

  it('should open an unfinished cabinet and list what is missing', () => {
    const bare: CabinetContent = { id: 'c', name: 'n' };
    expect(brief(bare)).toEqual([['cabinet-empty', 'incomplete', '/units']]);
    const { controller: _, leads: __, ...rest } = line(1);
    expect(brief(rest)).toEqual([
      ['controller-missing', 'incomplete', '/controller'],
      ['feeds-not-documented', 'incomplete', '/units/1'],
    ]);
    expect(checkCabinet(rest).cabinet).not.toBeNull();
  });

  it('should hand nothing out for simulation when there is an error', () => {
    const { links: _, ...rest } = line(2);
    const { cabinet, topology, problems } = checkCabinet(rest);
    expect(cabinet).toBeNull();
    expect(topology.orphans).toEqual(['u1', 'u2']);
    expect(problems.map(({ code }) => code)).toEqual(['chain-empty', 'unit-orphan', 'unit-orphan']);
  });

  it('should sort its list by place, counting indices as numbers', () => {
    const content = line(12);
    const nameless = { ...content, units: (content.units ?? []).map((unit) => ({ ...unit, designation: '' })) };
    expect(checkCabinet(nameless).problems.map(({ where }) => where)).toEqual(
      Array.from({ length: 13 }, (_, index) => `/units/${index}/designation`),
    );
  });

  it('should not depend on the file: what an editor holds may have an id twice', () => {
    const content = line(2);
    const doubled = { ...content, units: [...(content.units ?? []), { id: 'u2', kind: 'servo-drive' as const, designation: '-T9' }] };
    expect(brief(doubled)).toEqual([['id-duplicate', 'error', '/units/3/id']]);
    expect(checkCabinet(doubled).topology.units.get('u2' as never)?.designation).toBe('-T2'); // a unit of the cabinet above
  });

  it('should look up pictures, legends, fibres and outputs, and go on without them', () => {
    const content: CabinetContent = {
      ...change(line(1), 'u1', { type: 't', photos: ['p9'] }),
      controller: { id: 'nc', designation: '-KF1', photos: ['p8'] },
      types: [{ id: 't', name: 'T', legend: 'l9' }],
      defaultLegend: 'l8',
      cabinetPhotos: ['p7'],
      repair: {
        acts: [
          { act: 'replace-board', subject: 'u9' },
          { act: 'replace-board', subject: 'u1' },
        ],
      },
      links: [{ id: 'w1', upper: { chain: 'ch1' }, lower: { unit: 'u1' }, fibre: 'f9' }],
      leads: [{ id: 'l1', from: { unit: 'ps', output: 'x9' }, to: { unit: 'u1' } }],
    };
    expect(brief(content)).toEqual([
      ['reference-unknown', 'incomplete', '/cabinetPhotos/0'],
      ['reference-unknown', 'incomplete', '/controller/photos/0'],
      ['reference-unknown', 'incomplete', '/defaultLegend'],
      ['reference-unknown', 'incomplete', '/leads/0/from/output'],
      ['reference-unknown', 'incomplete', '/links/0/fibre'],
      ['reference-unknown', 'incomplete', '/repair/acts/0/subject'],
      ['reference-unknown', 'incomplete', '/types/0/legend'],
      ['reference-unknown', 'incomplete', '/units/1/photos/0'],
    ]);
    expect(facts(content, 'reference-unknown').map(({ thing, field, id }) => [thing, field, id])).toEqual([
      ['line', 'cabinetPhotos', 'p7'],
      ['-KF1', 'photos', 'p8'],
      ['line', 'defaultLegend', 'l8'],
      ['l1', 'output', 'x9'],
      ['w1', 'fibre', 'f9'],
      ['line', 'subject', 'u9'],
      ['T', 'legend', 'l9'],
      ['-T1', 'photos', 'p9'],
    ]);
    const [problem] = checkCabinet(content).problems.filter(({ where }) => where.endsWith('output'));
    expect(problem && wordProblem(problem).explanation).toBe(
      'The file says that l1 comes from the output “x9”, and does not describe that.',
    );
  });

  it('should name designations that are missing, and that two things bear', () => {
    const content = change(change(line(3), 'u2', { designation: '  ' }), 'u3', { designation: ' -KF1' });
    expect(brief(content)).toEqual([
      ['designation-missing', 'incomplete', '/units/2/designation'],
      ['designation-doubled', 'warning', '/units/3/designation'],
    ]);
    expect(facts(content, 'designation-doubled')).toEqual([{ designation: '-KF1', ids: 'nc, u3', count: 2 }]);
    const cables = { ...line(2), links: (line(2).links ?? []).map((link) => ({ ...link, designation: '-WH1' })) };
    expect(brief(cables)).toEqual([['designation-doubled', 'warning', '/links/1/designation']]);
    // A lead that bears the designation of a drive.
    const across = { ...line(2), leads: (line(2).leads ?? []).map((lead) => ({ ...lead, designation: line(2).units?.[1]?.designation })) };
    expect(brief({ ...across, leads: across.leads.slice(0, 1) }).map(([code]) => code)).toContain('designation-doubled');
    // A cable may bear no designation.
    const bare = {
      ...line(2),
      links: (line(2).links ?? []).map(({ designation: _, ...link }) => link),
      leads: (line(2).leads ?? []).map((lead, index) => ({ ...lead, designation: `-WH${index}` })),
    };
    expect(brief(bare)).toEqual([]);
  });

  it('should name two things in one slot, and rows named twice', () => {
    const content = {
      ...change(change(line(2), 'u1', { row: 1, slot: 2 }), 'u2', { row: 1, slot: 2 }),
      rows: [
        { row: 1, name: 'a' },
        { row: 1, name: 'b' },
      ],
    };
    expect(brief(content)).toEqual([
      ['row-doubled', 'warning', '/rows/1/row'],
      ['place-doubled', 'warning', '/units/2/slot'],
    ]);
    expect(facts(content, 'place-doubled')).toEqual([{ row: 1, slot: 2, units: '-T1, -T2', count: 2 }]);
    expect(brief(change(change(line(2), 'u1', { row: 1, slot: 2 }), 'u2', { row: 2, slot: 2 }))).toEqual([]);
    expect(brief(change(change(line(2), 'u1', { row: 1 }), 'u2', { row: 1 }))).toEqual([]);
  });

  it('should count the axes of each chain against its own limit', () => {
    // 6 axes at the tightest control cycle, 28 at the standard one: common practice, no published source (domain section 8).
    const axisLimits = [
      { cycleClass: 'tight', maximumAxes: 6 },
      { cycleClass: 'standard', maximumAxes: 28 },
    ];
    const axes = (count: number) => Array.from({ length: count }, (_, index) => ({ name: `A${index}` }));
    const withAxes = (first: number, cycleClass: string) => ({
      ...change(change(line(4, ['servo-drive', 'servo-drive', 'encoder-interface', 'spindle-drive']), 'u1', { axes: axes(first) }), 'u2', {
        axes: axes(2),
      }),
      chains: [{ id: 'ch1', number: 1, cycleClass }],
      axisLimits,
    });
    // The spindle drive has no axes written down and counts as one; the encoder interface counts as none.
    expect(brief(withAxes(3, 'tight'))).toEqual([]);
    expect(brief(withAxes(4, 'tight'))).toEqual([['axis-limit-exceeded', 'warning', '/chains/0/cycleClass']]);
    expect(facts(withAxes(4, 'tight'), 'axis-limit-exceeded')).toEqual([
      { chain: '1', axes: 7, limit: 6, cycleClass: 'tight', assumedDrives: 1 },
    ]);
    expect(brief(withAxes(4, 'standard'))).toEqual([]);
    expect(brief(withAxes(4, 'slow'))).toEqual([['axis-limit-missing', 'incomplete', '/chains/0/cycleClass']]);
    const doubled = { ...withAxes(4, 'standard'), axisLimits: [...axisLimits, { cycleClass: ' standard ', maximumAxes: 5 }] };
    expect(brief(doubled)).toEqual([
      ['axis-limit-doubled', 'warning', '/axisLimits/2/cycleClass'],
      ['axis-limit-exceeded', 'warning', '/chains/0/cycleClass'],
    ]);
  });

  it('should warn of more types of unknown behaviour than a search weighs, counting only types that are used', () => {
    const types = ['a', 'b', 'c'].map((id) => ({ id, name: id.toUpperCase(), behaviour: { holds: 'unknown' as const } }));
    const two = { ...change(change(line(3), 'u1', { type: 'a' }), 'u2', { type: 'b' }), types };
    expect(brief(two)).toEqual([]);
    expect(brief(change(two, 'ps', { type: 'c' }))).toEqual([]);
    const three = change(two, 'u3', { type: 'c' });
    expect(brief(three)).toEqual([['unknown-behaviours-too-many', 'warning', '/types']]);
    expect(facts(three, 'unknown-behaviours-too-many')).toEqual([{ types: 'A, B, C', count: 3, limit: 2 }]);
  });

  it('should name a code that a legend has twice', () => {
    const codes = [
      { code: 'E1', meanings: ['quiet' as const] },
      { code: 'e1', meanings: ['quiet' as const] },
      { code: ' E1', meanings: ['other' as const] },
    ];
    expect(brief({ ...line(1), legends: [{ id: 'l', name: 'L', codes }] })).toEqual([
      ['legend-code-doubled', 'warning', '/legends/0/codes/2/code'],
    ]);
  });

  it('should name a spare that is equal to nothing installed', () => {
    const content = change(change(line(2), 'u1', { board: { partNumber: 'B-1' } }), 'u2', { board: { partNumber: 'B-2' } });
    const spare = (more: object) => ({ ...content, spares: [{ id: 's', kind: 'board' as const, ...more }] });
    expect(brief(spare({ partNumber: 'B-3' }))).toEqual([['spare-unequal', 'warning', '/spares/0/partNumber']]);
    expect(brief(spare({ partNumber: ' B-2 ' }))).toEqual([]);
    expect(brief(spare({ partNumber: 'B-3', fits: 'no' }))).toEqual([]);
    expect(brief(spare({}))).toEqual([]);
    expect(brief({ ...content, spares: [{ id: 's', kind: 'cable', partNumber: 'W-1' }] })).toEqual([]);
  });

  it('should name rates of modes that do not exist, or that stand twice', () => {
    const rates = [
      { item: 'cable' as const, mode: 'cut', perYear: 0.1 },
      { item: 'plug' as const, mode: 'cut', perYear: 0.1 },
      { item: 'cable' as const, mode: 'cut', perYear: 0.2 },
    ];
    expect(brief({ ...line(1), rates })).toEqual([
      ['rate-mode-unknown', 'warning', '/rates/1/mode'],
      ['rate-doubled', 'warning', '/rates/2/mode'],
    ]);
  });

  it('should name fields that do not go with the kind of a unit', () => {
    expect(brief(change(line(1), 'ps', { axes: [{ name: 'X' }] }))).toEqual([['axes-on-supply', 'warning', '/units/0/axes']]);
    expect(brief(change(line(1), 'u1', { supply: {} }))).toEqual([['supply-ratings-on-unit', 'warning', '/units/1/supply']]);
    const off = change(line(1), 'u1', {});
    const encoder = {
      ...off,
      units: [...(off.units ?? []), { id: 'e', kind: 'encoder-interface' as const, designation: '-E', onChain: false }],
      leads: [...(off.leads ?? []), { id: 'le', from: { unit: 'ps' }, to: { unit: 'e' } }],
    };
    expect(brief(encoder)).toEqual([['encoder-interface-off-chain', 'warning', '/units/2/onChain']]);
  });

  it('should compare the axis of a feedback cable with those of its unit', () => {
    const content = {
      ...change(line(2), 'u1', { axes: [{ name: 'X' }] }),
      feedbacks: [
        { id: 'g1', unit: 'u1', axis: 'Y' },
        { id: 'g2', unit: 'u1', axis: 'X ' },
        { id: 'g3', unit: 'u2', axis: 'Y' },
      ],
    };
    expect(brief(content)).toEqual([['feedback-axis-unknown', 'warning', '/feedbacks/0/axis']]);
  });

  it('should name figures that are the wrong way round', () => {
    const content: CabinetContent = {
      ...change(line(1), 'u1', { control24: { minimumV: 26, maximumV: 21 } }),
      types: [{ id: 't', name: 'T', optics: { launchPowerMinDbm: -5, launchPowerMaxDbm: -13, sensitivityDbm: -24, overloadDbm: -24 } }],
      chains: [{ id: 'ch1', number: 1, optics: { sensitivityDbm: -1, overloadDbm: -24 } }],
    };
    expect(facts(content, 'figures-crossed')).toEqual([
      { thing: '1', quantity: 'receive-power', low: -1, high: -24 },
      { thing: 'T', quantity: 'launch-power', low: -5, high: -13 },
      { thing: '-T1', quantity: 'control-voltage', low: 26, high: 21 },
    ]);
  });
});
