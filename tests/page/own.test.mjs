/* Paints of one's own, in every medium. */
import assert from 'node:assert/strict';
import fs from 'node:fs';
import path from 'node:path';
import test from 'node:test';
import { open_page, load, and_rest, at_rest, axe_path, key_of, saved_scene, command_line, BUILD } from './browser.mjs';
import { assert_same, assert_key_as_planned, whole_plan } from './plans.mjs';

/* Invented: a green that takes up red and blue light, and a box on a warm paper. */
const bell = (at, wide, k) => Math.exp(-(((380 + 10 * k - at) / wide) ** 2));
const GREEN = {
  name: 'my green', colour_index: 'PG23', caution: 'do not breathe its dust', source: 'invented', medium: 'watercolour',
  k: Array.from({ length: 36 }, (_, i) => +(0.05 + 1.4 * bell(420, 70, i) + 2.2 * bell(690, 80, i)).toPrecision(4)),
  s: Array.from({ length: 36 }, (_, i) => +(0.06 + 0.05 * bell(520, 60, i)).toPrecision(4)),
};
const BOX = {
  purpose: 'for the moor', medium: 'watercolour', paper: { lab: [93.5, 0.4, 7.2] },
  paints: ['ultramarine blue', 'PY43', 'burnt sienna', 'hansa yellow', 'my-green.json'],
};
const OIL = { medium: 'oil', paints: ['titanium white', 'ultramarine blue', 'yellow ochre', 'burnt sienna'] };
const SCENE = {
  title: 'A moor', paint: { palette: 'boxes/box.json', most_pigments: 2 },
  planes: [
    { name: 'bank', distance: '40 m', mix: { 'my green': 2, 'yellow ochre': 1, water: 2 } },
    { name: 'fell', distance: '6 km', foliage: 'heather' },
  ],
};

const as_text = (what) => (typeof what === 'string' ? what : `${JSON.stringify(what, null, 1)}\n`);

/* Opens several files at once. */
async function open_files(page, folder, files) {
  const paths = Object.entries(files).map(([name, what]) => {
    fs.writeFileSync(path.join(folder, name), as_text(what));
    return path.join(folder, name);
  });
  await page.setInputFiles('#file', paths);
}

async function assert_saved_plan_is_the_programs(page) {
  const saved = await saved_scene(page), program = command_line(saved);
  assert.ok(program.plan, program.said);
  const { work, ...plan } = program.plan;
  assert.ok(work.steps.length > 0);
  assert_same(await whole_plan(page, saved), plan);
  await assert_key_as_planned(page);
  return { saved: JSON.parse(saved), plan };
}

const ticked = (page) => page.evaluate(() => [...document.querySelectorAll('.pan')].filter((pan) => pan.querySelector('input').checked)
  .map((pan) => pan.querySelector('input').value).sort());

const own_pan = (page, name) => page.waitForSelector(`#own .pan input[value="${name}"]`, { state: 'attached' });

async function refusal(page, action) {
  await action();
  await page.waitForFunction(() => !document.getElementById('problem').hidden);
  return page.textContent('#problem');
}

