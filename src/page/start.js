/* The page begins. */
function show_controls() {
  show_air(hand.filled);
  show_light(hand.filled);
  show_box();
  show_paper();
  show_held();
  put_value('title', hand.filled.title || '');
  say(by('title-printed'), hand.filled.title || '');
}

/* What need not follow every movement of the hand. */
function draw_at_rest() {
  say(by('air-and-light'), hand.view.air_and_light);
  by('picture').setAttribute('aria-label', `The planned picture: the sky and, far to near, ${hand.view.planes.map((plane) => plane.name).join(', ')}; ${hand.view.air_and_light}`);
  hold_something();
  show_box();
  show_paper();
  draw_warnings(hand.view);
  draw_list(hand.view);
  draw_trade(hand.view);
  draw_leaves();
  for (const wash of document.querySelectorAll('.wash[open]')) show_others(wash);
}

/* Where the picture stays in sight, what is below must scroll clear of it. */
function watch_standing() {
  const standing = document.querySelector('.standing');
  new ResizeObserver(() => {
    const stays = getComputedStyle(standing).position === 'sticky';
    document.documentElement.style.setProperty('--top', stays ? `${standing.offsetHeight}px` : '0px');
  }).observe(standing);
}

async function start() {
  await bench.open();
  names = JSON.parse((await bench.ready.ask('lists', {})).text);
  take_shelf();
  fill_own_select();
  fill_box();
  listen_to_typing();
  listen_to_picture();
  listen_to_weather();
  listen_to_land();
  listen_to_box();
  listen_to_own();
  listen_to_files();
  listen_to_leaves();
  watch_standing();
  by('title').addEventListener('change', (event) => change_at_once((scene) => { scene.title = by('title').value; }, event));
  const earlier = remembered();
  if (!(earlier && await open_text(earlier, 'the scene kept in this browser'))) await open_text(SCENE, 'the first scene');
}

start().catch((error) => show_problem({ what: `The page could not start: ${error.message || error.what || error}`, line: 0 }));
