// Elements and their words. Every word goes in as text; none of it is ever read as markup.

function byId(id) {
  return document.getElementById(id);
}

// Put words into an element, each name in an element of its own that keeps its direction to itself.
function say(element, words) {
  if (spoken.get(element) === words) return;
  spoken.set(element, words);
  element.replaceChildren(...words.split(OPEN_MARK).flatMap(pieces));
}

const spoken = new WeakMap();

function pieces(part, at) {
  if (at === 0) return [part];
  const [name, rest] = part.split(CLOSE_MARK);
  const element = document.createElement("bdi");
  element.textContent = name;
  return [element, rest ?? ""];
}

// Say something in an element, or hide it where there is nothing to say.
function sayOrHide(element, words) {
  element.hidden = !words;
  say(element, words || "");
}

function made(tag, words, attributes = {}) {
  const element = document.createElement(tag);
  if (words) say(element, words);
  Object.entries(attributes).forEach(([name, value]) => element.setAttribute(name, value));
  return element;
}

// A copy of what a template of the page holds.
function copyOf(id) {
  return byId(id).content.firstElementChild.cloneNode(true);
}

function option(value, words) {
  const element = document.createElement("option");
  element.value = value;
  element.textContent = words; // an option holds text alone: the isolate marks stay in it
  return element;
}

// Give a list of elements their places, and touch nothing where they have them already.
function arrange(parent, elements) {
  const now = parent.children;
  if (now.length === elements.length && elements.every((element, at) => now[at] === element)) return;
  parent.replaceChildren(...elements);
}
