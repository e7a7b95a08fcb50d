import {
  directionWords,
  headings,
  sumHeadings,
  sumStatements,
  sumsPageWords,
  termWords,
  wordTermValue,
} from '../../engine/messages/index.ts';
import type { FibreBudget, Sums, SumTerm } from '../../engine/sums/index.ts';
import type { ChainTopology } from '../../engine/topology/index.ts';
import { namesOf, shortUnitName } from '../state/names.ts';
import { useApp } from '../state/useWorkbench.ts';
import { LightPicture } from './LightPicture.tsx';
import { lightScale, lightWindow } from './lightWindow.ts';
import { NumberButton } from './NumberButton.tsx';
import { type Opening, SumRow } from './SumRow.tsx';
import { TryField } from './TryField.tsx';

const directions = ['outbound', 'return'] as const;
const columns = 8;

interface Props {
  readonly sums: Sums;
  /** The sums without what is tried; null where nothing is. */
  readonly base: Sums | null;
}

/** The light of every fibre: margin along each chain. */
export function LightSection({ sums, base }: Props) {
  const topology = useApp((state) => state.checked.topology);
  const scale = lightScale(sums.optical.map(lightWindow));
  const chains = topology.chains.filter(({ links }) => links.length > 0);
  if (chains.length === 0) return <p className="empty">{sumStatements.noChains}</p>;
  return (
    <>
      <p className="sum-hint">
        {sumsPageWords.lightHint}{' '}
        <span className="unbroken">
          {sumsPageWords.outboundReturn} · {sumsPageWords.reserveHatch}
        </span>
      </p>
      {chains.map((chain) => (
        <ChainTable key={chain.id} chain={chain} sums={sums} base={base} scale={scale} />
      ))}
    </>
  );
}

interface ChainProps extends Props {
  readonly chain: ChainTopology;
  readonly scale: { readonly from: number; readonly to: number };
}

function ChainTable({ chain, sums, base, scale }: ChainProps) {
  const names = useApp((state) => namesOf(state.checked.topology));
  return (
    <table className="sums-table sum-light">
      <caption>{names.chain(chain.id)}</caption>
      <thead>
        <tr>
          <th scope="col">{headings.cable}</th>
          <th scope="col" className="picture-head">
            <span className="window-ends">
              <span>{sumsPageWords.tooWeak}</span>
              <span>{sumsPageWords.tooStrong}</span>
            </span>
          </th>
          {directions.map((direction) => (
            <th key={direction} scope="col" className="to-right">
              {sumHeadings.margin} <small>{directionWords[direction].label}</small>
            </th>
          ))}
          {directions.map((direction) => (
            <th key={direction} scope="col" className="to-right">
              {sumHeadings.tooMuch} <small>{directionWords[direction].label}</small>
            </th>
          ))}
          <th scope="col" className="to-right">
            {sumHeadings.length}
          </th>
          <th scope="col" className="to-right">
            {sumHeadings.lengthAllowed}
          </th>
        </tr>
      </thead>
      <tbody>
        {chain.links.map((link) => (
          <LinkRow key={link} link={link} sums={sums} base={base} scale={scale} />
        ))}
      </tbody>
    </table>
  );
}

