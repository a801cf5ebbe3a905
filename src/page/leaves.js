/* What one looks up beside the planning: order of work, ladder, mixing chart. Each is worked
 * out when its leaf is open, by a worker of its own. */
function fill_choice(select, options) {
  const chosen = select.value;
  select.replaceChildren(...options.map(([value, text]) => make('option', { value }, text)));
  if (options.some(([value]) => value === chosen)) select.value = chosen;
}

async function fill_leaf(leaf, target, call, what, show) {
  if (!by(leaf).open) return;
  const scene = text_of(hand.scene), key = call + JSON.stringify(what) + scene;
  if (by(target).dataset.key === key) return;
  by(target).dataset.key = key;
  by(target).setAttribute('aria-busy', 'true');
  if (!by(target).firstChild) by(target).append(make('p', { className: 'aside' }, 'A moment …'));
  try {
    const answer = JSON.parse((await bench.aside().ask(call, { scene, ...what })).text);
    if (by(target).dataset.key === key) by(target).replaceChildren(...show(answer));
  } catch (problem) {
    by(target).replaceChildren(make('p', {}, problem.what));
  }
  by(target).removeAttribute('aria-busy');
}

function rung_cell(wash) {
  const cell = make('td', { title: `${wash.recipe.parts}${wash.recipe.water ? `; ${water_of(wash.recipe)}` : ''}` },
    make('span', {}, wash.value.toFixed(1)));
  cell.style.background = wash.recipe.hex;
  return cell;
}

function show_ladder(answer) {
  const head = make('tr', {}, make('td'), ...answer.rungs.map((rung) => make('th', { scope: 'col' }, rung.distance)));
  const rows = [['lit', 'lit side'], ['shadow', 'shadow side'], ['white', 'a white wall']].map(([key, label]) =>
    make('tr', {}, make('th', { scope: 'row' }, label), ...answer.rungs.map((rung) => rung_cell(rung[key]))));
  const shares = make('tr', {}, make('th', { scope: 'row' }, 'its own light'), ...answer.rungs.map((rung) => {
    const bar = make('b');
    bar.style.width = `${Math.round(rung.own_share * 100)}%`;
    return make('td', { className: 'share' }, make('i', {}, bar), `${Math.round(rung.own_share * 100)} %`);
  }));
  const captions = make('ul', { className: 'captions' }, ...answer.rungs.map((rung) => make('li', {}, rung.caption)));
  return [make('h3', {}, answer.title), make('table', { className: 'rungs' }, make('thead', {}, head), make('tbody', {}, ...rows, shares)),
    captions, make('p', { className: 'aside' }, answer.why)];
}

function chart_cell(patches, row, column) {
  const cell = make('div', { className: 'patches', role: 'img' });
  cell.setAttribute('aria-label', `${row} with ${column}: values ${patches.map((patch) => patch.value).join(', ')}`);
  for (const patch of patches) {
    const square = make('span', { title: `value ${patch.value}` });
    square.style.background = patch.hex;
    cell.append(square);
  }
  return make('td', {}, cell);
}

function show_chart(answer) {
  if (!answer.rows.length || !answer.columns.length)
    return [make('p', {}, 'The chart wants at least one yellow or earth and one blue or green in the box.')];
  const head = make('tr', {}, make('td'), ...answer.columns.map((name) => make('th', { scope: 'col' }, name)));
  const rows = answer.rows.map((name, i) => make('tr', {}, make('th', { scope: 'row' }, name),
    ...answer.cells[i].map((patches, j) => chart_cell(patches, name, answer.columns[j]))));
  return [make('p', { className: 'aside' }, answer.how),
    make('table', { className: 'grid' }, make('thead', {}, head), make('tbody', {}, ...rows)),
    answer.left_out && make('p', { className: 'aside' }, answer.left_out)].filter(Boolean);
}

function show_step(step) {
  const dab = make('span', { className: 'dab small' });
  dab.style.background = step.hex;
  return make('li', {}, make('div', {}, dab, make('span', {}, make('b', {}, step.label), ` ${step.sentences}`)));
}

function show_work(answer) {
  return [answer.beforehand && make('p', {}, answer.beforehand), make('ol', { className: 'steps' }, ...answer.steps.map(show_step)),
    make('p', {}, answer.sum), make('p', { className: 'aside' }, answer.amounts)].filter(Boolean);
}

function draw_leaves() {
  const planes = hand.filled.planes;
  fill_choice(by('ladder-plane'), planes.map((plane, i) => [String(i), plane.name]).reverse());
  fill_choice(by('chart-third'), [['-1', 'nothing'], ...paints_now().map((name, i) => [String(i), name])]);
  fill_leaf('ladder-leaf', 'ladder', 'ladder', { plane: Number(by('ladder-plane').value) }, show_ladder);
  fill_leaf('work-leaf', 'work', 'work', { wells: Number(by('wells').value) }, show_work);
  fill_leaf('chart-leaf', 'chart', 'chart', { third: Number(by('chart-third').value) }, show_chart);
}

function listen_to_leaves() {
  for (const id of ['work-leaf', 'ladder-leaf', 'chart-leaf']) by(id).addEventListener('toggle', draw_leaves);
  for (const id of ['wells', 'ladder-plane', 'chart-third']) by(id).addEventListener('change', draw_leaves);
}
