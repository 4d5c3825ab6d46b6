import { Matrix4, PerspectiveCamera, Vector3 } from 'three';
import { describe, expect, it } from 'vitest';
import { placeRod, rodPointCount, Slot } from '../../solver/index.ts';
import { toThree } from '../../src/scene/axes.ts';
import { extentOf } from '../../src/scene/camera/extent.ts';
import { createShot, framePoints, OUTLOOKS } from '../../src/scene/camera/framing.ts';
import { isOpen } from '../../src/scene/geometry/opening.ts';
import { tyreOutline } from '../../src/scene/geometry/tyre.ts';
import { barrelOutline } from '../../src/scene/geometry/wheel.ts';
import { wheelFrame } from '../../src/scene/geometry/wheelFrame.ts';
import { openingNow, rimOf } from '../../src/scene/parts/turnOpening.ts';
import { inverseOf } from '../../src/scene/placing.ts';
import { createDocument } from '../../src/state/document.ts';
import { createInputs } from '../../src/state/inputs.ts';
import { createPosed, type Posed } from '../../src/state/posed.ts';
import { SHIPPED, shipped } from '../support/models.ts';

const VIEWS = Object.keys(OUTLOOKS) as (keyof typeof OUTLOOKS)[];
const ROOM = { left: 340, right: 320, top: 48, bottom: 210 };

function posedAt(name: (typeof SHIPPED)[number], travel: number, rack: number): Posed {
  const documentStore = createDocument(shipped(name), name);
  const inputs = createInputs(documentStore);
  const posed = createPosed(documentStore, inputs);
  inputs.move(travel, rack);
  return posed.current();
}

/** Where a viewpoint's camera stands, vehicle axes. */
function eyeOf({ corner }: Posed, viewpoint: (typeof VIEWS)[number]): Vector3 {
  const shot = createShot();
  framePoints(shot, extentOf(corner).points, OUTLOOKS[viewpoint], 1440, 900, ROOM);
  return new Vector3(...shot.target).addScaledVector(new Vector3(...shot.direction), shot.distance);
}

/** From the vehicle's axes into the wheel's, made anew from the pose's own frame. */
function intoWheel({ corner, pose: { data } }: Posed): Matrix4 {
  const column = (at: number): Vector3 => new Vector3().fromArray(Array.from(data), at);
  const knuckle = new Matrix4().makeBasis(
    column(Slot.frame),
    column(Slot.frame + 3),
    column(Slot.frame + 6),
  );
  knuckle.setPosition(column(Slot.lower));
  const design = inverseOf(corner.linkage.knuckle);
  return knuckle.multiply(design).multiply(wheelFrame(corner.model)).invert();
}

function holds(outline: readonly (readonly [number, number])[], s: number, radius: number) {
  let inside = false;
  for (let i = 1; i < outline.length; i += 1) {
    const [s0, r0] = outline[i - 1]!;
    const [s1, r1] = outline[i]!;
    if (r0 > radius !== r1 > radius && s < s0 + ((radius - r0) / (r1 - r0)) * (s1 - s0))
      inside = !inside;
  }
  return inside;
}

interface Seen {
  readonly now: Posed;
  /** Where the opening starts, and the eye in the wheel's axes. */
  readonly start: number;
  readonly eye: Vector3;
  readonly matrix: Matrix4;
}

function seen(now: Posed, viewpoint: (typeof VIEWS)[number]): Seen {
  const { corner } = now;
  const eye = eyeOf(now, viewpoint);
  const camera = new PerspectiveCamera();
  toThree(eye.x, eye.y, eye.z, camera.position);
  const knuckle = inverseOf(corner.linkage.knuckle);
  const start = openingNow(now, rimOf(corner), wheelFrame(corner.model), knuckle, camera);
  const matrix = intoWheel(now);
  return { now, start, eye: eye.applyMatrix4(matrix), matrix };
}

/** Points along the rod inside the rim, in the wheel's axes. */
function rodInside({ now: { corner, pose }, matrix }: Seen): Vector3[] {
  const { half, inner } = rimOf(corner);
  const rod = new Float64Array(3 * rodPointCount(corner));
  placeRod(corner, pose.data, rod);
  const points: Vector3[] = [];
  for (let at = 3; at < rod.length; at += 3) {
    const a = new Vector3().fromArray(Array.from(rod), at - 3).applyMatrix4(matrix);
    const b = new Vector3().fromArray(Array.from(rod), at).applyMatrix4(matrix);
    for (let part = 0; part <= 10; part += 1) points.push(a.clone().lerp(b, part / 10));
  }
  return points.filter(({ x, y, z }) => Math.abs(z) <= half && Math.hypot(x, y) <= inner);
}

/** Whether barrel or tyre, as they are drawn, stand between a point and the eye. */
function isHidden(from: Vector3, { now: { corner }, start, eye }: Seen): boolean {
  const outlines = [barrelOutline(corner.model), tyreOutline(corner.model)];
  const way = eye.clone().sub(from).normalize();
  for (let step = 0; step < 2 * rimOf(corner).outer; step += 3) {
    const { x, y, z } = from.clone().addScaledVector(way, step);
    const isMetal = outlines.some((outline) => holds(outline, z, Math.hypot(x, y)));
    if (isMetal && !isOpen(start, Math.atan2(y, x))) return true;
  }
  return false;
}

describe.each(SHIPPED)('the cut wheel of %s', (name) => {
  const model = shipped(name);
  const [least, most] = model.steering?.limit ?? [0, 0];
  const { bump, droop } = model.travel;
  const places = [
    [0, 0],
    [0.8 * bump, least],
    [0.8 * bump, most],
    [-0.8 * droop, 0],
    [-0.8 * droop, most],
  ] as const;

  it.each(VIEWS)('hides no part of the rod inside the rim, seen from: %s', (viewpoint) => {
    for (const [travel, rack] of places) {
      const sight = seen(posedAt(name, travel, rack), viewpoint);
      const points = rodInside(sight);
      const hidden = points.filter((point) => isHidden(point, sight));
      expect(hidden, `travel ${travel}, rack ${rack}`).toEqual([]);
    }
    expect(rodInside(seen(posedAt(name, 0, 0), viewpoint)).length).toBeGreaterThan(0);
  });

  it('stands on its ground, seen from the front, three quarters and above', () => {
    for (const viewpoint of ['front', 'threeQuarter', 'above'] as const) {
      const { start, matrix } = seen(posedAt(name, 0, 0), viewpoint);
      const down = new Vector3(0, 0, -1).transformDirection(matrix);
      expect(isOpen(start, Math.atan2(down.y, down.x))).toBe(false);
    }
  });
});
