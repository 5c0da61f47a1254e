// Numbers, added up and written exactly as the command does.

const TIE = 1e-9; // scores nearer than this are level
const JUST_MORE = 1 + 5e-13; // lifts a half, and what is one in its 12 digits, above the half
const CLOSE = 0.05; // too close to call when so little weight, as a part of 1, decides it

// The sum without rounding error: partial sums that do not overlap (Shewchuk 1997), rounded half to even at the end.
function exactSum(numbers) {
  const partials = [];
  for (const number of numbers) {
    let x = number;
    let kept = 0;
    for (let at = 0; at < partials.length; at += 1) {
      let y = partials[at];
      if (Math.abs(x) < Math.abs(y)) { const swapped = x; x = y; y = swapped; }
      const high = x + y;
      const low = y - (high - x);
      if (low !== 0) { partials[kept] = low; kept += 1; }
      x = high;
    }
    partials.length = kept;
    partials.push(x);
  }
  return roundedSum(partials);
}

function roundedSum(partials) {
  let at = partials.length - 1;
  let high = at < 0 ? 0 : partials[at];
  let low = 0;
  while (at > 0 && low === 0) {
    at -= 1;
    const whole = high + partials[at];
    low = partials[at] - (whole - high);
    high = whole;
  }
  if (at > 0 && low !== 0 && Math.sign(low) === Math.sign(partials[at - 1])) {
    const further = high + 2 * low;
    if (further - high === 2 * low) high = further;
  }
  return high;
}

function product(shares, points) {
  return exactSum(shares.map((share, at) => share * points[at]));
}

// A number with so many decimals, no minus before zero; halves away from 0, with what sums left after 12 digits.
function rounded(number, decimals = 1) {
  const text = Math.abs(number * JUST_MORE).toFixed(decimals);
  return number < 0 && Number(text) !== 0 ? `-${text}` : text;
}

// A number as a person would type it.
function shortest(number) {
  const text = String(number);
  return text.includes("e-") ? number.toFixed(20).replace(/0+$/, "") : text;
}

// A weight as typed, or with four decimals where it was computed.
function tidy(number) {
  return shortest(Number(rounded(number, 4)));
}

// What was typed as a number: a point or a comma before the decimals; null where it is none, or none that could be meant.
function numberIn(text) {
  const plain = text.trim().replace("\u2212", "-").replace(",", ".");
  return /^-?(\d{1,15}(\.\d{0,20})?|\.\d{1,20})$/.test(plain) ? Number(plain) : null;
}
