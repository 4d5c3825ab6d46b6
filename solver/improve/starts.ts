/**
 * Starts of a search: the present place, then points that fill the bounds evenly (J. H. Halton, On the efficiency of certain
 * quasi-random sequences of points, 1960).
 */

/** A base for each number that moves; more of them share the last. */
const BASES = [2, 3, 5, 7, 11, 13, 17, 19, 23, 29, 31, 37];

/** The digits of a whole number mirrored at the point: 6 = 110₂ → 0.011₂. */
function mirrored(number: number, base: number): number {
  let share = 0;
  let place = 1;
  for (let rest = number; rest > 0; rest = Math.floor(rest / base)) {
    place /= base;
    share += (rest % base) * place;
  }
  return share;
}

/** How many starts are worth it for so many numbers. */
export function startCount(movers: number): number {
  return Math.min(12, 4 + 2 * movers);
}

/** The start of a number, the first of them the present place moved into the bounds. */
export function startOf(
  index: number,
  present: readonly number[],
  low: readonly number[],
  high: readonly number[],
): readonly number[] {
  return present.map((each, i) => {
    const [least, most] = [low[i]!, high[i]!];
    if (index === 0) return Math.min(most, Math.max(least, each));
    return least + (most - least) * mirrored(index, BASES[Math.min(i, BASES.length - 1)]!);
  });
}
