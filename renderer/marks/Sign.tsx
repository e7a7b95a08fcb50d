import './marks.css';

const thin = { fill: 'none', stroke: 'currentColor', strokeWidth: 1.5, strokeLinecap: 'square' } as const;
const bold = { fill: 'none', stroke: 'currentColor', strokeWidth: 2.2 } as const;

/* Our own signs, on a grid of 16. Ordinary icons come from the icon library. */
const signs = {
  // something that must be put right
  error: (
    <>
      <path d="M5 1.5h6L14.5 5v6L11 14.5H5L1.5 11V5z" />
      <path d="M5.6 5.6l4.8 4.8M10.4 5.6l-4.8 4.8" stroke="var(--on-state)" strokeWidth="1.8" fill="none" />
    </>
  ),
  // agreement of what is seen and what is predicted
  fits: <path d="M3 6h10M3 10h10" {...bold} />,
  against: <path d="M2.5 5.6h11M2.5 10.4h11M11 1.5 5 14.5" {...bold} />,
  open: (
    <>
      <path d="M5 5.4C5 3.4 6.3 2.4 8 2.4s3 1 3 2.7c0 2-3 2.3-3 4.7" fill="none" stroke="currentColor" strokeWidth="1.9" />
      <path d="M6.9 11.7h2.2v2.2H6.9z" />
    </>
  ),
  // kinds of things in a cabinet
  controller: <path d="M2 2.5h12v11H2zM4.8 5.5h3M4.8 8h6.4M4.8 10.5h4.4" {...thin} />,
  'servo-drive': (
    <>
      <circle cx="7" cy="9" r="5" {...thin} />
      <path d="M7 9l3-3M10 2.2h3.8V6" {...thin} />
    </>
  ),
  'spindle-drive': <path d="M2 5h5v6H2zM7 6.5h3.5v3H7zM10.5 7.2H14v1.6h-3.5zM3.5 2.5h7M3.5 13.5h7" {...thin} />,
  'encoder-interface': <path d="M1.5 4.5h13v7h-13zM4 4.5v3M6.6 4.5v4.5M9.3 4.5v3M12 4.5v4.5" {...thin} />,
  supply: <path d="M2 2.5h12v11H2zM4.5 6c1.2-1.8 2.2-1.8 3.5 0s2.3 1.8 3.5 0M4.5 10.4h7" {...thin} />,
  link: (
    <>
      <path d="M1.5 6h13M1.5 10h13" {...thin} />
      <path d="M8 3.6 10.6 6 8 8.4zM8 7.6 5.4 10 8 12.4z" />
    </>
  ),
  board: <path d="M3 2h10v12H3zM5.5 5h2v2.5h-2zM9 5.5h2M9 8h2M5.5 10.8h5.5" {...thin} />,
  lead: <path d="M1.5 8h4M10.5 8h4M5.5 5v6h5V5zM8 2v3M8 11v3" {...thin} />,
  feedback: <path d="M2 8h7M9 4.5h3.5v7H9zM12.5 8H14.5M4.5 5.5 2 8l2.5 2.5" {...thin} />,
  // minutes
  clock: (
    <>
      <circle cx="8" cy="8" r="6.2" fill="none" stroke="currentColor" strokeWidth="1.6" />
      <path d="M8 4.4V8l2.6 1.8" fill="none" stroke="currentColor" strokeWidth="1.6" />
    </>
  ),
  // risk marks, always with the word
  danger: (
    <>
      <path d="M8 1.6 15 14H1Z" fill="none" stroke="currentColor" strokeWidth="1.6" strokeLinejoin="round" />
      <path d="M8.8 5.2 6.3 9.3h1.6L7.3 12.6 10 8.3H8.3z" />
    </>
  ),
  abnormal: (
    <>
      <path d="M8 1.6 15 14H1Z" fill="none" stroke="currentColor" strokeWidth="1.6" strokeLinejoin="round" />
      <path d="M7.1 5.6h1.8l-.3 4.4H7.4zM7.1 11h1.8v1.6H7.1z" />
    </>
  ),
  must: (
    <>
      <circle cx="8" cy="8" r="7" />
      <path d="M7 3.6h2l-.35 5.4h-1.3zM7 10.2h2v2H7z" fill="var(--on-state)" />
    </>
  ),
  never: (
    <>
      <circle cx="8" cy="8" r="6" fill="none" stroke="currentColor" strokeWidth="2" />
      <path d="M3.9 3.9l8.2 8.2" stroke="currentColor" strokeWidth="2" />
    </>
  ),
} as const;

export type SignName = keyof typeof signs;

/** One of our own signs, without meaning of its own for a screen reader: the word beside it says it. */
export function Sign({ name, size = 16 }: { readonly name: SignName; readonly size?: number }) {
  return (
    <svg className="sign" width={size} height={size} viewBox="0 0 16 16" fill="currentColor" aria-hidden="true">
      {signs[name]}
    </svg>
  );
}

/** The sign of the house: two modules and the duplex line between them. */
export function HouseSign({ size = 22 }: { readonly size?: number }) {
  return (
    <svg className="sign" width={size} height={size} viewBox="0 0 22 22" aria-hidden="true">
      <g fill="none" stroke="currentColor">
        <path d="M1 3.5h6v15H1zM15 3.5h6v15h-6z" strokeWidth="2" />
        <path d="M7 8.3h8" strokeWidth="2.6" />
        <path d="M7 13.2h8M7 15.2h8" strokeWidth="1" />
      </g>
    </svg>
  );
}
