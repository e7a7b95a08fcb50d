import type { ComponentPropsWithRef } from 'react';
import type { AppState } from '../state/appState.ts';
import { useApp } from '../state/useWorkbench.ts';

/** A pane that says whether what stands in it is being worked out anew; saying so does not draw its contents again. */
export function BusyPane({
  busy,
  ...section
}: ComponentPropsWithRef<'section'> & { readonly id: string; readonly busy: (state: AppState) => boolean }) {
  const isBusy = useApp(busy);
  return <section tabIndex={-1} aria-busy={isBusy} {...section} />;
}
