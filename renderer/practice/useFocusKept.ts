import { useEffect } from 'react';

/** What the keyboard can stand on. */
const focusable = 'a[href], button, input, select, textarea, summary, [tabindex]:not([tabindex="-1"])';

/**
 * Keeps the keyboard where it was when what it stood on goes away or can no longer be used: it goes on at the first control of the least
 * part around it that is still there, and at the heading where the whole screen was replaced. A page in a browser would begin anew.
 */
export function useFocusKept(id: string): void {
  useEffect(() => {
    const main = document.getElementById(id);
    if (main === null) return;
    let around: readonly Element[] = [];
    const follow = ({ target }: FocusEvent) => {
      around = target instanceof Element && main.contains(target) ? ancestorsWithin(main, target) : [];
    };
    // Who presses beside everything wants the focus nowhere.
    const forget = () => {
      around = [];
    };
    const mend = () => {
      if (around.length === 0 || !isLost()) return;
      const part = around.find((one) => one !== main && one.isConnected);
      const next = [...(part?.querySelectorAll<HTMLElement>(focusable) ?? [])].find((one) => !one.matches(':disabled'));
      if (next === undefined) focusHeading(main);
      else next.focus();
    };
    const observer = new MutationObserver(mend);
    observer.observe(main, { childList: true, subtree: true, attributes: true, attributeFilter: ['disabled'] });
    document.addEventListener('focusin', follow);
    document.addEventListener('pointerdown', forget, true);
    return () => {
      observer.disconnect();
      document.removeEventListener('focusin', follow);
      document.removeEventListener('pointerdown', forget, true);
    };
  }, [id]);
}

/** The focus goes to the heading of what is shown now, unless somebody stands elsewhere. */
export function focusHeadingIfLost(id: string): void {
  const main = document.getElementById(id);
  if (main !== null && (isLost() || document.activeElement === main)) focusHeading(main);
}

function focusHeading(main: HTMLElement): void {
  const heading = main.querySelector('h1');
  if (heading !== null) heading.tabIndex = -1;
  (heading ?? main).focus({ preventScroll: true });
}

function isLost(): boolean {
  const { activeElement } = document;
  return activeElement === null || activeElement === document.body || activeElement.matches(':disabled');
}

function ancestorsWithin(main: Element, element: Element): readonly Element[] {
  const list: Element[] = [];
  for (let one: Element | null = element.parentElement; one !== null && one !== main; one = one.parentElement) list.push(one);
  return [...list, main];
}
