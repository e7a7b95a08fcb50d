import type { SumTerm } from '../../engine/sums/index.ts';

/** Where a value comes from, as a mark; its word always stands beside it. Grey is enough to tell them apart. */
export function StatusMark({ status }: { readonly status: SumTerm['status'] }) {
  return (
    <svg className="status-mark" data-status={status} width="12" height="12" viewBox="0 0 12 12" aria-hidden="true">
      {status === 'documented' && <path d="M1.5 1.5h9v9h-9z" fill="currentColor" />}
      {status === 'measured' && (
        <>
          <circle cx="6" cy="6" r="4.6" fill="none" stroke="currentColor" strokeWidth="1.4" />
          <path d="M6 6 8.6 3.4" stroke="currentColor" strokeWidth="1.6" />
        </>
      )}
      {status === 'computed' && <path d="M1.5 4h9M1.5 8h9" stroke="currentColor" strokeWidth="1.8" />}
      {status === 'assumed' && (
        <path d="M1.8 1.8h8.4v8.4H1.8z" fill="none" stroke="currentColor" strokeWidth="1.5" strokeDasharray="2.2 1.6" />
      )}
      {status === 'not-known' && <path d="M2 6h8" stroke="currentColor" strokeWidth="1.6" strokeDasharray="1.6 1.6" />}
    </svg>
  );
}
