export { diagnoseLines } from './diagnoseLines.ts';
export { runLines } from './runLines.ts';
export { simulateLines } from './simulateLines.ts';
