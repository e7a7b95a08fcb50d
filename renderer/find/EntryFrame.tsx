import { useEffect, useRef } from 'react';
import { Popover, type PopoverProps } from 'react-aria-components';
import './entry.css';

interface FrameProps {
  /** What is asked: the name of the dialog, and its first line where `head` does not say more. */
  readonly label: string;
  readonly head?: React.ReactNode;
  /** On what it hangs, and where beside it. */
  readonly anchor: Element | null;
  readonly placement: NonNullable<PopoverProps['placement']>;
  readonly offset?: number;
  /** Of the pop-up, and of the dialog in it. */
  readonly className?: string;
  readonly dialogClass?: string;
  /** What has the focus first. Without one the dialog itself has it: Enter, struck once too often, must answer nothing. */
  readonly first?: (dialog: HTMLElement) => HTMLElement | null | undefined;
  /** Where a click leaves it open: one on the picture may be an answer too. */
  readonly staysOpenOn?: string;
  readonly onClose: () => void;
  readonly onKeyDown?: (event: React.KeyboardEvent<HTMLElement>) => void;
  readonly children: React.ReactNode;
}

/**
 * One question over the window, not in place of it: the picture stays usable. Says where it opens, what has the focus first and how it
 * closes; who closes it says where the focus goes next.
 */
export function EntryFrame({ anchor, placement, offset = 8, className = 'entry-popover', staysOpenOn, onClose, ...asked }: FrameProps) {
  const trigger = useRef<Element | null>(null);
  trigger.current = anchor;
  return (
    <Popover
      triggerRef={trigger}
      isOpen
      isNonModal
      onOpenChange={(open) => !open && onClose()}
      placement={placement}
      offset={offset}
      className={className}
      shouldCloseOnInteractOutside={(element) => staysOpenOn === undefined || !element.closest(staysOpenOn)}
    >
      <Asked {...asked} />
    </Popover>
  );
}

/** What Tab can reach in an entry. */
const stops = 'button:not(:disabled), input:not(:disabled, [type="file"]), select';

type AskedProps = Pick<FrameProps, 'label' | 'head' | 'dialogClass' | 'first' | 'onKeyDown' | 'children'>;

/** Tab goes round inside. The focus is given anew whenever something else is asked. */
function Asked({ label, head, dialogClass = '', first, onKeyDown, children }: AskedProps) {
  const dialog = useRef<HTMLDivElement>(null);
  const wanted = useRef(first);
  wanted.current = first;
  // biome-ignore lint/correctness/useExhaustiveDependencies: another label is another question, and nothing else is
  useEffect(() => {
    const asked = dialog.current;
    if (asked) (wanted.current?.(asked) ?? asked).focus({ preventScroll: true });
  }, [label]);
  const goRound = (event: React.KeyboardEvent<HTMLElement>) => {
    onKeyDown?.(event);
    if (event.key !== 'Tab' || event.defaultPrevented) return;
    const reachable = [...event.currentTarget.querySelectorAll<HTMLElement>(stops)];
    const begin = reachable[0];
    const end = reachable[reachable.length - 1];
    const next = event.shiftKey ? (document.activeElement === begin ? end : null) : document.activeElement === end ? begin : null;
    if (!next) return;
    event.preventDefault();
    next.focus();
  };
  return (
    <div ref={dialog} role="dialog" className={`entry ${dialogClass}`} aria-label={label} tabIndex={-1} onKeyDown={goRound}>
      <p className="entry-head">{head ?? <b>{label}</b>}</p>
      {children}
    </div>
  );
}
