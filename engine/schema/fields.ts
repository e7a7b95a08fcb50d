import { z } from 'zod';

/*
 * Building blocks of the file schemas. Bounds are there so that a hostile file cannot make the program slow or the screen
 * unreadable; they are far above what a cabinet needs.
 */

// A strict content policy forbids `eval`; zod must then not generate code.
z.config({ jitless: true });

/** How texts of a fixed form look; the names are for messages. */
export const textForms = {
  id: /^[A-Za-z0-9][A-Za-z0-9._-]{0,63}$/,
  date: /^\d{4}-(?:0[1-9]|1[0-2])-(?:0[1-9]|[12]\d|3[01])$/,
  moment:
    /^\d{4}-(?:0[1-9]|1[0-2])-(?:0[1-9]|[12]\d|3[01])T(?:[01]\d|2[0-3]):[0-5]\d(?::[0-5]\d(?:\.\d{1,3})?)?(?:Z|[+-](?:0\d|1[0-4]):[0-5]\d)$/,
  picture: /^[A-Za-z0-9+/]*={0,2}$/,
} as const;

/** An id: short, printable, without spaces, so that it can be named on a command line. */
export const id = z.string().regex(textForms.id);
/** Most characters in a line of free text. */
export const longestLine = 200;
/** A line of free text (names, designations, part numbers). */
export const line = z.string().max(longestLine);
/** Free text of any length that a person would type. */
export const text = z.string().max(20_000);
/** A finite number of zero or more (JSON cannot hold NaN or infinity, but a program can). */
export const amount = z.number().nonnegative();
/** A finite number of either sign (dBm, degrees Celsius). */
export const level = z.number();
/** A calendar date, ISO 8601: 2026-11-25. Whether the month has that day is not looked at. */
export const date = z.string().regex(textForms.date);
/** A moment, ISO 8601 with zone: 2026-11-25T10:42:00Z. */
export const moment = z.string().regex(textForms.moment);
/** A picture as base64 without line breaks; about 3 MB at most, so that a file stays below its limit. */
export const picture = z.string().max(4_000_000).regex(textForms.picture);
/** A bag that the program keeps and does not read. */
export const extra = z.record(z.string().max(200), z.json());
