/* What is refused springs back, and is told where the hand is. */
import assert from 'node:assert/strict';
import fs from 'node:fs';
import path from 'node:path';
import test from 'node:test';
import { open_page, and_rest, at_rest, key_of, saved_scene } from './browser.mjs';
import { assert_key_as_planned } from './plans.mjs';

/* An edit that may be taken back: waits for what it says, then for the scene to stand. */
async function told(page, action) {
  await page.evaluate(() => { document.getElementById('problem').textContent = ''; });
  await action();
  await page.waitForFunction(() => document.getElementById('problem').textContent, null, { timeout: 10000 });
  await page.waitForTimeout(400);
  await at_rest(page);
  return page.textContent('#problem');
}

const enter = async (page, field, text) => {
  await page.fill(field, text);
  await page.press(field, 'Tab');
};

/* Whether all of the message is in the window, and how far below the control it begins. */
const place_of_message = (page, control) => page.evaluate((field) => {
  const box = document.getElementById('problem').getBoundingClientRect(), from = document.querySelector(field).getBoundingClientRect();
  const there = document.elementFromPoint(box.left + 5, box.top + box.height / 2);
  return {
    seen: box.top >= 0 && box.bottom <= window.innerHeight + 1 && !!there && there.id === 'problem', below: box.top - from.bottom,
    top: box.top, bottom: box.bottom, there: there && there.id, scrolled: window.scrollY,
  };
}, control);

async function assert_it_goes_on(page) {
  const before = await key_of(page);
  await and_rest(page, () => page.fill('#visibility', '0.4'));
  assert.notDeepEqual(await key_of(page), before, 'the air moves again');
  assert.equal(await page.isVisible('#problem'), false, 'a good edit ends the message');
  await and_rest(page, () => page.click('#undo'));
  assert.deepEqual(await key_of(page), before);
}

const own_mix = async (page) => {
  await and_rest(page, () => page.selectOption('#plane-own', 'mix:'));
  await page.waitForSelector('.mix-row');
};

/* field, what is entered, what is said, what comes before */
const REFUSED = [
  ['#plane-name', '', /^A plane needs a name$/],
  ['#plane-name', 'hay meadow', /^Name "hay meadow" stands twice; give each its own$/],
  ['#eye', '99999', /^The eye is 99999 m; expected -500 m to 9000 m$/],
  ['#plane-base', '-9999', /^The foot is -9999 m; expected -500 m to 9000 m$/],
  ['#plane-crest', '-9999', /^The (foot|top) is -9999 m; expected -500 m to 9000 m$/],
  ['#plane-share', '150', /^The share is 150 %; expected 0 % to 100 %$/],
  ['.mix-row:nth-child(1) input', '0', /is 0; expected whole parts, 1 to 12$/, own_mix],
  ['.mix-row:nth-child(1) input', '13', /is 13; expected whole parts, 1 to 12$/, own_mix],
  ['#most-parts', '0', /^Parts in one mix is 0; expected 1 to 12$/, (page) => page.click('#box-leaf > summary')],
  ['#paper-width', '99999', /^The width is "99999 cm"; expected 0.01 m to 10 m$/, (page) => page.click('#paper-leaf > summary')],
];

for (const [field, text, words, first] of REFUSED)
  test(`${field} ${text || 'emptied'}: springs back, is told beside it, and the page goes on`, async () => {
    const { page, said, close } = await open_page();
    try {
      if (first) await first(page);
      const before = { scene: await saved_scene(page), value: await page.inputValue(field), key: await key_of(page), held: await page.inputValue('#plane-name') };
      assert.match(await told(page, () => enter(page, field, text)), words);
      const place = await place_of_message(page, field);
      assert.ok(place.seen && place.below > -5 && place.below < 200, JSON.stringify(place));
      assert.equal(await page.getAttribute('#problem', 'role'), 'alert');
      assert.equal(await page.inputValue(field), before.value, 'the control shows the old value');
      assert.equal(await saved_scene(page), before.scene, 'the scene stands as it was');
      assert.equal(await page.inputValue('#plane-name'), before.held, 'the same plane is in hand');
      await assert_it_goes_on(page);
      assert.deepEqual(await key_of(page), before.key);
      assert.deepEqual(said, []);
    } finally {
      await close();
    }
  });

test('on a narrow screen the message is not under the picture either', async () => {
  const { page, close } = await open_page({ viewport: { width: 360, height: 640 } });
  try {
    for (const [field, text] of [['#eye', '99999'], ['#plane-crest', '-9999'], ['#plane-name', '']]) {
      await told(page, () => enter(page, field, text));
      const place = await place_of_message(page, field);
      assert.ok(place.seen && place.below > -5 && place.below < 200, `${field}: ${JSON.stringify(place)}`);
    }
    assert.ok(await page.evaluate(() => document.documentElement.scrollWidth - window.innerWidth) <= 0);
  } finally {
    await close();
  }
});

test('a message outlives resizing the window and looking at greys', async () => {
  const { page, close } = await open_page();
  try {
    await told(page, () => enter(page, '#eye', '99999'));
    const stays = async (action) => {
      await and_rest(page, action);
      assert.equal(await page.isVisible('#problem'), true);
    };
    await stays(() => page.setViewportSize({ width: 1000, height: 800 }));
    await stays(() => page.click('#greys'));
    await page.click('#plane-add');
    await page.waitForFunction(() => document.getElementById('problem').hidden);
  } finally {
    await close();
  }
});

