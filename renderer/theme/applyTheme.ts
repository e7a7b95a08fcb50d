import type { ThemeChoice } from '../state/appState.ts';

type PaintedTheme = Exclude<ThemeChoice, 'system'>;

/** What "as the system" means at this moment: more contrast wins over dark. */
function systemTheme(): PaintedTheme {
  if (matchMedia('(prefers-contrast: more)').matches) return 'high-contrast';
  return matchMedia('(prefers-color-scheme: dark)').matches ? 'dark' : 'light';
}

/** Paints the page in the chosen theme, and goes on following the system where that was chosen. Returns how to stop following. */
export function applyTheme(choice: ThemeChoice): () => void {
  const paint = () => {
    document.documentElement.dataset['theme'] = choice === 'system' ? systemTheme() : choice;
  };
  paint();
  if (choice !== 'system') return () => undefined;
  const queries = ['(prefers-contrast: more)', '(prefers-color-scheme: dark)'].map((query) => matchMedia(query));
  for (const query of queries) query.addEventListener('change', paint);
  return () => {
    for (const query of queries) query.removeEventListener('change', paint);
  };
}
