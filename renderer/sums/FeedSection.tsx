import {
  headings,
  sumHeadings,
  sumStatements,
  sumsPageWords,
  termWords,
  verdictWords,
  wordNumber,
  wordTermValue,
} from '../../engine/messages/index.ts';
import type { FeedSums, Sums } from '../../engine/sums/index.ts';
import { Sign } from '../marks/Sign.tsx';
import { namesOf } from '../state/names.ts';
import { useApp } from '../state/useWorkbench.ts';
import { type FeedLine, feedLines, voltScale } from './feedTree.ts';
import { NumberButton } from './NumberButton.tsx';
import { type Opening, SumRow } from './SumRow.tsx';

const columns = 7;
const width = 300;
type Scale = ReturnType<typeof voltScale>;
const place = ({ from, to }: Scale, volts: number) => ((volts - from) / (to - from)) * 100;

/** The 24 V along the leads: what reaches every unit, against what it needs. */
export function FeedSection({ sums: { feed }, base }: { readonly sums: Sums; readonly base: Sums | null }) {
  const names = useApp((state) => namesOf(state.checked.topology));
  const lines = feedLines(feed);
  if (lines.length === 0) return <p className="empty">{sumsPageWords.noUnits}</p>;
  const scale = voltScale(feed);
  const first = feed.units.find(({ unit }) => unit === feed.firstToFail);
  return (
    <>
      {first !== undefined && (
        <p className="sum-hint sum-strong">
          {(first.headroom.value ?? 0) < 0
            ? sumStatements.failsAlready(names.unit(first.unit))
            : sumStatements.firstToFail(names.unit(first.unit), wordTermValue(first.headroom))}
        </p>
      )}
      {feed.tooMeshed && <p className="sum-hint sum-strong">{sumStatements.tooMeshed}</p>}
      <table className="sums-table feed-table">
        <caption className="screen-reader">{sumHeadings.feed}</caption>
        <thead>
          <tr>
            <th scope="col">{headings.unit}</th>
            <th scope="col" className="picture-head">
              <span className="volt-scale" aria-hidden="true">
                {scale.ticks.map((tick) => (
                  <span key={tick} style={{ left: `${place(scale, tick)}%` }}>
                    {sumsPageWords.scaleOf(wordNumber(tick, 1))}
                  </span>
                ))}
              </span>
            </th>
            <th scope="col" className="to-right">
              {sumHeadings.voltage}
            </th>
            <th scope="col" className="to-right">
              {sumsPageWords.drop}
            </th>
            <th scope="col" className="to-right">
              {sumHeadings.load}
            </th>
            <th scope="col" className="to-right">
              {sumHeadings.spare}
            </th>
            <th scope="col">{sumHeadings.verdict}</th>
          </tr>
        </thead>
        <tbody>
          {lines.map((line) => (
            <FeedRow key={line.key} line={line} feed={feed} base={base?.feed ?? null} scale={scale} />
          ))}
        </tbody>
      </table>
    </>
  );
}

interface RowProps {
  readonly line: FeedLine;
  readonly feed: FeedSums;
  readonly base: FeedSums | null;
  readonly scale: Scale;
}

