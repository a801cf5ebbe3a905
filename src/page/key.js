/* The recipe key: every wash with the colour wanted, the mix, and other mixes. */
/* The washes of the plan in the order of the key, each with its place in it. */
function washes_of_side(side, where, plane, shadow) {
  const graded = !!side.base;
  const washes = [{ wash: side.crest, where: graded ? where[0] : where[2], plane, shadow, base: false }];
  if (graded) washes.push({ wash: side.base, where: where[1], plane, shadow, base: true });
  return washes;
}

function key_of(view) {
  const sky = washes_of_side(view.sky, ['top of the sky', 'at the horizon', 'all of it'], -1, false);
  const entries = [{ name: 'the sky', sky: true, washes: sky, note: view.sky.two_washes ? view.trade.middle : '' }];
  view.planes.forEach((plane, i) => {
    const lit = washes_of_side(plane.lit, ['lit, at the top', 'lit, at the foot', 'lit side'], i, false);
    const shadow = washes_of_side(plane.shadow, ['shadow, at the top', 'shadow, at the foot', 'shadow side'], i, true);
    const own = Math.round(plane.lit.crest.own_share * 100);
    entries.push({
      name: plane.name, far: plane.distance, washes: [...lit, ...shadow],
      note: `${plane.own}; ${own} % its own light; ${plane.edge} edge`,
    });
  });
  return entries;
}

function new_wash() {
  const dab = make('span', { className: 'dab' });
  const where = make('span', { className: 'where' }), mix = make('span', { className: 'mix' });
  const water = make('span', { className: 'water' }), near = make('span', { className: 'near' });
  const value = make('span', { className: 'value' }, '', make('small'));
  const others = make('ul', { className: 'others' });
  const wash = make('details', { className: 'wash' },
    make('summary', {}, dab, make('span', { className: 'said' }, where, ' ', mix, make('span', { className: 'thin' }, water, near)), value), others);
  wash.addEventListener('toggle', () => show_others(wash));
  return Object.assign(wash, { parts: { dab, where, mix, water, near, value, others } });
}

function new_entry(sky) {
  const name = sky ? make('h3') : make('h3', {}, make('button', { type: 'button' }));
  const far = make('span', { className: 'far' }), note = make('p', { className: 'note' });
  const entry = make('li', {}, make('div', { className: 'head' }, name, far), note);
  if (!sky) name.firstChild.addEventListener('click', () => hold(entry.dataset.name));
  return Object.assign(entry, { parts: { name: sky ? name : name.firstChild, far, note }, washes: [] });
}

function water_of(recipe) {
  return recipe.water ? `${recipe.consistency}: ${recipe.water}` : '';
}

/* In the key the drops to a pea are left out: the list has them. */
const short_water = (recipe) => water_of(recipe).replace(/ \(.*\)$/, '');

const lies_over = (wash) => wash.ground === 'lit' && wash.recipe.paints.length > 0;

function near_of(wash) {
  const reach = wash.recipe.reach ? `, ${wash.recipe.reach}` : '';
  return `${wash.recipe.difference} (${wash.recipe.delta_e.toFixed(1)})${reach}`;
}

/* The same wash in the picture that is kept beside. */
function wash_before(name, entry) {
  const kept = picture.kept && key_of(picture.kept.view).find((e) => e.name === name);
  if (!kept) return null;
  const same = kept.washes.find((w) => w.where === entry.where) ||
    kept.washes.find((w) => w.shadow === entry.shadow && w.base === entry.base);
  return same ? same.wash : null;
}

function draw_wash(element, name, entry) {
  const { dab, where, mix, water, near, value } = element.parts, recipe = entry.wash.recipe;
  const before = wash_before(name, entry);
  element.entry = entry;
  colour_dab(dab, entry.wash.target, recipe.hex);
  say(where, lies_over(entry.wash) ? `${entry.where}, over the dried lit wash` : entry.where);
  say(mix, recipe.parts);
  say(water, recipe.water ? `${short_water(recipe)}; ` : '');
  say(near, near_of(entry.wash));
  say(value.firstChild, recipe.value.toFixed(1));
  say(value.lastChild, before ? `was ${before.recipe.value.toFixed(1)}` : 'value');
  if (!before) dab.replaceChildren();
  else {
    if (!dab.firstChild) dab.append(make('span', { className: 'before', title: 'as it was' }));
    dab.firstChild.style.background = before.recipe.hex;
  }
}

