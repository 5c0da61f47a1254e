// The outcome: who leads, the verdict, the ranking, two receipts, what to keep, and what elsewhere is as saved.

const SHOWN = 10; // rows of the ranking that are shown at first
const AS_SAVED = ["verdict", "ranking", "lost", "firm", "out", "ask", "costs", "arithmetic"]; // sections that do not follow

function buildOutcome(app) {
  app.lines = app.page.makers.map((maker) => buildLine(maker));
  const beside = byId("try-beside");
  beside.replaceChildren(option("", "the next in rank"), ...app.page.makers.map((one, at) => option(String(at), one.name)));
  const chosen = app.page.makers.findIndex((one) => one.name === app.beside);
  beside.value = chosen < 0 ? "" : String(chosen);
  beside.addEventListener("change", () => { app.beside = app.page.makers[beside.value]?.name ?? null; show(app); });
  byId("try-all").addEventListener("click", () => { app.all = !app.all; show(app); });
  byId("try-copy").addEventListener("click", copyLines);
  say(byId("try-above"), app.page.lines.above);
  const left = app.page.left_out;
  sayOrHide(byId("try-left"), left ? `Tried among the ${app.page.makers.length} best as saved; ${left} more makers are not on this page.` : "");
}

function buildLine(maker) {
  const line = copyOf("try-line");
  const [rank, , score, band, known, drawing] = line.children;
  const [name, asSaved, mayFail] = line.querySelector("th").children;
  const [mark, circle] = [drawing.querySelector("svg > line"), drawing.querySelector("circle")];
  const texts = [band, known].map((cell) => cell.appendChild(document.createTextNode("")));
  say(name, maker.name);
  return { line, rank, score, asSaved, mayFail, bandText: texts[0], bandLabel: band.firstElementChild, dash: band.children[1],
    knownText: texts[1], svg: drawing.firstElementChild, mark, circle };
}

function showOutcome(app, result) {
  const moved = app.result !== app.saved;
  say(byId("try-live"), result ? liveSentence(result, app.saved, moved) : NOTHING);
  sayOrHide(byId("try-tried"), triedSentence(app.page, app.state));
  byId("try-outcome").hidden = !result;
  showNotes(moved);
  if (!result) return;
  say(byId("try-verdict"), verdictSentence(app.page, result));
  sayOrHide(byId("try-rule"), ruleSentence(result));
  showRanking(app, result, moved);
  showReceipts(app, result);
  showLines(app);
}

const NOTHING = "Every weight is 0, so nobody can be ranked: give one criterion a weight above 0.";

function showRanking(app, result, moved) {
  const places = app.all ? result.order : result.order.slice(0, SHOWN);
  places.forEach((at) => showLine(app, result, at, moved));
  arrange(byId("try-ranking"), places.map((at) => app.lines[at].line));
  const button = byId("try-all");
  button.hidden = result.order.length <= SHOWN;
  button.setAttribute("aria-expanded", String(Boolean(app.all)));
  say(button, app.all ? `Show the ${SHOWN} best` : `Show all ${result.order.length}`);
}

function showLine(app, result, at, moved) {
  const [one, line] = [result.makers[at], app.lines[at]];
  const band = bandWords(one.lowest, one.highest);
  say(line.rank, String(result.ranks[at]));
  say(line.score, rounded(one.score));
  sayOrHide(line.asSaved, moved ? `as saved: rank ${app.saved.ranks[at]}, ${rounded(app.saved.makers[at].score)}` : "");
  sayOrHide(line.mayFail, mayFailWords(app.page, one));
  line.bandText.data = band ?? "";
  say(line.bandLabel, band ? "could be: " : "nothing open");
  line.dash.hidden = Boolean(band);
  line.knownText.data = knownWords(one.knownShare);
  drawMark(line, one, band);
}

function mayFailWords(page, maker) {
  const titles = page.criteria.filter((_, at) => maker.mayFail[at]).map((one) => one.title);
  const more = titles.length - 3;
  const named = more > 0 ? [...titles.slice(0, 3), `${more} ${more === 1 ? "other" : "others"}`] : titles;
  return titles.length ? `could still be ruled out: ${listed(named)}` : "";
}

function drawMark({ svg, mark, circle }, { score, lowest, highest }, band) {
  circle.setAttribute("cx", `${rounded(score, 2)}%`);
  mark.setAttribute("x1", `${rounded(lowest, 2)}%`);
  mark.setAttribute("x2", `${rounded(highest, 2)}%`);
  mark.setAttribute("visibility", band ? "visible" : "hidden");
  svg.setAttribute("aria-label", band ? `${rounded(score)}, could be ${band}` : rounded(score));
}

// The receipts of the leader and of the maker to be seen beside it.
function showReceipts(app, result) {
  const { order, ranks } = result;
  const chosen = app.page.makers.findIndex((one) => one.name === app.beside);
  const beside = chosen >= 0 && ranks[chosen] ? chosen : order[1];
  const told = order.slice(0, 1).concat(beside === undefined || beside === order[0] ? [] : [beside]);
  byId("try-receipts").replaceChildren(...told.map((at) => receiptTable(app, result, at)));
}

function receiptTable(app, result, at) {
  const receipt = receiptOf(app.page, app.state, result, at);
  const table = made("table", "", { class: "receipt" });
  const body = made("tbody", "");
  const row = (words, figure, type) => body.append(receiptRow(words, figure, type));
  table.append(made("caption", `${result.ranks[at]}. ${result.makers[at].name}`), body);
  row("From", "100.0", "");
  receipt.lines.forEach((line) => row(line.answer ? `${line.title}: ${line.answer}` : line.title, line.figure, ""));
  if (receipt.rounding) row("rounding", receipt.rounding, "quiet");
  row("Score", receipt.score, "total");
  return table;
}

function receiptRow(words, figure, type) {
  const row = made("tr", "", type ? { class: type } : {});
  row.append(made("th", words, { scope: "row" }), made("td", figure));
  return row;
}

// Say in every section that does not follow that it is as saved.
function showNotes(moved) {
  AS_SAVED.forEach((name) => {
    const body = byId(name)?.querySelector(".body");
    if (!body) return;
    const note = body.querySelector(":scope > .as-saved") ?? body.insertBefore(noteAsSaved(), body.firstChild);
    note.hidden = !moved;
  });
}

function noteAsSaved() {
  const note = made("p", "", { class: "aside as-saved" });
  note.append("This part is worked out with everything as saved. What you try stands under ", made("a", "Weights to try", { href: "#weights" }), ".");
  return note;
}

function showLines(app) {
  const lines = linesFor(app.page, app.state);
  const changed = app.state.off.some(Boolean) || app.state.weights.some((weight, at) => weight !== app.page.criteria[at].weight);
  byId("try-keep").hidden = !changed;
  byId("try-lines").value = lines;
  byId("try-lines").rows = Math.min(lines.split("\n").length, 12);
  byId("try-copied").textContent = "";
}

async function copyLines() {
  const lines = byId("try-lines");
  const said = byId("try-copied");
  try {
    await navigator.clipboard.writeText(lines.value);
    said.textContent = "Copied.";
  } catch {
    lines.focus();
    lines.select();
    said.textContent = "Marked: copy it with Ctrl+C, or Command+C.";
  }
}
