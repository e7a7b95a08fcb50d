import { describe, expect, it } from 'vitest';
import { type Behaviour, behaviourValues, type Fault } from '../../../engine/schema/index.ts';
import { allSteadyFaults } from '../smallCabinets.ts';
import { line, lineContent, seenOn } from './line.ts';

/*
 * Published behaviour of other, open daisy chains, which any daisy chain must share: which units stay reachable behind a break, and
 * who notices it. Rows N2, N3, N4, N17, N18, N19 of our list of check values; each with its source and whether it was read.
 */
const longest = 40;
const lengths = Array.from({ length: longest }, (_, i) => i + 1);
const upTo = (n: number) => Array.from({ length: n }, (_, i) => i + 1);
const cut = (link: number): Fault => ({ item: 'cable', link: `w${link}`, mode: 'cut' });

/** Every pair of muting and scope, each with both ways of holding: what can bear on who complains. */
const behaviours: readonly Partial<Behaviour>[] = behaviourValues.onReceiveLoss.flatMap((onReceiveLoss) =>
  behaviourValues.lossScope.flatMap((lossScope) => behaviourValues.holds.map((holds) => ({ onReceiveLoss, lossScope, holds }))),
);

describe('a line with one cable cut', () => {
  // N2. Source: KickCAT (open EtherCAT stack), test "broken_wire_splits_into_two_redundancy_paths": of four stations counted from 0, with
  // the wire between 1 and 2 broken and no second port at the head, {0, 1} are reached. Status: read. (The rest of that test is about a
  // second port at the tail, which these chains do not have.)
  it('should reach the two stations before the break of a line of four', () => {
    expect(seenOn(line(4), [cut(3)]).reached).toBe(2);
  });

  // N4. Rule: a break after station k (from 0) of n leaves k + 1 reached and n − k − 1 lost. Status: calculated from N2 and from N6
  // (the number of stations is the count that a broadcast read comes back with; SOEM, ethercrab, gatorcat; read).
  it.each([
    { n: 38, k: 10, reached: 11, lost: 27 },
    { n: 272, k: 143, reached: 144, lost: 128 },
  ])('should reach $reached and lose $lost of $n with the break after station $k', ({ n, k, reached, lost }) => {
    const seen = seenOn(line(n), [cut(k + 2)]);
    expect(seen.reached).toBe(reached);
    expect(n - seen.reached).toBe(lost);
  });

  it('should reach k + 1 units for a break after station k, for every k of every line up to 40', () => {
    for (const n of lengths) {
      const cabinet = line(n);
      // Link 1 is the hop from the controller: the break "after station −1".
      for (const link of upTo(n)) expect(seenOn(cabinet, [cut(link)])).toMatchObject({ reached: link - 1, gap: link });
      expect(seenOn(cabinet, [])).toMatchObject({ reached: n, gap: 'none' });
    }
  });

  // N3. Source: KickCAT, tests "broken_wire…" and "dl_status_matches_legacy_line_topology": the two ports that face the break lose
  // communication, every other inner port keeps it, the last station's open port never counts as a loss. Status: read. It holds where a
  // unit complains about its own receiver (lossScope: neighbour), whatever else it does.
  it('should be noticed by the two units that face the break and by no other, for every break of every line up to 40', () => {
    for (const behaviour of behaviours.filter(({ lossScope }) => lossScope === 'neighbour')) {
      for (const n of lengths) {
        const cabinet = line(n, behaviour);
        for (const link of upTo(n)) {
          const expected = upTo(n).map((i) => (i === link - 1 ? 'downstream-loss' : i === link ? 'upstream-loss' : 'quiet'));
          expect(seenOn(cabinet, [cut(link)]).displays).toEqual(expected);
        }
      }
    }
  });

  // The counterpart of N3 for lossScope: chain, from the domain text alone (calculated): everyone before the break has lost downstream,
  // everyone behind it upstream.
  it('should be noticed by all where units complain about any break of their chain', () => {
    for (const n of lengths) {
      const cabinet = line(n, { lossScope: 'chain' });
      for (const link of upTo(n)) {
        const expected = upTo(n).map((i) => (i < link ? 'downstream-loss' : 'upstream-loss'));
        expect(seenOn(cabinet, [cut(link)]).displays).toEqual(expected);
      }
    }
  });
});

describe('one fibre of a pair', () => {
  // N18. Source: IEEE 802.3, clause 24.3: with one fibre of a pair broken only the receiver on it loses light; the sender learns of it
  // only where the link tells it so (far-end fault). Status: from memory. Here the telling is `onReceiveLoss: mute`; without it, `keep`.
  it('should be noticed at its receiving end alone with onReceiveLoss: keep, for every link of every line up to 40', () => {
    for (const n of lengths) {
      const cabinet = line(n, { onReceiveLoss: 'keep' });
      for (const link of upTo(n)) {
        const outbound = seenOn(cabinet, [{ item: 'cable', link: `w${link}`, mode: 'outbound-cut' }]);
        expect(outbound.displays).toEqual(upTo(n).map((i) => (i === link ? 'upstream-loss' : 'quiet')));
        expect(outbound.gap).toBe(link);
        const back = seenOn(cabinet, [{ item: 'cable', link: `w${link}`, mode: 'return-cut' }]);
        // On the first link the receiving end is the controller, which has no display here; its report tells.
        expect(back.displays).toEqual(upTo(n).map((i) => (i === link - 1 ? 'downstream-loss' : 'quiet')));
        expect(back.gap).toBe(link);
      }
    }
  });

  it('should look like the whole cable with onReceiveLoss: mute, which passes the loss on to the sender (far-end fault)', () => {
    for (const n of lengths) {
      const cabinet = line(n, { onReceiveLoss: 'mute' });
      for (const link of upTo(n)) {
        const whole = seenOn(cabinet, [cut(link)]);
        for (const mode of ['outbound-cut', 'return-cut'] as const) {
          expect(seenOn(cabinet, [{ item: 'cable', link: `w${link}`, mode }])).toEqual(whole);
        }
      }
    }
  });
});

