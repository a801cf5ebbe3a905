/* The box of paints, and what becomes of light on paper. */
let names = null; /* all that the library knows by name */

function new_pan(paint) {
  const tick = make('input', { type: 'checkbox', value: paint.name });
  const colour = make('span', { className: 'paint' });
  tick.addEventListener('change', (event) => {
    if (tick.checked || can_lack(others_than(paint), event)) change_at_once(() => change_box(paint, tick.checked), event);
  });
  const pan = make('label', { className: 'pan' }, colour,
    make('span', { className: 'called' }, paint.name, make('small', {}, paint.colour_index || '')), tick);
  Object.assign(pan, { paint, colour, tick });
  colour_pan(pan, paint);
  return pan;
}

function colour_pan(pan, { masstone, wash }) {
  pan.colour.style.background = `linear-gradient(${masstone} 45%, ${wash} 45%)`;
}

/* The library's paints look as this medium lays them. */
function colour_pans(medium) {
  if (by('box-leaf').dataset.medium === medium) return;
  by('box-leaf').dataset.medium = medium;
  const pans = medium === 'watercolour' ? names.in_water : names.in_white;
  for (const kind of ['pigments', 'tubes']) pans[kind].forEach((paint, i) => colour_pan(by(kind).querySelectorAll('.pan')[i], paint));
}

function ready_box(palette) {
  const button = make('button', { type: 'button', title: palette.purpose }, palette.name.replace('-', ' '));
  button.addEventListener('click', (event) => {
    const medium = medium_now(), other = palette.opaque === (medium === 'watercolour');
    if (other || can_lack(listed(palette.name), event)) change_at_once(() => {
      if (other) bring_medium(hand.scene, palette.opaque ? 'gouache' : 'watercolour');
      take_paints(palette.name);
    }, event);
  });
  return button;
}

/* Ready boxes by what they are for: one of the other kind changes the medium. */
function ready_boxes(opaque, said) {
  const buttons = names.palettes.filter((palette) => palette.opaque === opaque).map(ready_box);
  const group = make('div', { className: 'measure', role: 'group' }, make('span', { className: 'aside' }, said), ...buttons);
  group.setAttribute('aria-label', `Ready boxes ${said}`);
  return group;
}

function fill_box() {
  by('boxes').append(ready_boxes(false, 'for watercolour'), ready_boxes(true, 'for gouache, acrylic, oil'));
  by('pigments').append(...names.in_water.pigments.map(new_pan));
  by('tubes').append(...names.in_water.tubes.map(new_pan));
  say(by('version'), names.version);
}

const medium_of = ({ paint = {} }) => paint.medium || (paint.palette || {}).medium || 'watercolour';
const medium_now = () => medium_of(hand.scene);

/* The paints' names, whether the scene lists them or names a box. */
const paints_now = () => listed(hand.filled.paint.palette).map(name_of);

/* Also in the filled scene at once: the next tick may come before its answer. */
function take_paints(palette) {
  part('paint').palette = palette;
  hand.filled.paint.palette = palette;
}

/* The paints in the box; those of one's own as their files have them. */
const box_now = () => listed(hand.filled.paint.palette).map((paint) =>
  (typeof paint === 'string' ? paint : own_named(paint.name) || paint));

const others_than = (paint) => box_now().filter((other) => !same_name(other, paint));

/* Which plane's own mix has a paint that is not among these, in words. */
function mixed_from_others(paints) {
  for (const plane of hand.scene.planes) {
    const filled = filled_named(plane.name), mix = plane.mix && ((filled && filled.mix) || plane.mix);
    const lacks = mix && mix_rows(mix).find(([name]) => !paints.some((paint) => same_name(paint, name)));
    if (lacks) return `${plane.name} is a mix of ${lacks[0]}: give it another colour first`;
  }
  return '';
}

/* Before a box is taken: where a mix needs what it lacks, says so and leaves all as it is. */
function can_lack(paints, event) {
  const what = mixed_from_others(paints);
  if (!what) return true;
  show_problem({ what, line: 0 }, '', block_of(event.target));
  show_ticks();
  return false;
}

/* A box has one paint of a name: another takes its place. */
function change_box(paint, taken) {
  const own = paint.own && own_named(paint.name), paints = others_than(paint);
  if (own) put_on_shelf([own]);
  take_paints(in_place_of(part('paint').palette, taken ? [...paints, own || paint.name] : paints));
}

/* What goes with the kind of medium is left to the library when it changes: in opaque
 * media nothing is laid over another wash. */
function set_medium(scene, medium) {
  const before = medium_of(scene), paint = scene.paint || (scene.paint = {}), opaque = medium !== 'watercolour';
  if (opaque !== (before !== 'watercolour')) {
    delete paint.most_parts;
    mixes_to_colours(scene, before);
  }
  if (opaque) delete paint.shadows;
  paint.medium = medium;
}

