import { describe, expect, it } from 'vitest';
import {
  assemble,
  createMeasures,
  createPose,
  Measure,
  type Model,
  measureInto,
  Slot,
  solve,
} from '../../solver/index.ts';
import { expectClose } from '../support/close.ts';
import { golden } from '../support/golden.ts';
import { sound } from '../support/models.ts';

/*
 * A planar four-bar as a corner: lower arm = crank a, knuckle = coupler b, upper arm = rocker c, inner pivots = ground d.
 * All arm axes stand along x (then turned by `yaw` about z); the tie rod is a parallel twin of the lower arm, so the
 * motion stays planar. The plane is turned by `turn` so that the crank lies near level, where travel drives it best.
 */

const DEGREE = Math.PI / 180;

interface Bars {
  readonly d: number;
  readonly a: number;
  readonly b: number;
  readonly c: number;
}

/** θ3 and θ4 of a crank angle: Freudenstein's closed form (Norton, ch. 4), radians. */
function freudenstein(
  { d, a, b, c }: Bars,
  theta2: number,
  crossed: boolean,
): { theta3: number; theta4: number } {
  const k1 = d / a;
  const k2 = d / c;
  const k3 = (a * a - b * b + c * c + d * d) / (2 * a * c);
  const A = Math.cos(theta2) - k1 - k2 * Math.cos(theta2) + k3;
  const B = -2 * Math.sin(theta2);
  const C = k1 - (k2 + 1) * Math.cos(theta2) + k3;
  const root = Math.sqrt(B * B - 4 * A * C);
  const theta4 = 2 * Math.atan2(-B + (crossed ? root : -root), 2 * A);
  const x = d + c * Math.cos(theta4) - a * Math.cos(theta2);
  const y = c * Math.sin(theta4) - a * Math.sin(theta2);
  return { theta3: Math.atan2(y, x), theta4 };
}

interface Layout {
  readonly turn: number;
  readonly yaw: number;
  readonly offset: number;
  readonly shift: readonly [number, number, number];
}

/** In-plane (X, Y) to vehicle axes: the plane is y-z turned by `turn`, then the whole by `yaw`, then shifted; `x` is axial. */
function placer({ turn, yaw, shift }: Layout) {
  return (x: number, X: number, Y: number): [number, number, number] => {
    const y = X * Math.cos(turn) - Y * Math.sin(turn);
    const z = X * Math.sin(turn) + Y * Math.cos(turn);
    return [
      x * Math.cos(yaw) - y * Math.sin(yaw) + shift[0],
      x * Math.sin(yaw) + y * Math.cos(yaw) + shift[1],
      z + shift[2],
    ];
  };
}

const HALF_AXIS = 150;
const ROD_OFFSET = 130;

function corner(bars: Bars, theta2: number, crossed: boolean, layout: Layout): Model {
  const at = placer(layout);
  const { theta4 } = freudenstein(bars, theta2, crossed);
  const crank: [number, number] = [bars.a * Math.cos(theta2), bars.a * Math.sin(theta2)];
  const rocker: [number, number] = [bars.d + bars.c * Math.cos(theta4), bars.c * Math.sin(theta4)];
  const lower = at(0, ...crank);
  return sound({
    format: 'armscribe/1',
    name: 'Planar four-bar',
    lowerArm: {
      frontPivot: at(HALF_AXIS, 0, 0),
      rearPivot: at(-HALF_AXIS, 0, 0),
      ballJoint: lower,
    },
    upperArm: {
      frontPivot: at(HALF_AXIS, bars.d, 0),
      rearPivot: at(-HALF_AXIS, bars.d, 0),
      ballJoint: at(layout.offset, ...rocker),
    },
    tieRod: { inner: at(ROD_OFFSET, 0, 0), outer: at(ROD_OFFSET, ...crank) },
    hub: { face: lower, camber: 0, toe: 0 },
    wheel: { diameter: 15, width: 6, offset: 0 },
    tyre: { diameter: 600, width: 180, loadedRadius: 290 },
    travel: { bump: 50, droop: 50 },
  });
}

const away = (a: number, b: number) => Math.abs(((a - b + 540) % 360) - 180);

/** Coupler and rocker angles of a solved pose, degrees in the mechanism's own plane. */
function anglesOf(data: Float64Array, bars: Bars, layout: Layout) {
  const cos = Math.cos(layout.yaw);
  const sin = Math.sin(layout.yaw);
  const inPlane = (at: number): [number, number] => {
    const dx = data[at]! - layout.shift[0];
    const dy = data[at + 1]! - layout.shift[1];
    const y = -dx * sin + dy * cos;
    const z = data[at + 2]! - layout.shift[2];
    return [
      y * Math.cos(layout.turn) + z * Math.sin(layout.turn),
      -y * Math.sin(layout.turn) + z * Math.cos(layout.turn),
    ];
  };
  const [ax, ay] = inPlane(Slot.lower);
  const [bx, by] = inPlane(Slot.upper);
  return {
    theta2: Math.atan2(ay, ax) / DEGREE,
    theta3: Math.atan2(by - ay, bx - ax) / DEGREE,
    theta4: Math.atan2(by, bx - bars.d) / DEGREE,
  };
}

