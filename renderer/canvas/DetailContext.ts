import { createContext, use } from 'react';
import type { Detail } from './geometry.ts';

/** How much of a module is drawn at the present zoom. */
export const DetailContext = createContext<Detail>('full');

export function useDetail(): Detail {
  return use(DetailContext);
}
