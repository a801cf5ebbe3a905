/* A picture of the page for the manual.
 *
 *     BUILD=build PAGE=build/wasm/planner.html FETCHED=build/fetched node tests/page/picture.mjs FILE */
import { open_page, and_rest } from './browser.mjs';

const { page, close } = await open_page({ viewport: { width: 1360, height: 900 } });
await and_rest(page, () => page.fill('#sun-height', '34'));
await page.evaluate(() => { document.activeElement.blur(); scrollTo(0, 0); });
await page.waitForTimeout(600);
await page.screenshot({ path: process.argv[2] });
await close();
