// Which height of the strip stands at the lens at which second: the planned monotone cubic.

// Index of the last entry whose key is not after `value`, or -1.
function lastNotAfter(items, value, key) {
  let [low, high] = [0, items.length];
  while (low < high) {
    const middle = (low + high) >> 1;
    if (key(items[middle]) <= value) low = middle + 1; else high = middle;
  }
  return low - 1;
}

function heightAt(at) {
  const knots = plan.knots;
  if (!knots.length) return 0;
  const i = lastNotAfter(knots, at, (k) => k[0]);
  if (i < 0) return knots[0][1];
  if (i === knots.length - 1) return knots[i][1];
  const [t0, y0, m0] = knots[i];
  const [t1, y1, m1] = knots[i + 1];
  const w = t1 - t0;
  const u = (at - t0) / w;
  const v = 1 - u;
  return (1 + 2 * u) * v * v * y0 + u * v * v * w * m0 + u * u * (3 - 2 * u) * y1 - u * u * v * w * m1;
}

// The second at which a height stands at the lens (bisection: the travel never runs back).
function secondAt(height) {
  let [low, high] = [0, plan.end_s];
  for (let i = 0; i < 40; i += 1) {
    const middle = (low + high) / 2;
    if (heightAt(middle) < height) low = middle; else high = middle;
  }
  return high;
}

const speedAt = (at) => (heightAt(at + 0.05) - heightAt(at - 0.05)) / 0.1;
const lineAt = (at) => Math.max(lastNotAfter(plan.lines, at, (l) => l[0]), 0);
const segmentAt = (at) => Math.max(lastNotAfter(plan.segments, at, (s) => s.at_s), 0);
const screenfulAt = (at) => Math.max(lastNotAfter(plan.screenfuls, at, (p) => p[2]), 0);
const centreOf = (line) => (plan.lines[line]?.[3] ?? 0) + frame.line_px / 2;

function waitAt(at) {
  const wait = plan.waits[lastNotAfter(plan.waits, at, (w) => w.at_s)];
  return wait && at < wait.end_s ? wait : null;
}

// Seconds of a stretch that are read (not clips, pauses by cue, live parts).
function fixedBetween(from, to) {
  return plan.waits.reduce((sum, w) => sum + Math.max(0, Math.min(to, w.end_s) - Math.max(from, w.at_s)), 0);
}

// Real seconds from one place to a later one: what is read goes by the pace, waits are as long as ever.
function realBetween(from, to, factor) {
  const fixed = fixedBetween(from, to);
  return fixed + (to - from - fixed) / factor;
}

// Where the plan stands `seconds` real ones after `from`.
function onward(from, seconds, factor) {
  let [at, left] = [from, seconds];
  while (left > 1e-9 && at < plan.end_s) {
    const wait = waitAt(at);
    const next = wait ?? plan.waits[lastNotAfter(plan.waits, at, (w) => w.at_s) + 1];
    const until = Math.min(wait ? wait.end_s : next?.at_s ?? Infinity, plan.end_s);
    const pace = wait ? 1 : factor;
    const step = Math.min(left * pace, until - at);
    at = left * pace > step ? until : at + step;
    left -= step / pace;
  }
  return at;
}

// What is left from `at`: the middle and the central 80 % range, by the same law as the plan's own range.
// Not knowing the reader adds up along the script, each passage's own scatter adds in squares.
function leftFrom(at, factor) {
  let [common, own] = [0, 0];
  for (const segment of plan.segments) {
    const share = clamp((segment.at_s + segment.mean_s - at) / Math.max(segment.mean_s, 1e-9), 0, 1);
    common += segment.common_sd_s * share;
    own += segment.own_sd_s ** 2 * share;
  }
  const left = Math.max(plan.end_s - at, 0);
  const fixed = Math.min(fixedBetween(at, plan.end_s), left);
  const spoken = (left - fixed) / factor;
  const sd = Math.hypot(common, Math.sqrt(own));
  const log = spoken > 0 ? Math.sqrt(Math.log1p((sd / spoken) ** 2)) : 0;
  const z = 1.2815515655446004;
  return { mean: fixed + spoken, low: fixed + spoken * Math.exp(-z * log), high: fixed + spoken * Math.exp(z * log) };
}
