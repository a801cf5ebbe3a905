/* Scenes come and go as files; work survives; what is no scene is refused. */
import assert from 'node:assert/strict';
import fs from 'node:fs';
import path from 'node:path';
import test from 'node:test';
import { open_page, load, and_rest, key_of, pixels, saved_scene, command_line } from './browser.mjs';

function open_text(page, folder, text, name = 'given.json') {
  const file = path.join(folder, name);
  fs.writeFileSync(file, text);
  return page.setInputFiles('#file', file);
}

test('a scene is saved, kept through a reload, and opened', async () => {
  const { page, folder, said, close } = await open_page();
  try {
    await and_rest(page, () => page.fill('#visibility', '0.8'));
    const saved = await saved_scene(page), key = await key_of(page);
    assert.equal(JSON.parse(saved).air.visibility, '6.3 km');
    assert.ok(command_line(saved).plan, 'the command line reads what the page saves');
    await load(page);
    assert.deepEqual(await key_of(page), key, 'work in progress survives a reload');
    const autumn = fs.readFileSync('scenes/autumn-combe.json', 'utf8');
    await and_rest(page, () => open_text(page, folder, autumn));
    const names = JSON.parse(autumn).planes.map((plane) => plane.name).sort();
    assert.deepEqual((await key_of(page)).slice(1).map((entry) => entry.name).sort(), names);
    assert.equal(await page.inputValue('#title'), JSON.parse(autumn).title);
    assert.deepEqual(JSON.parse(await saved_scene(page)), JSON.parse(autumn));
    await and_rest(page, () => open_text(page, folder, saved));
    assert.deepEqual(await key_of(page), key);
    await and_rest(page, () => page.click('#undo'));
    assert.deepEqual((await key_of(page)).slice(1).map((entry) => entry.name).sort(), names);
    assert.deepEqual(said, []);
  } finally {
    await close();
  }
});

/* Broken in ways of our own invention. */
const BROKEN = {
  'an unknown word': '{"planes":[{"name":"a","distance":"5 furlongs","foliage":"summer oak"}]}',
  'cut short': '{"planes":[{"name":"a"',
  'another program\'s': '{"layers":[],"zoom":3}',
  'no text at all': '\u0000\u0001',
  'a name unknown': '{"paint":{"palette":["green slime"]},"planes":[{"name":"a","distance":5,"foliage":"oak"}]}',
  markup: '<b onclick="x">',
};

test('a broken or foreign file is refused in the program\'s own words', async () => {
  const { page, folder, said, close } = await open_page();
  try {
    const before = { key: await key_of(page), pixels: await pixels(page) };
    for (const [what, text] of Object.entries(BROKEN)) {
      await open_text(page, folder, text, 'scene.json');
      await page.waitForFunction(() => !document.getElementById('problem').hidden);
      const shown = await page.textContent('#problem');
      const [, line, column, words] = /scene\.json:(\d+):(\d+): (.*)/.exec(command_line(text, ['check']).said.trim());
      await page.waitForFunction((t) => document.getElementById('problem').textContent.endsWith(t), words);
      assert.equal(await page.textContent('#problem'), `scene.json, line ${line}, column ${column}: ${words}`, `${what}: ${shown}`);
    }
    assert.deepEqual(await key_of(page), before.key, 'the scene in hand stays');
    assert.equal((await pixels(page)).hash, before.pixels.hash);
    await and_rest(page, () => page.fill('#visibility', '1'));
    assert.equal(await page.isVisible('#problem'), false);
    assert.deepEqual(said, []);
  } finally {
    await close();
  }
});

test('a spoilt store does not keep the page from opening', async () => {
  const { page, close } = await open_page();
  try {
    await page.evaluate(() => localStorage.setItem('recede scene', '{"planes":'));
    await load(page);
    assert.equal((await key_of(page)).length, 7);
  } finally {
    await close();
  }
});

test('picture and key are saved as PNG', async () => {
  const { page, close } = await open_page();
  try {
    for (const [button, least] of [['#save-picture', 1800], ['#save-key', 1800]]) {
      const [download] = await Promise.all([page.waitForEvent('download'), page.click(button)]);
      const bytes = fs.readFileSync(await download.path());
      assert.match(download.suggestedFilename(), /\.png$/);
      assert.equal(bytes.subarray(1, 4).toString('latin1'), 'PNG');
      assert.ok(bytes.readUInt32BE(16) >= least);
    }
  } finally {
    await close();
  }
});

test('with the keys alone, from the first look to a saved scene', async () => {
  const { page, close } = await open_page();
  try {
    const reach = async (id) => {
      for (let i = 0; i < 80; i++) {
        if (await page.evaluate((wanted) => document.activeElement.id === wanted, id)) return;
        await page.keyboard.press('Tab');
      }
      assert.fail(`${id} cannot be reached with the Tab key`);
    };
    const tagged = async () => {
      for (let i = 0; i < 40; i++) {
        if (await page.evaluate(() => document.activeElement.classList.contains('tag'))) return;
        await page.keyboard.press('Tab');
      }
      assert.fail('no plane can be reached with the Tab key');
    };
    await tagged();
    const name = await page.evaluate(() => document.activeElement.dataset.name);
    const focus = await page.evaluate(() => getComputedStyle(document.activeElement).outlineStyle);
    assert.equal(focus, 'solid', 'the focus shows');
    await and_rest(page, () => page.keyboard.press('PageDown'));
    await page.keyboard.press('Enter');
    await reach('plane-name');
    await page.keyboard.press('Control+a');
    await and_rest(page, async () => {
      await page.keyboard.type('Keyed Fell');
      await page.keyboard.press('Tab');
    });
    for (let i = 0; i < 60; i++) await page.keyboard.press('Shift+Tab');
    await reach('visibility');
    await and_rest(page, () => page.keyboard.press('PageDown'));
    await reach('sun-height');
    await and_rest(page, () => page.keyboard.press('Home'));
    const scene = JSON.parse(await saved_scene(page, () => page.keyboard.press('Control+s')));
    assert.equal(scene.light.sun_height, 0.5);
    assert.ok(scene.planes.some((plane) => plane.name === 'Keyed Fell'));
    assert.equal(scene.planes.some((plane) => plane.name === name), false);
    await page.evaluate(() => document.activeElement.blur());
    await reach('save');
    const again = await saved_scene(page, () => page.keyboard.press('Enter'));
    assert.deepEqual(JSON.parse(again), scene);
  } finally {
    await close();
  }
});
