/* The page plans as the command line does. */
import assert from 'node:assert/strict';
import fs from 'node:fs';
import test from 'node:test';
import { open_page, and_rest, at_rest, pixels, key_of, command_line } from './browser.mjs';
import { assert_same, assert_key_as_planned, whole_plan } from './plans.mjs';

/* Beside the scenes that come with the program, what they leave out: mist and
 * heights, white in the paint, shadows beside, a box of tubes. All invented. */
const MORE = {
  'mist and heights': `{"air":{"visibility":"12 km","haze":"fine","eye":"90 m","mist":{"visibility":"700 m","top":"60 m"}},
    "light":{"sun_height":12,"sun_side":150},"planes":[{"name":"near wood","distance":"300 m","base":"20 m","crest":"75 m",
    "foliage":"spring beech"},{"name":"far hill","distance":"4 km","base":"10 m","crest":"260 m","surface":"pale rock"}]}`,
  gouache: `{"paint":{"medium":"gouache","most_pigments":4,"most_parts":5},"planes":[{"name":"field","distance":"80 m",
    "colour":"#6a7a3c"},{"name":"ridge","distance":"9 km","lab":[38,-6,9]}]}`,
  'a box of tubes': `{"paint":{"palette":["lemon yellow","sap green","french ultramarine","light red","payne's grey"],
    "shadows":"beside"},"light":{"sky":"painted","horizon":"#f0c898","light":"#fff0dc"},"planes":[{"name":"heath",
    "distance":"1 km","foliage":"heather"}]}`,
};

test('every scene plans to the same to 1e-9', async (t) => {
  const scenes = fs.readdirSync('scenes').filter((name) => name.endsWith('.json'));
  const all = [...scenes.map((name) => [name, fs.readFileSync(`scenes/${name}`, 'utf8')]), ...Object.entries(MORE)];
  const { page, close } = await open_page();
  try {
    for (const [name, scene] of all)
      await t.test(name, async () => {
        const program = command_line(scene);
        assert.ok(program.plan, program.said);
        const { work, ...plan } = program.plan; /* the page asks for the order of work apart */
        assert.ok(work.steps.length > 0);
        assert_same(await whole_plan(page, scene), plan);
      });
  } finally {
    await close();
  }
});

test('picture, values and recipes change with the air as the program says', async () => {
  const { page, said, close } = await open_page();
  try {
    await assert_key_as_planned(page);
    const before = await pixels(page), key = await key_of(page);
    await and_rest(page, () => page.fill('#visibility', '0.6'));
    assert.notEqual((await pixels(page)).hash, before.hash);
    const plan = await assert_key_as_planned(page), now = await key_of(page);
    assert.equal(plan.air.visibility_km, 4);
    assert.notDeepEqual(now, key);
    const farthest = (k) => Number(k[1].washes[1].value);
    assert.ok(farthest(now) > farthest(key), 'the far shadow grows lighter in thicker air');
    await and_rest(page, () => page.fill('#sun-height', '9'));
    await and_rest(page, () => page.fill('#sun-side', '160'));
    await and_rest(page, () => page.check('input[name=haze][value=dust]'));
    await assert_key_as_planned(page);
    await and_rest(page, () => page.check('input[name=sky][value=overcast]'));
    await assert_key_as_planned(page);
    await and_rest(page, () => page.check('input[name=sky][value=painted]'));
    await and_rest(page, () => page.fill('#horizon', '#e8c090'));
    await assert_key_as_planned(page);
    await and_rest(page, () => page.check('#mist'));
    await assert_key_as_planned(page);
    assert.deepEqual(said, []);
  } finally {
    await close();
  }
});

test('a new box is mixed while the old one goes on answering', async () => {
  const { page, close } = await open_page();
  try {
    await page.click('#box-leaf > summary');
    await page.click('#boxes button:has-text("twenty-four")');
    await page.waitForFunction(() => document.getElementById('state').textContent.startsWith('mixing'));
    const drawn = await page.evaluate(() => window.drawn.length);
    await page.fill('#visibility', '0.9');
    await page.waitForFunction((count) => window.drawn.length > count, drawn);
    assert.match(await page.textContent('#state'), /^mixing/, 'answered before the new box was ready');
    await at_rest(page, drawn);
    const plan = await assert_key_as_planned(page);
    assert.equal(plan.paint.palette.length, 24);
    assert.ok(Math.abs(plan.air.visibility_km - 8) < 0.2);
    await page.click('#boxes button:has-text("twenty-four")');
    await and_rest(page, () => page.click('#boxes button:has-text("landscape six")'));
    await page.click('#boxes button:has-text("twenty-four")');
    await page.waitForFunction(() => document.getElementById('state').textContent);
    await and_rest(page, () => page.click('#undo'));
    assert.equal((await assert_key_as_planned(page)).paint.palette.length, 6, 'a box given up while it is mixed');
    await and_rest(page, () => page.check('.pan input[value="viridian"]'));
    assert.equal((await assert_key_as_planned(page)).paint.palette.length, 7);
  } finally {
    await close();
  }
});

test('paints ticked one right after another are all taken, and stay ticked meanwhile', async () => {
  const { page, close } = await open_page();
  try {
    await page.click('#box-leaf > summary');
    const tick = (name) => page.evaluate((paint) => document.querySelector(`.pan input[value="${paint}"]`).click(), name);
    const ticked = () => page.evaluate(() => ['raw umber', 'green earth'].map(
      (paint) => document.querySelector(`.pan input[value="${paint}"]`).checked));
    await page.evaluate(() => {
      window.slipped = 0;
      document.addEventListener('drawn', () => {
        if (!document.querySelector('.pan input[value="raw umber"]').checked) window.slipped++;
      });
    });
    await and_rest(page, async () => {
      await tick('raw umber');
      await tick('green earth');
    });
    assert.deepEqual(await ticked(), [true, true]);
    assert.equal(await page.evaluate(() => window.slipped), 0, 'a tick went away while its box was mixed');
    const plan = await assert_key_as_planned(page);
    assert.equal(plan.paint.palette.length, 14);
  } finally {
    await close();
  }
});
