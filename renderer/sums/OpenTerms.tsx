import { createContext, use, useMemo, useState } from 'react';

/** Which numbers are expanded to their terms, by the key of each. */
interface OpenTerms {
  readonly open: ReadonlySet<string>;
  readonly toggle: (key: string) => void;
}

const Context = createContext<OpenTerms>({ open: new Set(), toggle: () => undefined });

/** Keeps what is expanded, while the page is shown. */
export function OpenTermsProvider({ children }: { readonly children: React.ReactNode }) {
  const [open, setOpen] = useState<ReadonlySet<string>>(new Set());
  const value = useMemo(
    () => ({
      open,
      toggle: (key: string) =>
        setOpen((before) => {
          const after = new Set(before);
          if (!after.delete(key)) after.add(key);
          return after;
        }),
    }),
    [open],
  );
  return <Context value={value}>{children}</Context>;
}

export function useOpenTerms(): OpenTerms {
  return use(Context);
}

/** The id of the panel of a key; ids of the page bear no blanks. */
export function panelId(key: string): string {
  return `terms-${key.replaceAll(/[^\w.-]/g, '-')}`;
}
