export { check } from './check.ts';
export { compare } from './compare.ts';
export { diagnose } from './diagnose.ts';
export { next } from './next.ts';
export { replay } from './replay.ts';
export { schema } from './schema.ts';
export { simulate } from './simulate.ts';
export { sums } from './sums.ts';
