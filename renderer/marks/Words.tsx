import { Fragment } from 'react';

/** A designation: it begins with a sign and must not be broken after it. */
const designation = /([-+=][\p{L}\d][\p{L}\d._-]*)/u;

/** A sentence whose designations are never broken over two lines. */
export function Words({ children }: { readonly children: string }) {
  return children.split(designation).map((part, index) => {
    // Pieces of one sentence have no other key than their place in it.
    const key = `${index} ${part}`;
    return index % 2 === 1 ? (
      <span key={key} className="unbroken">
        {part}
      </span>
    ) : (
      <Fragment key={key}>{part}</Fragment>
    );
  });
}
