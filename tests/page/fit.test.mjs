/* Fit for use: at every width, for every reader, on paper. */
import assert from 'node:assert/strict';
import fs from 'node:fs';
import path from 'node:path';
import test from 'node:test';
import { open_page, at_rest, and_rest, axe_path, BUILD } from './browser.mjs';

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

/* Invented; long names, and the sun to be looked at. */
function scene_of(count) {
  const planes = Array.from({ length: count }, (_, i) => ({
    name: `alder carr behind the ${i + 1} sluice`, distance: `${Math.round(20 * 1.9 ** i)} m`, foliage: 'summer oak' }));
  return { title: 'A title that is much too long for one line of a sheet, and for most windows too, and does not end yet',
    light: { sky: 'clear', sun_height: 3, sun_side: 2 }, planes };
}

async function take_scene(page, scene) {
  const drawn = await page.evaluate(() => window.drawn.length);
  await page.setInputFiles('#file', { name: 'scene.json', mimeType: 'application/json', buffer: Buffer.from(JSON.stringify(scene)) });
  await at_rest(page, drawn);
}

for (const [width, height] of [[360, 740], [820, 1100], [1440, 900]])
  test(`at ${width} pixels the names of twelve planes stand beside each other`, async () => {
    const { page, said, close } = await open_page({ viewport: { width, height } });
    try {
      await take_scene(page, scene_of(12));
      const [picture, ...tags] = await page.evaluate(() => ['#picture', '.tag'].flatMap((what) =>
        [...document.querySelectorAll(what)].map((element) => {
          const { left, right, top, bottom } = element.getBoundingClientRect();
          return { left, right, top, bottom };
        })));
      assert.equal(tags.length, 12);
      for (const tag of tags) {
        assert.ok(tag.top >= picture.top - 1 && tag.bottom <= picture.bottom + 1 && tag.right <= width, 'within its height');
        assert.ok(tag.bottom - tag.top >= 24 && tag.right - tag.left >= 24, 'large enough for a finger: WCAG 2.2, 2.5.8');
      }
      for (const [i, one] of tags.entries())
        for (const other of tags.slice(i + 1))
          assert.ok(one.right <= other.left || other.right <= one.left || one.bottom <= other.top || other.bottom <= one.top, 'apart');
      assert.deepEqual(said, []);
    } finally {
      await close();
    }
  });

test('printed, cautions stand on the first sheet and nothing of the title is lost', async () => {
  const { page, close } = await open_page();
  try {
    const scene = scene_of(12);
    await take_scene(page, scene);
    await page.emulateMedia({ media: 'print' });
    await page.setViewportSize({ width: 696, height: 1032 }); /* A4 within its margins */
    const box = (what) => page.locator(what).boundingBox();
    const care = await box('.care'), list = await box('#list');
    assert.ok(care.y + care.height <= list.y && care.y + care.height < 1032);
    assert.match(await page.innerText('#cautions'), /The sun: never look into it/);
    assert.match(await page.innerText('#cautions'), /All paint: keep it off food/);
    assert.equal(await page.innerText('#title-printed'), scene.title);
    const title = await box('#title-printed');
    assert.ok(title.x + title.width <= 696);
  } finally {
    await close();
  }
});
