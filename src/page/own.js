/* Paints of one's own: pigment and palette files, put into the scene itself, so that
 * undoing, a reload and a saved scene have all of them. The shelf keeps those that are
 * not ticked. */
const SHELF = 'recede paints', MOST_ON_SHELF = 1500000;

const shelf = new Map(); /* by name: what the pigment's file holds */

const name_of = (paint) => (typeof paint === 'string' ? paint : paint.name);
const is_file = (paint) => typeof paint === 'string' && paint.endsWith('.json');
const last_part = (name) => name.slice(name.lastIndexOf('/') + 1);

/* A palette's paints, whichever way it is given. */
function listed(palette) {
  if (Array.isArray(palette)) return palette;
  if (palette && typeof palette === 'object') return palette.paints;
  const known = names.palettes.find((entry) => entry.name === palette);
  return known ? known.paints.split('|').map((name) => name.trim()).filter(Boolean) : [];
}

const own_of = (palette) => listed(palette).filter((paint) => typeof paint === 'object');

function own_named(name) {
  return own_of((hand.scene.paint || {}).palette).find((paint) => paint.name === name) || shelf.get(name);
}

function put_on_shelf(paints) {
  for (const paint of paints) shelf.set(paint.name, paint);
  keep_shelf();
}

function keep_shelf() {
  const text = JSON.stringify([...shelf.values()]);
  if (text.length > MOST_ON_SHELF || !keep_in_store(SHELF, text))
    say_store('This browser keeps no more paints: those that are not ticked will be gone after a reload. Put some away.');
}

function take_shelf() {
  try {
    for (const paint of JSON.parse(localStorage.getItem(SHELF) || '[]')) shelf.set(paint.name, paint);
  } catch (error) {
    /* a spoilt store has no paints */
  }
}

/* ---- a scene or a palette with what the files hold in place of their names */

function with_files(paints, files) {
  return paints.map((paint) => {
    if (!is_file(paint)) return paint;
    files.used.add(last_part(paint));
    return files.of.get(last_part(paint));
  });
}

function palette_of(palette, files) {
  if (Array.isArray(palette)) return with_files(palette, files);
  if (!is_file(palette)) return palette && palette.paints ? { ...palette, paints: with_files(palette.paints, files) } : palette;
  const [file] = with_files([palette], files);
  if (file.paints) return { ...file, paints: with_files(file.paints, files) };
  return { ...(file.medium ? { medium: file.medium } : {}), paints: [file] };
}

/* In a mix a paint may be called by its file. */
function mix_of(mix, files) {
  return Object.fromEntries(Object.entries(mix).map(([name, parts]) =>
    [is_file(name) && files.of.has(last_part(name)) ? files.of.get(last_part(name)).name : name, parts]));
}

function scene_with_files(scene, files) {
  if (scene.paint && scene.paint.palette) scene.paint.palette = palette_of(scene.paint.palette, files);
  for (const plane of scene.planes) if (plane.mix) plane.mix = mix_of(plane.mix, files);
  return scene;
}

/* ---- what was opened becomes the box, or one more paint in it */

function use_palette(scene, palette, files) {
  if (palette.medium) bring_medium(scene, palette.medium);
  scene.paint = { ...scene.paint, palette: palette_of(palette, files) };
  if (!palette.medium) return;
  delete scene.paint.medium; /* it is the palette's own */
}

function use_pigment(scene, pigment) {
  const paint = scene.paint || (scene.paint = {});
  const paints = [...listed(paint.palette || hand.filled.paint.palette).filter((other) => !same_name(other, pigment)), pigment];
  paint.palette = in_place_of(paint.palette, paints);
}

const same_name = (one, other) => name_of(one).toLowerCase() === name_of(other).toLowerCase();

/* Other paints on the same paper. */
const in_place_of = (palette, paints) =>
  (palette && palette.paints ? { ...palette, paints } : paints);

/* ---- opening */

/* Files given before that wait for one they name. */
let waiting = [];

async function read_kinds(desk, given) {
  for (const file of given) {
    try {
      file.kind = JSON.parse((await desk.ask('kind', { bytes: file.bytes, files: given })).text).kind;
      if (file.kind === 'scene') await desk.ask('check', { scene: file.bytes, files: given });
    } catch (problem) {
      return { problem, name: file.name };
    }
  }
  return null;
}

