import { makeJsonSchema, schemaNames } from '../../schema/index.ts';
import { jsonUsageProblem } from '../answer/index.ts';
import { type Command, failed } from '../command.ts';
import { findNearest } from '../nearest.ts';
import { makeUsageProblem } from '../read/index.ts';

/** `linkwright schema NAME`: the JSON Schema of a file or of a batch line, ready to be saved. */
export const schema: Command = {
  options: {},
  async run(io, given) {
    const [wanted = '', unwanted] = given.arguments;
    if (unwanted !== undefined) {
      return failed(2, [jsonUsageProblem(makeUsageProblem('argument-unwanted', { argument: unwanted, command: 'schema' }))]);
    }
    const name = schemaNames.find((one) => one === wanted.trim().toLowerCase());
    if (!name) {
      const facts = { where: 'schema', value: wanted, allowed: schemaNames, near: findNearest(wanted, schemaNames) };
      return failed(2, [jsonUsageProblem(makeUsageProblem('value-not-allowed', facts))]);
    }
    await io.out(`${JSON.stringify(makeJsonSchema(name), null, 2)}\n`);
    return { written: 0 };
  },
};