/* A medium that comes with a box. */
function bring_medium(scene, medium) {
  if (medium !== medium_of(scene)) hand.notes.push(`You paint in ${medium} now.`);
  set_medium(scene, medium);
}

/* The same parts in the other kind of medium are another colour: those of the scene in hand
 * keep the colour they had. */
function mixes_to_colours(scene, before) {
  const changed = scene.planes.filter((plane) => {
    const here = plane_named(plane.name);
    return plane.mix && here && JSON.stringify(here.mix) === JSON.stringify(plane.mix) && seen_named(plane.name);
  });
  for (const plane of changed) set_own(plane, 'colour', seen_named(plane.name).own_hex);
  const called = changed.map((plane) => plane.name), last = called.pop();
  if (called.length) hand.notes.push(`${called.join(', ')} and ${last} keep their colours, but no longer as mixes, which were for ${before}: Undo brings them back.`);
  else if (last) hand.notes.push(`${last} keeps its colour, but no longer as a mix, which was for ${before}: Undo brings it back.`);
}

const is_white = (paint) => (typeof paint === 'object' ? paint.is_white
  : [...names.in_water.pigments, ...names.in_water.tubes].some((known) => known.white && known.name === paint));

/* A ready box is changed for the one of the other kind. */
function change_medium(medium) {
  const { palette } = part('paint'), ready = !palette || typeof palette === 'string', opaque = medium !== 'watercolour';
  const white = box_now().some(is_white);
  set_medium(hand.scene, medium);
  if (ready && opaque !== white) take_paints(names.palettes.find((entry) => entry.opaque === opaque && (opaque || /twelve/.test(entry.name))).name);
  else if (opaque && !white) take_paints(in_place_of(palette, ['titanium white', ...box_now()].slice(0, 24)));
}

function show_box() {
  const { paint } = hand.filled;
  colour_pans(paint.medium);
  show_own_pans();
  show_ticks();
  say(by('box-said'), `${paints_now().length} paints, ${paint.medium}`);
  by('medium').value = paint.medium;
  put_value('most-pigments', String(paint.most_pigments));
  put_value('most-parts', String(paint.most_parts));
}

/* Paints let down have the cautions of those they are made of: where these are in the box,
 * they are named. */
function cautions_said(cautions) {
  const said = [...cautions].map(([caution, paints]) => {
    const made = paints.filter((name) => !/^pale /.test(name));
    return `${first((made.length ? made : paints).join('; '))}: ${caution}.`;
  });
  return said.length ? `Take care. ${said.join(' ')}` : '';
}

function show_ticks() {
  const box = listed(hand.filled.paint.palette), cautions = new Map();
  const own = new Set(box.filter((paint) => typeof paint === 'object').map(name_of)), known = new Set(box.filter((paint) => typeof paint === 'string'));
  for (const pan of document.querySelectorAll('.pan')) {
    const { paint, tick } = pan;
    tick.checked = (paint.own ? own : known).has(paint.name);
    pan.classList.toggle('taken', tick.checked);
    if (tick.checked && paint.caution) cautions.set(paint.caution, [...(cautions.get(paint.caution) || []), paint.name]);
  }
  say(by('box-cautions'), cautions_said(cautions));
}

/* ---- from the eye to the paper */

function show_paper() {
  const { picture: seen, paper } = hand.filled;
  by('sky-value').value = String(seen.sky_value);
  say_in('sky-value', seen.sky_value.toFixed(1));
  by('adaptation').value = String(seen.adaptation);
  say_in('adaptation', `${Math.round(seen.adaptation * 100)} %`);
  by('darks').checked = seen.darks === 'fitted';
  put_value('paper-width', String(+(paper.width * 100).toFixed(1)));
  put_value('paper-height', String(+(paper.height * 100).toFixed(1)));
  say(by('paper-said'), `sky at value ${seen.sky_value.toFixed(1)}`);
}

function listen_to_box() {
  by('medium').addEventListener('change', (event) => change_at_once(() => change_medium(by('medium').value), event));
  on_number('most-pigments', (count) => { part('paint').most_pigments = count; });
  on_number('most-parts', (count) => { part('paint').most_parts = count; });
  on_slide('sky-value', (value, event) => {
    edit(() => { part('picture').sky_value = value; }, event);
    say_in('sky-value', value.toFixed(1));
  });
  on_slide('adaptation', (degree, event) => {
    edit(() => { part('picture').adaptation = degree; }, event);
    say_in('adaptation', `${Math.round(degree * 100)} %`);
  });
  by('darks').addEventListener('change', (event) => change_at_once(() => {
    part('picture').darks = by('darks').checked ? 'fitted' : 'as seen';
  }, event));
  on_number('paper-width', (centimetres) => { part('paper').width = `${centimetres} cm`; });
  on_number('paper-height', (centimetres) => { part('paper').height = `${centimetres} cm`; });
}