describe('the fault domain of a lost neighbour', () => {
  /** Names of the single faults of a line of five under which it shows exactly this. */
  const domain = (behaviour: Partial<Behaviour>, shown: ReturnType<typeof seenOn>) => {
    const cabinet = line(5, behaviour);
    return allSteadyFaults(lineContent(5, behaviour))
      .filter((fault) => JSON.stringify(seenOn(cabinet, [fault])) === JSON.stringify(shown))
      .map((fault) => {
        const { item, mode, ...reference } = fault;
        return [item, ...Object.values(reference), mode].join(' ');
      })
      .sort();
  };

  // N17. Source: tutorials on the token ring's beaconing (IEEE 802.5): the fault lies in {the station that reports, its nearest active
  // neighbour upstream, everything in between}. Status: read. Where one fibre is noticed by its receiver alone (onReceiveLoss: keep)
  // that is to the letter: transmitter of unit 2, the fibre, receiver of unit 3.
  it('should be the transmitter before, the fibre and the receiver, with onReceiveLoss: keep', () => {
    const shown = { displays: ['quiet', 'quiet', 'upstream-loss', 'quiet', 'quiet'] as const, reached: 2, gap: 3 };
    expect(domain({ onReceiveLoss: 'keep' }, { ...shown, displays: [...shown.displays] })).toEqual([
      'board u2 down-tx',
      'board u3 up-rx',
      'cable w3 outbound-cut',
      'cable w3 outbound-dim',
    ]);
  });

  // N17 again, where a deaf end falls silent (onReceiveLoss: mute): both neighbours report, and the domain is all that stands between
  // the two units, both directions. Status: calculated from N17.
  it('should be all between the two complaining neighbours, with onReceiveLoss: mute', () => {
    const shown = { displays: ['quiet', 'downstream-loss', 'upstream-loss', 'quiet', 'quiet'] as const, reached: 2, gap: 3 };
    expect(domain({ onReceiveLoss: 'mute' }, { ...shown, displays: [...shown.displays] })).toEqual([
      'board u2 down-port',
      'board u2 down-rx',
      'board u2 down-tx',
      'board u3 up-port',
      'board u3 up-rx',
      'board u3 up-tx',
      'cable w3 cut',
      'cable w3 fibres-crossed',
      'cable w3 outbound-cut',
      'cable w3 outbound-dim',
      'cable w3 return-cut',
      'cable w3 return-dim',
      'plug w3 lower fouled',
      'plug w3 lower loose',
      'plug w3 upper fouled',
      'plug w3 upper loose',
      'route w3 kinked',
    ]);
  });
});

describe('a dead unit', () => {
  /** Ways in which unit i falls silent. */
  const deaths = (i: number): readonly Fault[] => [
    { item: 'board', unit: `u${i}`, mode: 'dead-dark' },
    { item: 'board', unit: `u${i}`, mode: 'dead-lit' },
    { item: 'fuse', unit: `u${i}`, mode: 'open' },
    { item: 'lead', lead: `p${i}`, mode: 'open' },
  ];

  // N19. Status: calculated from N2, not published.
  it('should show outside itself what two cut cables on its two sides show, for every unit of every line up to 40', () => {
    for (const behaviour of behaviours) {
      for (const n of lengths) {
        const cabinet = line(n, behaviour);
        for (const i of upTo(n)) {
          const outside = ({ displays, gap }: ReturnType<typeof seenOn>) => ({ displays: displays.filter((_, at) => at !== i - 1), gap });
          const twoCuts = outside(seenOn(cabinet, i < n ? [cut(i), cut(i + 1)] : [cut(i)]));
          const [darkBoard, ...others] = deaths(i);
          if (darkBoard === undefined) throw new Error('no fault');
          expect(outside(seenOn(cabinet, [darkBoard]))).toEqual(twoCuts);
          // The other ways in which a unit dies differ only in its own display; on the shorter lines all of them are tried.
          if (n <= 8) for (const death of others) expect(outside(seenOn(cabinet, [death]))).toEqual(twoCuts);
        }
      }
    }
  });

  it('should be reported by its two neighbours, with nothing reached from it on', () => {
    for (const n of lengths) {
      const cabinet = line(n);
      for (const i of upTo(n)) {
        const seen = seenOn(cabinet, [{ item: 'board', unit: `u${i}`, mode: 'dead-dark' }]);
        const expected = upTo(n).map((at) =>
          at === i ? 'dark' : at === i - 1 ? 'downstream-loss' : at === i + 1 ? 'upstream-loss' : 'quiet',
        );
        expect(seen).toEqual({ displays: expected, reached: i - 1, gap: i });
      }
    }
  });
});
