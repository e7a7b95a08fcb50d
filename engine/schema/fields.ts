import { z } from 'zod';

/*
 * Building blocks of the file schemas. Bounds are there so that a hostile file cannot make the program slow or the screen
 * unreadable; they are far above what a cabinet needs.
 */

// A strict content policy forbids `eval`; zod must then not generate code.
z.config({ jitless: true });

/** An id: short, printable, without spaces, so that it can be named on a command line. */
export const id = z.string().regex(/^[A-Za-z0-9][A-Za-z0-9._-]{0,63}$/);
/** A line of free text (names, designations, part numbers). */
export const line = z.string().max(200);
/** Free text of any length that a person would type. */
export const text = z.string().max(20_000);
/** A finite number of zero or more (JSON cannot hold NaN or infinity, but a program can). */
export const amount = z.number().nonnegative().finite();
/** A finite number of either sign (dBm, degrees Celsius). */
export const level = z.number().finite();
/** A calendar date, ISO 8601: 2026-11-25. */
export const date = z.string().regex(/^\d{4}-\d{2}-\d{2}$/);
/** A moment, ISO 8601 with zone: 2026-11-25T10:42:00Z. */
export const moment = z.string().regex(/^\d{4}-\d{2}-\d{2}T\d{2}:\d{2}(:\d{2}(\.\d{1,3})?)?(Z|[+-]\d{2}:\d{2})$/);
/** A bag that the program keeps and does not read. */
export const extra = z.record(z.string().max(200), z.json());
