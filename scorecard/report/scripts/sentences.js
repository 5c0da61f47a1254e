// What was worked out, in words. Names stand between isolate marks, which keep their direction to themselves.

const OPEN_MARK = "\u2068";
const CLOSE_MARK = "\u2069";
const NAMED = 10; // names in one list

function listed(words, link = "and") {
  return words.length < 2 ? words.join("") : `${words.slice(0, -1).join(", ")} ${link} ${words[words.length - 1]}`;
}

// Names as a list, the first of them where there are many.
function some(names, link = "and") {
  const more = names.length - NAMED;
  return listed(more > 0 ? [...names.slice(0, NAMED), `${more} ${more === 1 ? "other" : "others"}`] : names, link);
}

function capital(words) {
  const at = words.startsWith(OPEN_MARK) ? 0 : 1;
  return words.slice(0, at).toUpperCase() + words.slice(at);
}

function bare(text) {
  return text.split(OPEN_MARK).join("").split(CLOSE_MARK).join("");
}

// What somebody else wrote, such as the end of an address: nothing hidden, nothing that turns the line around, not long.
function isolated(text, longest = 60) {
  const seen = text.replace(/[\u0000-\u001f\u007f-\u009f\u061c\u200e\u200f\u2028-\u202e\u2066-\u2069\ufeff]/g, "\ufffd");
  const signs = Array.from(seen, (sign) => (/^[\ud800-\udfff]$/.test(sign) ? "\ufffd" : sign));
  const cut = signs.length > longest ? [...signs.slice(0, longest - 1), "…"] : signs;
  return `${OPEN_MARK}${cut.join("")}${CLOSE_MARK}`;
}

function ofHundred(part) {
  return part === 0 || part >= 0.0005 ? `${rounded(100 * part)} of 100` : "less than 0.1 of 100";
}

function byMargin(margin) {
  return margin > 0 && rounded(margin) === "0.0" ? "less than 0.1" : rounded(margin);
}

function knownWords(share) {
  const whole = rounded(100 * share, 0);
  if (whole === "100" && share < 1 - TIE) return "over 99 of 100";
  return whole === "0" && share > TIE ? "under 1 of 100" : `${whole} of 100`;
}

function bandWords(low, high) {
  return rounded(low) === rounded(high) ? null : `${rounded(low)} to ${rounded(high)}`;
}

function namesOf(result, places) {
  return places.map((at) => result.makers[at].name);
}

function verdictSentence(page, result) {
  const { verdict } = result;
  if (verdict.type === "nobody") return "No maker passes every limit.";
  const leader = result.makers[verdict.leader].name;
  switch (verdict.type) {
    case "close": return `Too close to call between ${closeNames(result)}: ${decides(result)}.`;
    case "sure": return `${leader} leads whatever the open answers turn out to be.`;
    case "one answer": return `${leader} leads, but one answer could change it: ${askedPhrase(page, result)}.`;
    case "alone": return `${leader} is the only maker that passes every limit${verdict.mayFail ? ", and it may yet fail one" : ""}.`;
    default: return `${leader} leads; no one open answer could put another first by itself, but the open answers could change that.`;
  }
}

function closeNames(result) {
  const { leaders, verdict } = result;
  return some(namesOf(result, leaders.length > 1 ? leaders : [verdict.leader, verdict.rival]));
}

function decides(result) {
  const { moved } = result.verdict;
  if (moved > 0) return `moving ${ofHundred(moved)} of weight decides it`;
  const groups = alike(result);
  if (result.leaders.length > 1 && groups.length === 1) return "no weighting tells them apart";
  const doubles = groups.filter((group) => group.length > 1).map((group) => some(namesOf(result, group)));
  const though = doubles.length ? `, though none tells ${listed(doubles, "or")} apart` : "";
  return `the least change of weights decides it${though}`;
}

// The joint leaders in groups of those with the same points on every criterion that counts.
function alike({ leaders, makers, shares }) {
  const groups = new Map();
  leaders.forEach((maker) => {
    const points = makers[maker].counted.filter((_, at) => shares[at] > 0);
    const key = points.map((one) => Math.round(one * 1e9)).join();
    groups.set(key, [...(groups.get(key) ?? []), maker]);
  });
  return [...groups.values()];
}

function askedPhrase(page, result) {
  const { maker, criterion, then } = result.verdict.asked;
  const subject = `${result.makers[maker].name} on “${page.criteria[criterion].title}”`;
  return `${subject} (with the right answer, ${listed(namesOf(result, then), "or")} leads)`;
}

// Who leads as the open answers turn out worst, middling or best, where these differ; else null.
function ruleSentence(result) {
  const words = ["at their worst", "in the middle", "at their best"];
  const groups = [];
  result.byRule.forEach((leaders, at) => {
    const last = groups[groups.length - 1];
    if (last && String(last.leaders) === String(leaders)) last.words.push(words[at]);
    else groups.push({ leaders, words: [words[at]] });
  });
  if (new Set(result.byRule.map(String)).size < 2 || result.order.length < 2) return null;
  const said = groups.map((one) => [together(result, one.leaders), listed(one.words, "or")]);
  const [[first, when], ...rest] = said;
  const verb = first.endsWith(" together") ? "lead" : "leads";
  const phrases = [`${first} ${verb} if the open answers turn out ${when}`, ...rest.map((one) => one.join(" if "))];
  return `${phrases.slice(0, -1).join(", ")}, and ${phrases[phrases.length - 1]}.`;
}

function together(result, leaders) {
  const names = some(leaders.map((at) => withKnown(result.makers[at])));
  return leaders.length > 1 ? `${names} together` : names;
}

