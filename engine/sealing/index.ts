export { openBytes, openSeal, readyPassphrase, sealAnswer, sealText } from './sealing.ts';
export { type PassphraseStrength, weighPassphrase } from './strength.ts';