test('a field that is emptied but may not be shows the old number again; what is being typed stays', async () => {
  const { page, said, close } = await open_page();
  try {
    await enter(page, '#eye', '');
    assert.equal(await page.inputValue('#eye'), '60');
    /* the answer to the one field comes while the next is being typed in */
    await and_rest(page, async () => {
      await page.fill('#plane-base', '20');
      await page.press('#plane-base', 'Tab');
      await page.keyboard.type('4');
    });
    await page.keyboard.type('00');
    assert.equal(await page.inputValue('#plane-crest'), '400');
    await and_rest(page, () => page.keyboard.press('Tab'));
    const plane = JSON.parse(await saved_scene(page)).planes.find((one) => one.base === 20);
    assert.equal(plane.crest, 400);
    assert.deepEqual(said, []);
  } finally {
    await close();
  }
});

test('planes are added one upon another, also where a field was refused', async () => {
  const { page, said, close } = await open_page();
  try {
    await page.fill('#plane-base', '-9999');
    await page.click('#plane-add');
    await page.click('#plane-add');
    await page.waitForTimeout(600);
    await at_rest(page);
    const before = (await key_of(page)).length;
    await and_rest(page, () => page.evaluate(() => { for (let i = 0; i < 3; i++) document.getElementById('plane-add').click(); }));
    await at_rest(page);
    assert.equal((await key_of(page)).length, before + 3);
    await and_rest(page, () => page.evaluate(() => { for (let i = 0; i < 2; i++) document.getElementById('plane-remove').click(); }));
    assert.equal((await key_of(page)).length, before + 1);
    await assert_key_as_planned(page);
    assert.deepEqual(said, []);
  } finally {
    await close();
  }
});

test('refused while a new box is mixed: the box is taken all the same', async () => {
  const { page, said, close } = await open_page();
  try {
    await page.click('#box-leaf > summary');
    await page.click('#boxes button:has-text("twenty-four")');
    await page.waitForFunction(() => document.getElementById('state').textContent);
    assert.equal(await told(page, () => enter(page, '#plane-name', ' ')), 'A plane needs a name');
    assert.equal((await assert_key_as_planned(page)).paint.palette.length, 24);
    assert.match(await page.textContent('#box-said'), /^24 paints/);
    assert.equal(await page.isVisible('#problem'), true);
    await assert_it_goes_on(page);
    assert.deepEqual(said, []);
  } finally {
    await close();
  }
});

test('undoing a name keeps the plane in hand', async () => {
  const { page, close } = await open_page();
  try {
    await page.click('#tags .tag:nth-child(2)');
    const name = await page.inputValue('#plane-name');
    await and_rest(page, () => enter(page, '#plane-name', 'Ash Hanger'));
    assert.equal(await page.inputValue('#plane-name'), 'Ash Hanger');
    await and_rest(page, () => page.click('#undo'));
    assert.equal(await page.inputValue('#plane-name'), name);
  } finally {
    await close();
  }
});

/* Invented. */
const SCAUR = {
  title: 'A scaur', paint: { palette: ['pyrrole red', 'ultramarine blue', 'yellow ochre', 'hansa yellow'], most_pigments: 2 },
  planes: [
    { name: 'bank', distance: '40 m', foliage: 'meadow grass' },
    { name: 'Long Scaur', distance: '6 km', mix: { PR254: 2, 'yellow ochre': 1, water: 6 } },
  ],
};

test('a paint that a plane is mixed from stays in the box, and the plane is named', async () => {
  const { page, folder, said, close } = await open_page();
  try {
    const file = path.join(folder, 'scaur.json');
    fs.writeFileSync(file, JSON.stringify(SCAUR));
    await and_rest(page, () => page.setInputFiles('#file', file));
    const before = { scene: await saved_scene(page), count: await page.textContent('#box-said') };
    await page.click('#box-leaf > summary');
    const red = '.pan input[value="pyrrole red"]';
    const stays = async (action, control) => {
      assert.equal(await told(page, action), 'Long Scaur is a mix of pyrrole red: give it another colour first');
      const place = await place_of_message(page, control);
      assert.ok(place.seen && place.below > -5 && place.below < 200, JSON.stringify(place));
      assert.equal(await page.isChecked(red), true);
      assert.equal(await page.evaluate((which) => document.querySelector(which).closest('.pan').classList.contains('taken'), red), true);
      assert.equal(await page.textContent('#box-said'), before.count);
      assert.equal(await saved_scene(page), before.scene);
    };
    await stays(() => page.click(red), red);
    await stays(() => page.click('#boxes button:has-text("landscape six")'), '#boxes button');
    await assert_it_goes_on(page);
    /* another colour, and it may go */
    await page.click('#washes button:has-text("Long Scaur")');
    await and_rest(page, () => page.selectOption('#plane-own', 'surface:rock'));
    await and_rest(page, () => page.click(red));
    assert.equal(await page.isChecked(red), false);
    assert.deepEqual(said, []);
  } finally {
    await close();
  }
});

test('the last paint stays in the box', async () => {
  const { page, folder, close } = await open_page();
  try {
    const file = path.join(folder, 'one.json');
    fs.writeFileSync(file, JSON.stringify({ paint: { palette: ['ultramarine blue'] }, planes: [{ name: 'a', distance: 900, surface: 'rock' }] }));
    await and_rest(page, () => page.setInputFiles('#file', file));
    await page.click('#box-leaf > summary');
    assert.equal(await told(page, () => page.click('.pan input[value="ultramarine blue"]')), 'A box holds at least one paint');
    assert.equal(await page.isChecked('.pan input[value="ultramarine blue"]'), true);
    await assert_it_goes_on(page);
  } finally {
    await close();
  }
});
