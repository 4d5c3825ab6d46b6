/** Timing for the bench: warm up, then the median of several rounds. */

/** Median nanoseconds an item over `rounds` runs of `work`, each of which handles `items` of them. */
export function nanoseconds(items: number, rounds: number, work: () => void): number {
  work();
  work();
  const times: number[] = [];
  for (let round = 0; round < rounds; round += 1) {
    const start = process.hrtime.bigint();
    work();
    times.push(Number(process.hrtime.bigint() - start) / items);
  }
  times.sort((a, b) => a - b);
  return times[Math.floor(times.length / 2)]!;
}

/** Order-free numbers: a fixed linear congruential generator (Numerical Recipes), so that every run sees the same. */
export function shuffled(length: number): Uint32Array {
  const order = Uint32Array.from({ length }, (_, i) => i);
  let state = 12345;
  for (let i = length - 1; i > 0; i -= 1) {
    state = (Math.imul(state, 1664525) + 1013904223) >>> 0;
    const j = state % (i + 1);
    [order[i], order[j]] = [order[j]!, order[i]!];
  }
  return order;
}
