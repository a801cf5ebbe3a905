/* The box of paints, and what becomes of light on paper. */
let names = null; /* all that the library knows by name */

function new_pan(paint) {
  const tick = make('input', { type: 'checkbox', value: paint.name });
  const colour = make('span', { className: 'paint' });
  colour.style.background = `linear-gradient(${paint.masstone} 45%, ${paint.wash} 45%)`;
  tick.addEventListener('change', (event) => change_at_once(() => change_box(paint.name, tick.checked), event));
  return make('label', { className: 'pan' }, colour,
    make('span', { className: 'called' }, paint.name, make('small', {}, paint.colour_index)), tick);
}

function fill_box() {
  for (const palette of names.palettes) {
    const button = make('button', { type: 'button', title: palette.purpose }, palette.name.replace(/-/g, ' '));
    button.addEventListener('click', (event) => change_at_once(() => {
      take_paints(palette.name);
      if (!palette.opaque) part('paint').medium = 'watercolour';
      else if (medium_now() === 'watercolour') part('paint').medium = 'gouache';
    }, event));
    by('boxes').append(button);
  }
  by('pigments').append(...names.pigments.map(new_pan));
  by('tubes').append(...names.tubes.map(new_pan));
  say(by('version'), names.version);
}

const medium_now = () => (hand.scene.paint && hand.scene.paint.medium) || 'watercolour';

/* The paints' names, whether the scene lists them or names a box. */
function paints_now() {
  const palette = hand.filled.paint.palette;
  if (Array.isArray(palette)) return palette;
  const known = names.palettes.find((entry) => entry.name === palette);
  return known ? known.paints.split('|').map((name) => name.trim()).filter(Boolean) : [];
}

/* Also in the filled scene at once: the next tick may come before its answer. */
function take_paints(palette) {
  part('paint').palette = palette;
  hand.filled.paint.palette = palette;
}

function change_box(name, taken) {
  const paints = paints_now().filter((paint) => paint !== name);
  take_paints(taken ? [...paints, name] : paints);
}

function change_medium(medium) {
  part('paint').medium = medium;
  const white = paints_now().some((name) => /white/.test(name));
  if (medium !== 'watercolour' && !white) take_paints(['titanium white', ...paints_now()].slice(0, 24));
  if (medium === 'watercolour' && white && !Array.isArray(part('paint').palette)) take_paints('landscape-twelve');
}

function show_box() {
  const paints = new Set(paints_now()), paint = hand.filled.paint;
  const cautions = names.pigments.filter((pigment) => paints.has(pigment.name) && pigment.caution);
  for (const pan of document.querySelectorAll('.pan')) {
    const tick = pan.querySelector('input');
    tick.checked = paints.has(tick.value);
    pan.classList.toggle('taken', tick.checked);
  }
  say(by('box-said'), `${paints.size} paints, ${paint.medium}`);
  say(by('box-cautions'), cautions.length ? `Take care: ${cautions.map((p) => `${p.name}: ${p.caution}`).join('. ')}.` : '');
  by('medium').value = paint.medium;
  by('most-pigments').value = String(paint.most_pigments);
  by('most-parts').value = String(paint.most_parts);
}

/* ---- from the eye to the paper */

function show_paper() {
  const { picture: seen, paper } = hand.filled;
  by('sky-value').value = String(seen.sky_value);
  say_in('sky-value', seen.sky_value.toFixed(1));
  by('adaptation').value = String(seen.adaptation);
  say_in('adaptation', `${Math.round(seen.adaptation * 100)} %`);
  by('darks').checked = seen.darks === 'fitted';
  by('paper-width').value = String(+(paper.width * 100).toFixed(1));
  by('paper-height').value = String(+(paper.height * 100).toFixed(1));
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
