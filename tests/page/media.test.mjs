/* A plane's own mix, and what becomes of it when the kind of medium changes. */
import assert from 'node:assert/strict';
import { execFileSync } from 'node:child_process';
import fs from 'node:fs';
import path from 'node:path';
import test from 'node:test';
import { open_page, and_rest, at_rest, key_of, saved_scene, BUILD } from './browser.mjs';
import { assert_key_as_planned } from './plans.mjs';

/* Invented: a pale far ridge, mixed thin, and a dark wood near by. */
const RIDGE = {
  title: 'A ridge', paint: { most_pigments: 2 },
  planes: [
    { name: 'wood', distance: '90 m', mix: { 'ultramarine blue': 1, 'burnt umber': 1, water: 1 } },
    { name: 'meadow', distance: '300 m', foliage: 'meadow grass' },
    { name: 'Long Scaur', distance: '14 km', mix: { 'yellow ochre': 2, 'ultramarine blue': 1, water: 60 } },
  ],
};

async function open_scene(page, folder, scene, name = 'given.json') {
  const file = path.join(folder, name);
  fs.writeFileSync(file, JSON.stringify(scene));
  await and_rest(page, () => page.setInputFiles('#file', file));
}

const scene_of = async (page) => JSON.parse(await saved_scene(page));
const plane_of = (scene, name) => scene.planes.find((plane) => plane.name === name);

/* What the program mixes for a colour as it is, with the scene's paints. */
function closest(folder, hex, palette, medium) {
  const file = path.join(folder, 'match.json');
  execFileSync(path.join(BUILD, 'recede'), ['match', hex, '--palette', palette, '--medium', medium, '--json', file], { stdio: 'ignore' });
  return JSON.parse(fs.readFileSync(file, 'utf8')).closest.recipe;
}

const value_of = (hex) => parseInt(hex.slice(1, 3), 16) + parseInt(hex.slice(3, 5), 16) + parseInt(hex.slice(5, 7), 16);

for (const [medium, palette] of [['watercolour', 'landscape-twelve'], ['oil', 'opaque-sixteen']])
  test(`${medium}: a mix begins as the closest for the plane's own colour, without the air before it`, async () => {
    const { page, folder, said, close } = await open_page();
    try {
      await page.click('#box-leaf > summary');
      if (medium === 'oil') await and_rest(page, () => page.selectOption('#medium', 'oil'));
      await page.click('#washes button:has-text("Long Scaur")');
      for (const hex of ['#c9c4b6', '#5e5a3c']) {
        await and_rest(page, () => page.selectOption('#plane-own', 'colour:'));
        await and_rest(page, () => page.fill('#plane-colour', hex));
        const before = await key_of(page);
        await and_rest(page, () => page.selectOption('#plane-own', 'mix:'));
        const { mix } = plane_of(await scene_of(page), 'Long Scaur'), wanted = closest(folder, hex, palette, medium);
        const { water, ...parts } = mix;
        assert.deepEqual(Object.entries(parts).sort(), wanted.pigments.map(({ name, parts: of }) => [name, of]).sort(), hex);
        if (medium === 'oil') assert.equal(water, undefined);
        else assert.ok(Math.abs((water || 0) - wanted.water_per_paint) <= 0.05 * wanted.water_per_paint, `${water} and ${wanted.water_per_paint}`);
        if (medium === 'oil' && hex === '#c9c4b6') assert.ok(Object.keys(parts).some((name) => /white$|^pale /.test(name)), `pale: it has white: ${JSON.stringify(parts)}`);
        /* so that far off it looks as it did */
        const values = (key) => key.find((entry) => entry.name === 'Long Scaur').washes.map((wash) => Number(wash.value));
        const was = values(before), is = values(await key_of(page));
        was.forEach((value, i) => assert.ok(Math.abs(value - is[i]) <= 0.3, `${was} and ${is}`));
        await assert_key_as_planned(page);
      }
      assert.deepEqual(said, []);
    } finally {
      await close();
    }
  });

