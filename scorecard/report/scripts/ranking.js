// The additive value model and the verdict, by the command's rules.

// Read the page's data: of every maker its points as three rows (low, high, reach), and what is known.
function unpacked(raw) {
  return {
    ...raw,
    makers: raw.makers.map((maker) => ({
      ...maker,
      low: maker.points.map((one) => (Array.isArray(one) ? one[0] : one)),
      high: maker.points.map((one) => (Array.isArray(one) ? one[1] : one)),
      reach: maker.points.map((one) => (Array.isArray(one) ? one[2] : one)),
      known: maker.points.map((_, at) => !maker.unknown.includes(at)),
      mayFail: maker.points.map((_, at) => maker.may_fail.includes(at)),
      out: false,
    })),
  };
}

function savedState(page) {
  return { weights: page.criteria.map((one) => one.weight), off: page.criteria.map(() => false), open: "saved", what: null };
}

function weightsOf(state) {
  return state.weights.map((weight, at) => (state.off[at] ? 0 : weight));
}

// The makers with the answer that is tried in its place.
function makersWith(page, what) {
  if (!what) return page.makers;
  return page.makers.map((maker, at) => (at === what.maker ? withAnswer(page, maker, what) : maker));
}

// A unit that the minimum is per holds for every answer of the maker that is divided by it.
function withAnswer(page, maker, what) {
  const changed = { ...maker };
  ["low", "high", "reach", "known", "mayFail"].forEach((row) => { changed[row] = [...maker[row]]; });
  page.criteria.forEach((criterion, at) => {
    const open = maker.open[at];
    const itself = at === what.criterion;
    if (!itself && !(what.unit !== null && open?.pieces)) return;
    const worth = worthOf(criterion, open, itself ? what : { value: null, count: null, unit: what.unit });
    ["low", "high", "reach", "known", "mayFail"].forEach((row) => { changed[row][at] = worth[row]; });
    changed.out ||= worth.fails;
  });
  return changed;
}

// Everything that follows from weights, the rule for open answers and an answer tried; null where all weights are 0.
function ranked(page, state) {
  const weights = weightsOf(state);
  const whole = exactSum(weights);
  if (!(whole > 0)) return null;
  const shares = weights.map((weight) => weight / whole);
  const rules = page.criteria.map((one) => (state.open === "saved" ? one.unknown : state.open));
  const makers = makersWith(page, state.what).map((maker) => scored(maker, shares, rules));
  const places = placesOf(makers);
  const result = { weights, shares, makers, ...places };
  return { ...result, margin: marginOf(result), verdict: verdictOf(result), byRule: leadersByRule(result) };
}

function scored(maker, shares, rules) {
  const counted = maker.low.map((low, at) => countedPoints(low, maker.high[at], rules[at]));
  const score = product(shares, counted);
  const varied = maker.low.some((low, at) => maker.high[at] > low);
  const sum = (row) => (varied ? product(shares, row) : score);
  return {
    ...maker,
    counted,
    score,
    lowest: Math.min(sum(maker.low), score),
    highest: Math.max(sum(maker.high), score),
    reachable: sum(maker.reach),
    knownShare: Math.min(exactSum(shares.filter((_, at) => maker.known[at])), 1),
  };
}

// Ranks from 1, level ones sharing the better rank; 0 where ruled out. The order is that of rank, then of the sheet.
function placesOf(makers) {
  const falling = makers.map((_, at) => at).filter((at) => !makers[at].out);
  falling.sort((a, b) => makers[b].score - makers[a].score || a - b);
  const ranks = makers.map(() => 0);
  let best = 0;
  falling.forEach((maker, place) => {
    if (place === 0 || makers[falling[best]].score - makers[maker].score > TIE) best = place;
    ranks[maker] = best + 1;
  });
  const order = [...falling].sort((a, b) => ranks[a] - ranks[b] || a - b);
  return { falling, ranks, order, leaders: order.filter((maker) => ranks[maker] === 1) };
}

function marginOf({ order, ranks, makers }) {
  if (order.length < 2) return null;
  return ranks[order[1]] === 1 ? 0 : makers[order[0]].score - makers[order[1]].score;
}

