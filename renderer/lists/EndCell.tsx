import { editWords } from '../../engine/messages/index.ts';
import type { CabinetContent, LeadRecord, LinkRecord } from '../../engine/schema/index.ts';
import { useApp, useDispatch } from '../state/useWorkbench.ts';

interface Props {
  readonly record: LinkRecord | LeadRecord;
  readonly end: 'upper' | 'lower' | 'from' | 'to';
  readonly label: string;
}

interface Choice {
  readonly value: string;
  readonly label: string;
}

const words = editWords.lists;
const unitName = ({ id, designation }: { readonly id: string; readonly designation: string }) => designation.trim() || id;

/** Where an end of a cable or a lead is connected: chosen from everything that takes it. A refusal is told as on the drawing. */
export function EndCell({ record, end, label }: Props) {
  const dispatch = useDispatch();
  const cabinet = useApp((state) => state.cabinet);
  const value = endText(record, end);
  const choices = choicesOf(cabinet, end);
  const set = (next: string) => {
    const [kind = '', id = '', output = ''] = next.split('/');
    if (end === 'from')
      dispatch('reconnect-lead', { lead: record.id, from: next === '' ? null : { unit: id, ...(output === '' ? {} : { output }) } });
    else if (end === 'to') dispatch('reconnect-lead', { lead: record.id, to: next === '' ? null : id });
    else {
      const port =
        next === '' ? null : kind === 'chain' ? { chain: id } : { unit: id, side: end === 'upper' ? ('down' as const) : ('up' as const) };
      dispatch('plug-end', { link: record.id, end, port });
    }
  };
  return (
    <select value={value} aria-label={label} onChange={(event) => set(event.target.value)}>
      <option value="">{editWords.inspector.connections.nothing}</option>
      {value !== '' && !choices.some((choice) => choice.value === value) && (
        <option value={value}>{editWords.inspector.unknownOption(value.slice(value.indexOf('/') + 1))}</option>
      )}
      {choices.map((choice) => (
        <option key={choice.value} value={choice.value}>
          {choice.label}
        </option>
      ))}
    </select>
  );
}

/** An end as one text: "chain/…", "unit/…", "unit/…/output". Ids have no slash. */
function endText(record: LinkRecord | LeadRecord, end: Props['end']): string {
  const place = (record as Readonly<Record<string, unknown>>)[end] as { chain?: string; unit?: string; output?: string } | undefined; // an end of either record
  if (place === undefined) return '';
  if (place.chain !== undefined) return `chain/${place.chain}`;
  return `unit/${place.unit}${place.output === undefined ? '' : `/${place.output}`}`;
}

function choicesOf(cabinet: CabinetContent, end: Props['end']): readonly Choice[] {
  const units = cabinet.units ?? [];
  const onChain = units.filter(({ kind, onChain: on }) => kind !== 'supply' && on !== false);
  const asChoice = (unit: (typeof units)[number]): Choice => ({ value: `unit/${unit.id}`, label: unitName(unit) });
  switch (end) {
    case 'upper':
      return [
        ...(cabinet.chains ?? []).map(({ id, number }) => ({ value: `chain/${id}`, label: words.port.chain(number) })),
        ...onChain.map(asChoice),
      ];
    case 'lower':
      return onChain.map(asChoice);
    case 'to':
      return units.filter(({ kind }) => kind !== 'supply').map(asChoice);
    case 'from':
      return units.flatMap((unit) => [
        asChoice(unit),
        ...(unit.supply?.outputs ?? []).map((output) => ({
          value: `unit/${unit.id}/${output.id}`,
          label: words.output(unitName(unit), output.name || output.id),
        })),
      ]);
  }
}
