/** The least of a function of one number that may have kinks: the best of some samples, then golden section about it. */

const SAMPLES = 24;
const PART = (Math.sqrt(5) - 1) / 2;
const STEPS = 48;

/** Where between two ends `cost` is least; it is taken to have one least between the neighbours of the best sample. */
export function leastBetween(cost: (at: number) => number, low: number, high: number): number {
  const samples = Array.from({ length: SAMPLES + 1 }, (_, i) => low + ((high - low) * i) / SAMPLES);
  const costs = samples.map(cost);
  const best = costs.indexOf(Math.min(...costs));
  let [a, b] = [samples[Math.max(0, best - 1)]!, samples[Math.min(SAMPLES, best + 1)]!];
  let [c, d] = [b - PART * (b - a), a + PART * (b - a)];
  let [costC, costD] = [cost(c), cost(d)];
  for (let step = 0; step < STEPS; step += 1) {
    if (costC <= costD) {
      [b, d, costD] = [d, c, costC];
      c = b - PART * (b - a);
      costC = cost(c);
    } else {
      [a, c, costC] = [c, d, costD];
      d = a + PART * (b - a);
      costD = cost(d);
    }
  }
  return costC <= costD ? c : d;
}

const HALVINGS = 50;

/** The farthest from `inside` towards `end` at which `holds`, which is taken to fail once and for all on the way. */
export function lastThatHolds(holds: (at: number) => boolean, inside: number, end: number): number {
  if (holds(end)) return end;
  let [near, far] = [inside, end];
  for (let step = 0; step < HALVINGS; step += 1) {
    const middle = (near + far) / 2;
    if (holds(middle)) near = middle;
    else far = middle;
  }
  return near;
}
