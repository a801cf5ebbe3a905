/* Asking for plans, and drawing what comes back. One is asked for at a time;
 * of those wanted meanwhile only the newest counts. */
const planning = {
  busy: false, wanted: null, old_box: null,
  good: null,     /* text of the last scene that could be planned */
  edited: false,  /* by hand, since something was refused */
};

const box_of = (scene) => {
  const paint = scene.paint || {};
  return JSON.stringify([paint.palette, paint.medium, paint.most_pigments, paint.most_parts, paint.tie]);
};

/* The scene as the box that is ready can plan it. */
function for_ready_box(scene) {
  if (bench.ready.box === null || bench.ready.box === box_of(scene)) {
    if (bench.mixing) say(by('state'), '');
    bench.keep_box();
    return scene;
  }
  bench.change_box(box_of(scene), text_of(scene),
    (share) => say(by('state'), `mixing the new box: ${Math.round(share * 100)} %`),
    () => { say(by('state'), ''); request_plan({ filled: true }); },
    (problem) => { say(by('state'), ''); take_back(problem); });
  if (!by('state').textContent) say(by('state'), 'mixing the new box');
  return { ...scene, paint: planning.old_box };
}

function request_plan(want) {
  const earlier = planning.wanted;
  planning.wanted = {
    moving: !!want.moving && !(earlier && earlier.filled),
    filled: !!want.filled || !!(earlier && earlier.filled),
    controls: !!want.controls || !!(earlier && earlier.controls),
    since: want.since !== undefined ? want.since : performance.now(),
  };
  if (!planning.busy) ask_for_plan();
}

async function ask_for_plan() {
  const want = planning.wanted, scene = for_ready_box(hand.scene), text = want.filled ? text_of(hand.scene) : '';
  planning.wanted = null;
  planning.busy = true;
  try {
    const size = picture_size(want.moving), asked = performance.now();
    const answer = await bench.ready.ask('plan', {
      scene: text_of(scene), ...size, greys: picture.greys, moving: want.moving, lines: true,
      planes: scene.planes.length, filled: want.filled,
      whole: scene === hand.scene ? null : text || text_of(hand.scene),
    });
    bench.ready.box = box_of(scene);
    planning.old_box = structuredClone(scene.paint);
    if (scene === hand.scene && want.filled) stands(text); /* of the old box that is not known */
    draw(answer, want, asked);
    if (answer.filled) remember(text);
  } catch (problem) {
    if (problem.closed) request_plan(want);
    else if (refused_for_good(want)) take_back(problem);
  }
  planning.busy = false;
  if (planning.wanted) ask_for_plan();
}

function stands(text) {
  planning.good = text;
  if (planning.edited) show_problem(null);
}

/* What is still moving, or has changed since, is judged when it rests; with the old box a
 * new mix may be none. */
const refused_for_good = (want) => want.filled && !planning.wanted && !bench.mixing;

/* A box ticked meanwhile stands until its own answer comes. */
function take_filled(filled) {
  const ticked = planning.wanted && planning.wanted.filled && hand.filled;
  if (ticked) filled.paint.palette = hand.filled.paint.palette;
  hand.filled = filled;
}

function draw(answer, want, asked) {
  hand.view = JSON.parse(answer.view);
  if (answer.filled) take_filled(JSON.parse(answer.filled));
  draw_picture(answer, want);
  draw_key(hand.view);
  if (want.controls) show_controls();
  if (want.filled) draw_at_rest();
  const end = performance.now();
  if (want.moving) adapt_detail(end - asked);
  document.dispatchEvent(new CustomEvent('drawn', {
    detail: { moving: want.moving, milliseconds: end - want.since, ...answer.times },
  }));
}
