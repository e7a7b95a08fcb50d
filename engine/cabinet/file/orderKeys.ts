import { z } from 'zod';

/**
 * Puts the members of every object into the order in which the schema lists them, and leaves out members that are `undefined`, so
 * that equal content is written as equal bytes however it came about. Content that does not fit the schema is not refused here
 * (what a person has typed must be saved in any case): members that the schema does not know follow in order of their names.
 * The bag `extra` keeps its own order.
 */
export function orderKeys(schema: z.core.$ZodType, value: unknown): unknown {
  if (schema instanceof z.ZodOptional) return orderKeys(schema.unwrap(), value);
  if (schema instanceof z.ZodArray) return Array.isArray(value) ? value.map((item) => orderKeys(schema.element, item)) : value;
  if (schema instanceof z.ZodUnion) return orderKeys(chooseOption(flatOptions(schema), value), value);
  if (!(schema instanceof z.ZodObject) || !isObject(value)) return value;
  const shape: Readonly<Record<string, z.core.$ZodType>> = schema.shape;
  const known = Object.keys(shape);
  const unknown = Object.keys(value)
    .filter((key) => !Object.hasOwn(shape, key))
    .sort();
  const members: [string, unknown][] = [];
  for (const key of [...known, ...unknown]) {
    const member = value[key];
    const memberSchema = shape[key];
    if (member !== undefined) members.push([key, memberSchema === undefined ? member : orderKeys(memberSchema, member)]);
  }
  return Object.fromEntries(members);
}

/** The options of a union; those of a union within it are its own. */
function flatOptions(union: z.ZodUnion): readonly z.core.$ZodType[] {
  return union.options.flatMap((option) => (option instanceof z.ZodUnion ? flatOptions(option) : [option]));
}

/** The option that takes the value; among shapes the first that knows all its members and allows its fixed words. */
function chooseOption(options: readonly z.core.$ZodType[], value: unknown): z.core.$ZodType {
  const fitting = options.find((option) => {
    if (!(option instanceof z.ZodObject)) return !isObject(value);
    const shape: Readonly<Record<string, z.core.$ZodType>> = option.shape;
    return (
      isObject(value) &&
      Object.entries(value).every(([key, member]) => {
        const known = shape[key];
        return known !== undefined && (!(known instanceof z.ZodLiteral) || known.values.has(member as never)); // `has` of a set asks nothing of its argument
      })
    );
  });
  return fitting ?? z.unknown();
}

function isObject(value: unknown): value is Readonly<Record<string, unknown>> {
  return typeof value === 'object' && value !== null && !Array.isArray(value);
}
