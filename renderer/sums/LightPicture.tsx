import type { FibreBudget } from '../../engine/sums/index.ts';
import { type LightWindow, lightWindow } from './lightWindow.ts';

const width = 300;
const lanes = { outbound: 8, return: 20 } as const;

interface Props {
  readonly budgets: readonly FibreBudget[];
  readonly scale: { readonly from: number; readonly to: number };
  readonly name: string;
}

/** Both fibres of a link in the windows of their receivers; the numbers beside it say the same. */
export function LightPicture({ budgets, scale, name }: Props) {
  const x = (db: number) => ((db - scale.from) / (scale.to - scale.from)) * width;
  return (
    <svg className="light-picture" viewBox={`0 0 ${width} 28`} preserveAspectRatio="none" role="img" aria-label={name}>
      {budgets.map((budget) => (
        <Lane
          key={budget.direction}
          shown={lightWindow(budget)}
          y={lanes[budget.direction]}
          x={x}
          isReturn={budget.direction === 'return'}
        />
      ))}
    </svg>
  );
}

interface LaneProps {
  readonly shown: LightWindow;
  readonly y: number;
  readonly x: (db: number) => number;
  readonly isReturn: boolean;
}

function Lane({ shown, y, x, isReturn }: LaneProps) {
  const { least, leastNow, most, assumed } = shown;
  const right = shown.width === null ? null : x(shown.width);
  const end = most === null ? Math.min(x(leastNow) + 40, right ?? width) : x(most);
  const bad = least < 0 || (shown.width !== null && most !== null && most > shown.width);
  return (
    <g className="light-lane" data-bad={bad} data-assumed={assumed}>
      <path className="window-box" d={`M${x(0)} ${y - 5}H${right ?? width}V${y + 5}H${x(0)}Z`} />
      <path className="edge-line" d={`M${x(0)} ${y - 6}V${y + 6}`} />
      {right !== null && <path className="edge-line" d={`M${right} ${y - 6}V${y + 6}`} />}
      <path className="lane-reserve" d={`M${x(least)} ${y}H${x(leastNow)}`} />
      {isReturn ? (
        <>
          <path className="lane-thin" d={`M${x(leastNow)} ${y - 2}H${end}`} />
          <path className="lane-thin" d={`M${x(leastNow)} ${y + 2}H${end}`} />
        </>
      ) : (
        <path className="lane-thick" d={`M${x(leastNow)} ${y}H${end}`} />
      )}
    </g>
  );
}
