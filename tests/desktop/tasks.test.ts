import { afterAll, beforeAll, describe, it } from 'vitest';
import { findDesktop, type LaunchedDesktop, launchDesktop } from '../support/launchDesktop.ts';
import { whyMissing } from '../support/required.ts';
import { enterFirstLook, expectAnswer, openTask } from '../tasks/enterTask.ts';
import { readTaskCases } from '../tasks/taskCases.ts';

const missing = await whyMissing('the desktop runtime', findDesktop);
const tasks = readTaskCases();
const [first] = tasks;
const chosen = ['two-chains.2', 'drives-off-chain.1', 'forty-units.1'];

describe.skipIf(missing)('sample cases in the desktop program', () => {
  let launched: LaunchedDesktop;
  beforeAll(async () => {
    launched = await launchDesktop();
  });
  afterAll(async () => {
    // What was entered is unsaved, and the program would ask for it.
    if (first) await openTask(launched.page, first);
    await launched.close();
  });

  it.each(tasks.filter(({ name }) => chosen.includes(name)))('should lead to the true cause: $name', async (task) => {
    await openTask(launched.page, task);
    await enterFirstLook(launched.page, task);
    await expectAnswer(launched.page, task, 1);
  });
});
