/** Symmetric positive definite systems, in flat row-major matrices. */

/**
 * Writes the lower triangle L with L·Lᵀ = A over A's lower triangle (`size` × `size`, row-major).
 * False where A is not positive definite to rounding; A is spoilt then.
 */
export function factorise(matrix: Float64Array, size: number): boolean {
  for (let column = 0; column < size; column += 1) {
    for (let row = column; row < size; row += 1) {
      let sum = matrix[row * size + column]!;
      for (let k = 0; k < column; k += 1) {
        sum -= matrix[row * size + k]! * matrix[column * size + k]!;
      }
      if (row === column) {
        if (!(sum > 0)) return false;
        matrix[row * size + row] = Math.sqrt(sum);
      } else {
        matrix[row * size + column] = sum / matrix[column * size + column]!;
      }
    }
  }
  return true;
}

/** Solves L·y = b in place. */
export function forwards(factor: Float64Array, size: number, b: Float64Array): void {
  for (let row = 0; row < size; row += 1) {
    let sum = b[row]!;
    for (let k = 0; k < row; k += 1) sum -= factor[row * size + k]! * b[k]!;
    b[row] = sum / factor[row * size + row]!;
  }
}

/** Solves Lᵀ·x = y in place. */
export function backwards(factor: Float64Array, size: number, y: Float64Array): void {
  for (let row = size - 1; row >= 0; row -= 1) {
    let sum = y[row]!;
    for (let k = row + 1; k < size; k += 1) sum -= factor[k * size + row]! * y[k]!;
    y[row] = sum / factor[row * size + row]!;
  }
}
