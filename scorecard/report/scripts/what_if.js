// What if an open answer were known: pick a maker and one of its open answers, try a value, see where it would stand.

function buildWhatIf(app) {
  const order = app.saved.order.filter((at) => Object.keys(app.page.makers[at].open ?? {}).length);
  byId("what-if").hidden = order.length === 0;
  byId("if-maker").replaceChildren(option("", "nobody"), ...order.map((at) => option(String(at), app.page.makers[at].name)));
  byId("if-maker").addEventListener("change", () => ask(app, null));
  byId("if-criterion").addEventListener("change", () => ask(app, Number(byId("if-criterion").value)));
  ["if-number", "if-count"].forEach((id) => byId(id).addEventListener("input", () => tryAnswer(app)));
  ["if-choice", "if-unit"].forEach((id) => byId(id).addEventListener("change", () => tryAnswer(app)));
}

// Ask of an open answer of the maker that is picked, by default of its first; nothing is tried for it yet.
function ask(app, criterion) {
  const picked = byId("if-maker").value;
  const first = picked === "" ? null : Number(Object.keys(app.page.makers[picked].open)[0]);
  app.asked = picked === "" ? null : { maker: Number(picked), criterion: criterion ?? first };
  change(app, (state) => { state.what = null; });
}

function tryAnswer(app) {
  const criterion = app.page.criteria[app.asked.criterion];
  const valueWord = criterion.choices ? byId("if-choice").value : byId("if-number").value.trim();
  const value = criterion.choices ? (valueWord === "" ? null : Number(valueWord)) : valueIn(criterion, valueWord);
  const count = criterion.steady ? countIn(criterion, byId("if-count").value.trim()) : null;
  const unit = byId("if-unit").value || null;
  if (value === undefined) app.refused = refusal(valueWord, withinWords(criterion));
  else app.refused = count === undefined ? refusal(byId("if-count").value, ", 0 or more") : null;
  const nothing = app.refused !== null || (value === null && count === null && unit === null);
  change(app, (state) => { state.what = nothing ? null : { ...app.asked, value, count, unit }; });
}

function refusal(word, bounds) {
  return `${isolated(word)} is no answer here: write a number${bounds}.`;
}

// Bring the fields in line with what is asked of and tried.
function showWhatIf(app, result) {
  const { asked } = app;
  byId("if-maker").value = asked ? String(asked.maker) : "";
  byId("if-fields").hidden = !asked;
  if (asked && fieldsKey(app) !== app.fields) buildFields(app);
  app.fields = fieldsKey(app);
  sayOrHide(byId("if-then"), asked ? thenSentence(app, result) : "");
}

function fieldsKey({ asked, fresh }) {
  return asked ? `${fresh} ${asked.maker} ${asked.criterion}` : null;
}

function buildFields(app) {
  const { maker, criterion: at } = app.asked;
  const criterion = app.page.criteria[at];
  const keys = Object.keys(app.page.makers[maker].open);
  byId("if-criterion").replaceChildren(...keys.map((key) => option(key, app.page.criteria[key].title)));
  byId("if-criterion").value = String(at);
  showField("if-number", !criterion.choices);
  showField("if-choice", Boolean(criterion.choices));
  showField("if-count", Boolean(criterion.steady));
  showField("if-unit", Boolean(criterion.units));
  const choices = (criterion.choices ?? []).map((choice, place) => option(String(place), choice.name));
  byId("if-choice").replaceChildren(option("", "as it is"), ...choices);
  byId("if-unit").replaceChildren(option("", "as it is"), ...Object.keys(criterion.units ?? {}).map((unit) => option(unit, unit)));
  say(byId("if-label"), numberLabel(criterion));
  say(byId("if-now"), nowSentence(app));
  fillFields(app, criterion);
  app.refused = null;
}

function showField(id, shown) {
  byId(id).closest("label").hidden = !shown;
}

function fillFields(app, criterion) {
  const what = app.state.what ?? { value: null, count: null, unit: null };
  byId("if-number").value = what.value === null || criterion.choices ? "" : tidy(what.value);
  byId("if-choice").value = what.value === null || !criterion.choices ? "" : String(what.value);
  byId("if-count").value = what.count === null ? "" : tidy(what.count);
  byId("if-unit").value = what.unit ?? "";
}

function numberLabel(criterion) {
  const unit = criterion.unit ? `, in ${criterion.unit}` : "";
  return `Answer${unit}${withinWords(criterion)}`;
}

function withinWords({ within }) {
  if (!within) return "";
  return `, ${within[0] ?? "any number"} to ${within[1] ?? "any number"}`;
}

function nowSentence({ page, saved, asked: { maker, criterion } }) {
  const one = saved.makers[maker];
  const [low, high] = [one.low[criterion], one.high[criterion]].map((points) => rounded(points));
  const could = low === high ? "" : `, and could be worth ${low} to ${high}`;
  return `Now: ${page.words[one.words[criterion]]}. It counts as ${rounded(one.counted[criterion])} points${could}.`;
}

function thenSentence(app, result) {
  const { asked, state, refused, page } = app;
  const criterion = page.criteria[asked.criterion];
  if (refused) return refused;
  if (!state.what || !result) return "Nothing is tried for it yet.";
  return `With ${whatPhrase(criterion, state.what)}: ${standing(result, asked.maker, criterion.title)}.`;
}

function standing(result, maker, title) {
  const { order, ranks, leaders, makers } = result;
  const { name, score } = makers[maker];
  if (!ranks[maker]) return `${name} would be ruled out by the limit on “${title}”`;
  const scored = `${name} would score ${rounded(score)}`;
  const behind = byMargin(makers[order[0]].score - score);
  if (ranks[maker] > 1) return `${scored} and take rank ${ranks[maker]}, ${behind} behind ${makers[order[0]].name}`;
  if (leaders.length > 1) return `${scored} and share first place`;
  return order.length === 1 ? `${scored} and be the only one ranked` : `${scored} and lead by ${byMargin(result.margin)}`;
}
