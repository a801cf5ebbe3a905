/* What the page tells where the hand is: why an edit is refused, and what a change brings
 * with it. */
const BLOCKS = '.pan, .slide, .choice, .more > *, .row, .plane-mix, .leaf > *, fieldset > *';

/* The block a control stands in; what is filled anew as a whole would take a message away. */
function block_of(control) {
  const whole = control.closest('#own');
  return whole || control.closest(BLOCKS);
}

/* After a block, or at the head of the page; the same once more is told once more. */
function tell(element, text, block) {
  element.hidden = !text;
  if (text && block) block.after(element);
  else if (text) document.querySelector('.told').append(element);
  element.textContent = text;
  element.style.gridColumn = '1 / -1';
  if (text) element.scrollIntoView({ block: 'nearest', behavior: 'instant' });
}

/* It stays until the next edit that is good. */
function show_problem(problem, name, block) {
  const place = problem && problem.line ? `${name || 'the scene'}, line ${problem.line}, column ${problem.column}: ` : '';
  const text = problem ? place + problem.what : '';
  planning.edited = false;
  tell(by('problem'), text && !place && name ? `${name}: ${text}` : text, block);
}

/* What a change brings with it, told once the change is made. */
function tell_note(block) {
  tell(by('note'), hand.notes.join(' '), block);
  hand.notes = [];
}

/* ---- the library's words for an edit by hand, which has no file */

const CALLED = {
  base: 'the foot', crest: 'the top', eye: 'the eye', top: 'the top of the mist', width: 'the width', height: 'the height',
  most_parts: 'parts in one mix', most_pigments: 'pigments in one mix',
};

const BY_HAND = [
  [/^name is "".*/, 'a plane needs a name'],
  [/^palette is .*it is empty.*/, 'a box holds at least one paint'],
  [/^share is (\S+); expected 0 to 1$/, (all, share) => `the share is ${+(100 * share).toPrecision(4)} %; expected 0 % to 100 %`],
  [/^([a-z_]+)(?= is )/, (key) => CALLED[key] || key],
  [/( m)?, which is metres without a unit;/, ' m;'],
];

function by_hand(what) {
  const words = BY_HAND.reduce((text, [from, to]) => text.replace(from, to), what);
  return words.charAt(0).toUpperCase() + words.slice(1);
}
