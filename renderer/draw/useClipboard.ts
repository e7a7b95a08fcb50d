import { useEffect } from 'react';
import { useWindow } from '../state/useWorkbench.ts';
import { inDraw } from './drawCommands.ts';

/** The browser's own events of the clipboard: they need no permission, and come from the keys, from menus and from other programs alike. */
export function useClipboard() {
  const { store, drawing } = useWindow();
  useEffect(() => {
    const isOurs = ({ target }: ClipboardEvent) => {
      const state = store.getState();
      const typing = target instanceof Element && target.closest('input, textarea, select, [contenteditable], [role="dialog"]') !== null;
      return !typing && inDraw(state) && state.draw.dialog === null && (document.getSelection()?.isCollapsed ?? true);
    };
    const give = (event: ClipboardEvent, take: () => string | null) => {
      if (!isOurs(event)) return;
      const text = take();
      if (text === null) return;
      event.clipboardData?.setData('text/plain', text);
      event.preventDefault();
    };
    const onCopy = (event: ClipboardEvent) => give(event, drawing.copy);
    const onCut = (event: ClipboardEvent) => give(event, drawing.cut);
    const onPaste = (event: ClipboardEvent) => {
      const text = event.clipboardData?.getData('text/plain') ?? '';
      if (!isOurs(event) || text.trim() === '') return;
      event.preventDefault();
      drawing.paste(text);
    };
    document.addEventListener('copy', onCopy);
    document.addEventListener('cut', onCut);
    document.addEventListener('paste', onPaste);
    return () => {
      document.removeEventListener('copy', onCopy);
      document.removeEventListener('cut', onCut);
      document.removeEventListener('paste', onPaste);
    };
  }, [store, drawing]);
}
