/** Solving a pose of a chart: where its mark and what it keeps of travel and rack are given. */
import { circleVelocity } from '../linkage/circle.ts';
import type { Linkage } from '../linkage/linkage.ts';
import { placeRack } from '../linkage/place.ts';
import { placeArms, turnFrame } from '../linkage/regular.ts';
import { Fixed, Slot } from '../linkage/slots.ts';
import { carryPoint } from '../linkage/triad.ts';
import { type Chart, markAt } from './chart.ts';
import { between } from './rates.ts';
import { crossed, scaledTriple, type Triple, triple, tripleAt } from './taylor.ts';

const TOLERANCE = 1e-9;
const MOST_ITERATIONS = 20;
/** A solution further than this from where it started is another pose, rad. */
const FARTHEST = 0.25;

const _outer = new Float64Array(3);
const _tangents = new Float64Array(6);

/** Places the knuckle's points; answers the steering axis's length. */
function place(
  { fixed }: Linkage,
  pose: Float64Array,
  theta: number,
  phi: number,
  psi: number,
): number {
  placeArms(fixed, pose, theta, phi);
  const span = turnFrame(pose, psi);
  _outer[0] = fixed[Fixed.outerAlong]!;
  _outer[1] = fixed[Fixed.outerAside]!;
  carryPoint(_outer, 0, pose, Slot.lower, Slot.frame, Slot.outer);
  carryPoint(fixed, Fixed.centreInFrame, pose, Slot.lower, Slot.frame, Slot.centre);
  return span;
}

function dotted(v: Triple, w: Triple): number {
  return v.x * w.x + v.y * w.y + v.z * w.z;
}

/** What the three equations grow by along one unknown: the axis's length, what is kept, the mark. */
type Column = readonly [number, number, number];

/** The column of a motion in which the lower joint has this velocity and the knuckle this spin. */
function columnOf(
  chart: Chart,
  pose: Float64Array,
  stretch: number,
  velocity: Triple,
  spin: Triple,
): Column {
  const moved = (at: number): Triple => {
    const turned = crossed(spin, between(pose, Slot.lower, at));
    return triple(velocity.x + turned.x, velocity.y + turned.y, velocity.z + turned.z);
  };
  const rod = between(pose, Slot.inner, Slot.outer);
  const kept =
    chart.kept === 'rack'
      ? dotted(rod, moved(Slot.outer)) / Math.sqrt(dotted(rod, rod))
      : moved(Slot.centre).z;
  return [stretch, kept, dotted(chart.along, moved(chart.at))];
}

function columnsAt(
  { fixed }: Linkage,
  chart: Chart,
  pose: Float64Array,
  span: number,
): readonly [Column, Column, Column] {
  circleVelocity(fixed, Fixed.lowerCircle, pose, Slot.lowerCos, _tangents, 0);
  circleVelocity(fixed, Fixed.upperCircle, pose, Slot.upperCos, _tangents, 3);
  const lower = tripleAt(_tangents, 0);
  const upper = tripleAt(_tangents, 3);
  const k = tripleAt(pose, Slot.frame);
  const still = triple(0, 0, 0);
  return [
    columnOf(chart, pose, -dotted(lower, k), lower, scaledTriple(-1 / span, crossed(k, lower))),
    columnOf(chart, pose, dotted(upper, k), still, scaledTriple(1 / span, crossed(k, upper))),
    columnOf(chart, pose, 0, still, k),
  ];
}

function determinantOf(a: Column, b: Column, c: Column): number {
  return (
    a[0] * (b[1] * c[2] - b[2] * c[1]) -
    b[0] * (a[1] * c[2] - a[2] * c[1]) +
    c[0] * (a[1] * b[2] - a[2] * b[1])
  );
}

function residualsAt(
  { fixed }: Linkage,
  chart: Chart,
  pose: Float64Array,
  span: number,
  mark: number,
  kept: number,
): Column {
  const rod = between(pose, Slot.inner, Slot.outer);
  return [
    span - 1 / fixed[Fixed.spanInverse]!,
    chart.kept === 'rack'
      ? Math.sqrt(dotted(rod, rod)) - Math.sqrt(fixed[Fixed.rodSquared]!)
      : pose[Slot.centre + 2]! - fixed[Fixed.designHeight]! - kept,
    markAt(chart, pose) - mark,
  ];
}

/** Writes travel and rack of a placed knuckle; false where the rod cannot reach the rack. */
function writeInputs({ fixed }: Linkage, chart: Chart, pose: Float64Array): boolean {
  pose[Slot.travel] = pose[Slot.centre + 2]! - fixed[Fixed.designHeight]!;
  if (chart.kept === 'rack') return true;
  const origin = tripleAt(fixed, Fixed.rackOrigin);
  const d = tripleAt(fixed, Fixed.rackDirection);
  const w = triple(
    pose[Slot.outer]! - origin.x,
    pose[Slot.outer + 1]! - origin.y,
    pose[Slot.outer + 2]! - origin.z,
  );
  const along = dotted(w, d);
  const squared = along * along - dotted(w, w) + fixed[Fixed.rodSquared]!;
  if (!(squared >= 0)) return false;
  const root = Math.sqrt(squared);
  const before = pose[Slot.rack]!;
  const isFirst = Math.abs(along - root - before) <= Math.abs(along + root - before);
  pose[Slot.rack] = isFirst ? along - root : along + root;
  placeRack(fixed, pose);
  return true;
}

/**
 * Newton from the pose in the buffer to where the mark and the kept input are as given; false where it does not get
 * there nearby. Leaves the linkage placed, its lengths within 1e-9 mm.
 */
export function solveChart(
  linkage: Linkage,
  pose: Float64Array,
  chart: Chart,
  mark: number,
  kept: number,
): boolean {
  if (chart.kept === 'rack') {
    pose[Slot.rack] = kept;
    placeRack(linkage.fixed, pose);
  }
  let theta = pose[Slot.lowerAngle]!;
  let phi = Math.atan2(pose[Slot.upperSin]!, pose[Slot.upperCos]!);
  const start = [theta, phi];
  let psi = 0;
  let spun = 0;
  for (let count = 0; count < MOST_ITERATIONS; count += 1) {
    const span = place(linkage, pose, theta, phi, psi);
    const r = residualsAt(linkage, chart, pose, span, mark, kept);
    if (Math.max(...r.map(Math.abs)) <= TOLERANCE) return writeInputs(linkage, chart, pose);
    const [a, b, c] = columnsAt(linkage, chart, pose, span);
    const det = determinantOf(a, b, c);
    theta -= determinantOf(r, b, c) / det;
    phi -= determinantOf(a, r, c) / det;
    psi = -determinantOf(a, b, r) / det;
    spun += psi;
    const moved = Math.max(Math.abs(theta - start[0]!), Math.abs(phi - start[1]!), Math.abs(spun));
    if (!(moved < FARTHEST)) return false;
  }
  return false;
}
