export { openSeal, readyPassphrase, sealAnswer } from './sealing.ts';