function FeedRow({ line, feed, base, scale }: RowProps) {
  const names = useApp((state) => namesOf(state.checked.topology));
  const { unit, at, lead, also, depth } = line;
  const name = names.unit(unit);
  const supply = feed.supplies.find((one) => one.supply === unit);
  const was = base?.units.find((one) => one.unit === unit) ?? null;
  const wasSupply = base?.supplies.find((one) => one.supply === unit) ?? null;
  const wasLead = base?.leads.find((one) => one.lead === lead?.lead) ?? null;
  const bad = at !== null && (at.verdict === 'too-low' || at.verdict === 'too-high');
  const voltage = at?.voltage ?? supply?.voltage ?? null;
  const key = (what: string) => `feed/${line.key}/${what}`;
  const number = (
    what: string,
    words: string,
    term: Opening['term'] | null | undefined,
    before: Opening['term'] | null | undefined,
    isBad = false,
  ) => (term === null || term === undefined ? null : { at: key(what), what: `${words}, ${name}`, term, was: before ?? null, bad: isBad });
  const cells = [
    number('voltage', termWords[at === null ? 'supply-voltage' : 'voltage'], voltage, was?.voltage ?? wasSupply?.voltage, bad),
    number('drop', termWords['lead-drop'], lead?.drop, wasLead?.drop),
    number('load', termWords.load, at?.load ?? supply?.steady.load, was?.load ?? wasSupply?.steady.load),
    number('headroom', termWords.headroom, at?.headroom, was?.headroom, bad),
  ];
  const fromWhere =
    lead === null
      ? ''
      : `${sumsPageWords.from} ${names.unit(lead.from)}${also.length > 0 ? `, ${also.map((one) => names.unit(one.from)).join(', ')}` : ''}`;
  return (
    <SumRow
      columns={columns}
      about={unit}
      openings={cells.filter((cell) => cell !== null)}
      className={supply === undefined ? 'fed' : 'feeding'}
    >
      <th scope="row">
        <span
          className="feed-branch"
          style={{ '--depth': depth } as React.CSSProperties /* a property of our own */}
          data-root={lead === null}
        >
          <b className="designation">{name}</b>
          {fromWhere !== '' && <small className="unbroken">{fromWhere}</small>}
        </span>
      </th>
      <td className="sum-picture">
        <VoltPicture
          volts={voltage?.value ?? null}
          minimum={at?.minimum.value ?? null}
          maximum={at?.maximum.value ?? null}
          scale={scale}
          bad={bad}
          isBound={voltage !== null && voltage.bound !== null}
          start={startOf(feed, lead)}
        />
      </td>
      {cells.map((cell, index) => (
        <td key={cell?.at ?? `${line.key}/${index}`} className="to-right">
          {cell !== null && <NumberButton {...cell} />}
        </td>
      ))}
      <td className="sum-verdict" data-verdict={at?.verdict}>
        {at !== null && (
          <>
            {bad && <Sign name="abnormal" size={14} />}
            {verdictWords[at.verdict]}
            {feed.firstToFail === unit && <span className="sum-chip">{sumsPageWords.failsFirst}</span>}
          </>
        )}
      </td>
    </SumRow>
  );
}

/** The voltage at the end of the lead from which it comes. */
function startOf(feed: FeedSums, lead: FeedLine['lead']): number | null {
  if (lead === null) return null;
  return (
    feed.supplies.find(({ supply }) => supply === lead.from)?.voltage.value ??
    feed.units.find(({ unit }) => unit === lead.from)?.voltage.value ??
    null
  );
}

interface PictureProps {
  readonly volts: number | null;
  readonly start: number | null;
  readonly minimum: number | null;
  readonly maximum: number | null;
  readonly scale: Scale;
  readonly bad: boolean;
  /** The true voltage may be lower: the mark is hollow. */
  readonly isBound: boolean;
}

/** One voltage in the window of what the unit works with; the numbers beside it say the same. */
function VoltPicture({ volts, start, minimum, maximum, scale, bad, isBound }: PictureProps) {
  const x = (value: number) => Math.min(width, Math.max(0, (place(scale, value) / 100) * width));
  const right = maximum === null || maximum > scale.to ? width : x(maximum);
  return (
    <svg
      className="volt-picture"
      viewBox={`0 0 ${width} 28`}
      preserveAspectRatio="none"
      aria-hidden="true"
      data-bad={bad}
      data-bound={isBound}
    >
      {scale.ticks.map((tick) => (
        <path key={tick} className="tick-line" d={`M${x(tick)} 0V28`} />
      ))}
      {minimum !== null && <path className="window-box" d={`M${x(minimum)} 5H${right}V23H${x(minimum)}Z`} />}
      {minimum !== null && <path className="edge-line" d={`M${x(minimum)} 3V25`} />}
      {maximum !== null && maximum <= scale.to && <path className="edge-line" d={`M${x(maximum)} 3V25`} />}
      {volts !== null && start !== null && <path className="sag" d={`M${x(start)} 0V14H${x(volts)}`} />}
      {volts !== null && <path className="volt-line" d={`M${x(volts)} ${start === null ? 8 : 10}V28`} />}
      {volts !== null && <path className="volts-mark" d={`M${x(volts) - 4} 10h8v8h-8z`} />}
    </svg>
  );
}
