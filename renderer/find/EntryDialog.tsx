/** What Tab can reach in an entry. */
const stops = 'button:not(:disabled), input:not(:disabled, [type="file"]), select';

/**
 * A question over the window, not in place of it: the picture stays usable. Tab goes round inside; who opens it gives the focus, and
 * who closes it says where the focus goes next.
 */
export function EntryDialog({
  label,
  className = '',
  onKeyDown,
  children,
}: {
  readonly label: string;
  readonly className?: string;
  readonly onKeyDown?: (event: React.KeyboardEvent<HTMLElement>) => void;
  readonly children: React.ReactNode;
}) {
  const goRound = (event: React.KeyboardEvent<HTMLElement>) => {
    onKeyDown?.(event);
    if (event.key !== 'Tab' || event.defaultPrevented) return;
    const reachable = [...event.currentTarget.querySelectorAll<HTMLElement>(stops)];
    const first = reachable[0];
    const last = reachable[reachable.length - 1];
    const next = event.shiftKey ? (document.activeElement === first ? last : null) : document.activeElement === last ? first : null;
    if (!next) return;
    event.preventDefault();
    next.focus();
  };
  return (
    <div role="dialog" className={`entry ${className}`} aria-label={label} tabIndex={-1} onKeyDown={goRound}>
      {children}
    </div>
  );
}
