// What is tried, kept in the page's address after "#": only what differs from what was saved, each part readable.
// #try&weight=years_trading:30&off=rating&open=best&if=Brightholm:years_trading:7

const TRYING = "#try";

function addressOf(page, state) {
  const parts = [];
  const put = (type, ...words) => parts.push(`${type}=${words.map(encodeURIComponent).join(":")}`);
  page.criteria.forEach((one, at) => {
    if (state.weights[at] !== one.weight) put("weight", one.key, shortest(state.weights[at]));
    if (state.off[at]) put("off", one.key);
  });
  if (state.open !== "saved") put("open", state.open);
  if (state.what) {
    const { maker, criterion } = state.what;
    put("if", bare(page.makers[maker].name), page.criteria[criterion].key, ...whatWords(page, state.what));
  }
  return parts.length ? [TRYING, ...parts].join("&") : "";
}

function whatWords(page, what) {
  const { choices } = page.criteria[what.criterion];
  const value = what.value === null ? "" : choices ? bare(choices[what.value].name) : shortest(what.value);
  return [value, what.count ?? "", what.unit ?? ""];
}

function isTrying(address) {
  return address === TRYING || address.startsWith(`${TRYING}&`);
}

// Read an address. Leaves the state and the parts that could not be understood, as they stand.
function stateIn(page, address) {
  const state = savedState(page);
  const odd = [];
  const keys = new Map(page.criteria.map((one, at) => [one.key, at]));
  for (const part of address.slice(TRYING.length).split("&").filter(Boolean)) {
    const words = wordsIn(part);
    if (!words || !applied(page, state, keys, words)) odd.push(part);
  }
  return { state, odd };
}

function wordsIn(part) {
  const at = part.indexOf("=");
  try {
    return [part.slice(0, at), ...part.slice(at + 1).split(":").map(decodeURIComponent)];
  } catch {
    return null; // a % that stands for no sign
  }
}

function applied(page, state, keys, [type, ...words]) {
  const at = keys.get(words[0]);
  if (type === "weight" && words.length === 2 && at !== undefined) return setWeight(state, at, numberIn(words[1]));
  if (type === "off" && words.length === 1 && at !== undefined) { state.off[at] = true; return true; }
  if (type === "open" && words.length === 1 && OPEN_RULES.includes(words[0])) { [state.open] = words; return true; }
  if (type === "if" && words.length === 5) { state.what = whatIn(page, keys, words); return state.what !== null; }
  return false;
}

function setWeight(state, at, weight) {
  if (weight === null || weight < 0) return false;
  state.weights[at] = weight;
  return true;
}

function whatIn(page, keys, [name, key, valueWord, countWord, unit]) {
  const maker = page.makers.findIndex((one) => bare(one.name) === name);
  const at = keys.get(key);
  if (maker < 0 || at === undefined || !page.makers[maker].open?.[at]) return null;
  const criterion = page.criteria[at];
  const value = valueIn(criterion, valueWord);
  const count = countIn(criterion, countWord);
  const units = Object.keys(criterion.units ?? {});
  if (value === undefined || count === undefined || (unit && !units.includes(unit))) return null;
  if (value === null && count === null && !unit) return null;
  return { maker, criterion: at, value, count, unit: unit || null };
}

// What is tried for a value: null where nothing is, undefined where it cannot be an answer.
function valueIn(criterion, word) {
  if (word === "") return null;
  if (criterion.choices) {
    const at = criterion.choices.findIndex((choice) => bare(choice.name) === word);
    return at < 0 ? undefined : at;
  }
  const number = numberIn(word);
  if (number === null) return undefined;
  const [least, most] = ends(criterion.within ?? [null, null]);
  return number < least || number > most ? undefined : number;
}

function countIn(criterion, word) {
  if (word === "") return null;
  const count = numberIn(word);
  return !criterion.steady || count === null || count < 0 ? undefined : count;
}