function LinkRow({ link, sums, base, scale }: Props & { readonly link: string; readonly scale: ChainProps['scale'] }) {
  const topology = useApp((state) => state.checked.topology);
  const names = namesOf(topology);
  const of = (all: Sums | null, direction: FibreBudget['direction']) =>
    all?.optical.find((one) => one.link === link && one.direction === direction) ?? null;
  const budgets = sums.optical.filter((one) => one.link === link);
  const [first] = budgets;
  if (first === undefined) return null;
  const cable = names.link(link);
  const unitName = (unit: FibreBudget['receiver']) => (unit === null ? names.controller() : shortUnitName(topology, unit));
  const wordOf = (code: 'sensitivity-margin' | 'overload-margin', direction: FibreBudget['direction']) =>
    `${termWords[code]}, ${cable}, ${directionWords[direction].label}`;
  const numbers = (['margin', 'overloadMargin'] as const).flatMap((field) =>
    directions.flatMap((direction) => {
      const budget = of(sums, direction);
      if (budget === null) return [];
      const code = field === 'margin' ? 'sensitivity-margin' : 'overload-margin';
      const term = budget[field];
      return [
        {
          at: `light/${link}/${direction}/${field}`,
          what: wordOf(code, direction),
          term,
          was: of(base, direction)?.[field] ?? null,
          bad: term.status === 'computed' && term.value !== null && term.value < 0,
          above: field === 'margin' ? <MeasuredLoss link={link} direction={direction} cable={cable} /> : undefined,
        },
      ];
    }),
  );
  const lengths = lengthNumbers(first, of(base, first.direction), cable);
  const openings: readonly Opening[] = [...numbers, ...lengths.flatMap(({ number }) => (number === null ? [] : [number]))];
  return (
    <SumRow columns={columns} about={link} openings={openings}>
      <th scope="row">
        <b className="designation">{cable.replace(/^cable (?=[-+=])/, '')}</b>
        <small className="unbroken sum-ends">
          {unitName(first.transmitter)} – {unitName(first.receiver)}
        </small>
      </th>
      <td className="sum-picture">
        <LightPicture budgets={budgets} scale={scale} name={sumsPageWords.lightPicture(cable)} />
      </td>
      {numbers.map(({ above: _above, ...number }) => (
        <td key={number.at} className="to-right">
          <NumberButton {...number} />
        </td>
      ))}
      {lengths.map(({ key, number }) => (
        <td key={key} className="to-right">
          {number === null ? wordTermValue({ value: null, unit: 'm', bound: null }) : <NumberButton {...number} />}
        </td>
      ))}
    </SumRow>
  );
}

/** Length, and the tightest limit that it is held against. Without a limit the length alone, where a sum knows it. */
function lengthNumbers(budget: FibreBudget, before: FibreBudget | null, cable: string) {
  const [tightest] = [...budget.limits].sort((a, b) => (a.limit.value ?? 0) - (b.limit.value ?? 0));
  const was = before?.limits.find(({ rule }) => rule === tightest?.rule) ?? null;
  const number = (field: 'length' | 'limit', term: SumTerm | null, wasTerm: SumTerm | null) => ({
    key: field,
    number:
      term === null
        ? null
        : {
            at: `light/${budget.link}/${field}`,
            what: `${termWords[field === 'length' ? 'cable-length' : 'length-limit']}, ${cable}`,
            term,
            was: wasTerm,
            bad: tightest?.exceeded === true,
          },
  });
  return [
    number('length', tightest?.length ?? findLength(budget.loss), was?.length ?? (before === null ? null : findLength(before.loss))),
    number('limit', tightest?.limit ?? null, was?.limit ?? null),
  ];
}

function findLength(term: SumTerm): SumTerm | null {
  if (term.code === 'cable-length') return term;
  for (const one of term.from) {
    const found = findLength(one);
    if (found !== null) return found;
  }
  return null;
}

/** A loss found with a light meter takes the place of the computed one. */
function MeasuredLoss({
  link,
  direction,
  cable,
}: {
  readonly link: string;
  readonly direction: FibreBudget['direction'];
  readonly cable: string;
}) {
  const figure = { figure: direction === 'outbound' ? 'measured-outbound' : 'measured-return', id: link } as const;
  const what = `${sumsPageWords.measuredLoss}, ${cable}, ${directionWords[direction].label}`;
  return (
    <p className="sum-above">
      {sumsPageWords.measuredLoss}: <TryField figure={figure} what={what} /> <small>{sumsPageWords.measuredHint}</small>
    </p>
  );
}
