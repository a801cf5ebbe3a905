/* Plans of the page against those of the program. */
import assert from 'node:assert/strict';
import { command_line, key_of, said_mix, saved_scene } from './browser.mjs';

/* Numbers within 1e-9, relative where they are over 1; all else the same. The hue
 * of a colour without chroma is what rounding makes it: it says nothing. */
export function assert_same(page, program, place = 'plan') {
  if (place.endsWith('.lch') && program[1] < 1e-9) {
    assert_same(page.slice(0, 2), program.slice(0, 2), `${place} without its hue`);
  } else if (typeof program === 'number') {
    assert.ok(Math.abs(page - program) <= 1e-9 * Math.max(1, Math.abs(program)), `${place}: ${page} and ${program}`);
  } else if (program && typeof program === 'object') {
    assert.deepEqual(Object.keys(page), Object.keys(program), place);
    for (const key of Object.keys(program)) assert_same(page[key], program[key], `${place}.${key}`);
  } else {
    assert.equal(page, program, place);
  }
}

/* Asks the page's own worker for the whole plan. */
export function whole_plan(page, scene) {
  return page.evaluate((text) => new Promise((done, fail) => {
    const desk = window.desks[0], id = `test ${Math.random()}`;
    desk.addEventListener('message', ({ data }) => {
      if (data.id !== id || data.share !== undefined) return;
      if (data.text) done(JSON.parse(data.text));
      else fail(new Error(JSON.stringify(data)));
    });
    desk.postMessage({ call: 'whole', scene: text, id });
  }), scene);
}

/* What the key shows is what the program plans for the scene that the page saves. */
export async function assert_key_as_planned(page) {
  const { plan, said } = command_line(await saved_scene(page));
  assert.ok(plan, said);
  const key = await key_of(page), washes = [];
  const sides = (side) => (side.recipe ? [side] : [side.crest, side.base]);
  const sky = plan.sky_grading.graded ? [plan.sky[1], plan.sky[0]] : [plan.sky[1]];
  washes.push(...sky);
  for (const plane of plan.planes) washes.push(...sides(plane.lit), ...sides(plane.shadow));
  const shown = key.flatMap((entry) => entry.washes);
  /* opaque paint has a ground, which need not be paper */
  const mixes = shown.map((wash) => wash.mix.replace('bare ground', 'bare paper'));
  assert.deepEqual(mixes, washes.map((wash) => said_mix(wash.recipe, wash.ground)));
  assert.deepEqual(shown.map((wash) => wash.value), washes.map((wash) => wash.mix.value.toFixed(1)));
  return plan;
}
