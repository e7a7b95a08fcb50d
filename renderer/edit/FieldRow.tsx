import { useId, useState } from 'react';
import type { FieldOwner, FieldSpec, FieldTable } from '../../engine/edit/index.ts';
import { editWords, wordField } from '../../engine/messages/index.ts';
import { useApp } from '../state/useWorkbench.ts';
import { FieldControl } from './FieldControl.tsx';
import { sharedValue } from './inspected.ts';
import { leftOpen } from './leftOpen.ts';
import { designationHint, optionsOf } from './options.ts';
import { PicturesField } from './PicturesField.tsx';
import { RowsField } from './RowsField.tsx';
import { useSetField } from './useSetField.ts';

interface Props {
  readonly table: FieldTable;
  readonly spec: FieldSpec;
  readonly owners: readonly FieldOwner[];
  readonly records: readonly object[];
}

/** One field of what is chosen: its name, what it says, its unit, and what is wrong with it. */
export function FieldRow({ table, spec, owners, records }: Props) {
  const id = useId();
  const cabinet = useApp((state) => state.cabinet);
  const set = useSetField();
  const [trouble, setTrouble] = useState<string | null>(null);
  const { label, short = label, unit, hint } = wordField(spec.path);
  const { mixed, value } = sharedValue(records, spec.path);
  const { form } = spec;
  const open = value === undefined && !mixed ? leftOpen(cabinet, spec.path) : null;
  const about = [hint, open?.why].filter((part) => part !== undefined).join(' ');
  if (form === 'pictures') return <PicturesField owners={owners} path={spec.path} value={mixed ? [] : value} />;
  if (typeof form === 'object' && 'rows' in form) {
    return (
      <RowsField
        label={label}
        {...(hint === undefined ? {} : { hint })}
        path={spec.path}
        columns={form.rows}
        owners={owners}
        mixed={mixed}
        value={value}
      />
    );
  }
  const [first] = records;
  const unusual =
    spec.path === 'designation' && !mixed && first !== undefined ? designationHint(cabinet, table, first, String(value ?? '')) : null;
  const said = trouble ?? unusual;
  return (
    <div className={form === 'notes' ? 'field-row wide' : 'field-row'}>
      <label htmlFor={id} title={hint}>
        {short}
      </label>
      <span className="field-value">
        <FieldControl
          id={id}
          form={form}
          value={value}
          mixed={mixed}
          options={optionsOf(cabinet, spec.path, form)}
          {...(open === null ? {} : { counted: open.value })}
          onSet={(next) => set(owners, spec.path, next)}
          onTrouble={setTrouble}
          invalid={trouble !== null}
          {...(short === label ? {} : { label })}
          {...(said !== null || about !== '' ? { describedBy: `${id}-said` } : {})}
        />
        {unit !== undefined && <span className="field-unit">{unit}</span>}
      </span>
      {said !== null ? (
        <span
          className={trouble === null ? 'field-hint shown' : 'field-trouble'}
          id={`${id}-said`}
          role={trouble === null ? undefined : 'alert'}
        >
          {said}
        </span>
      ) : (
        about !== '' && (
          <span className="field-hint" id={`${id}-said`}>
            {mixed ? editWords.inspector.several : about}
          </span>
        )
      )}
    </div>
  );
}
