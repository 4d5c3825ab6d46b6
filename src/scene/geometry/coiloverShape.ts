/** Lengths and diameters of the coilover: the model's where it states them. */
import type { Model } from '../../../solver/index.ts';
import { coiloverDiameter, shaftDiameter } from '../../../solver/model/defaults.ts';
import { DAMPER, DAMPER_RANGE, FORK, SPRING } from '../proportions.ts';
import { toVector } from './solid.ts';

export interface CoiloverShape {
  readonly diameter: number;
  readonly least: number;
  readonly greatest: number;
  /** Along the damper from the bottom joint, mm: foot and head of the body, lower spring perch. */
  readonly foot: number;
  readonly head: number;
  readonly perch: number;
  /** From the top joint down to the spring's upper seat. */
  readonly seat: number;
  readonly fork: boolean;
  readonly spring: { readonly meanRadius: number; readonly wire: number; readonly coils: number };
}

const STEPS = 24;

/** Height along the damper at which the half-shaft crosses it, mm from the bottom; null where it passes clear. */
export function forkHeight(model: Model): number | null {
  const { coilover, halfShaft } = model;
  if (coilover === undefined || halfShaft === undefined) return null;
  const bottom = toVector(coilover.bottom);
  const up = toVector(coilover.top).sub(bottom);
  const length = up.length();
  up.normalize();
  const from = toVector(halfShaft.inner);
  const along = toVector(halfShaft.outer).sub(from);
  const room = coiloverDiameter(coilover) / 2 + shaftDiameter(halfShaft) / 2;
  let nearest = Number.POSITIVE_INFINITY;
  let height = 0;
  for (let i = 0; i <= 8 * STEPS; i += 1) {
    const point = from
      .clone()
      .addScaledVector(along, i / (8 * STEPS))
      .sub(bottom);
    const h = Math.min(length, Math.max(0, point.dot(up)));
    const gap = point.addScaledVector(up, -h).length();
    if (gap < nearest) {
      nearest = gap;
      height = h;
    }
  }
  const crosses = nearest < room && height > 20 && height < 0.5 * length;
  return crosses ? height : null;
}

/** As many coils as leave room between them at the damper's least length. */
function coilCount(leastLength: number, wire: number): number {
  const most = (SPRING.filled * leastLength) / wire - 1;
  return Math.round(2 * Math.min(SPRING.most, Math.max(SPRING.least, most))) / 2;
}

export function coiloverShape(model: Model): CoiloverShape {
  const coilover = model.coilover!;
  const design = toVector(coilover.top).distanceTo(toVector(coilover.bottom));
  const diameter = coiloverDiameter(coilover);
  const least = coilover.minLength ?? DAMPER_RANGE.least * design;
  const greatest = coilover.maxLength ?? DAMPER_RANGE.greatest * design;
  const crossing = forkHeight(model);
  const head = Math.max(0.4 * least, least - DAMPER.topMount - DAMPER.leastShaft);
  const foot = crossing === null ? 0.5 * DAMPER.eye : Math.min(crossing + FORK.above, 0.6 * head);
  const perch = Math.min(Math.max(DAMPER.perch * least, foot + 12), 0.75 * head);
  const wire = SPRING.wire * diameter;
  const seat = DAMPER.topMount + 6;
  return {
    diameter,
    least,
    greatest,
    foot,
    head,
    perch,
    seat,
    fork: crossing !== null,
    spring: {
      meanRadius: (diameter - wire) / 2,
      wire,
      coils: coilCount(least - perch - seat, wire),
    },
  };
}

/** Half the width over the coilover's lower eyes, mm. */
export function mountHalfWidth(model: Model): number {
  return forkHeight(model) === null ? 16 : FORK.gap + FORK.leg;
}

/** Length of the spring for a damper length, mm: from the lower perch to the upper seat. */
export function springLength(shape: CoiloverShape, damperLength: number): number {
  return damperLength - shape.perch - shape.seat;
}