test('a pigment file is one more pan, ticked; it survives a reload and can be undone', async () => {
  const { page, folder, said, close } = await open_page();
  try {
    const before = await key_of(page);
    await and_rest(page, () => open_files(page, folder, { 'my-green.json': GREEN }));
    await own_pan(page, 'my green');
    assert.ok((await ticked(page)).includes('my green'));
    assert.equal((await ticked(page)).length, 13);
    assert.match(await page.textContent('#box-cautions'), /My green: do not breathe its dust/);
    const paint = await page.evaluate(() => getComputedStyle(document.querySelector('#own .paint')).backgroundImage);
    const [full, thin] = paint.match(/rgb\([^)]*\)/g).filter((c, i, all) => all.indexOf(c) === i).map((c) => c.match(/\d+/g).map(Number));
    assert.ok(full[1] > full[0] && full[1] > full[2], `its masstone is green: ${full}`);
    assert.ok(thin[1] > full[1], `its wash is lighter: ${thin}`);
    const { saved } = await assert_saved_plan_is_the_programs(page);
    assert.deepEqual(saved.paint.palette.at(-1), GREEN, 'the scene has the pigment itself');
    await load(page);
    await own_pan(page, 'my green');
    assert.ok((await ticked(page)).includes('my green'));
    await and_rest(page, () => page.evaluate(() => document.querySelector('#own input').click()));
    assert.equal((await ticked(page)).length, 12);
    assert.deepEqual(await key_of(page), before);
    await load(page);
    await own_pan(page, 'my green');
    assert.equal((await ticked(page)).length, 12, 'unticked, it stays in the house');
    await page.evaluate(() => { document.getElementById('box-leaf').open = true; });
    await and_rest(page, () => page.check('#own .pan input'));
    await and_rest(page, () => page.click('#undo'));
    assert.equal((await ticked(page)).length, 12);
    await and_rest(page, () => page.click('#redo'));
    assert.deepEqual((await assert_saved_plan_is_the_programs(page)).saved, saved);
    await and_rest(page, () => page.click('#undo'));
    await page.click('#put-away');
    await page.waitForFunction(() => document.getElementById('own-pans').hidden);
    await load(page);
    await page.waitForTimeout(300);
    assert.equal(await page.locator('#own .pan').count(), 0);
    assert.deepEqual(said, []);
  } finally {
    await close();
  }
});

test('a palette file becomes the box, with its paper and its medium', async () => {
  const { page, folder, said, close } = await open_page();
  try {
    await and_rest(page, () => open_files(page, folder, { 'box.json': BOX, 'my-green.json': GREEN }));
    await own_pan(page, 'my green');
    assert.deepEqual(await ticked(page), ['burnt sienna', 'hansa yellow', 'my green', 'ultramarine blue', 'yellow ochre']);
    const { saved } = await assert_saved_plan_is_the_programs(page);
    assert.deepEqual(saved.paint.palette, { ...BOX, paints: [...BOX.paints.slice(0, 4), GREEN] });
    /* ticking keeps the paper */
    await page.evaluate(() => { document.getElementById('box-leaf').open = true; });
    await and_rest(page, () => page.check('#pigments .pan input[value="viridian"]'));
    const more = await assert_saved_plan_is_the_programs(page);
    assert.deepEqual(more.saved.paint.palette.paper, BOX.paper);
    assert.equal(more.plan.paint.palette.length, 6);
    await and_rest(page, () => page.click('#undo'));
    await and_rest(page, () => page.click('#undo'));
    assert.equal((await ticked(page)).length, 12);
    await and_rest(page, () => open_files(page, folder, { 'oil.json': OIL }));
    assert.equal(await page.inputValue('#medium'), 'oil');
    assert.equal((await assert_saved_plan_is_the_programs(page)).plan.paint.medium, 'oil');
    assert.deepEqual(said, []);
  } finally {
    await close();
  }
});

test('a scene opens with the files that it names; what is missing is asked for', async () => {
  const { page, folder, close } = await open_page();
  try {
    const before = await key_of(page);
    const missing = await refusal(page, () => open_files(page, folder, { 'moor.json': SCENE }));
    assert.match(missing, /moor\.json, line \d+, column \d+: the file "boxes\/box\.json" is not here yet; open it too/);
    const next = await refusal(page, () => open_files(page, folder, { 'box.json': BOX }));
    await page.waitForFunction(() => /my-green/.test(document.getElementById('problem').textContent));
    assert.deepEqual(await key_of(page), before, `the scene in hand stays: ${next}`);
    await and_rest(page, () => open_files(page, folder, { 'my-green.json': GREEN }));
    assert.equal(await page.isVisible('#problem'), false);
    const { saved } = await assert_saved_plan_is_the_programs(page);
    assert.equal(saved.title, 'A moor');
    /* the same as the program makes of the files themselves */
    fs.mkdirSync(path.join(folder, 'boxes'));
    for (const [name, what] of Object.entries({ 'box.json': BOX, 'my-green.json': GREEN })) fs.writeFileSync(path.join(folder, 'boxes', name), as_text(what));
    const named = command_line(as_text(SCENE), ['study'], { 'boxes/box.json': as_text(BOX), 'boxes/my-green.json': as_text(GREEN) });
    assert.ok(named.plan, named.said);
    const inline = command_line(JSON.stringify(saved));
    assert_same(inline.plan.planes, named.plan.planes);
    await and_rest(page, () => open_files(page, folder, { 'moor.json': SCENE, 'box.json': BOX, 'my-green.json': GREEN }));
    assert.deepEqual(JSON.parse(await saved_scene(page)), saved, 'and all together');
  } finally {
    await close();
  }
});

