import { useEffect, useState } from 'react';
import { Dialog, Heading, Modal, ModalOverlay } from 'react-aria-components';
import { makeFileName } from '../../engine/base/index.ts';
import { type LabelSheetName, labelSheets } from '../../engine/documents/index.ts';
import { type PaperKind, paperKinds, paperKindWords, startSentence, papersWords as words } from '../../engine/messages/index.ts';
import { type PaperSize, paperNames } from '../../engine/paper/index.ts';
import type { IsolationFigures } from '../../engine/patterns/index.ts';
import { useApp, useDispatch } from '../state/useWorkbench.ts';
import type { PapersReply, PapersRequest, PreviewDocument } from '../worker/papersProtocol.ts';
import { IsolationTable } from './IsolationTable.tsx';
import { ListExport } from './ListExport.tsx';
import { Machines } from './Machines.tsx';
import { Preview } from './Preview.tsx';
import { noMachines } from './papersState.ts';
import { usePapers } from './usePapers.ts';
import './papers.css';

/** The documents of the cabinet: which, on what paper, how they look; saved as a file. Lists and graph beside them. */
export function DocumentsDialog() {
  const shown = useApp((state) => state.papers.shown === 'documents');
  const dispatch = useDispatch();
  if (!shown) return null;
  return (
    <ModalOverlay isOpen isDismissable onOpenChange={(open) => !open && dispatch('close-papers')} className="overlay">
      <Modal className="modal papers-modal">
        <Dialog className="sheet papers">
          <Heading slot="title">{words.title}</Heading>
          <Documents />
          <div className="sheet-end">
            <button type="button" className="button" onClick={() => dispatch('close-papers')}>
              {words.close}
            </button>
          </div>
        </Dialog>
      </Modal>
    </ModalOverlay>
  );
}

const firstKinds: readonly PaperKind[] = ['door-sheet'];

function Documents() {
  const cabinet = useApp((state) => state.cabinet);
  const isSound = useApp((state) => state.checked.cabinet !== null);
  const machines = useApp(({ papers }) => (papers.shown === 'documents' ? papers.machines : noMachines.machines));
  const dispatch = useDispatch();
  const [kinds, setKinds] = useState(firstKinds);
  const [size, setSize] = useState<PaperSize>('a4');
  const [labels, setLabels] = useState<LabelSheetName>('a4-63x16');
  const [documents, setDocuments] = useState<readonly PreviewDocument[]>([]);
  const [isolation, setIsolation] = useState<IsolationFigures | null>(null);
  const [remark, setRemark] = useState('');
  const { work, make, cancel } = usePapers();

  const request = (form: PapersRequest['form'], which: readonly PaperKind[]): PapersRequest => {
    const now = new Date();
    const others = machines.map(({ content }) => content);
    return { content: cabinet, others, kinds: which, size, labels, date: now.toISOString().slice(0, 10), madeAt: now.getTime(), form };
  };
  const show = () =>
    make(request('preview', kinds), (reply) => {
      if (reply.kind !== 'preview') return;
      setDocuments(reply.documents);
      setIsolation(reply.isolation);
    });
  // What is previewed depends on these alone; `show` is made anew each time.
  // biome-ignore lint/correctness/useExhaustiveDependencies: see above
  useEffect(show, [cabinet, kinds, size, labels]);

  const save = (form: 'pdf' | 'zip' | 'html') => {
    const only = documents.length === 1 && machines.length === 0 ? documents[0]?.id : undefined;
    make(request(form, kinds), (reply: PapersReply) => {
      if (reply.kind !== 'file') return;
      const notes = [
        ...(reply.missingSigns.length > 0 ? [words.missingSigns(reply.missingSigns.join(' '))] : []),
        ...(reply.missingPictures.length > 0 ? [words.missingPictures(reply.missingPictures.join(', '))] : []),
      ];
      setRemark(notes.join(' '));
      dispatch('export-file', {
        name: makeFileName(`${cabinet.name}.${only ?? 'documents'}`, `.${form}`, 'documents'),
        content: reply.bytes,
        kind: form,
      });
    });
  };
  const toggle = (kind: PaperKind) => setKinds(paperKinds.filter((one) => (one === kind ? !kinds.includes(kind) : kinds.includes(one))));
  const pages = documents.reduce((sum, one) => sum + one.pages.length, 0);
  const isReady = work.state === 'done' && pages > 0;
  return (
    <div className="papers-columns">
      <div className="papers-choice">
        <fieldset className="papers-kinds">
          <legend>{words.which}</legend>
          {paperKinds.map((kind) => (
            <label key={kind} title={paperKindWords[kind].meaning}>
              <input type="checkbox" checked={kinds.includes(kind)} onChange={() => toggle(kind)} />
              {startSentence(paperKindWords[kind].label)}
            </label>
          ))}
        </fieldset>
        <label className="papers-field">
          {words.paper}
          <select value={size} onChange={(event) => setSize(paperNames.find((name) => name === event.target.value) ?? 'a4')}>
            {paperNames.map((name) => (
              <option key={name} value={name}>
                {words.papers[name]}
              </option>
            ))}
          </select>
        </label>
        {kinds.includes('labels') && <LabelField labels={labels} onChange={setLabels} />}
        {!isSound && kinds.includes('door-sheet') && <p className="papers-note">{words.notSound}</p>}
        {/* Not disabled while a file is made: a disabled button would lose the focus of whoever pressed it. */}
        <div className="papers-actions">
          <button type="button" className="button primary" aria-disabled={!isReady} onClick={() => isReady && save('pdf')}>
            {machines.length === 0 ? words.savePdf : words.savePdfOf(machines.length + 1)}
          </button>
          {machines.length > 0 && (
            <button type="button" className="button" disabled={!isReady} onClick={() => save('zip')}>
              {words.saveZip}
            </button>
          )}
          {machines.length === 0 && kinds.length === 1 && documents.length === 1 && kinds[0] !== 'labels' && (
            <button type="button" className="button" aria-disabled={!isReady} onClick={() => isReady && save('html')}>
              {words.saveHtml}
            </button>
          )}
        </div>
        {remark !== '' && (
          <p className="papers-note" role="status">
            {remark}
          </p>
        )}
        <Machines />
        <ListExport />
      </div>
      {/* It scrolls, so it can be reached by key. */}
      {/* biome-ignore lint/a11y/noNoninteractiveTabindex: see above */}
      <section className="papers-preview" tabIndex={0} aria-label={words.preview}>
        <Preview documents={documents} work={work} others={machines.length} onCancel={cancel} onAgain={show} />
        {isolation !== null && work.state === 'done' && <IsolationTable figures={isolation} />}
      </section>
    </div>
  );
}

function LabelField({ labels, onChange }: { readonly labels: LabelSheetName; readonly onChange: (labels: LabelSheetName) => void }) {
  const names = Object.keys(labelSheets) as LabelSheetName[]; // the keys are exactly the names
  return (
    <label className="papers-field">
      {words.labelSheet}
      <select value={labels} onChange={(event) => onChange(names.find((name) => name === event.target.value) ?? labels)}>
        {names.map((name) => (
          <option key={name} value={name}>
            {words.labelSize(labelSheets[name].width, labelSheets[name].height, words.papers[labelSheets[name].paper])}
          </option>
        ))}
      </select>
    </label>
  );
}