// A name, and where answers are unknown how much is known.
function withKnown({ name, knownShare }) {
  return knownShare > 1 - TIE ? name : `${name} (known: ${knownWords(knownShare)})`;
}

// Who leads, by how much and, where it is to be said, ahead of whom; without a full stop.
function leadPhrase(result, withNext) {
  const { order, ranks, leaders, margin } = result;
  if (order.length === 0) return "no maker passes every limit";
  if (leaders.length > 1) return `${some(namesOf(result, leaders))} are level in first place`;
  const [leader] = namesOf(result, leaders);
  if (order.length === 1) return `${leader} is the only maker that passes every limit`;
  const next = namesOf(result, order.filter((maker) => ranks[maker] === 2));
  return `${leader} leads by ${byMargin(margin)}${withNext ? `, ahead of ${some(next)}` : ""}`;
}

// The live line: who leads, by how much, and whether that differs from what was saved.
function liveSentence(result, saved, moved) {
  const now = `${capital(leadPhrase(result, true))}.`;
  if (!moved) return `${now} This is as saved.`;
  const same = String(result.leaders) === String(saved.leaders);
  if (!same) return `${now} That differs: as saved, ${leadPhrase(saved, false)}.`;
  const by = saved.leaders.length === 1 && saved.margin !== null ? `, by ${byMargin(saved.margin)}` : "";
  return `${now} As saved, first place is the same${by}.`;
}

// What is tried, in one sentence; null where nothing is.
function triedSentence(page, state) {
  const parts = page.criteria.flatMap((one, at) => changedWeight(one, state, at));
  if (state.open !== "saved") parts.push(`open answers at their ${state.open}`.replace("their middle", "the middle"));
  if (state.what) parts.push(answerTried(page, state.what));
  return parts.length ? `Tried: ${parts.join("; ")}.` : null;
}

function changedWeight(criterion, state, at) {
  if (state.off[at]) return [`${criterion.title} left out (saved ${tidy(criterion.weight)})`];
  if (state.weights[at] === criterion.weight) return [];
  return [`${criterion.title} ${tidy(state.weights[at])} (saved ${tidy(criterion.weight)})`];
}

function answerTried(page, what) {
  const criterion = page.criteria[what.criterion];
  return `${page.makers[what.maker].name} on “${criterion.title}”: ${whatPhrase(criterion, what)}`;
}

function whatPhrase(criterion, { value, count, unit }) {
  const parts = [];
  if (value !== null) parts.push(criterion.choices ? `“${criterion.choices[value].name}”` : withUnit(value, criterion));
  if (count !== null) parts.push(`from ${tidy(count)} ${count === 1 ? "rating" : "ratings"}`);
  if (unit !== null) parts.push(`per ${unit}`);
  return parts.join(", ");
}

function withUnit(number, { unit, one }) {
  if (number === 1) return one;
  return unit === "%" ? `${tidy(number)}%` : `${tidy(number)} ${unit}`.trim();
}

// How an answer stands on the page: what was typed and, where it is open, what it is counted as.
function answerWords(page, state, result, maker, at) {
  const one = result.makers[maker];
  if (state.what && state.what.maker === maker && state.what.criterion === at) {
    return `${whatPhrase(page.criteria[at], state.what)}, tried`;
  }
  const said = one.words ? page.words[one.words[at]] : null;
  if (one.low[at] === one.high[at] || said === null) return said;
  const rule = state.open === "saved" ? page.criteria[at].unknown : state.open;
  return `${said}, counted as ${typeof rule === "string" ? `the ${rule}` : `${rounded(one.counted[at])} points`}`;
}

// A receipt: from 100, what each criterion takes off, the largest loss first, and what rounding leaves over, in tenths.
function receiptOf(page, state, result, maker) {
  const one = result.makers[maker];
  const lines = result.shares.map((share, at) => ({ at, loss: share * (100 - one.counted[at]) }));
  const weighted = lines.filter((line) => result.shares[line.at] > 0).sort((a, b) => b.loss - a.loss);
  const tenths = (number) => Math.round(Number(rounded(number)) * 10);
  const told = weighted.map((line) => ({
    title: page.criteria[line.at].title,
    answer: answerWords(page, state, result, maker, line.at),
    figure: signed(-tenths(line.loss)),
  }));
  const left = tenths(one.score) - 1000 + weighted.reduce((sum, line) => sum + tenths(line.loss), 0);
  return { lines: told, rounding: left ? signed(left) : "", score: rounded(one.score) };
}

function signed(tenths) {
  const size = (Math.abs(tenths) / 10).toFixed(1);
  return tenths === 0 ? size : `${tenths < 0 ? "\u2212" : "+"}${size}`;
}

// By how many points of score a criterion moves the ranked makers apart, at most.
function movesWords(result, at) {
  if (result.order.length < 2) return "no two makers to move apart";
  if (!result.shares[at]) return "weight 0: moves nothing";
  const points = result.order.map((maker) => result.makers[maker].counted[at]);
  const apart = rounded(result.shares[at] * (Math.max(...points) - Math.min(...points)));
  return `moves these makers’ scores by at most ${apart} points`;
}

// The weights tried, as lines for the criteria file.
function linesFor(page, state) {
  const weights = weightsOf(state);
  const told = page.criteria.map((one, at) => [one, weights[at]]);
  const changed = told.filter(([one, weight]) => page.lines.all || weight !== one.weight);
  return changed.map(([one, weight]) => `${one.heading}\nweight = ${shortest(weight)}\n`).join("\n");
}
