/* Small helpers for the page's own elements. */
const by = (id) => document.getElementById(id);

function make(tag, properties, ...children) {
  const element = document.createElement(tag);
  for (const [name, value] of Object.entries(properties || {})) {
    if (name in element && name !== 'list') element[name] = value;
    else element.setAttribute(name, value);
  }
  element.append(...children);
  return element;
}

function say(element, text) {
  if (element.textContent !== text) element.textContent = text;
}

const first = (text) => text.charAt(0).toUpperCase() + text.slice(1);

/* Whether someone types there and is not done yet. */
const typed_in = (element) => !!element.typing && document.activeElement === element;

/* What is being typed is left alone. */
function put_value(id, value) {
  if (!typed_in(by(id))) by(id).value = value;
}

function listen_to_typing() {
  document.addEventListener('input', (event) => { event.target.typing = true; }, true);
  document.addEventListener('change', (event) => { event.target.typing = false; }, true);
}

function after(milliseconds, action) {
  let timer = 0;
  return () => {
    clearTimeout(timer);
    timer = setTimeout(action, milliseconds);
  };
}

/* A colour wanted beside the colour mixed. */
function colour_dab(dab, wanted, mixed) {
  dab.style.background = `linear-gradient(90deg, ${wanted} 46%, ${mixed} 46%)`;
}
