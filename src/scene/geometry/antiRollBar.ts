/** The anti-roll bar's left half with its lever, in vehicle axes of the design pose, and its drop link along local z. */
import { Matrix4, Vector3 } from 'three';
import type { Model } from '../../../solver/index.ts';
import { linkDiameter } from '../../../solver/model/defaults.ts';
import { BAR_DIAMETER, LINK } from '../proportions.ts';
import { addPlate, block } from './plate.ts';
import { addBall, pinProfile, revolve, ringProfile } from './revolve.ts';
import { type Assembly, axisFrame, piece, toVector } from './solid.ts';
import { roundedPath, sweep } from './sweep.ts';

const LEVER_STEPS = 6;

interface BarShape {
  readonly radius: number;
  /** End of the straight bar on the lever's side, and where it is cut: the vehicle's centreline. */
  readonly end: Vector3;
  readonly middle: Vector3;
  readonly leverEnd: Vector3;
}

export function barShape(model: Model): BarShape | null {
  const bar = model.antiRollBar;
  if (bar === undefined) return null;
  const [a, b] = bar.axis.map(toVector) as [Vector3, Vector3];
  const leverEnd = toVector(bar.leverEnd);
  const [end, far] = a.distanceTo(leverEnd) < b.distanceTo(leverEnd) ? [a, b] : [b, a];
  const share = end.y === far.y ? 1 : Math.min(1, end.y / (end.y - far.y));
  return {
    radius: (bar.diameter ?? BAR_DIAMETER) / 2,
    end,
    middle: end.clone().lerp(far, share > 0 ? share : 1),
    leverEnd,
  };
}

export function buildBar(model: Model): Assembly {
  const shape = barShape(model);
  const assembly: Assembly = {};
  if (shape === null) return assembly;
  const { radius, end, middle, leverEnd } = shape;
  const path = roundedPath([middle, end, leverEnd], 4 * radius, 8);
  const bent = path.length - 2;
  const root = path[bent]!;
  const lever = Array.from({ length: LEVER_STEPS }, (_, i) =>
    root.clone().lerp(leverEnd, (i + 1) / LEVER_STEPS),
  );
  const points = [...path.slice(0, -1), ...lever];
  const last = points.length - 1;
  // The lever is forged down towards its eye.
  const slim = (share: number): number => {
    const along = (share * last - bent) / LEVER_STEPS;
    return radius * (1 - 0.4 * Math.max(0, along) ** 2);
  };
  const bar = piece(assembly, 'caliper');
  sweep(bar, points, (share) => [slim(share), slim(share)], { segments: 20 });
  addBall(bar, leverEnd, 0.6 * radius, 16);
  return assembly;
}

/** Rubber and clamp that hold the bar to the body. */
export function addBarClamp(assembly: Assembly, model: Model): void {
  const shape = barShape(model);
  if (shape === null) return;
  const { radius, end, middle } = shape;
  const place = end
    .clone()
    .lerp(middle, Math.min(0.5, (5.5 * radius) / Math.max(1, end.distanceTo(middle))));
  const at = axisFrame(place, middle.clone().sub(end), new Vector3(0, 0, 1));
  revolve(piece(assembly, 'rubber'), at, ringProfile(radius, radius + 9, -20, 20, 2), {
    segments: 22,
  });
  revolve(piece(assembly, 'fixed'), at, ringProfile(radius + 8.5, radius + 12, -14, 14, 1), {
    segments: 24,
  });
  const foot = new Matrix4().makeTranslation(radius + 13, 0, 0);
  addPlate(
    piece(assembly, 'fixed'),
    at.clone().multiply(foot),
    block(5, 4 * radius + 30, 1),
    -14,
    14,
  );
}

/** Distance between the drop link's two joints, mm; 0 without a bar. */
export function linkLength({ antiRollBar }: Model): number {
  if (antiRollBar === undefined) return 0;
  return toVector(antiRollBar.leverEnd).distanceTo(toVector(antiRollBar.link));
}

/** Radius of the drop link, mm: as stated, else as such links are, and never more than what clearances are measured to. */
export function linkRadius({ antiRollBar }: Model): number {
  if (antiRollBar === undefined) return 0;
  const measured = linkDiameter(antiRollBar) / 2;
  return antiRollBar.linkDiameter === undefined ? Math.min(LINK.radius, measured) : measured;
}

/** The drop link from the lever's end (z = 0) to the carried joint (z = length). */
export function buildDropLink(length: number, radius: number): Assembly {
  const assembly: Assembly = {};
  const at = new Matrix4();
  revolve(piece(assembly, 'steel'), at, pinProfile(radius, 0, length, 0.5), { segments: 14 });
  for (const z of [0, length]) {
    const eye = axisFrame(new Vector3(0, 0, z), new Vector3(1, 0, 0));
    revolve(piece(assembly, 'dark'), eye, pinProfile(LINK.eye, -9, 9, 4), { segments: 22 });
    revolve(piece(assembly, 'rubber'), eye, pinProfile(LINK.eye * 0.72, -16, 16, 4), {
      segments: 18,
    });
    revolve(piece(assembly, 'steel'), eye, pinProfile(5, -22, 22), { segments: 10 });
  }
  return assembly;
}
