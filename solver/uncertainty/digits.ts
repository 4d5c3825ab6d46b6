/** Rounding to what is known (JCGM 100:2008, 7.2.6; numerical tolerance: JCGM 101:2008, 7.9.2). */

/** Decimals with which a ± keeps `significant` digits: 0.552 → 1 with one, 2 with two; 310 → −2 with one. */
export function decimalsKnown(uncertainty: number, significant: 1 | 2 = 1): number {
  const exponent = Number(uncertainty.toExponential(significant - 1).split('e')[1]);
  return significant - 1 - exponent;
}

/** Numerical tolerance δ: half of the last of the significant digits that an uncertainty is stated with. */
export function numericalTolerance(uncertainty: number, significant: 1 | 2 = 1): number {
  return 0.5 * 10 ** -decimalsKnown(uncertainty, significant);
}
