import type { StoreApi } from 'zustand/vanilla';
import type { AppState } from '../state/appState.ts';
import type { Alert, AlertKind, FilePart } from '../state/sitting.ts';

type Store = Pick<StoreApi<AppState>, 'setState' | 'getState'>;

const partOf = (alert: Alert): FilePart | null => ('part' in alert ? alert.part : null);

/** Shows an alert in the place of one of the same kind and part. */
export function raiseAlert(store: Store, alert: Alert): void {
  const others = store.getState().alerts.filter((other) => other.kind !== alert.kind || partOf(other) !== partOf(alert));
  store.setState({ alerts: [...others, alert] });
}

/** Takes alerts off that are solved; without a part those of every part. */
export function clearAlerts(store: Store, kinds: readonly AlertKind[], part?: FilePart): void {
  const { alerts } = store.getState();
  const left = alerts.filter((alert) => !kinds.includes(alert.kind) || (part !== undefined && partOf(alert) !== part));
  if (left.length !== alerts.length) store.setState({ alerts: left });
}
