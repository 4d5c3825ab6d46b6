/**
 * The corner as nine plain equations in the coordinates of LB, UB and TO, written from the geometry contract alone and
 * sharing no code with the solver: five rod lengths, three knuckle lengths, the wheel centre's height. Settings are
 * taken as 0. For cross-checks by general-purpose solvers, and for the bench's comparison.
 */
import type { Model, Vector3 } from '../../solver/index.ts';

type Triple = [number, number, number];

const minus = (a: readonly number[], b: readonly number[]): Triple => [
  a[0]! - b[0]!,
  a[1]! - b[1]!,
  a[2]! - b[2]!,
];
const dot = (a: readonly number[], b: readonly number[]): number =>
  a[0]! * b[0]! + a[1]! * b[1]! + a[2]! * b[2]!;
const cross = (a: readonly number[], b: readonly number[]): Triple => [
  a[1]! * b[2]! - a[2]! * b[1]!,
  a[2]! * b[0]! - a[0]! * b[2]!,
  a[0]! * b[1]! - a[1]! * b[0]!,
];
const squared = (a: readonly number[]): number => dot(a, a);

export interface NineEquations {
  /** LB, UB, TO of the design pose. */
  readonly start: number[];
  /** Nine residuals: squared lengths over twice the length (mm), and the height (mm). */
  residuals(x: readonly number[], travel: number, rack: number): number[];
  /** 9 × 9 derivatives of the residuals. */
  jacobian(x: readonly number[], travel: number, rack: number): number[][];
  wheelCentre(x: readonly number[]): Triple;
}

/** W in the knuckle's own oblique frame: W − LB = p·(UB − LB) + q·(TO − LB) + s·(UB − LB) × (TO − LB). */
function obliqueCoordinates(w: Triple, e: Triple, f: Triple): Triple {
  const n = cross(e, f);
  const ee = squared(e);
  const ff = squared(f);
  const ef = dot(e, f);
  const determinant = ee * ff - ef * ef;
  const we = dot(w, e);
  const wf = dot(w, f);
  return [
    (we * ff - wf * ef) / determinant,
    (wf * ee - we * ef) / determinant,
    dot(w, n) / squared(n),
  ];
}

function hubAxis(model: Model): Triple {
  const c = ((model.hub.camber ?? 0) * Math.PI) / 180;
  const t = ((model.hub.toe ?? 0) * Math.PI) / 180;
  return [Math.cos(c) * Math.sin(t), Math.cos(c) * Math.cos(t), -Math.sin(c)];
}

export function nineEquations(model: Model): NineEquations {
  const { lowerArm, upperArm, tieRod, wheel, hub } = model;
  const a = hubAxis(model);
  const out = (wheel.spacer ?? 0) - wheel.offset;
  const w0 = [0, 1, 2].map((i) => hub.face[i]! + out * a[i]!) as Triple;
  const [p, q, s] = obliqueCoordinates(
    minus(w0, lowerArm.ballJoint),
    minus(upperArm.ballJoint, lowerArm.ballJoint),
    minus(tieRod.outer, lowerArm.ballJoint),
  );
  const direction = (model.steering?.direction ?? [0, 1, 0]) as Vector3;
  const size = Math.sqrt(squared(direction));
  const start = [...lowerArm.ballJoint, ...upperArm.ballJoint, ...tieRod.outer];
  /** [offset of one end in x, offset of the other end or fixed point, length] */
  const rods: [number, number | Vector3, number][] = [
    [0, lowerArm.frontPivot, 0],
    [0, lowerArm.rearPivot, 0],
    [3, upperArm.frontPivot, 0],
    [3, upperArm.rearPivot, 0],
    [6, tieRod.inner, 0],
    [0, 3, 0],
    [0, 6, 0],
    [3, 6, 0],
  ];
  const other = (x: readonly number[], end: number | Vector3): readonly number[] =>
    typeof end === 'number' ? x.slice(end, end + 3) : end;
  for (const rod of rods) {
    rod[2] = Math.sqrt(squared(minus(start.slice(rod[0], rod[0] + 3), other(start, rod[1]))));
  }
  const ends = (x: readonly number[], rack: number, i: number): Triple => {
    const [at, end] = rods[i]!;
    const far =
      i === 4 ? tieRod.inner.map((v, k) => v + (rack * direction[k]!) / size) : other(x, end);
    return minus(x.slice(at, at + 3), far);
  };
  const wheelCentre = (x: readonly number[]): Triple => {
    const e = minus(x.slice(3, 6), x.slice(0, 3));
    const f = minus(x.slice(6, 9), x.slice(0, 3));
    const n = cross(e, f);
    return [0, 1, 2].map((i) => x[i]! + p * e[i]! + q * f[i]! + s * n[i]!) as Triple;
  };
  return {
    start,
    wheelCentre,
    residuals(x, travel, rack) {
      const lengths = rods.map(
        ([, , length], i) => (squared(ends(x, rack, i)) - length * length) / (2 * length),
      );
      return [...lengths, wheelCentre(x)[2] - w0[2] - travel];
    },
    jacobian(x, _travel, rack) {
      const rows = rods.map(([at, end, length], i) => {
        const row = new Array<number>(9).fill(0);
        const d = ends(x, rack, i);
        for (let k = 0; k < 3; k += 1) {
          row[at + k] = d[k]! / length;
          if (typeof end === 'number') row[end + k] = -d[k]! / length;
        }
        return row;
      });
      const e = minus(x.slice(3, 6), x.slice(0, 3));
      const f = minus(x.slice(6, 9), x.slice(0, 3));
      // d(e × f)_z: e_x f_y − e_y f_x
      rows.push([
        s * (e[1] - f[1]),
        s * (f[0] - e[0]),
        1 - p - q,
        s * f[1],
        -s * f[0],
        p,
        -s * e[1],
        s * e[0],
        q,
      ]);
      return rows;
    },
  };
}
