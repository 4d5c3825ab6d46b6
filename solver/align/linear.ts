/** Small systems of linear equations, a few unknowns each, solved once in a while. */

/** Pivot, as a part of the greatest entry, below which a matrix counts as singular. */
const SINGULAR = 1e-13;

/**
 * Solves A·X = B by elimination with row exchange, A square by rows, B with as many columns as wanted. null where A is
 * singular. A and B are not changed.
 */
export function solveLinear(
  a: readonly (readonly number[])[],
  b: readonly (readonly number[])[],
): number[][] | null {
  const size = a.length;
  const rows = a.map((row, i) => [...row, ...b[i]!]);
  const greatest = Math.max(...a.flat().map(Math.abs));
  for (let column = 0; column < size; column += 1) {
    let best = column;
    for (let row = column + 1; row < size; row += 1) {
      if (Math.abs(rows[row]![column]!) > Math.abs(rows[best]![column]!)) best = row;
    }
    if (!(Math.abs(rows[best]![column]!) > SINGULAR * greatest)) return null;
    [rows[column], rows[best]] = [rows[best]!, rows[column]!];
    const lead = rows[column]!;
    for (const [index, row] of rows.entries()) {
      const factor = row[column]! / lead[column]!;
      if (index === column || factor === 0) continue;
      for (let k = column; k < row.length; k += 1) row[k] = row[k]! - factor * lead[k]!;
    }
  }
  return rows.map((row, i) => row.slice(size).map((value) => value / row[i]!));
}
