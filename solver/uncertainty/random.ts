/** Seeded random numbers, the same everywhere. */

/** Multiplier and modulus of each of the four congruential generators. */
const PARTS = [
  [11600, 2147483579],
  [47003, 2147483543],
  [23000, 2147483423],
  [33000, 2147483123],
] as const;

/** Scatters neighbouring seeds over 32 bits (A. Appleby's finaliser of MurmurHash3, from memory). */
function mixed(seed: number): number {
  let bits = Math.imul(seed | 0, 0x9e3779b1);
  bits = Math.imul(bits ^ (bits >>> 16), 0x85ebca6b);
  bits = Math.imul(bits ^ (bits >>> 13), 0xc2b2ae35);
  return (bits ^ (bits >>> 16)) >>> 0;
}

/**
 * Numbers even in (0, 1): the enhanced Wichmann–Hill generator, four multiplicative congruential generators added up, period some 2¹²⁰
 * (B. A. Wichmann and I. D. Hill, Computational Statistics & Data Analysis 51, 2006; JCGM 101:2008, C.3; from memory).
 */
export function evenNumbers(seed: number): () => number {
  const state = PARTS.map(([, modulus], i) => 1 + (mixed(seed + i) % (modulus - 1)));
  return () => {
    let sum = 0;
    for (let i = 0; i < PARTS.length; i += 1) {
      const [multiplier, modulus] = PARTS[i]!;
      state[i] = (multiplier * state[i]!) % modulus;
      sum += state[i]! / modulus;
    }
    return sum - Math.floor(sum);
  };
}

/** Normal numbers of mean 0 and standard deviation 1, by the polar method (G. Marsaglia and T. A. Bray, SIAM Review 6, 1964, from memory). */
export function normalNumbers(even: () => number): () => number {
  let spare: number | null = null;
  return () => {
    if (spare !== null) {
      const kept = spare;
      spare = null;
      return kept;
    }
    let [x, y, square] = [0, 0, 0];
    do {
      x = 2 * even() - 1;
      y = 2 * even() - 1;
      square = x * x + y * y;
    } while (square >= 1 || square === 0);
    const factor = Math.sqrt((-2 * Math.log(square)) / square);
    spare = y * factor;
    return x * factor;
  };
}
