/* Planes taken in hand, with the mouse, a finger and the keys. */
import assert from 'node:assert/strict';
import test from 'node:test';
import { open_page, and_rest, pixels, key_of, saved_scene } from './browser.mjs';

const distance_of = async (page, name) => (await key_of(page)).find((entry) => entry.name === name).far;

/* A place in the picture where a plane shows: tapping it takes that plane in hand. */
async function place_on(page, name) {
  const box = await page.locator('#picture').boundingBox();
  for (let y = 0.3; y < 0.95; y += 0.02)
    for (let x = 0.1; x < 1; x += 0.2) {
      const at = { x: box.x + box.width * x, y: box.y + box.height * y };
      await page.mouse.click(at.x, at.y);
      if (await page.inputValue('#plane-name') === name) return at;
    }
  return assert.fail(`${name} shows nowhere`);
}

test('a ridge drawn down in the picture comes nearer; undo puts it back', async () => {
  const { page, said, close } = await open_page();
  try {
    const before = { key: await key_of(page), pixels: await pixels(page), scene: await saved_scene(page) };
    const at = await place_on(page, 'heather moor');
    await and_rest(page, async () => {
      await page.mouse.move(at.x, at.y);
      await page.mouse.down();
      for (let i = 1; i <= 12; i++) await page.mouse.move(at.x, at.y + 5 * i);
      await page.mouse.up();
    });
    assert.notEqual(await distance_of(page, 'heather moor'), '6 km');
    const scene = JSON.parse(await saved_scene(page));
    const moved = scene.planes.find((plane) => plane.name === 'heather moor').distance;
    assert.match(moved, /^\d+(\.\d+)? km$/);
    assert.ok(parseFloat(moved) < 4.5 && parseFloat(moved) > 1, moved);
    assert.notEqual((await pixels(page)).hash, before.pixels.hash);
    assert.notDeepEqual(await key_of(page), before.key);
    await and_rest(page, () => page.click('#undo'));
    assert.deepEqual(await key_of(page), before.key);
    assert.equal((await pixels(page)).hash, before.pixels.hash);
    assert.equal(await saved_scene(page), before.scene);
    await and_rest(page, () => page.click('#redo'));
    assert.equal(JSON.parse(await saved_scene(page)).planes.find((p) => p.name === 'heather moor').distance, moved);
    assert.deepEqual(said, []);
  } finally {
    await close();
  }
});

test('a finger moves a plane too', async () => {
  const { page, close } = await open_page({ viewport: { width: 390, height: 800 }, hasTouch: true, isMobile: true });
  try {
    const at = await page.evaluate(() => {
      const box = document.getElementById('picture').getBoundingClientRect();
      return { x: box.left + box.width * 0.7, y: box.top + box.height * 0.45 };
    });
    const client = await page.context().newCDPSession(page);
    const touch = (type, y) => client.send('Input.dispatchTouchEvent', { type, touchPoints: type === 'touchEnd' ? [] : [{ x: at.x, y }] });
    await and_rest(page, async () => {
      await touch('touchStart', at.y);
      for (let i = 1; i <= 8; i++) await touch('touchMove', at.y + 6 * i);
      await touch('touchEnd', 0);
    });
    const key = await key_of(page);
    assert.notDeepEqual(key.map((entry) => entry.far), ['', '14 km', '6 km', '1.6 km', '411 m', '180 m', '25 m']);
  } finally {
    await close();
  }
});

test('planes are added, named, coloured and taken out', async () => {
  const { page, close } = await open_page();
  try {
    await and_rest(page, () => page.click('#plane-add'));
    assert.ok((await key_of(page)).some((entry) => entry.name === 'new wood'));
    await and_rest(page, async () => {
      await page.fill('#plane-name', 'Ash Hanger');
      await page.press('#plane-name', 'Tab');
    });
    await and_rest(page, () => page.selectOption('#plane-own', 'foliage:autumn maple'));
    await and_rest(page, () => page.selectOption('#plane-own', 'colour:'));
    await and_rest(page, () => page.fill('#plane-colour', '#804030'));
    await and_rest(page, async () => {
      await page.fill('#plane-crest', '120');
      await page.press('#plane-crest', 'Tab');
    });
    const plane = JSON.parse(await saved_scene(page)).planes.find((p) => p.name === 'Ash Hanger');
    assert.equal(plane.colour, '#804030');
    assert.equal(plane.crest, 120);
    assert.equal(plane.foliage, undefined);
    await and_rest(page, () => page.click('#plane-remove'));
    assert.equal((await key_of(page)).some((entry) => entry.name === 'Ash Hanger'), false);
    await and_rest(page, () => page.click('#undo'));
    assert.ok((await key_of(page)).some((entry) => entry.name === 'Ash Hanger'));
  } finally {
    await close();
  }
});

test('greys at a touch, and the picture as it was beside', async () => {
  const { page, said, close } = await open_page();
  try {
    const coloured = await pixels(page);
    await and_rest(page, () => page.click('#pin'));
    await and_rest(page, () => page.fill('#visibility', '0.5'));
    const was = await pixels(page, 'was-picture'), now = await pixels(page);
    assert.ok(await page.isVisible('#was'));
    assert.ok(was.coloured > 0 && now.coloured > 0 && was.hash !== now.hash);
    assert.match(await page.textContent('#washes > li:nth-child(2) .value small'), /^was \d\.\d$/);
    await and_rest(page, () => page.click('#greys'));
    assert.equal((await pixels(page)).coloured, 0);
    assert.equal((await pixels(page, 'was-picture')).coloured, 0);
    await and_rest(page, () => page.click('#greys'));
    await and_rest(page, () => page.click('#pin'));
    assert.equal(await page.isVisible('#was'), false);
    await and_rest(page, () => page.click('#undo'));
    assert.equal((await pixels(page)).hash, coloured.hash);
    assert.deepEqual(said, []);
  } finally {
    await close();
  }
});

test('a wash opens to other mixes; ladder and chart are worked out when opened', async () => {
  const { page, said, close } = await open_page();
  try {
    await page.click('#washes > li:nth-child(4) .wash summary');
    await page.waitForSelector('#washes > li:nth-child(4) .others li');
    const others = await page.textContent('#washes > li:nth-child(4) .others');
    for (const word of ['closest', 'simplest', 'forgiving', 'lamp']) assert.match(others, new RegExp(word));
    await page.click('#ladder-leaf > summary');
    await page.waitForSelector('.rungs td', { timeout: 30000 });
    assert.equal(await page.locator('.rungs thead th').count(), 9);
    assert.equal(await page.locator('.captions li').count(), 9);
    await page.click('#work-leaf > summary');
    await page.waitForSelector('.steps li', { timeout: 60000 });
    assert.ok(await page.locator('.steps li').count() >= 13, 'a step for each wash');
    assert.match(await page.textContent('#work > p:nth-child(2)'), /^In this order .* It takes \d+ tubes\.$/);
    await page.click('#chart-leaf > summary');
    await page.waitForSelector('.patches span');
    assert.match(await page.textContent('#chart'), /Left out, being neither .*: pyrrole red; quinacridone magenta\./);
    assert.equal(await page.locator('.patches').count() * 9, await page.locator('.patches span').count());
    assert.deepEqual(said, []);
  } finally {
    await close();
  }
});
