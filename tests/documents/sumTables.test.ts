import { describe, expect, it } from 'vitest';
import { checkCabinet } from '../../engine/cabinet/index.ts';
import { listSumTables, type SumTableName } from '../../engine/documents/sumTables.ts';
import { makeNames, sumHeadings, termStatusWords } from '../../engine/messages/index.ts';
import type { CabinetContent } from '../../engine/schema/index.ts';
import { computeSums } from '../../engine/sums/index.ts';
import { drive, feedOnly, fibre, lead, oneLink, supply } from '../sums/sketch.ts';

/** The lines of a table, cells by their heads. */
function linesOf(content: CabinetContent, name: SumTableName): readonly Readonly<Record<string, string | undefined>>[] {
  const { topology } = checkCabinet(content);
  const table = listSumTables(makeNames(topology), computeSums(topology)).find((one) => one.name === name);
  return (table?.lines ?? []).map(({ cells }) => Object.fromEntries((table?.columns ?? []).map(({ head }, index) => [head, cells[index]])));
}

describe('the tables of the sums', () => {
  it('should name the least of the lengths that a cable may have', () => {
    const allowed = (maximumLengthM: number, atRate: number) =>
      linesOf(
        oneLink({}, { fibres: [{ ...fibre, maximumLengthM, lengthLimits: [{ dataRateMbd: 5, maximumLengthM: atRate }] }] }),
        'light',
      )[0];
    expect(allowed(60, 20)?.[sumHeadings.lengthAllowed]).toBe('20 m');
    expect(allowed(20, 60)?.[sumHeadings.lengthAllowed]).toBe('20 m');
  });

  it('should say how a margin is known: assumed where a figure of it is, else measured where the loss was', () => {
    const how = (content: CabinetContent) => linesOf(content, 'light').map((line) => line[sumHeadings.how]);
    const { optics: _optics, ...chain } = oneLink().chains?.[0] ?? { id: 'ch1', number: 1 };
    expect(how(oneLink())).toEqual([termStatusWords.computed.label, termStatusWords.computed.label]);
    expect(how(oneLink({}, { chains: [chain], types: [{ id: 't', name: 'Drive' }] }))[0]).toBe(termStatusWords.assumed.label);
  });

  it('should say how much of a supply is used, in whole per cent', () => {
    const units = [supply('s', 24, { supply: { control24: { nominalV: 24, ratedA: 20 } } }), drive('u', { control24: { loadA: 5 } })];
    const [steady] = linesOf(feedOnly(units, [lead('l', 's', 'u')]), 'supplies');
    expect(steady?.[sumHeadings.used]).toBe('25 %');
  });
});
