import { afterAll, beforeAll, describe, it } from 'vitest';
import { findDesktop, type LaunchedDesktop, launchDesktop } from '../support/launchDesktop.ts';
import { whyMissing } from '../support/required.ts';
import { enterTask, expectAnswer, openTask } from '../tasks/enterTask.ts';
import { readTaskCases } from '../tasks/taskCases.ts';

const missing = await whyMissing('the desktop runtime', findDesktop);
const chosen = ['two-chains.2', 'drives-off-chain.1', 'forty-units.1'];

describe.skipIf(missing)('sample cases in the desktop program', () => {
  let launched: LaunchedDesktop;
  beforeAll(async () => {
    launched = await launchDesktop();
  });
  afterAll(() => launched.close());

  it.each(readTaskCases().filter(({ name }) => chosen.includes(name)))('should lead to the true cause: $name', async (task) => {
    await openTask(launched.page, task);
    await enterTask(launched.page, task);
    await expectAnswer(launched.page, task);
  });
});
