// From an answer to points: bounds, pieces, number of ratings, knots or choices, limit; the command's rules, in its order.

const OPEN_RULES = ["worst", "middle", "best"];

// What counts in the score between two ends.
function countedPoints(low, high, rule) {
  if (rule === "worst") return low;
  if (rule === "best") return high;
  const wanted = rule === "middle" ? (low + high) / 2 : rule;
  return Math.min(Math.max(wanted, low), high);
}

// Points along straight lines between knots, level beyond the first and the last.
function interpolated(knots, answer) {
  const last = knots[knots.length - 1];
  if (answer <= knots[0][0]) return knots[0][1];
  if (answer >= last[0]) return last[1];
  let at = 0;
  while (knots[at + 1][0] <= answer) at += 1;
  const [[x0, y0], [x1, y1]] = [knots[at], knots[at + 1]];
  return answer === x0 ? y0 : ((y1 - y0) / (x1 - x0)) * (answer - x0) + y0;
}

// The least and the greatest points over a range of answers: at an end, or at a knot inside it.
function leastAndGreatest(knots, [low, high]) {
  const ends = [interpolated(knots, low), interpolated(knots, high)];
  const inside = knots.filter(([at]) => low < at && at < high).map(([, worth]) => worth);
  return [Math.min(...ends, ...inside), Math.max(...ends, ...inside)];
}

// Read a pair of numbers from the page's data, whose open ends are null.
function ends(pair) {
  return [pair[0] ?? -Infinity, pair[1] ?? Infinity];
}

function heldWithin([low, high], [least, most]) {
  return [Math.max(low, least), Math.min(high, most)];
}

function divided([low, high], [fewest, most]) {
  return [low / (low < 0 ? fewest : most), high / (high < 0 ? most : fewest)];
}

// (n·r + m·u) / (n + m) over the corners of both ranges.
function steadied([low, high], ratings, steady) {
  const lows = ratings.map((count) => drawn(low, count, steady));
  const highs = ratings.map((count) => drawn(high, count, steady));
  return [Math.min(...lows), Math.max(...highs)];
}

function drawn(rating, count, [usual, countsAs]) {
  if (count === Infinity) return rating;
  if (count === 0) return usual;
  return (rating * count + countsAs * usual) / (count + countsAs);
}

// An open end of a rating cannot be steadied: it reaches as far as the points vary.
function withinKnots([low, high], knots) {
  const least = low === -Infinity ? Math.min(knots[0][0], high) : low;
  return [least, high === Infinity ? Math.max(knots[knots.length - 1][0], least) : high];
}

// What another answer is worth. `open` is what the page knows of the answer; `tried` holds what is tried in its place:
// a choice, or a value, a count of ratings, a unit that the minimum is per; null where as it is.
function worthOf(criterion, open, tried) {
  return criterion.choices ? worthOfChoice(criterion, open, tried) : worthOfNumber(criterion, open, tried);
}

function worthOfChoice(criterion, open, tried) {
  const name = tried.value ?? (open.typed && open.typed[0]);
  const picked = name === null ? criterion.choices : [criterion.choices[name]];
  const worth = picked.map((choice) => choice.points);
  const passing = picked.filter((choice) => choice.passes).map((choice) => choice.points);
  return {
    low: Math.min(...worth),
    high: Math.max(...worth),
    reach: Math.max(0, ...passing),
    known: name !== null,
    fails: passing.length === 0,
    mayFail: passing.length > 0 && passing.length < picked.length,
  };
}

function worthOfNumber(criterion, open, tried) {
  const known = tried.value !== null || open.typed !== null;
  const typed = tried.value === null ? ends(open.typed ?? [null, null]) : [tried.value, tried.value];
  const tested = divided(heldWithin(typed, ends(criterion.within ?? [null, null])), piecesOf(criterion, open, tried));
  const limit = ends(criterion.window ?? [null, null]);
  const fails = tested[1] < limit[0] || tested[0] > limit[1] || limit[0] > limit[1];
  const passes = tested[0] >= limit[0] && tested[1] <= limit[1];
  const [low, high] = pointsOver(criterion, open, tried, tested);
  const passing = clip(reachedBy(criterion, tested), limit);
  const reach = criterion.window ? pointsOver(criterion, open, tried, passing)[1] : high;
  return { low, high, reach, known, fails, mayFail: !fails && !passes };
}

function clip([low, high], [least, most]) {
  return [low, high].map((one) => Math.min(Math.max(one, least), most));
}

function reachedBy(criterion, tested) {
  return criterion.steady ? withinKnots(tested, criterion.knots) : tested;
}

function pointsOver(criterion, open, tried, tested) {
  const reached = reachedBy(criterion, tested);
  if (!criterion.steady) return leastAndGreatest(criterion.knots, reached);
  const ratings = tried.count === null ? ends(open.ratings ?? [0, null]) : [tried.count, tried.count];
  return leastAndGreatest(criterion.knots, steadied(reached, ratings, criterion.steady));
}

function piecesOf(criterion, open, tried) {
  if (!open.pieces) return [1, 1];
  return tried.unit === null ? open.pieces : [criterion.units[tried.unit], criterion.units[tried.unit]];
}
