/** Inverse of a small square matrix, by rows in flat buffers. */

/** Writes the inverse of `matrix` (count × count, used up) into `out`: Gauss–Jordan with row pivots. False where it is singular. */
export function invert(matrix: Float64Array, out: Float64Array, count: number): boolean {
  out.fill(0);
  for (let i = 0; i < count; i += 1) out[i * count + i] = 1;
  for (let column = 0; column < count; column += 1) {
    let pivot = column;
    for (let row = column + 1; row < count; row += 1) {
      const isLarger =
        Math.abs(matrix[row * count + column]!) > Math.abs(matrix[pivot * count + column]!);
      if (isLarger) pivot = row;
    }
    const head = matrix[pivot * count + column]!;
    if (!(Math.abs(head) > 0)) return false;
    swapRows(matrix, pivot, column, count);
    swapRows(out, pivot, column, count);
    for (let i = 0; i < count; i += 1) {
      matrix[column * count + i] = matrix[column * count + i]! / head;
      out[column * count + i] = out[column * count + i]! / head;
    }
    for (let row = 0; row < count; row += 1) {
      if (row === column) continue;
      const factor = matrix[row * count + column]!;
      addRow(matrix, row, column, -factor, count);
      addRow(out, row, column, -factor, count);
    }
  }
  return true;
}

function swapRows(matrix: Float64Array, a: number, b: number, count: number): void {
  if (a === b) return;
  for (let i = 0; i < count; i += 1) {
    const kept = matrix[a * count + i]!;
    matrix[a * count + i] = matrix[b * count + i]!;
    matrix[b * count + i] = kept;
  }
}

/** row += factor·other */
function addRow(
  matrix: Float64Array,
  row: number,
  other: number,
  factor: number,
  count: number,
): void {
  if (factor === 0) return;
  for (let i = 0; i < count; i += 1) {
    matrix[row * count + i] = matrix[row * count + i]! + factor * matrix[other * count + i]!;
  }
}
