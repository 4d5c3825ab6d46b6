/** Chance with a seed: the same seed, the same draws. */

/** Uniform draws in (0, 1): a 32-bit generator by multiplying and mixing, enough for tests. */
export function uniform(seed: number): () => number {
  let state = seed >>> 0;
  return () => {
    state = (state + 0x6d2b79f5) >>> 0;
    let mixed = Math.imul(state ^ (state >>> 15), state | 1);
    mixed ^= mixed + Math.imul(mixed ^ (mixed >>> 7), mixed | 61);
    return (((mixed ^ (mixed >>> 14)) >>> 0) + 0.5) / 4294967296;
  };
}

/** Draws of a standard normal variable (Box and Muller's way). */
export function normal(seed: number): () => number {
  const draw = uniform(seed);
  return () => Math.sqrt(-2 * Math.log(draw())) * Math.cos(2 * Math.PI * draw());
}
