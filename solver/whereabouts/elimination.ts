/** Small systems of linear equations. */

/** Solves rows·x = right by elimination with pivoting; null where the rows do not determine x. */
export function solved(
  rows: readonly (readonly number[])[],
  right: readonly number[],
): readonly number[] | null {
  const size = rows.length;
  const table = rows.map((row, i) => [...row, right[i]!]);
  const scales = rows.map((row) => Math.max(...row.map(Math.abs)));
  for (let column = 0; column < size; column += 1) {
    let pivot = column;
    for (let i = column + 1; i < size; i += 1) {
      const here = Math.abs(table[i]![column]!) / scales[i]!;
      if (here > Math.abs(table[pivot]![column]!) / scales[pivot]!) pivot = i;
    }
    if (!(Math.abs(table[pivot]![column]!) > 1e-12 * scales[pivot]!)) return null;
    [table[column], table[pivot]] = [table[pivot]!, table[column]!];
    [scales[column], scales[pivot]] = [scales[pivot]!, scales[column]!];
    for (let i = 0; i < size; i += 1) {
      if (i === column) continue;
      const factor = table[i]![column]! / table[column]![column]!;
      table[i] = table[i]!.map((value, k) => value - factor * table[column]![k]!);
    }
  }
  return table.map((row, i) => row[size]! / row[i]!);
}
