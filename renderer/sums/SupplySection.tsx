import { headings, sumHeadings, sumsPageWords, termWords } from '../../engine/messages/index.ts';
import type { Loading, Sums } from '../../engine/sums/index.ts';
import { namesOf } from '../state/names.ts';
import { useApp } from '../state/useWorkbench.ts';
import { LoadBar } from './LoadBar.tsx';
import { NumberButton } from './NumberButton.tsx';
import { SumRow } from './SumRow.tsx';

interface Props {
  readonly sums: Sums;
  readonly base: Sums | null;
}

interface Line extends Pick<Loading, 'share' | 'over'> {
  readonly at: string;
  readonly supply: string;
  readonly what: string;
  readonly load: Loading['load'] | Sums['dcLinks'][number]['power'];
  readonly rated: Loading['rated'] | Sums['dcLinks'][number]['rated'];
}

/** Every rating of every supply, with what is asked of it. */
function linesOf({ feed, dcLinks }: Sums): readonly Line[] {
  const supplies = [...new Set([...feed.supplies.map(({ supply }) => supply), ...dcLinks.map(({ supply }) => supply)])];
  return supplies.flatMap((supply): readonly Line[] => {
    const given = feed.supplies.find((one) => one.supply === supply);
    const dcLink = dcLinks.find((one) => one.supply === supply);
    return [
      ...(given
        ? [
            { ...given.steady, at: `supply/${supply}/steady`, supply, what: sumHeadings.steady },
            { ...given.inrush, at: `supply/${supply}/inrush`, supply, what: sumHeadings.inrush },
            ...given.outputs.map((output) => ({
              ...output,
              at: `supply/${supply}/${output.output}`,
              supply,
              what: sumHeadings.output(output.name),
            })),
          ]
        : []),
      ...(dcLink ? [{ ...dcLink, load: dcLink.power, at: `supply/${supply}/dc`, supply, what: sumHeadings.dcLink }] : []),
    ];
  });
}

/** What the supplies give, against what they are rated for. */
export function SupplySection({ sums, base }: Props) {
  const names = useApp((state) => namesOf(state.checked.topology));
  const lines = linesOf(sums);
  const before = base === null ? [] : linesOf(base);
  if (lines.length === 0) return <p className="empty">{sumsPageWords.noSupply}</p>;
  return (
    <table className="sums-table">
      <caption className="screen-reader">{sumsPageWords.parts.supplies}</caption>
      <thead>
        <tr>
          <th scope="col">{headings.unit}</th>
          <th scope="col" className="picture-head">
            {sumsPageWords.againstRating}
          </th>
          <th scope="col" className="to-right">
            {sumHeadings.load}
          </th>
          <th scope="col" className="to-right">
            {sumHeadings.rated}
          </th>
          <th scope="col" className="to-right">
            {sumsPageWords.usedHead}
          </th>
        </tr>
      </thead>
      <tbody>
        {lines.map((line) => {
          const was = before.find(({ at }) => at === line.at);
          const name = names.unit(line.supply);
          const load = { at: `${line.at}/load`, what: `${termWords[line.load.code]}, ${name}, ${line.what}`, term: line.load };
          const rated = { at: `${line.at}/rated`, what: `${termWords[line.rated.code]}, ${name}, ${line.what}`, term: line.rated };
          return (
            <SumRow key={line.at} columns={5} about={line.supply} openings={[load, rated]}>
              <th scope="row">
                <b className="designation">{name}</b> <small className="unbroken">{line.what}</small>
              </th>
              <td className="sum-picture">
                <LoadBar load={line.load} share={line.share} over={line.over} />
              </td>
              <td className="to-right">
                <NumberButton {...load} was={was?.load ?? null} bad={line.over} />
              </td>
              <td className="to-right">
                <NumberButton {...rated} was={was?.rated ?? null} />
              </td>
              <td className="to-right sum-share">{line.share === null ? '–' : `${Math.round(line.share * 100)} %`}</td>
            </SumRow>
          );
        })}
      </tbody>
    </table>
  );
}