function draw_entry(element, entry) {
  element.dataset.name = entry.name;
  say(element.parts.name, entry.name);
  say(element.parts.far, entry.far || '');
  say(element.parts.note, entry.note);
  element.parts.note.hidden = !entry.note;
  while (element.washes.length < entry.washes.length) {
    const wash = new_wash();
    element.washes.push(wash);
    element.append(wash);
  }
  while (element.washes.length > entry.washes.length) element.washes.pop().remove();
  entry.washes.forEach((wash, i) => draw_wash(element.washes[i], entry.name, wash));
}

function draw_key(view) {
  const list = by('washes'), entries = key_of(view);
  entries.forEach((entry, i) => {
    if (!list.children[i]) list.append(new_entry(!!entry.sky));
    draw_entry(list.children[i], entry);
  });
  while (list.children.length > entries.length) list.lastChild.remove();
  mark_held();
}

function mark_held() {
  for (const entry of by('washes').children) {
    const held = entry.dataset.name === hand.held && !!entry.parts.far.textContent;
    entry.classList.toggle('held', held);
    if (entry.parts.name.tagName === 'BUTTON') entry.parts.name.setAttribute('aria-pressed', String(held));
  }
}

/* ---- what is drawn only when the hand rests */

function draw_warnings(view) {
  show_warnings(view.warnings.map((warning) => warning.sentence));
  if (view.warnings.some((warning) => warning.kind === 'not reached')) seek_advice();
}

function show_warnings(sentences) {
  by('warnings').replaceChildren(...sentences.map((sentence) => make('li', {}, sentence)));
  by('mind').hidden = sentences.length === 0;
}

/* Which pigment would help most takes longer to find out: it comes later. */
const seek_advice = after(400, async () => {
  const scene = hand.settled;
  try {
    const answer = JSON.parse((await bench.aside().ask('advice', { scene })).text);
    if (scene === hand.settled) show_warnings(answer.warnings.map((warning) => warning.sentence));
  } catch (problem) {
    /* the warnings stand without it */
  }
});

function draw_list(view) {
  const rows = [];
  for (const entry of key_of(view))
    for (const { wash, where } of entry.washes) {
      const dab = make('span', { className: 'dab small' });
      dab.style.background = wash.recipe.hex;
      rows.push(make('tr', {}, make('th', { scope: 'row' }, `${entry.name}, ${where}`), make('td', { className: 'dabs' }, dab),
        make('td', {}, wash.recipe.value.toFixed(1)),
        make('td', {}, wash.recipe.parts + (lies_over(wash) ? ', over the dried lit wash' : '')),
        make('td', {}, water_of(wash.recipe))));
    }
  by('mixes').replaceChildren(...rows);
}

/* What the medium has words of its own for. */
function draw_trade({ trade }) {
  say(by('wells-called'), first(trade.wells));
  say(by('water-called'), trade.takes_water ? 'Water' : '');
  say(by('list-said'), [trade.beforehand, trade.layers].filter(Boolean).join(' '));
  say(by('scrap'), `${trade.scrap}.`);
  by('cautions').replaceChildren(...trade.care.split('\n- ').slice(1).map((line) => make('li', {}, first(line.trim()))));
}

async function show_others(element) {
  const { others } = element.parts, entry = element.entry;
  if (!element.open) return;
  let answer;
  try {
    answer = JSON.parse((await bench.ready.ask('match', { plane: entry.plane, shadow: entry.shadow, base: entry.base })).text);
  } catch (problem) {
    if (!problem.closed) others.replaceChildren(make('li', {}, problem.what));
    return;
  }
  const lines = [];
  for (const match of answer.matches) {
    const same = lines.find((line) => line.key === match.recipe.parts + match.recipe.water);
    if (same) same.called.push(match.kind);
    else lines.push({ key: match.recipe.parts + match.recipe.water, called: [match.kind], match });
  }
  const beside = entry.wash.ground === 'lit' ? [make('li', { className: 'beside' }, 'For bare paper beside the lit wash, not over it:')] : [];
  others.replaceChildren(...beside, ...lines.map((line) => other_mix(line, entry.wash.target)));
}

function other_mix({ called, match }, wanted) {
  const dab = make('span', { className: 'dab small' }), recipe = match.recipe;
  const list = called.length > 1 ? `${called.slice(0, -1).join(', ')} and ${called[called.length - 1]}` : called[0];
  colour_dab(dab, wanted, recipe.hex);
  return make('li', {}, dab, make('span', {}, make('b', {}, `The ${list}`),
    make('span', { className: 'mix' }, recipe.parts), make('span', { className: 'thin' }, water_of(recipe)),
    make('span', { className: 'thin' }, `${recipe.difference} (${recipe.delta_e.toFixed(1)}); ${recipe.slip}; ` +
      `by lamp light ${match.lamp} (${match.lamp_delta_e.toFixed(1)})`)));
}