function scene_of_files(given) {
  const files = { of: new Map(), used: new Set() };
  const read = given.map((file) => ({ ...file, holds: JSON.parse(new TextDecoder().decode(file.bytes)) }));
  for (const file of read) if (file.kind !== 'scene') files.of.set(file.name, file.holds);
  const opened = read.find((file) => file.kind === 'scene');
  const scene = opened ? scene_with_files(opened.holds, files) : structuredClone(hand.scene);
  for (const file of read)
    if (file.kind === 'palette' && !files.used.has(file.name)) use_palette(scene, file.holds, files);
  for (const file of read)
    if (file.kind === 'pigment' && !files.used.has(file.name)) use_pigment(scene, file.holds);
  return scene;
}

const is_scene = (file) => file.kind === 'scene';

/* With the files that wait, unless another scene comes. */
async function sort_out(fresh) {
  const later = waiting.filter((file) => !fresh.some((one) => one.name === file.name));
  let given = [...fresh, ...later], wrong = await read_kinds(bench.aside(), given);
  if (later.length && fresh.some(is_scene)) {
    given = fresh;
    wrong = await read_kinds(bench.aside(), given);
  }
  waiting = wrong && wrong.problem.missing ? given : [];
  if (!wrong && given.filter(is_scene).length > 1)
    wrong = { problem: { what: 'two scenes at once; open one', line: 0 }, name: given[0].name };
  if (wrong) show_problem(wrong.problem, wrong.name);
  return wrong ? null : given;
}

async function open_given(fresh) {
  const given = await sort_out(fresh);
  if (!given) return;
  const scene = scene_of_files(given), whole = given.some(is_scene), own = own_of((scene.paint || {}).palette);
  if (!await open_text(text_of(scene), given.map((file) => file.name).join(', '), !whole)) return;
  put_on_shelf(own);
  if (!whole) by('box-leaf').open = true;
}

async function open_files(list) {
  const files = [...list], given = [];
  for (const file of files)
    given.push({ name: file.name, bytes: new Uint8Array(await file.slice(0, (1 << 20) + 1).arrayBuffer()) });
  if (given.length) await open_given(given);
}

/* ---- their pans */

/* All of them as the library sees them in this medium, on this paper. */
const own_pans = { key: '', wanted: '' };

async function show_own_pans() {
  const palette = hand.scene.paint ? hand.scene.paint.palette : null, medium = hand.filled.paint.medium;
  const all = new Map(shelf);
  for (const paint of own_of(palette)) all.set(paint.name, paint);
  const key = JSON.stringify([medium, palette && palette.paper, [...all.values()]]);
  by('own-pans').hidden = all.size === 0;
  if (own_pans.key === key || own_pans.wanted === key) return;
  own_pans.wanted = key;
  try {
    const told = await tell_paints([...all.values()], medium, palette && palette.paper);
    if (own_pans.wanted !== key) return;
    own_pans.key = key;
    by('own').replaceChildren(...told.map((paint) => new_pan({ ...paint, own: true })));
    show_ticks();
  } catch (problem) {
    if (!problem.closed) show_problem(problem, 'Paints of your own');
  }
  own_pans.wanted = '';
}

async function tell_paints(paints, medium, paper) {
  const told = [];
  for (let at = 0; at < paints.length; at += 20) {
    const some = paints.slice(at, at + 20), white = some.some((paint) => paint.is_white) ? [] : ['titanium white'];
    const palette = { paints: [...some, ...white.filter((name) => !some.some((paint) => same_name(paint, name)))] };
    if (paper) palette.paper = paper;
    const scene = JSON.stringify({ paint: { palette, medium }, planes: [{ name: 'a', distance: 1, surface: 'rock' }] });
    told.push(...JSON.parse((await bench.aside().ask('box', { scene })).text).paints.slice(0, some.length));
  }
  return told;
}

/* Those that are not ticked leave the shelf. */
function put_away() {
  const ticked = new Set(own_of((hand.scene.paint || {}).palette).map(name_of));
  for (const name of [...shelf.keys()]) if (!ticked.has(name)) shelf.delete(name);
  say_store('');
  keep_shelf();
  show_own_pans();
}

function listen_to_own() {
  by('put-away').addEventListener('click', put_away);
}
