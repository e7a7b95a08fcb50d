import { createServer, type Server } from 'node:http';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { findChromium } from '../support/chromium.ts';
import { type LaunchedPage, launchPage } from '../support/launchPage.ts';
import { whyMissing } from '../support/required.ts';

const missing = await whyMissing('Chromium', findChromium);
const provoked = [/Content Security Policy/i, /ERR_/, /failed:/, /Refused to/, /violates/, /Failed to load resource/, /404/];

describe.skipIf(missing)('the page in a browser, attacked', () => {
  let launched: LaunchedPage;
  let elsewhere: Server;
  let elsewhereAddress: string;

  beforeAll(async () => {
    launched = await launchPage();
    elsewhere = createServer((request, response) => {
      response.setHeader('content-type', 'text/html');
      response.setHeader('access-control-allow-origin', '*');
      response.end(request.url === '/frame' ? `<iframe src="${launched.server.address}"></iframe>` : 'hello from elsewhere');
    });
    await new Promise<void>((resolve) => elsewhere.listen(0, '127.0.0.1', resolve));
    const address = elsewhere.address();
    elsewhereAddress = `http://127.0.0.1:${typeof address === 'object' && address ? address.port : 0}`;
  });
  afterAll(async () => {
    await launched.close(provoked);
    await new Promise((resolve) => elsewhere.close(resolve));
  });

  it('should run its own worker under its policy', async () => {
    await launched.page.getByText('likely').first().waitFor();
  });

  it('should run no inline script, no handler in markup, and no code from text', async () => {
    const ran = await launched.page.evaluate(async () => {
      const done: string[] = [];
      Object.assign(window, { done });
      const script = document.createElement('script');
      script.textContent = "done.push('inline script')";
      document.body.append(script);
      const holder = document.createElement('div');
      holder.innerHTML = `<img src="/missing.png" onerror="done.push('handler')">`;
      document.body.append(holder);
      // Outside the call of the test driver, which itself is let through.
      setTimeout(() => {
        try {
          new Function('return 1')();
          done.push('Function');
        } catch {
          // Refused, as it should be.
        }
      }, 0);
      await new Promise((resolve) => setTimeout(resolve, 300));
      holder.remove();
      return done;
    });
    expect(ran).toEqual([]);
  });

  it('should fetch nothing from elsewhere, though elsewhere allows it', async () => {
    const { page } = launched;
    // Reached from here, so that what follows is the policy's doing.
    expect(await (await fetch(elsewhereAddress)).text()).toBe('hello from elsewhere');
    expect(await page.evaluate((from) => fetch(from).then(() => 'fetched', String), elsewhereAddress)).toMatch(/TypeError/);
    const image = await page.evaluate(
      (from) =>
        new Promise((resolve) => {
          const picture = new Image();
          picture.onload = () => resolve('loaded');
          picture.onerror = () => resolve('refused');
          picture.src = from;
        }),
      elsewhereAddress,
    );
    expect(image).toBe('refused');
  });

  it('should not be embedded by a page from elsewhere', async () => {
    const page = await launched.context.newPage();
    await page.goto(`${elsewhereAddress}/frame`);
    await page.waitForTimeout(500);
    const inner = page.frames().find((frame) => frame !== page.mainFrame());
    expect((await inner?.locator('#root').count()) ?? 0).toBe(0);
    await page.close();
  });
});
