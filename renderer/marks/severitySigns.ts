import type { Severity } from '../../engine/base/index.ts';
import type { SignName } from './Sign.tsx';

/** The sign of how bad a problem is: in the list of problems and on what it concerns alike. */
export const severitySigns: { readonly [S in Severity]: SignName } = {
  refused: 'error',
  error: 'error',
  warning: 'abnormal',
  incomplete: 'open',
};
