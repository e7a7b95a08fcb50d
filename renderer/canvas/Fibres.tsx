import { fibrePath, linkMiddle } from './fibrePath.ts';
import { type Detail, fibreOffset } from './geometry.ts';
import type { LinkLine } from './views.ts';

/** The two fibres of a cable: outbound one thick line with a solid arrow, return two thin lines with an open one. */
export function Fibres({ line, detail }: { readonly line: Pick<LinkLine, 'from' | 'to' | 'turnY'>; readonly detail: Detail }) {
  const middle = linkMiddle(line);
  return (
    <>
      <path className="outbound" d={fibrePath(line, -fibreOffset)} />
      <path className="return" d={fibrePath(line, fibreOffset - 1.5)} />
      <path className="return" d={fibrePath(line, fibreOffset + 1.5)} />
      {detail !== 'strip' && line.turnY === null && (
        <g transform={`translate(${middle.x} ${middle.y})`}>
          <path className="arrow-out" d={`M-6 ${-fibreOffset - 6.6}L7 ${-fibreOffset}L-6 ${-fibreOffset + 6.6}Z`} />
          <path className="arrow-back" d={`M7 ${fibreOffset - 6.6}L-6 ${fibreOffset}L7 ${fibreOffset + 6.6}Z`} />
        </g>
      )}
    </>
  );
}