/* Broken in ways of our own invention. */
const BROKEN = {
  'a number too few': { ...GREEN, k: GREEN.k.slice(1) },
  'no S': (({ s, ...rest }) => rest)(GREEN),
  'a key unknown': { ...GREEN, colour: '#008000' },
  'cut short': as_text(GREEN).slice(0, 200),
  'a negative number': { ...GREEN, s: [-1, ...GREEN.s.slice(1)] },
  'a palette without paints': { purpose: 'none', paints: [] },
  'a paint unknown': { paints: ['ultramarine blue', 'sky hook blue'] },
  'a paint twice': { paints: ['PB29', 'ultramarine blue'] },
};

test('a broken pigment or palette file is refused in the program\'s own words', async () => {
  const { page, folder, said, close } = await open_page();
  try {
    const before = await key_of(page);
    for (const [what, holds] of Object.entries(BROKEN)) {
      await page.evaluate(() => { document.getElementById('problem').hidden = true; });
      const shown = await refusal(page, () => open_files(page, folder, { 'own.json': holds }));
      const scene = '{"paint":{"palette":"own.json"},"planes":[{"name":"a","distance":5,"foliage":"heather"}]}';
      const words = command_line(scene, ['check'], { 'own.json': as_text(holds) }).said.trim();
      const [, line, column, wrong] = /own\.json:(\d+):(\d+): (.*)/.exec(words) || assert.fail(words);
      assert.equal(shown, `own.json, line ${line}, column ${column}: ${wrong}`, what);
    }
    /* whole, but no box for this medium */
    const without = await refusal(page, () => open_files(page, folder, { 'own.json': { medium: 'oil', paints: ['ultramarine blue'] } }));
    await page.waitForFunction(() => /white/.test(document.getElementById('problem').textContent));
    assert.ok(without);
    assert.deepEqual(await key_of(page), before, 'the scene in hand stays');
    assert.equal(await page.locator('#own .pan').count(), 0);
    assert.deepEqual(said, []);
  } finally {
    await close();
  }
});

test('a full store is told, and the page goes on', async () => {
  const { page, folder, close } = await open_page();
  try {
    await page.evaluate(() => {
      localStorage.setItem('filler', 'x'.repeat(5 * 1024 * 1024 - 200 - (localStorage.getItem('recede scene') || '').length - 40));
    });
    await and_rest(page, () => open_files(page, folder, { 'my-green.json': GREEN }));
    assert.match(await page.textContent('#store'), /will be gone after a reload/);
    assert.ok((await ticked(page)).includes('my green'));
    await page.evaluate(() => localStorage.removeItem('filler'));
    await and_rest(page, () => page.fill('#visibility', '0.9'));
    assert.equal(await page.isVisible('#store'), false);
  } finally {
    await close();
  }
});

/* Does something that need not change anything, and waits for what it may. */
async function settled(page, action) {
  await action();
  await page.waitForTimeout(400);
  await at_rest(page);
}

