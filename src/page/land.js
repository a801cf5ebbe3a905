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
  const kind = OWN.find((key) => plane[key] !== undefined);
  by('plane-name').value = plane.name;
  by('plane-own').value = kind === 'foliage' || kind === 'surface' ? `${kind}:${plane[kind]}` : kind === 'colour' || kind === 'mix' ? `${kind}:` : 'measured:';
  by('plane-colour-label').hidden = kind !== 'colour';
  if (kind === 'colour') by('plane-colour').value = plane.colour;
  show_mix(plane);
  show_far(filled.distance);
  by('plane-base').value = plane.base === undefined ? '' : String(filled.base);
  by('plane-crest').value = plane.crest === undefined ? '' : String(filled.crest);
  by('plane-share').value = String(Math.round((plane.share || 0) * 100));
  by('plane-remove').disabled = hand.scene.planes.length < 2;
}

/* Keeps a plane in hand through undoing and opening. */
function hold_something() {
  const planes = hand.filled.planes;
  if (!planes.some((plane) => plane.name === hand.held)) hand.held = planes[planes.length - 1].name;
  show_held();
  mark_held();
  draw_tags();
}

function set_own(plane, choice) {
  const [kind, name] = choice.split(':'), view = hand.view.planes.find((p) => p.name === plane.name);
  if (kind === 'measured') return;
  for (const key of OWN) delete plane[key];
  plane[kind] = kind === 'colour' ? (view ? view.own_hex : '#6f7f4f') : kind === 'mix' ? first_mix(plane.name) : name;
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
  const planes = hand.filled.planes, at = planes.findIndex((plane) => plane.name === hand.held);
  const here = planes[at].distance, nearer = at > 0 ? planes[at - 1].distance : here / 3;
  const name = new_name();
  hand.scene.planes.push({ name, distance: said_length(stepped(Math.sqrt(here * nearer))), foliage: 'summer oak' });
  hand.held = name;
}

function remove_plane() {
  hand.scene.planes = hand.scene.planes.filter((plane) => plane.name !== hand.held);
  hand.held = null;
}

function listen_to_land() {
  by('plane-name').addEventListener('change', (event) => {
    const plane = plane_named(hand.held), name = by('plane-name').value.trim();
    if (!plane || name === hand.held) return;
    change_at_once(() => { plane.name = name; hand.held = name; }, event);
  });
  by('plane-own').addEventListener('change', (event) => {
    change_at_once(() => set_own(plane_named(hand.held), by('plane-own').value), event);
  });
  by('plane-colour').addEventListener('input', (event) => edit(() => { plane_named(hand.held).colour = by('plane-colour').value; }, event));
  by('plane-colour').addEventListener('change', settle);
  by('mix-water').addEventListener('change', change_mix);
  on_slide('plane-far', (power, event) => set_distance(hand.held, 10 ** power, event));
  on_number('plane-base', (metres) => set_or_drop(plane_named(hand.held), 'base', metres));
  on_number('plane-crest', (metres) => set_or_drop(plane_named(hand.held), 'crest', metres));
  on_number('plane-share', (share) => set_or_drop(plane_named(hand.held), 'share', share ? share / 100 : null));
  by('plane-add').addEventListener('click', (event) => { change_at_once(add_plane, event); });
  by('plane-remove').addEventListener('click', (event) => { change_at_once(remove_plane, event); });
}