function verdictOf(result) {
  const { order, ranks, makers } = result;
  if (order.length === 0) return { type: "nobody" };
  const leader = order[0];
  const alone = order.length === 1;
  const near = nearest(result);
  if (near && near.moved <= CLOSE) return { type: "close", leader, ...near };
  if (leadsWhatever(result)) return { type: alone ? "alone" : "sure", leader, mayFail: false };
  const asked = deciding(result);
  if (asked) return { type: "one answer", leader, asked };
  return { type: alone ? "alone" : "several answers", leader, mayFail: makers[leader].mayFail.some(Boolean) };
}

function leadsWhatever({ order, makers }) {
  const [first, ...rest] = order;
  if (makers[first].mayFail.some(Boolean)) return false;
  return rest.every((other) => makers[first].lowest >= makers[other].reachable - TIE);
}

// The rival that the least weight moved between criteria brings level, and that part of all weight.
function nearest(result) {
  const found = result.order.slice(1).map((rival) => ({ rival, moved: leastMoved(result, result.order[0], rival) }));
  found.sort((a, b) => a.moved - b.moved || a.rival - b.rival);
  return found.length && found[0].moved < Infinity ? found[0] : null;
}

// A fractional knapsack, filled greedily: all goes to where the lead is least, first from where it is greatest.
function leastMoved({ shares, makers }, leader, rival) {
  const parts = shares.map((share, at) => ({ share, lead: makers[leader].counted[at] - makers[rival].counted[at] }));
  const counted = parts.filter((part) => part.share > 0);
  const least = Math.min(...counted.map((part) => part.lead));
  let still = exactSum(counted.map((part) => part.share * part.lead));
  if (still <= TIE) return 0;
  if (least > TIE) return Infinity;
  let moved = 0;
  for (const part of counted.sort((a, b) => b.lead - a.lead)) {
    const gain = part.lead - least;
    const taken = gain > 0 ? Math.min(Math.max(still / gain, 0), part.share) : 0;
    moved += taken;
    still -= part.share * gain;
  }
  return moved;
}

// Of the open answers that alone could put another strictly first, the one that carries most.
function deciding(result) {
  const found = result.order.flatMap((maker) => result.shares.map((_, at) => effect(result, maker, at)));
  return found.filter(Boolean).reduce((best, one) => (best && best.carries >= one.carries ? best : one), null);
}

function effect(result, at, criterion) {
  const maker = result.makers[at];
  const [low, high, reach, counted] = [maker.low, maker.high, maker.reach, maker.counted].map((row) => row[criterion]);
  if (low === high && !maker.mayFail[criterion]) return null;
  const share = result.shares[criterion];
  const leads = result.ranks[at] === 1;
  const others = bestOfOthers(result, at);
  const rises = maker.score + share * (reach - counted) > others.score + TIE && !(leads && result.leaders.length === 1);
  const sinks = maker.score + share * (low - counted) < others.score - TIE || maker.mayFail[criterion];
  const then = [...(rises ? [at] : []), ...(leads && sinks && others.maker !== null ? [others.maker] : [])];
  return then.length ? { maker: at, criterion, carries: share * (high - low), then } : null;
}

// The best score of the others in play, and whose it is where it is strictly the best.
function bestOfOthers({ falling, makers }, without) {
  const [first, second] = falling.slice(0, 3).filter((maker) => maker !== without);
  if (first === undefined) return { score: -Infinity, maker: null };
  const strictly = second === undefined || makers[first].score - makers[second].score > TIE;
  return { score: makers[first].score, maker: strictly ? first : null };
}

// Who leads with every open answer at its worst, middle and best.
function leadersByRule({ shares, makers, order }) {
  const inSheetOrder = [...order].sort((a, b) => a - b);
  return OPEN_RULES.map((rule) => {
    const scores = inSheetOrder.map((maker) => {
      const { low, high } = makers[maker];
      return product(shares, low.map((one, at) => countedPoints(one, high[at], rule)));
    });
    const best = Math.max(...scores);
    return inSheetOrder.filter((_, at) => best - scores[at] <= TIE);
  });
}
