/** Interpolation of a function of two variables at Chebyshev nodes, as a polynomial cut at a total degree. */

/** Total degree of the polynomial; there is one node more in each variable. */
export const DEGREE = 7;
export const NODES: number = DEGREE + 1;
/** Number of the polynomial's coefficients. */
export const TERMS: number = ((DEGREE + 1) * (DEGREE + 2)) / 2;

/** The nodes in [−1, 1], rising. */
export const chebyshevNodes: Float64Array = Float64Array.from({ length: NODES }, (_, i) =>
  Math.cos((Math.PI * (NODES - 1 - i + 0.5)) / NODES),
);

const _transform = nodesToChebyshev();
const _power = chebyshevToPower();
const _half = new Float64Array(NODES);
const _chebyshev = new Float64Array(NODES * NODES);
const _powers = new Float64Array(NODES * NODES);

/** Discrete Chebyshev transform: row j holds (2 − δ_j0)/N·T_j(node i). */
function nodesToChebyshev(): Float64Array {
  const matrix = new Float64Array(NODES * NODES);
  for (let j = 0; j < NODES; j += 1) {
    for (let i = 0; i < NODES; i += 1) {
      matrix[j * NODES + i] =
        ((j > 0 ? 2 : 1) / NODES) * Math.cos(j * Math.acos(chebyshevNodes[i]!));
    }
  }
  return matrix;
}

/** Column j holds the power coefficients of the Chebyshev polynomial T_j, from T_j+1 = 2x·T_j − T_j−1. */
function chebyshevToPower(): Float64Array {
  const matrix = new Float64Array(NODES * NODES);
  matrix[0] = 1;
  matrix[NODES + 1] = 1;
  for (let j = 2; j < NODES; j += 1) {
    for (let i = 0; i < NODES; i += 1) {
      const shifted = i > 0 ? matrix[(i - 1) * NODES + j - 1]! : 0;
      matrix[i * NODES + j] = 2 * shifted - matrix[i * NODES + j - 2]!;
    }
  }
  return matrix;
}

/** out = left·middle·rightᵀ, all NODES × NODES. */
function sandwich(
  left: Float64Array,
  middle: Float64Array,
  right: Float64Array,
  out: Float64Array,
): void {
  for (let i = 0; i < NODES; i += 1) {
    for (let l = 0; l < NODES; l += 1) {
      let sum = 0;
      for (let j = 0; j < NODES; j += 1) sum += left[i * NODES + j]! * middle[j * NODES + l]!;
      _half[l] = sum;
    }
    for (let k = 0; k < NODES; k += 1) {
      let sum = 0;
      for (let l = 0; l < NODES; l += 1) sum += _half[l]! * right[k * NODES + l]!;
      out[i * NODES + k] = sum;
    }
  }
}

/**
 * Writes, from place `from` of `out` on, the power coefficients of the interpolant of `values` (NODES × NODES, row i at
 * node i of the first variable), cut at total degree DEGREE: for p = 0 … DEGREE those of xᵖ·y⁰, xᵖ·y¹, …
 */
export function interpolate(values: Float64Array, out: Float64Array, from: number): void {
  sandwich(_transform, values, _transform, _chebyshev);
  for (let j = 0; j < NODES; j += 1) {
    for (let k = NODES - j; k < NODES; k += 1) _chebyshev[j * NODES + k] = 0;
  }
  sandwich(_power, _chebyshev, _power, _powers);
  let at = from;
  for (let p = 0; p <= DEGREE; p += 1) {
    for (let q = 0; p + q <= DEGREE; q += 1) {
      out[at] = _powers[p * NODES + q]!;
      at += 1;
    }
  }
}