const SCALE = 300;
const LAYOUTS: { name: string; yaw: number; offset: number; shift: [number, number, number] }[] = [
  { name: 'as it is', yaw: 0, offset: 0, shift: [0, 500, 0] },
  { name: 'turned and moved', yaw: 0.4, offset: 0, shift: [-220, 640, 133] },
  { name: 'upper ball joint shifted along its axis', yaw: 0, offset: 50, shift: [0, 500, 0] },
];

describe('textbook four-bars through the spatial solver', () => {
  const cases = golden('four-bar.csv').flatMap((row) =>
    [false, true].flatMap((crossed) => LAYOUTS.map((layout) => ({ row, crossed, ...layout }))),
  );

  it.each(cases)('$row.row, crossed $crossed, $name', ({ row, crossed, yaw, offset, shift }) => {
    const number = (key: string) => row[key] as number;
    const size = SCALE / Math.max(number('a'), number('b'), number('c'), number('d'));
    const bars = {
      d: number('d') * size,
      a: number('a') * size,
      b: number('b') * size,
      c: number('c') * size,
    };
    const theta2 = number('theta2') * DEGREE;
    // Measured some degrees away from the book's pose, then driven to it by travel.
    const away2 = theta2 - 6 * DEGREE;
    const layout: Layout = { turn: -theta2 + 0.2, yaw, offset, shift };
    const model = corner(bars, away2, crossed, layout);
    const at = placer(layout);
    const travel =
      at(0, bars.a * Math.cos(theta2), bars.a * Math.sin(theta2))[2] - model.lowerArm.ballJoint[2];
    const pose = createPose();
    expect(solve(assemble(model), pose, travel, 0)).toBe('reached');
    const angles = anglesOf(pose.data, bars, layout);
    expectClose(
      angles.theta2,
      number('theta2') > 179 ? angles.theta2 : number('theta2'),
      1e-9,
      'deg',
      'crank',
    );
    const prefix = crossed ? 'crossed' : 'open';
    const tolerance = number('tolerance');
    expect(away(angles.theta3, number(`${prefix}Theta3`))).toBeLessThanOrEqual(tolerance);
    expect(away(angles.theta4, number(`${prefix}Theta4`))).toBeLessThanOrEqual(tolerance);
    const exact = freudenstein(bars, theta2, crossed);
    expect(away(angles.theta3, exact.theta3 / DEGREE)).toBeLessThan(1e-9);
  });

  it('keep a knuckle of √(b² + h²) when the upper joint is shifted by h: example 4-1 with h 50 spans 130', () => {
    const model = corner({ d: 100, a: 40, b: 120, c: 80 }, 40 * DEGREE, false, {
      turn: -0.5,
      yaw: 0,
      offset: 50,
      shift: [0, 500, 0],
    });
    const { upperArm, lowerArm } = model;
    const span = Math.hypot(
      ...[0, 1, 2].map((i) => upperArm.ballJoint[i]! - lowerArm.ballJoint[i]!),
    );
    expectClose(span, 130, 1e-9, 'mm', 'knuckle');
  });
});

describe('equal parallel arms', () => {
  it('never change camber or toe, and carry the wheel on one circle', () => {
    const length = 350;
    const model = sound({
      format: 'armscribe/1',
      name: 'Parallelogram',
      lowerArm: {
        frontPivot: [150, 400, -100],
        rearPivot: [-150, 400, -100],
        ballJoint: [0, 750, -100],
      },
      upperArm: {
        frontPivot: [150, 400, 200],
        rearPivot: [-150, 400, 200],
        ballJoint: [0, 750, 200],
      },
      tieRod: { inner: [120, 400, 0], outer: [120, 750, 0] },
      hub: { face: [0, 850, 50], camber: -1.5, toe: 0.3 },
      wheel: { diameter: 17, width: 7, offset: 30 },
      tyre: { diameter: 690, width: 220, loadedRadius: 330 },
      travel: { bump: 100, droop: 100 },
    });
    const pose = createPose();
    const measures = createMeasures();
    const assembled = assemble(model);
    for (let travel = -100; travel <= 100; travel += 12.5) {
      expect(solve(assembled, pose, travel, 0)).toBe('reached');
      measureInto(assembled, pose, measures);
      const theta = Math.asin(travel / length);
      expectClose(measures[Measure.camber]!, -1.5, 1e-10, 'deg', 'camber');
      expectClose(measures[Measure.toe]!, 0.3, 1e-10, 'deg', 'toe');
      // Lateral shift L·(cos θ − cos θ₀).
      expectClose(
        pose.data[Slot.lower + 1]! - 750,
        length * (Math.cos(theta) - 1),
        1e-9,
        'mm',
        'shift',
      );
    }
  });
});