test('the other kind of medium keeps a mix\'s colour and says so; undo brings the mix back', async () => {
  const { page, folder, said, close } = await open_page();
  try {
    await open_scene(page, folder, RIDGE);
    const before = { scene: await saved_scene(page), key: await key_of(page) };
    await page.click('#box-leaf > summary');
    await and_rest(page, () => page.selectOption('#medium', 'oil'));
    assert.equal(await page.isVisible('#problem'), false);
    assert.equal(await page.isVisible('#note'), true);
    assert.equal(await page.getAttribute('#note', 'role'), 'status');
    const note = await page.textContent('#note');
    assert.match(note, /^wood and Long Scaur keep their colours, but no longer as mixes, which were for watercolour: Undo brings them back\.$/);
    const oil = await scene_of(page);
    for (const name of ['wood', 'Long Scaur']) {
      assert.equal(plane_of(oil, name).mix, undefined);
      assert.match(plane_of(oil, name).colour, /^#[0-9a-f]{6}$/);
    }
    assert.ok(value_of(plane_of(oil, 'Long Scaur').colour) > 550, 'the pale one is pale');
    assert.ok(value_of(plane_of(oil, 'wood').colour) < 250, 'the dark one is dark');
    await assert_key_as_planned(page);
    /* within the opaque media a mix stays; the note goes with the next change */
    await page.click('#washes button:has-text("Long Scaur")');
    await and_rest(page, () => page.selectOption('#plane-own', 'mix:'));
    assert.equal(await page.isVisible('#note'), false);
    const { mix } = plane_of(await scene_of(page), 'Long Scaur');
    await and_rest(page, () => page.selectOption('#medium', 'gouache'));
    assert.deepEqual(plane_of(await scene_of(page), 'Long Scaur').mix, mix);
    assert.equal(await page.isVisible('#note'), false);
    await and_rest(page, () => page.selectOption('#medium', 'watercolour'));
    assert.match(await page.textContent('#note'), /^Long Scaur keeps its colour, but no longer as a mix, which was for gouache: Undo brings it back\.$/);
    for (let i = 0; i < 4; i++) await and_rest(page, () => page.click('#undo'));
    assert.equal(await saved_scene(page), before.scene);
    assert.deepEqual(await key_of(page), before.key);
    assert.deepEqual(said, []);
  } finally {
    await close();
  }
});

test('a palette file of the other kind does likewise', async () => {
  const { page, folder, close } = await open_page();
  try {
    await open_scene(page, folder, RIDGE);
    const before = await saved_scene(page);
    await open_scene(page, folder, { medium: 'oil', paints: ['titanium white', 'ultramarine blue', 'yellow ochre', 'burnt umber'] }, 'oil.json');
    assert.match(await page.textContent('#note'), /^You paint in oil now\. wood and Long Scaur keep their colours, /);
    assert.match(plane_of(await scene_of(page), 'Long Scaur').colour, /^#/);
    await and_rest(page, () => page.click('#undo'));
    assert.equal(await saved_scene(page), before);
    assert.equal(await page.isVisible('#note'), false);
  } finally {
    await close();
  }
});

test('ready boxes say what they are for, and a change of medium is told', async () => {
  const { page, said, close } = await open_page();
  try {
    await page.click('#box-leaf > summary');
    const groups = await page.evaluate(() => [...document.querySelectorAll('#boxes [role="group"]')].map((group) => ({
      label: group.getAttribute('aria-label'), text: group.textContent, buttons: [...group.querySelectorAll('button')].map((button) => button.textContent),
    })));
    assert.deepEqual(groups.map((group) => group.label), ['Ready boxes for watercolour', 'Ready boxes for gouache, acrylic, oil']);
    assert.match(groups[0].text, /^for watercolour/);
    assert.match(groups[1].text, /^for gouache, acrylic, oil/);
    assert.ok(groups[0].buttons.includes('landscape twelve') && groups[1].buttons.includes('opaque sixteen'));
    await and_rest(page, () => page.selectOption('#medium', 'oil'));
    await and_rest(page, () => page.click('#boxes button:has-text("landscape twelve")'));
    assert.equal(await page.inputValue('#medium'), 'watercolour');
    assert.equal(await page.textContent('#note'), 'You paint in watercolour now.');
    assert.equal(await page.isVisible('#note'), true);
    await and_rest(page, () => page.click('#boxes button:has-text("landscape six")'));
    assert.equal(await page.isVisible('#note'), false);
    await and_rest(page, () => page.click('#boxes button:has-text("opaque sixteen")'));
    assert.equal(await page.inputValue('#medium'), 'gouache');
    assert.equal(await page.textContent('#note'), 'You paint in gouache now.');
    assert.deepEqual(said, []);
  } finally {
    await close();
  }
});

test('a colour of one\'s own is shown, not spelt', async () => {
  const { page, close } = await open_page();
  try {
    await and_rest(page, () => page.selectOption('#plane-own', 'colour:'));
    const name = await page.inputValue('#plane-name');
    const note = await page.evaluate((held) => [...document.querySelectorAll('#washes > li')]
      .find((entry) => entry.dataset.name === held).querySelector('.note').textContent, name);
    assert.match(note, /^a colour of your own; \d+ % its own light/);
    await page.click('#ladder-leaf > summary');
    await page.waitForSelector('.rungs td', { timeout: 30000 });
    await at_rest(page);
    const words = await page.evaluate(() => document.body.innerText);
    assert.equal(/#[0-9a-f]{6}/.exec(words), null);
  } finally {
    await close();
  }
});
