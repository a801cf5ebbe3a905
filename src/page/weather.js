/* Air and light. */
function show_air(scene) {
  const air = scene.air, kilometres = air.visibility / 1000;
  by('visibility').value = String(Math.log10(kilometres));
  say_visibility(air.visibility);
  for (const radio of document.getElementsByName('haze')) radio.checked = radio.value === air.haze;
  by('mist').checked = !!air.mist;
  by('mist-more').hidden = !air.mist;
  if (air.mist) {
    by('mist-visibility').value = String(Math.log10(air.mist.visibility / 1000));
    say_mist(air.mist.visibility);
    put_value('mist-top', String(air.mist.top));
  }
  put_value('eye', String(air.eye));
}

function say_in(id, text) {
  say(by(`${id}-said`), text);
  by(id).setAttribute('aria-valuetext', text);
}

function say_visibility(metres) {
  say_in('visibility', `${said_length(metres)}, ${word_of(metres, names.visibility)}`);
}

function say_mist(metres) {
  say_in('mist-visibility', said_length(metres));
}

function show_light(scene) {
  const light = scene.light;
  for (const radio of document.getElementsByName('sky')) radio.checked = radio.value === light.sky;
  by('sun').hidden = light.sky !== 'clear';
  by('painted').hidden = light.sky !== 'painted';
  by('sun-height').value = String(light.sun_height);
  by('sun-side').value = String(light.sun_side);
  say_sun(light.sun_height, light.sun_side);
  if (light.sky === 'painted') {
    by('horizon').value = light.horizon;
    by('light').value = light.light;
  }
}

function say_sun(height, side) {
  say_in('sun-height', said_height(height));
  say_in('sun-side', `${side}°, ${said_side(side)}`);
}

/* A slider edits while it moves and settles when let go. */
function on_slide(id, change) {
  by(id).addEventListener('input', (event) => change(Number(by(id).value), event));
  by(id).addEventListener('change', settle);
}

/* A field that says no number shows the old one again, where it may not stay empty. */
function on_number(id, change, may_be_empty) {
  by(id).addEventListener('change', (event) => {
    const text = by(id).value.trim();
    if (text !== '') change_at_once(() => change(Number(text)), event);
    else if (may_be_empty && !by(id).validity.badInput) change_at_once(() => change(null), event);
    else show_controls();
  });
}

/* Colours to begin a picked sky with: those of the sky that is there. */
function change_sky(kind) {
  const light = part('light');
  light.sky = kind;
  if (kind === 'painted') {
    const side = hand.view.sky;
    light.horizon = side.base ? side.base.target : side.crest.target;
    light.light = '#f4f0e6';
  } else {
    delete light.horizon;
    delete light.light;
  }
  by('sun').hidden = kind !== 'clear';
  by('painted').hidden = kind !== 'painted';
  if (kind === 'painted') {
    by('horizon').value = light.horizon;
    by('light').value = light.light;
  }
}

function change_mist(there) {
  const air = part('air');
  by('mist-more').hidden = !there;
  if (!there) {
    delete air.mist;
    return;
  }
  const top = Math.round(hand.filled.air.eye + 20);
  air.mist = { visibility: '800 m', top: `${top} m` };
  by('mist-visibility').value = String(Math.log10(0.8));
  say_mist(800);
  by('mist-top').value = String(top);
}

function listen_to_weather() {
  on_slide('visibility', (power, event) => {
    const metres = within(stepped(1000 * 10 ** power), 20, 250000);
    edit(() => { part('air').visibility = said_length(metres); }, event);
    say_visibility(metres);
  });
  on_slide('mist-visibility', (power, event) => {
    const metres = within(stepped(1000 * 10 ** power), 20, 20000);
    edit(() => { part('air').mist.visibility = said_length(metres); }, event);
    say_mist(metres);
  });
  on_slide('sun-height', (degrees, event) => {
    edit(() => { part('light').sun_height = degrees; }, event);
    say_sun(degrees, Number(by('sun-side').value));
  });
  on_slide('sun-side', (degrees, event) => {
    edit(() => { part('light').sun_side = degrees; }, event);
    say_sun(Number(by('sun-height').value), degrees);
  });
  on_number('mist-top', (metres) => { part('air').mist.top = metres; });
  on_number('eye', (metres) => { part('air').eye = metres; });
  by('mist').addEventListener('change', (event) => change_at_once(() => change_mist(by('mist').checked), event));
  for (const radio of document.getElementsByName('haze'))
    radio.addEventListener('change', (event) => change_at_once(() => { part('air').haze = radio.value; }, event));
  for (const radio of document.getElementsByName('sky'))
    radio.addEventListener('change', (event) => change_at_once(() => change_sky(radio.value), event));
  for (const id of ['horizon', 'light']) {
    by(id).addEventListener('input', (event) => edit(() => { part('light')[id] = by(id).value; }, event));
    by(id).addEventListener('change', settle);
  }
}
