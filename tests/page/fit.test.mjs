/* Fit for use: at every width, for every reader, on paper. */
import assert from 'node:assert/strict';
import fs from 'node:fs';
import path from 'node:path';
import test from 'node:test';
import { open_page, and_rest, axe_path, BUILD } from './browser.mjs';

const RULES = ['wcag2a', 'wcag2aa', 'wcag21a', 'wcag21aa', 'wcag22aa', 'best-practice'];

/* axe-core, an open checker of the W3C's Web Content Accessibility Guidelines. */
async function violations(page) {
  const found = await page.evaluate((rules) => window.axe.run(document, { runOnly: rules }), RULES);
  return found.violations.map((v) => `${v.id}: ${v.nodes.map((n) => `${n.target} ${n.failureSummary}`).join('; ')}`);
}

async function open_all(page) {
  for (const leaf of ['box', 'paper', 'work', 'ladder', 'chart']) await page.click(`#${leaf}-leaf > summary`);
  await page.click('.tubes > summary');
  await page.click('#washes > li:nth-child(3) .wash summary');
  await page.waitForSelector('.steps li', { timeout: 60000 });
  await page.waitForSelector('.rungs td', { timeout: 30000 });
  await page.waitForSelector('.patches span');
  await page.waitForSelector('.others li');
}

for (const [width, height] of [[360, 740], [820, 1100], [1440, 900]])
  test(`at ${width} pixels: nothing sticks out, nothing against the guidelines`, async () => {
    const { page, close } = await open_page({ viewport: { width, height } });
    try {
      const wide = () => page.evaluate(() => document.documentElement.scrollWidth - window.innerWidth);
      const shots = path.join(BUILD, 'page-shots');
      fs.mkdirSync(shots, { recursive: true });
      await page.screenshot({ path: path.join(shots, `page-${width}.png`) });
      await page.addScriptTag({ path: axe_path }).catch(() => {});
      await page.evaluate(fs.readFileSync(axe_path, 'utf8'));
      assert.deepEqual(await violations(page), []);
      assert.ok(await wide() <= 0, 'sideways scrolling');
      await open_all(page);
      await and_rest(page, () => page.click('#pin'));
      assert.deepEqual(await violations(page), []);
      assert.ok(await wide() <= 0, 'sideways scrolling with all open');
      await page.screenshot({ path: path.join(shots, `page-${width}-all.png`), fullPage: true });
    } finally {
      await close();
    }
  });

test('the surround of the picture is a neutral grey', async () => {
  const { page, close } = await open_page();
  try {
    const greys = await page.evaluate(() => [document.body, document.querySelector('.standing')]
      .map((element) => getComputedStyle(element).backgroundColor.match(/\d+/g).slice(0, 3)));
    for (const [r, g, b] of greys) assert.ok(r === g && g === b, `${r} ${g} ${b}`);
  } finally {
    await close();
  }
});

test('printed, it is one sheet of A4 with the picture and every mix', async () => {
  const { page, close } = await open_page();
  try {
    const file = path.join(BUILD, 'page-shots', 'printed.pdf');
    fs.mkdirSync(path.dirname(file), { recursive: true });
    const pdf = await page.pdf({ path: file, preferCSSPageSize: true });
    const pages = pdf.toString('latin1').match(/\/Type\s*\/Page[^s]/g);
    assert.equal(pages.length, 1);
    const [, width, height] = /\/MediaBox\s*\[0 0 ([\d.]+) ([\d.]+)\]/.exec(pdf.toString('latin1'));
    assert.ok(Math.abs(width - 595.3) < 1.5 && Math.abs(height - 841.9) < 1.5, `${width} by ${height} points`);
  } finally {
    await close();
  }
});
