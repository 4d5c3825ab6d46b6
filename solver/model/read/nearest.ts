/** The known key a mistyped one was probably meant to be. */

/** No key of the format is longer than this; a longer unknown key is near none of them. */
const LONGEST_KEY = 32;

/** Edits (one letter put in, left out, changed, or two neighbours swapped) that turn a into b. */
function editDistance(a: string, b: string): number {
  let beforeLast: number[] = [];
  let last = Array.from({ length: b.length + 1 }, (_, column) => column);
  for (let row = 1; row <= a.length; row += 1) {
    const current = [row];
    for (let column = 1; column <= b.length; column += 1) {
      const change = a[row - 1] === b[column - 1] ? 0 : 1;
      let least = Math.min(last[column]! + 1, current[column - 1]! + 1, last[column - 1]! + change);
      if (row > 1 && column > 1 && a[row - 1] === b[column - 2] && a[row - 2] === b[column - 1]) {
        least = Math.min(least, beforeLast[column - 2]! + 1);
      }
      current.push(least);
    }
    beforeLast = last;
    last = current;
  }
  return last[b.length]!;
}

/** The nearest known key, the first of equals; undefined when more than a third of the letters differ. */
export function nearestKey(key: string, known: readonly string[]): string | undefined {
  if (key.length > LONGEST_KEY) return undefined;
  let nearest: string | undefined;
  let least = Number.POSITIVE_INFINITY;
  for (const candidate of known) {
    const edits = editDistance(key.toLowerCase(), candidate.toLowerCase());
    if (edits < least && edits <= Math.max(1, Math.floor(candidate.length / 3))) {
      least = edits;
      nearest = candidate;
    }
  }
  return nearest;
}
