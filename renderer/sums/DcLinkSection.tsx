import {
  headings,
  sumHeadings,
  sumStatements,
  sumsPageWords,
  termWords,
  wordDuration,
  wordNumber,
  wordWaitingTime,
} from '../../engine/messages/index.ts';
import type { DcLinkSums, Sums, SumTerm } from '../../engine/sums/index.ts';
import { Sign } from '../marks/Sign.tsx';
import { namesOf } from '../state/names.ts';
import { useApp } from '../state/useWorkbench.ts';
import { NumberButton } from './NumberButton.tsx';
import { SumRow } from './SumRow.tsx';

interface Props {
  readonly sums: Sums;
  readonly base: Sums | null;
}

/** How long the DC links stay charged. */
export function DcLinkSection({ sums, base }: Props) {
  const names = useApp((state) => namesOf(state.checked.topology));
  return (
    <>
      <p className="sum-hint sum-must">
        <Sign name="must" size={15} />
        {wordWaitingTime(sums.waitingTimeS)}
      </p>
      {sums.dcLinks.length === 0 ? (
        <p className="empty">{sumsPageWords.noDcLink}</p>
      ) : (
        <table className="sums-table">
          <caption className="screen-reader">{sumHeadings.dcLink}</caption>
          <thead>
            <tr>
              <th scope="col">{headings.unit}</th>
              <th scope="col" className="picture-head">
                {sumHeadings.voltage}
              </th>
              <th scope="col" className="to-right">
                {sumHeadings.capacitance}
              </th>
              <th scope="col" className="to-right">
                {sumHeadings.discharge}
              </th>
            </tr>
          </thead>
          <tbody>
            {sums.dcLinks.map((link) => {
              const was = base?.dcLinks.find(({ supply }) => supply === link.supply);
              const name = names.unit(link.supply);
              const capacitance = {
                at: `dc/${link.supply}/capacitance`,
                what: `${termWords.capacitance}, ${name}`,
                term: link.capacitance,
              };
              const discharge = {
                at: `dc/${link.supply}/discharge`,
                what: `${termWords['discharge-time']}, ${name}`,
                term: link.discharge,
              };
              return (
                <SumRow key={link.supply} columns={4} about={link.supply} openings={[capacitance, discharge]}>
                  <th scope="row">
                    <b className="designation">{name}</b>
                  </th>
                  <td className="sum-picture">
                    <DischargeCurve link={link} />
                  </td>
                  <td className="to-right">
                    <NumberButton {...capacitance} was={was?.capacitance ?? null} />
                  </td>
                  <td className="to-right">
                    <NumberButton {...discharge} was={was?.discharge ?? null} unknown={sumStatements.dischargeNotKnown} />
                  </td>
                </SumRow>
              );
            })}
          </tbody>
        </table>
      )}
    </>
  );
}

const safe = 60;
const box = { width: 300, height: 64, left: 40, right: 62, top: 6, bottom: 16 } as const;
const steps = 40;

/** The voltage falling by its resistor alone; nothing is drawn where a figure is missing. */
function DischargeCurve({ link: { discharge } }: { readonly link: DcLinkSums }) {
  const charged = findValue(discharge, 'charged-voltage');
  if (discharge.value === null || charged === null || charged <= safe) return null;
  const span = discharge.value * 1.12;
  const rate = Math.log(charged / safe) / discharge.value;
  const x = (seconds: number) => box.left + (seconds / span) * (box.width - box.left - box.right);
  const y = (volts: number) => box.top + (1 - volts / charged) * (box.height - box.top - box.bottom);
  const points = Array.from({ length: steps + 1 }, (_, step) => {
    const seconds = (span * step) / steps;
    return `${x(seconds).toFixed(1)} ${y(charged * Math.exp(-rate * seconds)).toFixed(1)}`;
  });
  const time = wordDuration(discharge.value);
  return (
    <svg className="curve" viewBox={`0 0 ${box.width} ${box.height}`} role="img" aria-label={sumsPageWords.curve(time)}>
      <path className="curve-axis" d={`M${box.left} ${box.top}V${y(0)}H${box.width - box.right + 10}`} />
      <path className="edge-line" d={`M${box.left} ${y(safe)}H${box.width - box.right + 10}`} />
      <path className="falling" d={`M${points.join('L')}`} />
      <path className="volts-mark" d={`M${x(discharge.value) - 3} ${y(safe) - 3}h6v6h-6z`} />
      <text x={box.left - 4} y={y(charged) + 7} textAnchor="end">
        {sumsPageWords.scaleOf(wordNumber(charged, 0))}
      </text>
      <text x={box.left - 4} y={y(safe) + 4} textAnchor="end">
        {sumsPageWords.scaleOf(wordNumber(safe, 0))}
      </text>
      <text x={x(discharge.value)} y={box.height - 3} textAnchor="middle">
        {time}
      </text>
    </svg>
  );
}

function findValue(term: SumTerm, code: SumTerm['code']): number | null {
  return term.from.find((one) => one.code === code)?.value ?? null;
}
