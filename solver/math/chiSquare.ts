/** The chi-square distribution's upper tail. */

/** Terms of either expansion that are tried; both end long before. */
const MOST_TERMS = 500;
const SMALLEST = 1e-300;

/** ln Γ(a) for a = n/2, exactly by its recurrence from Γ(½) = √π or Γ(1) = 1. */
function logGammaOfHalf(n: number): number {
  let sum = n % 2 === 0 ? 0 : 0.5 * Math.log(Math.PI);
  for (let twice = n % 2 === 0 ? 2 : 1; twice < n; twice += 2) sum += Math.log(twice / 2);
  return sum;
}

/** Lower regularised incomplete gamma P(a, x) by its power series; for x < a + 1. */
function lowerBySeries(a: number, x: number, logGamma: number): number {
  let term = 1 / a;
  let sum = term;
  for (let n = 1; n < MOST_TERMS && term > sum * 1e-16; n += 1) {
    term *= x / (a + n);
    sum += term;
  }
  return sum * Math.exp(a * Math.log(x) - x - logGamma);
}

/** Upper regularised incomplete gamma Q(a, x) by its continued fraction (Lentz's way); for x ≥ a + 1. */
function upperByFraction(a: number, x: number, logGamma: number): number {
  let b = x + 1 - a;
  let c = 1 / SMALLEST;
  let d = 1 / b;
  let value = d;
  for (let n = 1; n < MOST_TERMS; n += 1) {
    const top = -n * (n - a);
    b += 2;
    d = 1 / (top * d + b || SMALLEST);
    c = b + top / c || SMALLEST;
    value *= c * d;
    if (Math.abs(c * d - 1) < 1e-15) break;
  }
  return value * Math.exp(a * Math.log(x) - x - logGamma);
}

/**
 * Probability that a chi-square variable of `degrees` degrees of freedom (a whole number, 1 or more) comes out at
 * `value` (0 or more) or above it: Q(degrees/2, value/2), the regularised upper incomplete gamma function
 * (NIST Digital Library of Mathematical Functions, 8.2, 8.7, 8.9). 1 for a value of 0.
 */
export function chiSquareTail(value: number, degrees: number): number {
  if (!(value > 0)) return 1;
  const a = degrees / 2;
  const x = value / 2;
  const logGamma = logGammaOfHalf(degrees);
  if (x < a + 1) return Math.max(0, 1 - lowerBySeries(a, x, logGamma));
  return upperByFraction(a, x, logGamma);
}
