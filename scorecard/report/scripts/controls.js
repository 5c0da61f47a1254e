// The controls: per criterion a box for the weight, steps down and up, a slider, and whether it counts.

// The step that suits weights of this size: 1 for whole weights up to 20 or so, a hundredth for shares of 1.
function stepFor(weights) {
  const raw = Math.max(...weights) / 20;
  const power = 10 ** Math.floor(Math.log10(raw));
  const step = raw >= 5 * power ? 5 * power : power;
  return weights.every(Number.isInteger) ? Math.max(1, step) : step;
}

// A weight without the dust of floating point.
function cleaned(weight) {
  return Math.max(0, Number(weight.toPrecision(12)));
}

function buildControls(app) {
  const saved = app.page.criteria.map((one) => one.weight);
  app.step = stepFor(saved);
  app.most = cleaned(Math.ceil((2 * Math.max(...saved)) / app.step) * app.step);
  app.rows = app.page.criteria.map((criterion, at) => buildRow(app, criterion, at));
  byId("try-rows").replaceChildren(...app.rows.map((row) => row.line));
  document.getElementsByName("try-open").forEach((radio) => {
    radio.addEventListener("change", () => change(app, (state) => { state.open = radio.value; }));
  });
}

function buildRow(app, criterion, at) {
  const line = copyOf("try-row");
  const find = (name) => line.querySelector(`.${name}`);
  const row = { line, at };
  ["box", "slider", "counts", "share", "moves"].forEach((name) => { row[name] = find(name); });
  say(find("title"), criterion.title);
  nameControls(row, [find("down"), find("up")], criterion.title);
  Object.assign(row.slider, { min: 0, step: app.step, max: app.most });
  listen(app, row, [find("down"), find("up")]);
  return row;
}

function nameControls({ box, slider, counts, at }, [down, up], title) {
  const named = [[box, "box", `Weight of ${title}`], [slider, "slider", `Slider for the weight of ${title}`],
    [counts, "counts", `${title} counts`], [down, "down", `Less weight for ${title}`], [up, "up", `More weight for ${title}`]];
  named.forEach(([element, type, words]) => {
    element.id = `try-${type}-${at}`;
    element.setAttribute("aria-label", bare(words));
  });
}

function listen(app, row, [down, up]) {
  const { at } = row;
  const step = (steps) => change(app, (state) => give(state, at, cleaned(state.weights[at] + steps * app.step)), at);
  down.addEventListener("click", () => step(-1));
  up.addEventListener("click", () => step(1));
  row.slider.addEventListener("input", () => change(app, (state) => give(state, at, Number(row.slider.value)), at));
  row.counts.addEventListener("change", () => change(app, (state) => { state.off[at] = !row.counts.checked; }));
  row.box.addEventListener("input", () => typed(app, row));
  row.box.addEventListener("blur", () => { row.box.value = row.problem ? row.box.value : tidy(app.state.weights[at]); });
  row.box.addEventListener("keydown", (event) => {
    const steps = { ArrowUp: 1, ArrowDown: -1, PageUp: 10, PageDown: -10 }[event.key];
    if (!steps) return;
    event.preventDefault();
    step(steps);
  });
}

// Give a criterion a weight; that it counts again goes without saying.
function give(state, at, weight) {
  state.weights[at] = weight;
  state.off[at] = false;
}

function typed(app, row) {
  const weight = numberIn(row.box.value);
  row.problem = weight === null || weight < 0 ? `${isolated(row.box.value || "nothing")} is no weight` : null;
  if (row.problem) showProblem(app);
  else change(app, (state) => give(state, row.at, weight));
}

function showProblem(app) {
  const row = app.rows.find((one) => one.problem);
  app.rows.forEach((one) => one.box.setAttribute("aria-invalid", String(Boolean(one.problem))));
  sayOrHide(byId("try-problem"), row ? problemSentence(app, row) : "");
}

function problemSentence(app, row) {
  const { title } = app.page.criteria[row.at];
  const kept = tidy(app.state.weights[row.at]);
  return `${title}: ${row.problem}. Write a number, 0 or more, such as ${kept}, which still counts.`;
}

// Bring every control in line with what is tried. A box in which somebody types is left alone, but not the box of the
// criterion that was `stepped`, nor any where that is true.
function showControls(app, result, stepped) {
  app.rows.forEach((row) => {
    const weight = app.state.weights[row.at];
    const text = tidy(weight);
    if (document.activeElement !== row.box || stepped === row.at || stepped === true) row.box.value = text;
    if (numberIn(row.box.value) === weight || row.box.value === text) row.problem = null;
    row.slider.max = Math.max(app.most, weight);
    row.slider.value = weight;
    row.slider.setAttribute("aria-valuetext", text);
    row.box.setAttribute("aria-valuenow", text);
    row.counts.checked = !app.state.off[row.at];
    row.line.classList.toggle("off", app.state.off[row.at]);
    say(row.share, result ? rounded(100 * result.shares[row.at]) : "–");
    say(row.moves, result ? movesWords(result, row.at) : "–");
  });
  document.getElementsByName("try-open").forEach((radio) => { radio.checked = radio.value === app.state.open; });
  showProblem(app);
}