test('a mix of the paints in the box as a plane\'s own colour', async () => {
  const { page, folder, said, close } = await open_page();
  try {
    await settled(page, () => open_files(page, folder, { 'my-green.json': GREEN }));
    await settled(page, () => page.selectOption('#plane-own', 'mix:'));
    const rows = () => page.locator('.mix-row').count();
    assert.ok(await rows() >= 2);
    while (await rows() > 2) await settled(page, () => page.selectOption('.mix-row:nth-child(2) select', ''));
    await settled(page, () => page.selectOption('.mix-row:nth-child(1) select', 'my green'));
    await settled(page, async () => {
      await page.fill('.mix-row:nth-child(1) input', '3');
      await page.press('.mix-row:nth-child(1) input', 'Tab');
    });
    await settled(page, () => page.selectOption('.mix-row:nth-child(2) select', 'yellow ochre'));
    await settled(page, async () => {
      await page.fill('#mix-water', '2');
      await page.press('#mix-water', 'Tab');
    });
    const { saved } = await assert_saved_plan_is_the_programs(page);
    const name = await page.inputValue('#plane-name'), plane = saved.planes.find((one) => one.name === name);
    assert.deepEqual(plane.mix, { 'my green': 3, 'yellow ochre': 1, water: 2 });
    assert.equal(plane.foliage, undefined);
    await page.waitForFunction((held) => /my green/.test([...document.querySelectorAll('#washes > li')]
      .find((entry) => entry.dataset.name === held).textContent), name);
    await load(page);
    assert.equal(await page.inputValue('#plane-own'), 'mix:');
    assert.equal(await rows(), 3);
    await and_rest(page, () => page.selectOption('#plane-own', 'foliage:heather'));
    assert.equal(await page.isVisible('#plane-mix'), false);
    await and_rest(page, () => page.click('#undo'));
    assert.deepEqual(JSON.parse(await saved_scene(page)), saved);
    assert.deepEqual(said, []);
  } finally {
    await close();
  }
});

