/* Scenes and pictures that come and go as files. */
function hand_out(blob, name) {
  const address = URL.createObjectURL(blob);
  make('a', { href: address, download: name }).click();
  setTimeout(() => URL.revokeObjectURL(address), 1000);
}

function file_name(ending) {
  const title = (hand.scene.title || 'scene').toLowerCase().replace(/[^a-z0-9]+/g, '-').replace(/^-|-$/g, '');
  return (title.slice(0, 50) || 'scene') + ending;
}

function save_scene() {
  hand_out(new Blob([hand.settled], { type: 'application/json' }), file_name('.json'));
}

async function finest_picture() {
  const answer = await bench.ready.ask('keep', { scene: hand.settled, width: 1800, height: 1200 });
  const canvas = make('canvas', {});
  put_pixels(canvas, answer.pixels, answer.width, answer.height);
  return canvas;
}

async function save_picture() {
  const canvas = await finest_picture();
  canvas.toBlob((blob) => hand_out(blob, file_name('.png')), 'image/png');
}

/* Lines of a text no wider than so many pixels. */
function lines_of(context, text, width) {
  const lines = [''];
  for (const word of text.split(' ')) {
    const longer = lines[lines.length - 1] ? `${lines[lines.length - 1]} ${word}` : word;
    if (context.measureText(longer).width <= width || !lines[lines.length - 1]) lines[lines.length - 1] = longer;
    else lines.push(word);
  }
  return lines;
}

const KEY_ROW = 104, KEY_EDGE = 60;

function draw_key_row(context, { name, wash, where }, x, y, width) {
  const serif = '"Palatino Linotype", Palatino, "URW Palladio L", P052, Georgia, serif';
  context.fillStyle = wash.target;
  context.fillRect(x, y, 52, 72);
  context.fillStyle = wash.recipe.hex;
  context.fillRect(x + 52, y, 60, 72);
  context.strokeStyle = '#777';
  context.strokeRect(x + 0.5, y + 0.5, 111, 71);
  context.fillStyle = '#111';
  context.font = `600 23px ${serif}`;
  context.fillText(`${name}, ${where}: value ${wash.recipe.value.toFixed(1)}`, x + 128, y + 20, width - 128);
  context.font = '20px sans-serif';
  const over = lies_over(wash) ? '; over the dried lit wash' : '';
  const text = wash.recipe.parts + (wash.recipe.water ? `; ${water_of(wash.recipe)}` : '') + over;
  lines_of(context, text, width - 128).slice(0, 3).forEach((line, i) => context.fillText(line, x + 128, y + 46 + 23 * i));
}

async function save_key() {
  const image = await finest_picture(), rows = [];
  for (const entry of key_of(hand.view))
    for (const { wash, where } of entry.washes) rows.push({ name: entry.name, wash, where });
  const half = Math.ceil(rows.length / 2), edge = KEY_EDGE, width = image.width + 2 * edge;
  const canvas = make('canvas', { width, height: edge + image.height + 130 + half * KEY_ROW + edge });
  const context = canvas.getContext('2d');
  context.fillStyle = '#f4f4f4';
  context.fillRect(0, 0, canvas.width, canvas.height);
  context.fillStyle = '#8f8f8f';
  context.fillRect(0, 0, width, image.height + 2 * edge);
  context.drawImage(image, edge, edge);
  context.fillStyle = '#111';
  context.font = '600 32px "Palatino Linotype", Palatino, "URW Palladio L", P052, Georgia, serif';
  const top = image.height + 2 * edge;
  context.fillText(hand.filled.title || '', edge, top + 48, image.width);
  context.font = 'italic 22px "Palatino Linotype", Palatino, "URW Palladio L", P052, Georgia, serif';
  context.fillText(hand.view.air_and_light, edge, top + 82, image.width);
  const column = (image.width - 40) / 2;
  rows.forEach((row, i) => draw_key_row(context, row, edge + (i < half ? 0 : column + 40), top + 110 + (i % half) * KEY_ROW, column));
  canvas.toBlob((blob) => hand_out(blob, file_name('-key.png')), 'image/png');
}

function listen_to_files() {
  by('open').addEventListener('click', () => by('file').click());
  by('file').addEventListener('change', async () => {
    await open_files(by('file').files);
    by('file').value = '';
  });
  by('save').addEventListener('click', save_scene);
  by('print').addEventListener('click', () => window.print());
  by('save-picture').addEventListener('click', save_picture);
  by('save-key').addEventListener('click', save_key);
  by('undo').addEventListener('click', undo);
  by('redo').addEventListener('click', redo);
  document.addEventListener('dragover', (event) => event.preventDefault());
  document.addEventListener('drop', (event) => {
    event.preventDefault();
    open_files(event.dataTransfer.files);
  });
  document.addEventListener('keydown', (event) => {
    if (!(event.ctrlKey || event.metaKey) || event.altKey) return;
    const key = event.key.toLowerCase(), typing = /^(text|number)$/.test(event.target.type || '');
    const action = key === 's' ? save_scene : key === 'o' ? () => by('file').click()
      : typing ? null : key === 'z' ? (event.shiftKey ? redo : undo) : key === 'y' ? redo : null;
    if (!action) return;
    event.preventDefault();
    action();
  });
}
