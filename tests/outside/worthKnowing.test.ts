import { describe, expect, it } from 'vitest';
import { checkCabinet } from '../../engine/cabinet/index.ts';
import { type Diagnosis, diagnose } from '../../engine/diagnosis/index.ts';
import type { CabinetContent, Circumstance, DisplayMeaning, Evidence, Onset } from '../../engine/schema/index.ts';
import type { Cabinet } from '../../engine/topology/index.ts';
import { line, lineContent, seenOn } from './lines/line.ts';

// Source of the four facts: common practice of the trade, no published source.

/** Evidence of one halted look at chain c of a line: the displays of u1, u2, … in order, and the report. */
function evidenceOf(
  displays: readonly DisplayMeaning[],
  gap: number,
  onset: Onset = 'while-running',
  circumstances: readonly Circumstance[] = [],
): Evidence {
  return {
    snapshots: [
      {
        onset,
        halted: true,
        displays: displays.map((meaning, i) => ({ unit: `u${i + 1}`, meanings: [meaning] })),
        reports: [{ chain: 'c', gaps: [gap] }],
      },
    ],
    circumstances: [...circumstances],
  };
}

/** Summed probability of the items with these keys. */
function share(diagnosis: Diagnosis, ...keys: readonly string[]): number {
  return diagnosis.items.filter(({ item }) => keys.includes(item.key)).reduce((sum, { probability }) => sum + probability, 0);
}

/** All that lies on link i: the cable, its two plugs and its route. */
const onLink = (link: string) => [`cable/${link}`, `plug/${link}/upper`, `plug/${link}/lower`, `route/${link}`];

describe('two neighbours that complain about each other', () => {
  const diagnosis = diagnose(line(5), evidenceOf(['quiet', 'downstream-loss', 'upstream-loss', 'quiet', 'quiet'], 3));

  it('should point at what lies between them and at nothing else', () => {
    const between = [...onLink('w3'), 'board/u2', 'board/u3'];
    expect(diagnosis.contradiction).toBeNull();
    expect(diagnosis.groups[0]?.items.map(({ item }) => item).sort()).toEqual([...between].sort());
    expect(diagnosis.groups[0]?.probability).toBeGreaterThan(0.98);
  });

  it('should put the cable before either unit', () => {
    const order = diagnosis.items.map(({ item }) => item.key);
    for (const board of ['board/u2', 'board/u3']) {
      expect(order.indexOf('cable/w3')).toBeLessThan(order.indexOf(board));
      expect(share(diagnosis, ...onLink('w3'))).toBeGreaterThan(5 * share(diagnosis, board));
    }
  });
});

describe('a lit, quiet unit between two that complain', () => {
  it('should be itself the suspect', () => {
    const diagnosis = diagnose(line(5), evidenceOf(['quiet', 'downstream-loss', 'quiet', 'upstream-loss', 'quiet'], 3));
    const [first] = diagnosis.items;
    expect(first?.item.key).toBe('board/u3');
    expect(first?.modes[0]?.mode).toBe('dead-lit');
    expect(first?.probability).toBeGreaterThan(0.75);
    // The rest is the same unit too: one that was off at the trip for a moment has started again, and complains of nothing.
    expect(share(diagnosis, 'board/u3', 'place/u3', 'fuse/u3', 'lead/p3')).toBeGreaterThan(0.99);
  });
});

describe('the first hop', () => {
  const expectFirstHop = (diagnosis: Diagnosis) => {
    const cable = share(diagnosis, ...onLink('w1'));
    const board = share(diagnosis, 'board/u1');
    const port = share(diagnosis, 'controller-port/c');
    expect(diagnosis.contradiction).toBeNull();
    expect(cable).toBeGreaterThan(board);
    expect(board).toBeGreaterThan(port);
    expect(port).toBeGreaterThan(share(diagnosis, 'controller'));
    expect(diagnosis.items[0]?.item.key).toMatch(/^(cable|plug)\/w1/);
    return cable + board + port + share(diagnosis, 'controller');
  };

  it('should be suspected when the first unit has lost upstream: its cable, then the unit, then the port of the controller', () => {
    expect(expectFirstHop(diagnose(line(4), evidenceOf(['upstream-loss', 'quiet', 'quiet', 'quiet'], 1)))).toBeGreaterThan(0.95);
  });

  it('should be suspected when all is quiet and the report is controller to first, at power-up', () => {
    // Nobody has wired anything since it last ran: else a wiring mistake would be as likely as a loose plug.
    const evidence = evidenceOf(['quiet', 'quiet', 'quiet', 'quiet'], 1, 'at-power-up', [{ kind: 'not-reworked' }]);
    expect(expectFirstHop(diagnose(line(4), evidence))).toBeGreaterThan(0.9);
  });

  it('should be suspected when all is quiet and the report is controller to first, while running, with units that go on sending', () => {
    const diagnosis = diagnose(line(4, { onReceiveLoss: 'keep' }), evidenceOf(['quiet', 'quiet', 'quiet', 'quiet'], 1));
    // What is left is the supply: if its output failed for a moment, all units have started again and complain of nothing.
    expect(expectFirstHop(diagnosis)).toBeGreaterThan(0.8);
    expect(diagnosis.groups[0]?.items.map(({ item }) => item)).toEqual(['cable/w1', 'board/u1']);
  });

  /** Two lines of three on one controller. */
  function twoLines(): Cabinet {
    const one = lineContent(3);
    const numbers = [4, 5, 6];
    const content: CabinetContent = {
      ...one,
      chains: [...(one.chains ?? []), { id: 'd', number: 2 }],
      units: [
        ...(one.units ?? []),
        ...numbers.map((i) => ({ id: `u${i}`, kind: 'servo-drive' as const, designation: `u${i}`, type: 't' })),
      ],
      links: [
        ...(one.links ?? []),
        ...numbers.map((i) => ({ id: `w${i}`, upper: i === 4 ? { chain: 'd' } : { unit: `u${i - 1}` }, lower: { unit: `u${i}` } })),
      ],
      leads: [...(one.leads ?? []), ...numbers.map((i) => ({ id: `p${i}`, from: { unit: 's' }, to: { unit: `u${i}` } }))],
    };
    const { cabinet, problems } = checkCabinet(content);
    if (cabinet === null) throw new Error(JSON.stringify(problems));
    return cabinet;
  }

  it('should give way to the board of the controller when every chain is lost there at once', () => {
    const evidence = evidenceOf(['upstream-loss', 'quiet', 'quiet', 'upstream-loss', 'quiet', 'quiet'], 1);
    evidence.snapshots[0]?.reports?.push({ chain: 'd', gaps: [1] });
    const diagnosis = diagnose(twoLines(), evidence);
    expect(diagnosis.items[0]?.item.key).toBe('controller');
    expect(share(diagnosis, 'controller')).toBeGreaterThan(0.9);
  });
});

describe('a unit that complains', () => {
  it('should be more likely healthy than at fault, for a break at every link of a line', () => {
    const n = 6;
    const cabinet = line(n);
    for (let link = 1; link <= n; link += 1) {
      const { displays } = seenOn(cabinet, [{ item: 'cable', link: `w${link}`, mode: 'cut' }]);
      const diagnosis = diagnose(
        cabinet,
        evidenceOf(
          displays.map((display) => display ?? 'dark'),
          link,
        ),
      );
      displays.forEach((display, i) => {
        if (display !== 'quiet') expect(share(diagnosis, `board/u${i + 1}`)).toBeLessThan(0.25);
      });
    }
  });
});
