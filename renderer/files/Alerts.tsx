import { FileWarning, History, Info } from 'lucide-react';
import { fileWords, wordProblem } from '../../engine/messages/index.ts';
import type { Alert } from '../state/sitting.ts';
import { useApp, useDispatch } from '../state/useWorkbench.ts';
import './files.css';
import { wordTime } from './wordTime.ts';

const words = fileWords.alerts;

interface Deed {
  readonly label: string;
  readonly run: () => void;
  readonly first?: boolean;
}

/** What must be told of the files: stays until it is solved or put away. */
export function Alerts() {
  const alerts = useApp((state) => state.alerts);
  if (alerts.length === 0) return null;
  return (
    <section className="alerts" aria-label={words.region} aria-live="polite">
      {alerts.map((alert) => (
        <AlertLine key={'part' in alert ? `${alert.kind} ${alert.part}` : alert.kind} alert={alert} />
      ))}
    </section>
  );
}

function AlertLine({ alert }: { readonly alert: Alert }) {
  const dispatch = useDispatch();
  const hasFile = useApp((state) => state.files.case !== null || state.files.cabinet !== null);
  const saveAs = (part: 'case' | 'cabinet'): Deed => ({
    label: words.saveAs,
    run: () => dispatch(part === 'case' ? 'save-case-as' : 'save-cabinet-as'),
  });
  const save = (label: string): Deed => ({ label, run: () => dispatch('save'), first: true });
  const putAway = (label: string): Deed => ({ label, run: () => dispatch('put-alert-away', { kind: alert.kind }) });
  switch (alert.kind) {
    case 'not-saved':
      return (
        <Line
          tone="bad"
          title={words['not-saved'](alert.part, alert.name)}
          text={reasons(alert.problems)}
          deeds={[save(words.again), saveAs(alert.part)]}
        />
      );
    case 'changed-outside':
      return (
        <Line
          tone="bad"
          title={words['changed-outside'](alert.name, wordTime(alert.modifiedAt))}
          text={words.changedWhat}
          deeds={[
            { label: words.load, run: () => dispatch('load-outside'), first: true },
            { label: words.compare, run: () => dispatch('compare-outside', { part: alert.part }) },
            saveAs(alert.part),
            { label: words.keepMine, run: () => dispatch('keep-mine', { part: alert.part }) },
          ]}
        />
      );
    case 'gone':
      return <Line tone="bad" title={words.gone(alert.name)} text={words.goneWhat} deeds={[save(words.saveThere), saveAs(alert.part)]} />;
    case 'no-recovery':
      return <Line tone="bad" title={words['no-recovery']} text={reasons(alert.problems)} deeds={[save(words.save)]} />;
    case 'downloaded':
      return <Line tone="note" title={words.downloaded(alert.name)} text={words.downloadedWhat} deeds={[putAway(words.close)]} />;
    case 'restored':
      return (
        <Line
          tone="restored"
          title={words.restored(wordTime(alert.keptAt))}
          text={[wordOrigin(alert.file), alert.others > 0 ? words.others(alert.others) : ''].join(' ').trim()}
          deeds={[save(words.save), ...(hasFile ? [{ label: words.goBack, run: () => dispatch('revert') }] : []), putAway(words.close)]}
        />
      );
    case 'cabinet-changed':
      return (
        <Line
          tone="note"
          title={words['cabinet-changed'](alert.name, alert.revisions.copy, alert.revisions.today)}
          text={`${words.cabinetChangedWhat} ${fileWords.differences(alert.differences)}`}
          deeds={[
            {
              label: words.useToday,
              run: () => {
                dispatch('take-cabinet', { cabinet: alert.today, name: alert.name });
                dispatch('put-alert-away', { kind: alert.kind });
              },
            },
            {
              label: words.compare,
              run: () => dispatch('show-comparison', { comparison: { kind: 'file', name: alert.name, content: alert.today } }),
            },
            putAway(words.keepCopy),
          ]}
        />
      );
  }
}

const icons = { bad: FileWarning, restored: History, note: Info } as const;

function Line({
  tone,
  title,
  text,
  deeds,
}: {
  readonly tone: keyof typeof icons;
  readonly title: string;
  readonly text: string;
  readonly deeds: readonly Deed[];
}) {
  const Icon = icons[tone];
  return (
    <div className={`alert ${tone}`} role={tone === 'bad' ? 'alert' : 'group'}>
      <Icon size={20} aria-hidden="true" />
      <p>
        <b>{title}</b> {text}
      </p>
      <div className="alert-deeds">
        {deeds.map(({ label, run, first }) => (
          <button key={label} type="button" className={first ? 'button primary' : 'button'} onClick={run}>
            {label}
          </button>
        ))}
      </div>
    </div>
  );
}

function reasons(problems: Extract<Alert, { kind: 'not-saved' }>['problems']): string {
  return problems
    .map((problem) => {
      const { explanation, whatToDo } = wordProblem(problem);
      return `${explanation} ${whatToDo}`;
    })
    .join(' ');
}

function wordOrigin(file: Extract<Alert, { kind: 'restored' }>['file']): string {
  if (!file) return words.restoredNoFile;
  return file.modifiedAt === null ? words.restoredNoTime(file.name) : words.restoredFile(file.name, wordTime(file.modifiedAt));
}
