import { paperKindWords, papersWords as words } from '../../engine/messages/index.ts';
import type { PreviewDocument, PreviewPage } from '../worker/papersProtocol.ts';
import { PagePicture } from './PagePicture.tsx';
import type { PapersWork } from './usePapers.ts';

interface Props {
  readonly documents: readonly PreviewDocument[];
  readonly work: PapersWork;
  /** How many machines are printed along. */
  readonly others: number;
  readonly onCancel: () => void;
  readonly onAgain: () => void;
}

/** The pages as they will be, one below the other; while they are made, how far that is. */
export function Preview({ documents, work, others, onCancel, onAgain }: Props) {
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
          (documents.length === 0
            ? words.nothing
            : [words.pages(documents.reduce((sum, one) => sum + one.pages.length, 0)), ...(others > 0 ? [words.alsoOf(others)] : [])].join(
                ', ',
              ))}
      </p>
      {work.state === 'done' &&
        listPages(documents).map(({ name, page }) => (
          <figure key={name} aria-label={name}>
            <div className="papers-page">
              {/* Our own writer made it from shapes; every text in it is escaped, which a test proves. */}
              {/* biome-ignore lint/security/noDangerouslySetInnerHtml: see above */}
              <div dangerouslySetInnerHTML={{ __html: page.svg.slice(page.svg.indexOf('<svg')) }} />
              {page.pictures.map((picture) => (
                <PagePicture key={`${picture.x} ${picture.y}`} picture={picture} page={page} />
              ))}
            </div>
            <figcaption>{name}</figcaption>
          </figure>
        ))}
    </div>
  );
}

const listPages = (documents: readonly PreviewDocument[]): readonly { readonly name: string; readonly page: PreviewPage }[] =>
  documents.flatMap(({ title, pages }) => pages.map((page, index) => ({ name: words.page(title, index + 1, pages.length), page })));
