import { describe, expect, it } from 'vitest';
import { helpWords, windowTexts } from '../../engine/messages/index.ts';
import { workspaces } from '../../renderer/draw/drawState.ts';
import { menuNames, menuSections } from '../../renderer/shell/plainCommands.ts';
import { shortcutsOf, wordKeys } from '../../renderer/shell/shortcuts.ts';
import { commands } from '../../renderer/state/commands.ts';
import { findChromium } from '../support/chromium.ts';
import { launchPage } from '../support/launchPage.ts';
import { whyMissing } from '../support/required.ts';
import { seriousFindings } from '../support/seriousFindings.ts';

const missing = await whyMissing('Chromium', findChromium);

describe.skipIf(missing)('the page in Chromium', () => {
  it('should open without a complaint', async () => {
    const { page, shoot, close } = await launchPage();
    await expect.poll(() => page.locator('#root').textContent()).toContain('Linkwright');
    await shoot('page-opens');
    await close();
  });

  it('should show in every menu what the table of menus says, with its keys, and answer F1', async () => {
    const { page, shoot, close } = await launchPage();
    const menus = page.getByRole('navigation', { name: windowTexts.menus.all });
    for (const workspace of workspaces) {
      await page.keyboard.press(`Alt+${workspaces.indexOf(workspace) + 1}`);
      for (const menu of menuNames) {
        await menus.getByRole('button', { name: windowTexts.menus[menu], exact: true }).click();
        const shown = await page.getByRole('menu').last().getByRole('menuitem').allTextContents();
        for (const id of menuSections(menu, workspace, false).flat()) {
          const line =
            windowTexts.commands[commands[id].label] + (shortcutsOf(id)[0] === undefined ? '' : wordKeys(shortcutsOf(id)[0] ?? ''));
          if (id !== 'undo' && id !== 'redo') expect(shown).toContain(line);
        }
        if (workspace === 'draw') await shoot(`menu-${menu}`);
        await page.keyboard.press('Escape');
      }
    }
    await page.keyboard.press('F1');
    const help = page.getByRole('dialog', { name: helpWords.title });
    await help.getByRole('heading', { name: helpWords.topic.technician }).waitFor();
    expect(await seriousFindings(page)).toEqual([]);
    await shoot('help');
    // Searched for in all topics, found in those that have it.
    await help.getByLabel(helpWords.search).fill('lock main switch');
    await help.getByText(helpWords.found(1)).waitFor();
    await help.getByRole('heading', { name: helpWords.topic.cautions }).waitFor();
    await help.getByRole('button', { name: helpWords.topic.keys }).press('Enter');
    await help.getByRole('heading', { name: windowTexts.shortcuts.inPractice }).waitFor();
    await page.keyboard.press('Escape');
    await page.getByRole('button', { name: windowTexts.menus.help, exact: true }).click();
    await page.getByRole('menuitem', { name: windowTexts.commands.about }).click();
    await page.getByRole('dialog', { name: windowTexts.about.title }).waitFor();
    await shoot('about');
    await close();
  });
});
