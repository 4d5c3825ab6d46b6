/** Vectors whose components are jets. */
import type { Vector3 } from '../math/vec3.ts';
import type { Jet, Jets } from './jets.ts';

export type JetVector = readonly [Jet, Jet, Jet];

/** Three perpendicular unit axes. */
export type JetAxes = readonly [JetVector, JetVector, JetVector];

export function constantVector(jets: Jets, [x, y, z]: Vector3): JetVector {
  return [jets.constant(x), jets.constant(y), jets.constant(z)];
}

export function sum(jets: Jets, a: JetVector, b: JetVector): JetVector {
  return [jets.add(a[0], b[0]), jets.add(a[1], b[1]), jets.add(a[2], b[2])];
}

export function difference(jets: Jets, a: JetVector, b: JetVector): JetVector {
  return [jets.subtract(a[0], b[0]), jets.subtract(a[1], b[1]), jets.subtract(a[2], b[2])];
}

/** factor·a, the factor a jet */
export function times(jets: Jets, factor: Jet, a: JetVector): JetVector {
  return [jets.multiply(factor, a[0]), jets.multiply(factor, a[1]), jets.multiply(factor, a[2])];
}

/** factor·a, the factor a number */
export function scaled(jets: Jets, factor: number, a: JetVector): JetVector {
  return [jets.scale(a[0], factor), jets.scale(a[1], factor), jets.scale(a[2], factor)];
}

export function dotProduct(jets: Jets, a: JetVector, b: JetVector): Jet {
  const xy = jets.add(jets.multiply(a[0], b[0]), jets.multiply(a[1], b[1]));
  return jets.add(xy, jets.multiply(a[2], b[2]));
}

export function crossProduct(jets: Jets, a: JetVector, b: JetVector): JetVector {
  const minor = (i: 0 | 1 | 2, j: 0 | 1 | 2): Jet =>
    jets.subtract(jets.multiply(a[i], b[j]), jets.multiply(a[j], b[i]));
  return [minor(1, 2), minor(2, 0), minor(0, 1)];
}

export function size(jets: Jets, a: JetVector): Jet {
  return jets.squareRoot(dotProduct(jets, a, a));
}

export function unitVector(jets: Jets, a: JetVector): JetVector {
  return times(jets, jets.reciprocal(size(jets, a)), a);
}

/** Axes with the first along `first` and the second towards `second`. */
export function axesFrom(jets: Jets, first: JetVector, second: JetVector): JetAxes {
  const e1 = unitVector(jets, first);
  const along = dotProduct(jets, second, e1);
  const e2 = unitVector(jets, difference(jets, second, times(jets, along, e1)));
  return [e1, e2, crossProduct(jets, e1, e2)];
}

/** Components of a vector along axes. */
export function along(jets: Jets, axes: JetAxes, a: JetVector): JetVector {
  return [dotProduct(jets, a, axes[0]), dotProduct(jets, a, axes[1]), dotProduct(jets, a, axes[2])];
}

/** The vector of components c: Σ c_i·axis_i, of any three vectors. */
export function composed(jets: Jets, axes: JetAxes, c: JetVector): JetVector {
  const two = sum(jets, times(jets, c[0], axes[0]), times(jets, c[1], axes[1]));
  return sum(jets, two, times(jets, c[2], axes[2]));
}

/** Every component by one of the algebra's operations on a single jet. */
export function each(a: JetVector, operation: (jet: Jet) => Jet): JetVector {
  return [operation(a[0]), operation(a[1]), operation(a[2])];
}
