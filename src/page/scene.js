/* The scene in hand: as its file has it, with what has been changed. */
const STORE = 'recede scene';

const hand = {
  scene: null,    /* as in the file, sparse */
  filled: null,   /* the library's own reading of it */
  view: null,     /* the plan as shown */
  held: null,     /* name of the plane in hand */
  at: null,       /* its place among the planes, for when there is none of that name */
  past: [], future: [], settled: '',
  block: null,    /* of the page, where the last change was made */
  notes: [],      /* sentences on what a change brings with it */
};

/* Lists of numbers stand in one line. */
const text_of = (scene) => JSON.stringify(scene, null, 2).replace(/\[\n\s+[-\d.e+,\s]+\]/g,
  (list) => list.replace(/\s+/g, ' ').replace('[ ', '[').replace(' ]', ']')) + '\n';

function part(key) {
  if (!hand.scene[key]) hand.scene[key] = {};
  return hand.scene[key];
}

const plane_named = (name) => hand.scene.planes.find((plane) => plane.name === name);
const filled_named = (name) => hand.filled && hand.filled.planes.find((plane) => plane.name === name);

/* Without a store the page still works; it only forgets. */
function keep_in_store(key, text) {
  try {
    localStorage.setItem(key, text);
    return true;
  } catch (error) {
    return false;
  }
}

/* Only what the library could read is kept: a reload opens it again. */
function remember(text) {
  if (keep_in_store(STORE, text)) say_store('');
  else say_store('This browser keeps no more: this scene will be gone after a reload. Save it.');
}

function say_store(text) {
  by('store').hidden = !text;
  say(by('store'), text);
}

function remembered() {
  try {
    return localStorage.getItem(STORE);
  } catch (error) {
    return null;
  }
}

/* A change under way, at each movement of the hand. */
function edit(change, event) {
  change(hand.scene);
  request_plan({ moving: true, since: event ? event.timeStamp : performance.now() });
}

/* The hand has come to rest: the change can be undone from here. */
function settle(event) {
  const text = text_of(hand.scene);
  if (text !== hand.settled) {
    hand.block = event && event.target ? block_of(event.target) : null;
    planning.edited = true;
    tell_note(hand.block);
    hand.past.push(hand.settled);
    if (hand.past.length > 200) hand.past.shift();
    hand.future = [];
    hand.settled = text;
    by('try').hidden = true;
  }
  show_doings();
  request_plan({ filled: true });
}

function change_at_once(change, event) {
  edit(change, event);
  settle(event);
}

function show_doings() {
  by('undo').disabled = hand.past.length === 0;
  by('redo').disabled = hand.future.length === 0;
}

/* Takes over a scene that the library has read. */
function take_scene(text) {
  hand.scene = JSON.parse(text);
  hand.settled = text_of(hand.scene);
  remember(hand.settled);
  show_doings();
  request_plan({ filled: true, controls: true });
}

function step(from, to) {
  if (!from.length) return;
  to.push(hand.settled);
  planning.edited = true;
  tell_note(null);
  take_scene(from.pop());
}

const undo = () => step(hand.past, hand.future);
const redo = () => step(hand.future, hand.past);

/* A refused edit springs back: the scene before it stands again, its controls too. */
function take_back(problem) {
  tell_note(null);
  show_problem({ what: by_hand(problem.what), line: 0 }, '', hand.block);
  if (hand.settled === planning.good || !hand.past.length) return;
  by('plane-mix').dataset.key = '';
  hand.held = (hand.filled.planes[hand.at] || {}).name;
  take_scene(hand.past.pop());
}

/* A scene from outside: refused with the library's own words, or taken. */
async function open_text(text, name, no_place) {
  try {
    await (hand.scene ? bench.aside() : bench.ready).ask('check', { scene: text });
  } catch (problem) {
    show_problem(no_place ? { ...problem, line: 0 } : problem, name);
    hand.notes = [];
    return false;
  }
  if (hand.settled) {
    hand.past.push(hand.settled);
    hand.future = [];
  }
  hand.held = hand.at = hand.block = null;
  show_problem(null);
  tell_note(null);
  take_scene(text);
  return true;
}
