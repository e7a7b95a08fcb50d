import { describe, expect, it } from 'vitest';
import { checkCabinet } from '../../engine/cabinet/index.ts';
import { diagnose } from '../../engine/diagnosis/index.ts';
import { listCauses } from '../../engine/plan/index.ts';
import { faultModes } from '../../engine/schema/index.ts';
import { provedCase } from '../experience/provedCase.ts';
import { readContent } from '../support/sampleCabinets.ts';

const content = readContent('three-units');
const { cabinet } = checkCabinet(content);
if (!cabinet) throw new Error('not sound');
const [link = ''] = cabinet.links.keys();

const causesOf = (act: Parameters<typeof provedCase>[1]['act']) => {
  const { evidence } = provedCase(content, { fault: { item: 'cable', link, mode: 'cut' }, act });
  return listCauses(cabinet, evidence, diagnose(cabinet, evidence));
};

describe('listCauses', () => {
  it('should name what a new cable mends, each once, and nothing that stayed in the cabinet', () => {
    const causes = causesOf({ do: 'replace-cable', link });
    const names = causes.map(({ key, fault }) => `${key} ${fault.mode}`);
    expect(new Set(names).size).toBe(names.length);
    // All that a cable and its plugs can have; never its route, or the boards at its ends.
    const keys = [`cable/${link}`, `plug/${link}/upper`, `plug/${link}/lower`];
    expect(new Set(causes.map(({ key }) => key))).toEqual(new Set(keys));
    expect(causes.filter(({ fault }) => fault.item === 'cable').map(({ fault }) => fault.mode)).toEqual(expect.arrayContaining(['cut']));
    for (const { fault } of causes) expect((faultModes[fault.item] as readonly string[]).includes(fault.mode)).toBe(true);
  });

  it('should put the likeliest first, and hold no more than the whole', () => {
    const shares = causesOf({ do: 'replace-cable', link }).map(({ share }) => share);
    expect(shares).toEqual([...shares].sort((a, b) => b - a));
    expect(shares.reduce((sum, share) => sum + share, 0)).toBeLessThanOrEqual(1.01);
  });
});
