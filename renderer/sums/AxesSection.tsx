import { headings, sumHeadings, sumsPageWords, termWords } from '../../engine/messages/index.ts';
import type { ChainAxes, Sums } from '../../engine/sums/index.ts';
import { namesOf } from '../state/names.ts';
import { useApp } from '../state/useWorkbench.ts';
import { NumberButton } from './NumberButton.tsx';
import { SumRow } from './SumRow.tsx';

/** More blocks than this could not be counted. */
const mostBlocks = 64;

/** Axes of every chain against the limit of its control cycle. */
export function AxesSection({ sums, base }: { readonly sums: Sums; readonly base: Sums | null }) {
  const names = useApp((state) => namesOf(state.checked.topology));
  if (sums.axes.length === 0) return <p className="empty">{sumsPageWords.noAxes}</p>;
  return (
    <table className="sums-table">
      <caption className="screen-reader">{sumHeadings.axes}</caption>
      <thead>
        <tr>
          <th scope="col">{headings.chain}</th>
          <th scope="col" className="picture-head">
            {sumHeadings.axes}
          </th>
          <th scope="col" className="to-right">
            {sumHeadings.axes}
          </th>
          <th scope="col" className="to-right">
            {sumHeadings.allowed}
          </th>
          <th scope="col" className="to-right">
            {sumHeadings.left}
          </th>
          <th scope="col" className="to-right">
            {sumHeadings.wire}
          </th>
        </tr>
      </thead>
      <tbody>
        {sums.axes.map((chain) => {
          const was = base?.axes.find((one) => one.chain === chain.chain) ?? null;
          const name = names.chain(chain.chain);
          const over = chain.left.value !== null && chain.left.value < 0;
          const number = (field: 'axes' | 'limit' | 'left' | 'wireShare') => {
            const term = chain[field];
            return term === null
              ? null
              : {
                  at: `axes/${chain.chain}/${field}`,
                  what: `${termWords[term.code]}, ${name}`,
                  term,
                  was: was?.[field] ?? null,
                  bad: over && field === 'left',
                };
          };
          const cells = (['axes', 'limit', 'left', 'wireShare'] as const).map((field) => ({ field, shown: number(field) }));
          return (
            <SumRow
              key={chain.chain}
              columns={6}
              about={chain.chain}
              openings={cells.flatMap(({ shown }) => (shown === null ? [] : [shown]))}
            >
              <th scope="row">
                <b>{name}</b> <small className="unbroken">{chain.cycleClass ?? sumsPageWords.noClass}</small>
              </th>
              <td className="sum-picture">
                <Blocks chain={chain} over={over} />
              </td>
              {cells.map(({ field, shown }) => (
                <td key={field} className="to-right">
                  {shown === null ? '–' : <NumberButton {...shown} />}
                </td>
              ))}
            </SumRow>
          );
        })}
      </tbody>
    </table>
  );
}

function Blocks({ chain: { axes, limit, classes, cycleClass }, over }: { readonly chain: ChainAxes; readonly over: boolean }) {
  const taken = axes.value ?? 0;
  const allowed = limit.value ?? 0;
  const count = Math.max(taken, allowed);
  const blocks = Array.from({ length: Math.min(count, mostBlocks) }, (_, at) => ({
    at,
    kind: at >= taken ? 'block-free' : at < allowed || allowed === 0 ? 'block-taken' : 'block-beyond',
  }));
  return (
    <div className="blocks" data-over={over}>
      {count > 0 && count <= mostBlocks && (
        <svg viewBox={`0 0 ${count * 10} 12`} style={{ width: `${count * 10}px` }} aria-hidden="true">
          {blocks.map(({ at, kind }) => (
            <path key={at} className={kind} d={`M${at * 10 + 1} 1.5h7v9h-7z`} />
          ))}
        </svg>
      )}
      <small>
        {classes
          .filter((one) => one.cycleClass !== cycleClass)
          .map((one) => sumsPageWords.classFits(one.cycleClass, one.maximumAxes, one.fits))
          .join(' · ')}
      </small>
    </div>
  );
}
