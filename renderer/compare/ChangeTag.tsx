import { ArrowLeftRight, ArrowRight, Minus, Pencil, Plug, Plus, Shuffle } from 'lucide-react';
import type { ChangeKind } from '../../engine/edit/index.ts';
import { changeKindWords } from '../../engine/messages/index.ts';
import { useApp } from '../state/useWorkbench.ts';
import { comparisonOf } from './comparison.ts';
import './compare.css';

const signs: { readonly [K in ChangeKind]: typeof Plus } = {
  added: Plus,
  removed: Minus,
  exchanged: Shuffle,
  'moved-in-chain': ArrowLeftRight,
  'moved-in-row': ArrowLeftRight,
  shifted: ArrowRight,
  replugged: Plug,
  reconnected: Plug,
  changed: Pencil,
};

/** The sign of a kind of change; the words stand beside it. */
export function ChangeSign({ kind }: { readonly kind: ChangeKind }) {
  const Icon = signs[kind];
  return <Icon size={14} aria-hidden="true" />;
}

/** How a thing on the drawing differs from the other cabinet, while one compares; `bare`: by its sign alone, where words have no room. */
export function ChangeTag({ id, bare = false }: { readonly id: string; readonly bare?: boolean }) {
  const kind = useApp((state) => comparisonOf(state)?.marks.get(id) ?? null);
  if (kind === null) return null;
  return (
    <span className={bare ? 'change-tag bare' : 'change-tag'} title={changeKindWords[kind]}>
      <ChangeSign kind={kind} />
      {!bare && changeKindWords[kind]}
    </span>
  );
}
