/* The picture, and planes taken in hand in it. */
const picture = {
  greys: false, lines: null, width: 0, height: 0, finest: 1, spent: [], drag: null,
  wide: 0, high: 0, narrow: false, /* as shown; asked for seldom, for it makes the browser lay out the page */
  kept: null, /* as it was: pixels in colour and greys, the view */
};

/* Sizes to paint at, 3 to 2. The page shows them at its own size. From 662 and from 1103
 * on the library's relief is coarser by a step: what lies just below takes longer. */
const WIDTHS = [300, 390, 675, 810, 1350];

/* Under a moving hand a drawing is to take 16 milliseconds, from the scene sent off to
 * all of it shown; a size is kept while it takes about that. */
const MOVING = { most: 14, least: 9, drawings: 12 };

/* As fine as the screen; while something moves, as this machine keeps up with. */
function picture_size(moving) {
  if (!picture.wide) measure_picture();
  const shown = picture.wide * Math.min(window.devicePixelRatio || 1, 2);
  const enough = WIDTHS.findIndex((width) => width >= 0.95 * shown);
  const at_rest = enough < 0 ? WIDTHS.length - 1 : enough;
  const width = WIDTHS[moving ? Math.min(at_rest, picture.finest) : at_rest];
  return { width, height: width * 2 / 3 };
}

function measure_picture() {
  picture.wide = by('picture').clientWidth;
  picture.high = by('picture').clientHeight;
  picture.narrow = window.matchMedia('(max-width: 699px)').matches;
}

/* One drawing that is slow is chance; the middle of twelve is the machine. */
function adapt_detail(milliseconds) {
  picture.spent.push(milliseconds);
  if (picture.spent.length < MOVING.drawings) return;
  const middle = picture.spent.sort((a, b) => a - b)[MOVING.drawings / 2];
  if (middle > MOVING.most) picture.finest = Math.max(0, picture.finest - 1);
  else if (middle < MOVING.least) picture.finest = Math.min(WIDTHS.length - 1, picture.finest + 1);
  picture.spent = [];
}

function put_pixels(canvas, pixels, width, height) {
  if (canvas.width !== width || canvas.height !== height) {
    canvas.width = width;
    canvas.height = height;
  }
  canvas.getContext('2d').putImageData(new ImageData(new Uint8ClampedArray(pixels), width, height), 0, 0);
}

function draw_picture(answer, want) {
  put_pixels(by('picture'), answer.pixels, answer.width, answer.height);
  picture.width = answer.width;
  picture.height = answer.height;
  if (answer.lines) picture.lines = new Float32Array(answer.lines);
  draw_tags();
  draw_line();
}

const line_at = (plane, x) => picture.lines[plane * picture.width + Math.round(within(x, 0, picture.width - 1))];

/* The nearest plane whose skyline stands above the place. */
function plane_at(x, y) {
  for (let i = hand.view.planes.length - 1; i >= 0; i--)
    if (line_at(i, x) <= y) return i;
  return -1;
}

/* ---- the names beside the picture: each can be moved with the arrow keys */

function tag_for(index) {
  const tags = by('tags');
  while (tags.children.length <= index) {
    const tag = make('div', { className: 'tag', tabIndex: 0, role: 'slider' },
      make('span', { className: 'called' }), make('span', { className: 'far' }));
    tag.setAttribute('aria-orientation', 'vertical');
    tag.setAttribute('aria-valuemin', '0');
    tag.setAttribute('aria-valuemax', '100');
    tag.addEventListener('keydown', move_by_key);
    tag.addEventListener('focus', () => hold(tag.dataset.name));
    tag.addEventListener('pointerdown', (event) => begin_drag(event, tag.dataset.name, tag));
    tags.append(tag);
  }
  return tags.children[index];
}

/* Where a skyline meets the picture's right edge, no two tags on each other. Where there
 * are too many for the picture's height, they stand in several columns in a narrow
 * window, whose tags have no words, and reach farther down than the picture in a wide one. */
function tag_places(count) {
  const scale = picture.high / picture.height, size = 30, wish = [];
  const columns = picture.narrow ? Math.ceil(size * count / picture.high) : 1;
  const all = Math.max(picture.high, size * count / columns), room = size / columns;
  for (let i = 0; i < count; i++) wish.push(within(line_at(i, picture.width - 4) * scale + 10, 14, picture.high - 14));
  const at = wish.slice();
  for (let i = 1; i < count; i++) at[i] = Math.max(at[i], at[i - 1] + room);
  for (let i = count - 1, most = all - 14; i >= 0; i--, most = at[i + 1] - room) at[i] = Math.min(at[i], most);
  return { wish, at, columns, all };
}

function draw_tags() {
  const planes = hand.view.planes, tags = by('tags'), { wish, at, columns, all } = tag_places(planes.length);
  const edge = picture.wide, leaders = by('leaders');
  while (leaders.children.length > planes.length) leaders.lastChild.remove();
  while (leaders.children.length < planes.length) leaders.append(document.createElementNS('http://www.w3.org/2000/svg', 'line'));
  while (tags.children.length > planes.length) tags.lastChild.remove();
  tags.parentElement.style.minHeight = all > picture.high ? `${all}px` : '';
  planes.forEach((plane, i) => {
    const tag = tag_for(i);
    tag.dataset.name = tag.title = plane.name;
    tag.style.top = `${at[i]}px`;
    tag.style.marginRight = `${i % columns * 2.3}rem`;
    tag.setAttribute('aria-label', `${plane.name}: how far off`);
    tag.setAttribute('aria-valuenow', String(Math.round(within(Math.log10(plane.distance_m) / 5.2, 0, 1) * 100)));
    tag.setAttribute('aria-valuetext', plane.distance);
    tag.setAttribute('aria-current', String(plane.name === hand.held));
    say(tag.firstChild, plane.name);
    say(tag.lastChild, plane.distance);
    for (const [name, value] of [['x1', edge], ['y1', wish[i]], ['x2', edge + 14], ['y2', at[i]]])
      leaders.children[i].setAttribute(name, String(value));
  });
}

