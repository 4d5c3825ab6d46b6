/** One drag of a hard point: from the hand's shift in the pose to the point of the design, rounded. */
import { createPose, type Pose, type Vector3 } from '../../../solver/index.ts';
import { type Carried, directionBack, directionNow, placeNow } from './carried.ts';
import type { Pointer } from './pointer.ts';
import { alongLine, onPlane } from './rays.ts';
import { FINE, snapped } from './snap.ts';

/** An axis of the design: x, y, z. */
export type Axis = 0 | 1 | 2;

export const UNITS: readonly [Float64Array, Float64Array, Float64Array] = [
  Float64Array.of(1, 0, 0),
  Float64Array.of(0, 1, 0),
  Float64Array.of(0, 0, 1),
];

export type PointDrag = ReturnType<typeof createPointDrag>;

/** A drag: what was taken, and the shift of the hand so far. */
export function createPointDrag() {
  const start = new Float64Array(3);
  const away = new Float64Array(3);
  const along = new Float64Array(3);
  const hand = new Float64Array(3);
  const anchor = new Float64Array(3);
  const base = new Float64Array(3);
  const shift = new Float64Array(3);
  const pose: Pose = createPose();
  let carried: Carried | null = null;
  let axis: Axis | null = null;
  let isFine = false;

  /** Writes where the hand is, in the plane of the screen or on the axis; false where that cannot be read. */
  function readHand(pointer: Pointer): boolean {
    if (axis === null) return onPlane(pointer.ray, start, away, hand);
    const t = alongLine(pointer.ray, start, along);
    if (Number.isNaN(t)) return false;
    for (let i = 0; i < 3; i += 1) hand[i] = start[i]! + t * along[i]!;
    return true;
  }

  return {
    begin(pointer: Pointer, taken: Carried, by: Axis | null, posedNow: Pose): void {
      carried = taken;
      axis = by;
      pose.data.set(posedNow.data);
      placeNow(taken, pose, start);
      away.set(pointer.away);
      if (by !== null) directionNow(taken, pose, UNITS[by]!, along);
      if (!readHand(pointer)) hand.set(start);
      anchor.set(hand);
      base.fill(0);
      isFine = pointer.isFine;
    },
    /** The design point for the pointer now, rounded to `step`. */
    wanted(pointer: Pointer, step: number): Vector3 | null {
      if (carried === null || !readHand(pointer)) return null;
      const pace = isFine ? FINE : 1;
      for (let i = 0; i < 3; i += 1) shift[i] = base[i]! + pace * (hand[i]! - anchor[i]!);
      if (pointer.isFine !== isFine) {
        // The other pace from here on: what was moved so far stays moved.
        isFine = pointer.isFine;
        base.set(shift);
        anchor.set(hand);
      }
      directionBack(carried, pose, shift, shift);
      if (axis !== null) {
        const only = shift[axis]!;
        shift.fill(0);
        shift[axis] = only;
      }
      return snapped(carried.design, shift, step);
    },
  };
}
