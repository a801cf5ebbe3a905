/* A plane's own colour as a mix of the paints in the box. */
const MOST_IN_MIX = 4;

function mix_of_recipe(recipe) {
  const mix = Object.fromEntries(recipe.paints.map((paint) => [paint.name, paint.parts]));
  if (recipe.water_to_1) mix.water = +recipe.water_to_1.toPrecision(2);
  return mix;
}

/* To begin with: the closest mix for the plane's own colour, as it is close to; where no box
 * is ready to tell it, equal parts of two paints. */
async function first_mix(name) {
  const plane = hand.view.planes.findIndex((seen) => seen.name === name), paints = paints_now();
  try {
    const { matches } = JSON.parse((await bench.ready.ask('match_own', { plane })).text);
    const recipe = matches.map((match) => match.recipe)
      .find((one) => one.paints.length && one.paints.every((paint) => paints.includes(paint.name)));
    if (recipe) return mix_of_recipe(recipe);
  } catch (problem) {
    /* another box is being mixed */
  }
  return Object.fromEntries(paints.slice(0, 2).map((paint) => [paint, 1]));
}

const mix_rows = (mix) => Object.entries(mix).filter(([name]) => name !== 'water');

/* What the rows of the form say, as the scene has it. */
function mix_in_form() {
  const mix = {};
  for (const row of by('mix-rows').children) {
    const paint = row.querySelector('select'), parts = row.querySelector('input');
    if (paint.value) mix[paint.value] = Number(parts.value);
  }
  const water = Number(by('mix-water').value);
  if (water && !by('mix-water-label').hidden) mix.water = water;
  return mix;
}

/* A mix without paint is none: then the rows are put back. */
function change_mix(event) {
  const mix = mix_in_form();
  if (!mix_rows(mix).length) show_mix(plane_named(hand.held));
  else change_at_once(() => { plane_named(hand.held).mix = mix; }, event);
}

function new_mix_row(at, paints, [name, parts]) {
  const which = ['First', 'Second', 'Third', 'Fourth'][at];
  const select = make('select', {}, make('option', { value: '' }, at ? 'nothing more' : 'nothing'),
    ...paints.map((paint) => make('option', { value: paint }, paint)));
  select.value = name;
  select.setAttribute('aria-label', `${which} paint of the mix`);
  const number = make('input', { type: 'number', min: '1', max: '12', step: '1', value: String(parts) });
  number.setAttribute('inputmode', 'numeric');
  number.setAttribute('aria-label', `Parts of the ${which.toLowerCase()} paint`);
  for (const control of [select, number]) control.addEventListener('change', change_mix);
  number.hidden = !name;
  return make('div', { className: 'mix-row' }, number, select);
}

/* One row more than there are paints in it. */
function show_mix(plane) {
  const { mix } = plane;
  by('plane-mix').hidden = !mix;
  if (!mix) return;
  const rows = mix_rows(mix), water = hand.filled.paint.medium === 'watercolour';
  if (rows.length < MOST_IN_MIX) rows.push(['', 1]);
  const key = JSON.stringify([plane.name, mix, paints_now(), water]), focus = mix_focus();
  if (by('plane-mix').dataset.key === key || [...by('plane-mix').querySelectorAll('input')].some(typed_in)) return;
  by('plane-mix').dataset.key = key;
  by('mix-rows').replaceChildren(...rows.map((row, at) => new_mix_row(at, mix_choice(rows, at), row)));
  by('mix-water-label').hidden = !water;
  by('mix-water').value = String(mix.water || 0);
  if (focus >= 0) {
    const controls = by('mix-rows').querySelectorAll('select, input');
    if (controls[focus]) controls[focus].focus();
  }
}

const mix_focus = () => [...by('mix-rows').querySelectorAll('select, input')].indexOf(document.activeElement);

/* A paint stands in a mix once. */
function mix_choice(rows, at) {
  const taken = new Set(rows.filter((row, i) => i !== at).map(([name]) => name));
  const box = paints_now(), own = rows[at][0];
  return [...box, ...(own && !box.includes(own) ? [own] : [])].filter((paint) => !taken.has(paint));
}