/* The skyline of the plane that is being moved or pointed at. */
function draw_line(index = picture.drag ? hand.view.planes.findIndex((p) => p.name === hand.held) : -1) {
  const paths = by('line').querySelectorAll('path');
  let outline = '';
  if (index >= 0) {
    const every = Math.max(1, Math.round(picture.width / 400));
    for (let x = 0; x < picture.width; x += every) {
      const y = line_at(index, x), shown = y < picture.height && plane_at(x, y + 2) === index;
      const before = x && outline[outline.length - 1] !== ' ';
      outline += shown ? `${before ? 'L' : 'M'}${x} ${Math.max(0, y).toFixed(1)}` : outline && before ? ' ' : '';
    }
  }
  by('line').setAttribute('viewBox', `0 0 ${picture.width} ${picture.height}`);
  for (const path of paths) path.setAttribute('d', outline);
}

function hold(name) {
  if (hand.held === name) return;
  hand.held = name;
  for (const tag of by('tags').children) tag.setAttribute('aria-current', String(tag.dataset.name === name));
  show_held();
  mark_held();
}

/* ---- moving a plane */

function set_distance(name, metres, event) {
  const plane = plane_named(name), distance = stepped(within(metres, 1, 200000));
  if (!plane) return;
  edit(() => { plane.distance = said_length(distance); }, event);
  show_far(distance);
}

const distance_of = (name) => hand.view.planes.find((plane) => plane.name === name).distance_m;

function move_by_key(event) {
  const factors = { ArrowUp: 1.1, ArrowRight: 1.1, ArrowDown: 1 / 1.1, ArrowLeft: 1 / 1.1, PageUp: 2, PageDown: 0.5 };
  const factor = factors[event.key], name = event.currentTarget.dataset.name;
  if (event.key === 'Enter') {
    by('plane-name').focus();
    event.preventDefault();
  }
  if (!factor) return;
  event.preventDefault();
  set_distance(name, distance_of(name) * factor, event);
  settle();
  keep_focus(name);
}

/* Planes are told apart by name; a tag may come to stand for another one. */
function keep_focus(name) {
  document.addEventListener('drawn', () => {
    for (const tag of by('tags').children)
      if (tag.dataset.name === name && by('tags').contains(document.activeElement)) tag.focus();
  }, { once: true });
}

/* Up is farther: the height of the picture is a factor of a thousand. */
function begin_drag(event, name, target) {
  if (event.button) return;
  hold(name);
  picture.drag = { name, y: event.clientY, from: distance_of(name), moved: false, height: picture.high };
  target.setPointerCapture(event.pointerId);
  const move = (at) => {
    const drag = picture.drag, by_part = (drag.y - at.clientY) / drag.height;
    if (!drag.moved && Math.abs(drag.y - at.clientY) < 3) return;
    drag.moved = true;
    set_distance(name, drag.from * 10 ** (3 * by_part), at);
  };
  const end = () => {
    const moved = picture.drag && picture.drag.moved;
    picture.drag = null;
    target.removeEventListener('pointermove', move);
    target.removeEventListener('pointerup', end);
    target.removeEventListener('pointercancel', end);
    draw_line();
    if (moved) settle();
  };
  target.addEventListener('pointermove', move);
  target.addEventListener('pointerup', end);
  target.addEventListener('pointercancel', end);
  draw_line();
}

function place_in_picture(event) {
  const box = by('picture').getBoundingClientRect();
  return [(event.clientX - box.left) / box.width * picture.width, (event.clientY - box.top) / box.height * picture.height];
}

function listen_to_picture() {
  const canvas = by('picture');
  canvas.addEventListener('pointerdown', (event) => {
    if (!hand.view) return;
    const index = plane_at(...place_in_picture(event));
    if (index >= 0) begin_drag(event, hand.view.planes[index].name, canvas);
  });
  canvas.addEventListener('pointermove', (event) => {
    if (!picture.drag && hand.view && event.pointerType === 'mouse') draw_line(plane_at(...place_in_picture(event)));
  });
  canvas.addEventListener('pointerleave', () => { if (!picture.drag && hand.view) draw_line(-1); });
  by('greys').addEventListener('click', () => {
    picture.greys = !picture.greys;
    by('greys').setAttribute('aria-pressed', String(picture.greys));
    draw_kept();
    request_plan({ filled: true });
  });
  by('pin').addEventListener('click', pin);
  new ResizeObserver(() => {
    measure_picture();
    if (hand.view) draw_tags();
  }).observe(canvas);
  window.addEventListener('resize', after(150, () => { if (hand.view) request_plan({ filled: true }); }));
}

/* ---- as it was */

async function pin() {
  if (picture.kept) {
    picture.kept = null;
  } else {
    const view = hand.view, size = picture_size(false);
    picture.kept = { ...await bench.ready.ask('keep', { scene: hand.settled, ...size }), view };
  }
  by('pin').setAttribute('aria-pressed', String(!!picture.kept));
  say(by('pin'), picture.kept ? 'Let go of what is kept' : 'Keep it beside, as it is');
  draw_kept();
  draw_key(hand.view);
  request_plan({ filled: true });
}

function draw_kept() {
  const kept = picture.kept;
  by('was').hidden = !kept;
  document.querySelector('.mounts').classList.toggle('two', !!kept);
  if (kept) put_pixels(by('was-picture'), (picture.greys ? kept.greys : kept.pixels).slice(0), kept.width, kept.height);
}
