/* How lengths and angles are said, and how the sliders step through them. */
function said_length(metres) {
  if (metres >= 1000) return `${+(metres / 1000).toPrecision(3)} km`;
  return `${+metres.toPrecision(3)} m`;
}

/* Steps of about 5 %: as fine as anyone judges a distance. */
function stepped(metres) {
  const power = 10 ** Math.floor(Math.log10(metres)), lead = metres / power;
  const step = lead < 3 ? 0.05 : 0.1;
  return +((Math.round(lead / step) * step) * power).toPrecision(3);
}

function within(number, least, most) {
  return Math.min(most, Math.max(least, number));
}

function said_side(degrees) {
  if (degrees < 20) return 'straight into it';
  if (degrees < 65) return 'ahead, to the side';
  if (degrees < 115) return 'beside me';
  if (degrees < 160) return 'behind, to the side';
  return 'behind me';
}

function said_height(degrees) {
  const fists = Math.round(degrees / 5) / 2;
  return `${degrees}°, ${fists < 1 ? 'under a fist' : fists === 1 ? 'a fist' : `${fists} fists`}`;
}

/* The word of the visibility code whose range holds so many metres: those words
 * stand for about the geometric mean of their ranges. */
function word_of(metres, words) {
  let best = words[0];
  for (const entry of words)
    if (Math.abs(Math.log(entry.number / metres)) < Math.abs(Math.log(best.number / metres))) best = entry;
  return best.word;
}
