import { paperKindWords, papersWords as words } from '../../engine/messages/index.ts';
import type { PreviewDocument } from '../worker/papersProtocol.ts';
import type { PapersWork } from './usePapers.ts';

interface Props {
  readonly documents: readonly PreviewDocument[];
  readonly work: PapersWork;
  readonly onCancel: () => void;
  readonly onAgain: () => void;
}

/** The pages as they will be, one below the other; while they are made, how far that is. */
export function Preview({ documents, work, onCancel, onAgain }: Props) {
  return (
    <div className="papers-pages" aria-busy={work.state === 'working'}>
      <p className="papers-state" role="status">
        {work.state === 'working' && (
          <>
            <progress value={work.share} />
            {words.working(work.document === null ? words.preview : paperKindWords[work.document].label)}
            <button type="button" className="button small" onClick={onCancel}>
              {words.cancel}
            </button>
          </>
        )}
        {work.state === 'cancelled' && (
          <>
            {words.cancelled}
            <button type="button" className="button small" onClick={onAgain}>
              {words.again}
            </button>
          </>
        )}
        {work.state === 'failed' && words.failed(work.detail)}
        {work.state === 'done' &&
          (documents.length === 0 ? words.nothing : words.pages(documents.reduce((sum, one) => sum + one.pages.length, 0)))}
      </p>
      {work.state === 'done' &&
        listPages(documents).map(({ name, svg }) => (
          <figure key={name} aria-label={name}>
            {/* Our own writer made it from shapes; every text in it is escaped, which a test proves. */}
            {/* biome-ignore lint/security/noDangerouslySetInnerHtml: see above */}
            <div className="papers-page" dangerouslySetInnerHTML={{ __html: svg.slice(svg.indexOf('<svg')) }} />
            <figcaption>{name}</figcaption>
          </figure>
        ))}
    </div>
  );
}

const listPages = (documents: readonly PreviewDocument[]) =>
  documents.flatMap(({ title, pages }) => pages.map((svg, index) => ({ name: words.page(title, index + 1, pages.length), svg })));
