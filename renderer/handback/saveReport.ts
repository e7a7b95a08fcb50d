import { makeFileName } from '../../engine/base/index.ts';
import { handBackTexts, papersWords, reportWords } from '../../engine/messages/index.ts';
import type { FileAccess } from '../files/access.ts';
import { runPapers } from '../papers/runPapers.ts';
import type { Workbench } from '../state/dispatcher.ts';
import { lastDiagnosis } from '../state/lastDiagnosis.ts';
import type { ReportChoice } from '../state/sitting.ts';
import type { PapersReply, ReportRequest } from '../worker/papersProtocol.ts';
import type { HandBackState } from './handBackState.ts';

/**
 * Makes the report of the case that is open, off the window's thread, and puts it where the user wants it. What went wrong is told where
 * it was asked for; after `cancelled` nothing is made or put anywhere.
 */
export async function saveReport(
  { store, announce }: Workbench,
  access: FileAccess,
  choice: ReportChoice,
  now: Date,
  cancelled: AbortSignal,
): Promise<void> {
  const tell = (report: HandBackState['report']) => store.setState({ handBack: { ...store.getState().handBack, report } });
  const request = askFor(store.getState(), choice, now);
  if (request === null) return;
  tell({ state: 'making' });
  const made = await make(request, cancelled);
  if (made === null) return tell({ state: 'none' });
  if (made.kind !== 'file') return tell({ state: 'not-made', detail: made.kind === 'failed' ? made.detail : '' });
  const { kind } = choice;
  const name = makeFileName(`${reportWords.id}-${store.getState().caseRecord.id}`, `.${kind}`, reportWords.id);
  const saved = await access.exportFile(name, made.bytes, kind);
  if (!saved.ok) return tell({ state: 'failed', problems: saved.problems });
  if (saved.value === null) return tell({ state: 'none' });
  const { missingSigns, missingPictures } = made;
  const remarks = [
    ...(missingSigns.length > 0 ? [papersWords.missingSigns(missingSigns.join(' '))] : []),
    ...(missingPictures.length > 0 ? [papersWords.missingPictures(missingPictures.join(', '))] : []),
  ];
  tell({ state: 'saved', name: saved.value, remarks });
  announce(handBackTexts.saved(saved.value));
}

type State = ReturnType<Workbench['store']['getState']>;

function askFor({ cabinet, caseRecord, diagnosis, checked }: State, { kind, withPhotos }: ReportChoice, now: Date): ReportRequest | null {
  const known = lastDiagnosis(diagnosis);
  if (!checked.cabinet || !known) return null;
  return {
    content: cabinet,
    report: { record: caseRecord, diagnosis: known, withPhotos },
    date: now.toISOString().slice(0, 10),
    madeAt: now.getTime(),
    form: kind,
  };
}

/** The last reply; null where it was cancelled before. */
function make(request: ReportRequest, cancelled: AbortSignal): Promise<PapersReply | null> {
  return new Promise((resolve) => {
    const { stop } = runPapers(request, (reply) => {
      if (reply.kind === 'progress') return;
      stop();
      resolve(reply);
    });
    cancelled.addEventListener('abort', () => {
      stop();
      resolve(null);
    });
  });
}
