/** The three views of a part in third-angle projection (ISO 5456-2): plan, the view from behind under it, the side beside it. */
import type { Vector3 } from '../../../solver/index.ts';
import { extentOf, type Mark, placed, type Spot } from './marks.ts';

export type Seen = (point: Vector3) => Spot;

/** 1 for a left part, −1 for a right one: its mirror image, which turns the other way. */
export type Sense = 1 | -1;

/** Where a point of the part's frame (u forward, v outboard, w up) is seen in each view. */
export function viewsFor(sense: Sense): Readonly<Record<keyof Views, Seen>> {
  return {
    plan: ([u, v]) => [-sense * v, u],
    behind: ([, v, w]) => [-sense * v, w],
    side: ([u, , w]) => [-sense * w, u],
  };
}

export interface Views {
  readonly plan: readonly Mark[];
  readonly behind: readonly Mark[];
  readonly side: readonly Mark[];
}

const ROOM = 18;

/** Lays the views out with their lower left corner at [0, 0]; views keep in line with each other. Gives the size they take. */
export function laidOut(
  { plan, behind, side }: Views,
  sense: Sense,
): { readonly marks: Mark[]; readonly width: number; readonly height: number } {
  const [planLeft, planLow, planRight] = extentOf(plan);
  const [behindLeft, , behindRight, behindTop] = extentOf(behind);
  const [sideLeft, , sideRight] = extentOf(side);
  const across =
    sense === 1
      ? Math.max(planRight, behindRight) + ROOM - sideLeft
      : Math.min(planLeft, behindLeft) - ROOM - sideRight;
  const marks = [
    ...plan,
    ...placed(behind, [0, planLow - ROOM - behindTop]),
    ...placed(side, [across, 0]),
  ];
  const [left, low, right, top] = extentOf(marks);
  return { marks: placed(marks, [-left, -low]), width: right - left, height: top - low };
}
