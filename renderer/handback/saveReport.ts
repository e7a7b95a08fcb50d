import { makeRepairReport } from '../../engine/documents/index.ts';
import { handBackTexts, paperWords, reportWords } from '../../engine/messages/index.ts';
import { writeHtml } from '../../engine/paper/index.ts';
import { endOf } from '../../engine/plan/index.ts';
import type { FileAccess } from '../files/access.ts';
import type { Workbench } from '../state/dispatcher.ts';
import { lastDiagnosis } from '../state/lastDiagnosis.ts';
import { namesOf } from '../state/names.ts';
import type { HandBackState } from './handBackState.ts';

/** Makes the report of the case that is open, and puts it where the user wants it. What went wrong is told where it was asked for. */
export async function saveReport({ store, announce }: Workbench, access: FileAccess, kind: 'pdf' | 'html', now: Date): Promise<void> {
  const tell = (report: HandBackState['report']) => store.setState({ handBack: { shown: store.getState().handBack.shown, report } });
  tell({ state: 'making' });
  const content = await makeBytes(store.getState(), kind, now);
  if (content === null) return tell({ state: 'none' });
  const name = `${reportWords.id}-${store.getState().caseRecord.id}.${kind}`;
  const saved = await access.exportFile(name, content, kind);
  if (!saved.ok) return tell({ state: 'failed', problems: saved.problems });
  if (saved.value === null) return tell({ state: 'none' });
  tell({ state: 'saved', name: saved.value });
  announce(handBackTexts.saved(saved.value));
}

type State = ReturnType<Workbench['store']['getState']>;

async function makeBytes({ checked, caseRecord, diagnosis }: State, kind: 'pdf' | 'html', now: Date): Promise<Uint8Array | null> {
  const { topology, cabinet } = checked;
  const known = lastDiagnosis(diagnosis);
  if (!cabinet || !known) return null;
  const report = makeRepairReport(
    {
      topology,
      cabinet,
      names: namesOf(topology),
      date: now.toISOString().slice(0, 10),
      record: caseRecord,
      diagnosis: known,
      end: endOf(cabinet, caseRecord.evidence, known),
    },
    'a4',
  );
  const { language } = paperWords;
  if (kind === 'html') return new TextEncoder().encode(writeHtml(report.paper, { language }));
  // The writer of PDFs and its typefaces are large: they come when they are needed.
  const { writePdf } = await import('../../engine/pdf/index.ts');
  const { title } = report.paper.head;
  const pdf = await writePdf([{ title, pages: report.pages }], { title, language, madeAt: now });
  return pdf?.bytes ?? null;
}
