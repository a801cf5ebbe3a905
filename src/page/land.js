/* The plane in hand: its name, its own colour, its place. */
const OWN = ['foliage', 'surface', 'colour', 'lab', 'reflectance', 'mix'];

function fill_own_select() {
  const groups = [['foliage', 'Leaves and grass', names.foliage], ['surface', 'Ground, stone, water', names.surfaces]];
  for (const [kind, label, list] of groups) {
    const group = make('optgroup', { label });
    for (const entry of list) group.append(make('option', { value: `${kind}:${entry.name}` }, entry.name));
    by('plane-own').append(group);
  }
  by('plane-own').append(make('option', { value: 'colour:' }, 'a colour of my own'),
    make('option', { value: 'mix:' }, 'a mix of my paints'),
    make('option', { value: 'measured:', hidden: true }, 'as the file has it'));
}

function show_far(metres) {
  by('plane-far').value = String(Math.log10(metres));
  say_in('plane-far', said_length(metres));
}

/* Shows the plane in hand; the far ridge to begin with. */
function show_held() {
  const plane = plane_named(hand.held), filled = filled_named(hand.held);
  if (!plane || !filled) return;
  hand.at = hand.filled.planes.indexOf(filled);
  const kind = OWN.find((key) => plane[key] !== undefined);
  put_value('plane-name', plane.name);
  by('plane-own').value = kind === 'foliage' || kind === 'surface' ? `${kind}:${plane[kind]}` : kind === 'colour' || kind === 'mix' ? `${kind}:` : 'measured:';
  by('plane-colour-label').hidden = kind !== 'colour';
  if (kind === 'colour') by('plane-colour').value = plane.colour;
  show_mix(plane);
  show_far(filled.distance);
  put_value('plane-base', plane.base === undefined ? '' : String(filled.base));
  put_value('plane-crest', plane.crest === undefined ? '' : String(filled.crest));
  put_value('plane-share', String(Math.round((plane.share || 0) * 100)));
  by('plane-remove').disabled = hand.scene.planes.length < 2;
}

/* Keeps a plane in hand through undoing and opening; one of another name by its place. */
function hold_something() {
  const planes = hand.filled.planes;
  if (!planes.some((plane) => plane.name === hand.held)) hand.held = (planes[hand.at] || planes[planes.length - 1]).name;
  show_held();
  mark_held();
  draw_tags();
}

const seen_named = (name) => hand.view.planes.find((plane) => plane.name === name);

async function first_own(kind, entry, name) {
  if (kind === 'mix') return first_mix(name);
  return kind === 'colour' ? (seen_named(name) || { own_hex: '#6f7f4f' }).own_hex : entry;
}

/* A mix to begin with takes the library a moment. */
async function change_own(event) {
  const name = hand.held, [kind, entry] = by('plane-own').value.split(':');
  if (kind === 'measured') return;
  const own = await first_own(kind, entry, name), plane = plane_named(name);
  if (plane) change_at_once(() => set_own(plane, kind, own), event);
}

function set_own(plane, kind, own) {
  for (const key of OWN) delete plane[key];
  plane[kind] = own;
}

function set_or_drop(plane, key, value) {
  if (value === null) delete plane[key];
  else plane[key] = value;
}

function new_name() {
  const taken = new Set(hand.scene.planes.map((plane) => plane.name));
  for (let i = 1; ; i++) {
    const name = i === 1 ? 'new wood' : `new wood ${i}`;
    if (!taken.has(name)) return name;
  }
}

/* A new plane stands between the one in hand and the next nearer. */
function add_plane() {
  const planes = hand.filled.planes, found = planes.findIndex((plane) => plane.name === hand.held);
  const at = found < 0 ? Math.min(hand.at, planes.length - 1) : found; /* its name may be newer than the last answer */
  const here = planes[at].distance, nearer = at > 0 ? planes[at - 1].distance : here / 3;
  const name = new_name();
  hand.scene.planes.push({ name, distance: said_length(stepped(Math.sqrt(here * nearer))), foliage: 'summer oak' });
  hand.held = name;
}

function remove_plane() {
  if (hand.scene.planes.length < 2) return;
  hand.scene.planes = hand.scene.planes.filter((plane) => plane.name !== hand.held);
  const left = hand.filled.planes.filter((plane) => plane_named(plane.name));
  hand.held = (left[hand.at] || left[left.length - 1] || hand.scene.planes[0]).name;
}

function listen_to_land() {
  by('plane-name').addEventListener('change', (event) => {
    const plane = plane_named(hand.held), name = by('plane-name').value.trim();
    if (!plane || name === hand.held) return;
    change_at_once(() => { plane.name = name; hand.held = name; }, event);
  });
  by('plane-own').addEventListener('change', change_own);
  by('plane-colour').addEventListener('input', (event) => edit(() => { plane_named(hand.held).colour = by('plane-colour').value; }, event));
  by('plane-colour').addEventListener('change', settle);
  by('mix-water').addEventListener('change', change_mix);
  on_slide('plane-far', (power, event) => set_distance(hand.held, 10 ** power, event));
  on_number('plane-base', (metres) => set_or_drop(plane_named(hand.held), 'base', metres), true);
  on_number('plane-crest', (metres) => set_or_drop(plane_named(hand.held), 'crest', metres), true);
  on_number('plane-share', (share) => set_or_drop(plane_named(hand.held), 'share', share ? share / 100 : null), true);
  by('plane-add').addEventListener('click', (event) => { change_at_once(add_plane, event); });
  by('plane-remove').addEventListener('click', (event) => { change_at_once(remove_plane, event); });
}