test('a paint of a mix that is unticked is asked for, and the scene before survives a reload', async () => {
  const { page, folder, close } = await open_page();
  try {
    await settled(page, () => open_files(page, folder, { 'box.json': BOX, 'my-green.json': GREEN }));
    const moor = { ...SCENE, paint: { ...SCENE.paint, palette: ['PY43', 'PB29', 'my-green.json'] } };
    await settled(page, () => open_files(page, folder, { 'moor.json': moor, 'my-green.json': GREEN }));
    const saved = await saved_scene(page);
    assert.equal(JSON.parse(saved).title, 'A moor');
    await page.evaluate(() => { document.getElementById('box-leaf').open = true; });
    const words = await refusal(page, () => page.click('#own .pan'));
    assert.equal(words, 'bank is a mix of my green: give it another colour first');
    assert.ok((await ticked(page)).includes('my green'));
    await load(page);
    assert.equal(await page.isVisible('#problem'), false);
    assert.equal(await saved_scene(page), saved);
    /* in oil the same parts are another colour */
    await page.click('#box-leaf > summary');
    await settled(page, () => page.selectOption('#medium', 'oil'));
    assert.equal(await page.isVisible('#problem'), false);
    const oil = await assert_saved_plan_is_the_programs(page);
    assert.equal(oil.saved.planes[0].mix, undefined);
    assert.match(oil.saved.planes[0].colour, /^#[0-9a-f]{6}$/);
    await settled(page, () => page.selectOption('#plane-own', 'mix:'));
    assert.equal(await page.isVisible('#plane-mix'), true);
    assert.equal(await page.isVisible('#mix-water-label'), false);
  } finally {
    await close();
  }
});

/* What only watercolour has. Names of what is painted ("calm water") are no paint. */
const NOT_OPAQUE = /\bwater(?!\w)|\bwash(es)?\b|puddle|\bdrops?\b|thinn|bare paper|\bpour|\bdamp/i;
const DRYING = /\bdr(y|ies|ied|ying)\b/i;

const all_words = (page) => page.evaluate(() => {
  const whole = document.body.cloneNode(true);
  for (const other of whole.querySelectorAll('script, style, noscript, #plane-own, #medium, #boxes, .pan, [hidden]')) other.remove();
  const titles = [...whole.querySelectorAll('[title], [aria-label]')].map((e) => `${e.title} ${e.getAttribute('aria-label') || ''}`);
  const words = [], walk = document.createTreeWalker(whole, NodeFilter.SHOW_TEXT);
  while (walk.nextNode()) words.push(walk.currentNode.data);
  return [...words, ...titles].join(' ');
});

for (const medium of ['gouache', 'acrylic', 'oil'])
  test(`${medium}: not a word of what only watercolour has`, async () => {
    const { page, said, close } = await open_page();
    try {
      await page.click('#box-leaf > summary');
      await and_rest(page, () => page.selectOption('#medium', medium));
      const plan = await assert_key_as_planned(page);
      assert.equal(plan.paint.medium, medium);
      assert.equal(await page.inputValue('#most-parts'), '12', 'the white is among the parts');
      for (const leaf of ['paper', 'work', 'ladder', 'chart']) await page.click(`#${leaf}-leaf > summary`);
      await page.click('#washes > li:nth-child(3) .wash summary');
      await page.waitForSelector('.steps li', { timeout: 60000 });
      await page.waitForSelector('.rungs td', { timeout: 30000 });
      await page.waitForSelector('.patches span');
      await page.waitForSelector('.others li');
      const work = await page.locator('#work > *').allTextContents();
      assert.match(work[0], /^Let down beforehand: 1 part /, 'before the first step');
      assert.match(work[2], /It takes \d+ tubes; \d+ paints are let down from them beforehand\.$/, 'after the last');
      assert.equal(work.length, 4);
      const words = await all_words(page);
      assert.match(words, /titanium white/);
      const found = NOT_OPAQUE.exec(words);
      assert.equal(found && words.slice(Math.max(0, found.index - 80), found.index + 60), null);
      const cautions = await page.locator('#cautions li').allTextContents();
      const others = cautions.reduce((left, caution) => left.replace(caution, ''), words).replace(/the dry pigment/g, '');
      const dry = medium === 'oil' && DRYING.exec(others);
      assert.equal(dry ? others.slice(Math.max(0, dry.index - 80), dry.index + 60) : null, null);
      assert.equal(/Rags wet with oil/.test(words), medium === 'oil', 'the caution that oil calls for');
      const shots = path.join(BUILD, 'page-shots');
      fs.mkdirSync(shots, { recursive: true });
      await page.screenshot({ path: path.join(shots, `${medium}.png`), fullPage: true });
      const pdf = await page.pdf({ path: path.join(shots, `${medium}.pdf`), preferCSSPageSize: true });
      assert.equal(pdf.toString('latin1').match(/\/Type\s*\/Page[^s]/g).length, 1, 'one sheet of A4');
      assert.deepEqual(said, []);
    } finally {
      await close();
    }
  });

const RULES = ['wcag2a', 'wcag2aa', 'wcag21a', 'wcag21aa', 'wcag22aa', 'best-practice'];

for (const [width, height] of [[360, 740], [1440, 900]])
  test(`own paints and a mix at ${width} pixels: nothing sticks out, nothing against the guidelines`, async () => {
    const { page, folder, close } = await open_page({ viewport: { width, height } });
    try {
      await and_rest(page, () => open_files(page, folder, { 'box.json': BOX, 'my-green.json': GREEN }));
      await own_pan(page, 'my green');
      await and_rest(page, () => page.selectOption('#plane-own', 'mix:'));
      await at_rest(page);
      await page.evaluate(fs.readFileSync(axe_path, 'utf8'));
      const found = await page.evaluate((rules) => window.axe.run(document, { runOnly: rules }), RULES);
      assert.deepEqual(found.violations.map((v) => `${v.id}: ${v.nodes.map((n) => n.target).join('; ')}`), []);
      assert.ok(await page.evaluate(() => document.documentElement.scrollWidth - window.innerWidth) <= 0);
      const shots = path.join(BUILD, 'page-shots');
      fs.mkdirSync(shots, { recursive: true });
      await page.screenshot({ path: path.join(shots, `own-${width}.png`), fullPage: true });
    } finally {
      await close();
    }
  });
