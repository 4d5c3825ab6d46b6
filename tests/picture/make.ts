/** `npm run picture`: takes README's picture of the bench from the running app. */
import { fileURLToPath } from 'node:url';
import { findChromium } from '../support/chromium.ts';
import { closeBrowser, firstPicture, openBench } from '../support/launch.ts';
import { serveBench } from '../support/serve.ts';

const served = await serveBench();
const bench = await openBench({
  origin: served.origin,
  chromium: await findChromium(),
  width: 1440,
  height: 900,
});
const { page } = bench;
await firstPicture(page);
await page
  .getByRole('button', { name: /Half-ton four-wheel drive/ })
  .first()
  .click();
await page.getByText('long travel', { exact: false }).first().click();
await page
  .getByRole('button', { name: 'Cut', exact: true })
  .or(page.getByText('Cut', { exact: true }))
  .first()
  .click();
await page.getByRole('button', { name: /go there/ }).click();
await page.waitForFunction(() => document.body.textContent?.includes('touch'));
await page.waitForTimeout(3000);
await page.screenshot({ path: fileURLToPath(new URL('bench.png', import.meta.url)) });
await bench.close();
await closeBrowser();
await served.close();
