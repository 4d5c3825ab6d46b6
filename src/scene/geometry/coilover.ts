/**
 * The coilover as two units that slide: the lower one from the bottom joint with z towards the top (eye or fork, body,
 * perch), the upper one from the top joint with z towards the bottom (eye, spring seat, shaft, bump stop). x is across.
 */
import { Matrix4, Vector3 } from 'three';
import type { Model } from '../../../solver/index.ts';
import {
  COILOVER_DIAMETER,
  DAMPER,
  DAMPER_RANGE,
  FORK,
  SHAFT_DIAMETER,
  SPRING,
} from '../proportions.ts';
import { pinProfile, revolve, ringProfile } from './revolve.ts';
import { type Assembly, axisFrame, piece, toVector } from './solid.ts';
import { sweep } from './sweep.ts';

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
  const room =
    (coilover.diameter ?? COILOVER_DIAMETER) / 2 + (halfShaft.diameter ?? SHAFT_DIAMETER) / 2;
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
  const diameter = coilover.diameter ?? COILOVER_DIAMETER;
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

/** An eye about local x at the origin: shell and rubber. */
function addEye(assembly: Assembly, radius: number, low: number, high: number): void {
  const at = axisFrame(new Vector3(), new Vector3(1, 0, 0));
  revolve(piece(assembly, 'dark'), at, ringProfile(radius * 0.68, radius, low, high), {
    segments: 26,
  });
  revolve(piece(assembly, 'rubber'), at, ringProfile(7.5, radius * 0.68, low, high), {
    segments: 20,
  });
}

function addFork(assembly: Assembly, shape: CoiloverShape): void {
  const middle = FORK.gap + FORK.leg / 2;
  for (const sense of [-1, 1]) {
    const x = sense * middle;
    const sides = [FORK.gap, FORK.gap + FORK.leg].map((edge) => sense * edge).sort((a, b) => a - b);
    addEye(assembly, DAMPER.eye, sides[0]!, sides[1]!);
    const path = [
      new Vector3(x, 0, DAMPER.eye * 0.8),
      new Vector3(x, 0, shape.foot - FORK.above * 0.75),
      new Vector3(x * 0.93, 0, shape.foot - FORK.above * 0.4),
      new Vector3(x * 0.6, 0, shape.foot - 4),
      new Vector3(0, 0, shape.foot + 10),
    ];
    sweep(piece(assembly, 'dark'), path, () => [FORK.leg / 2, 13], {
      segments: 14,
      hint: new Vector3(1, 0, 0),
    });
  }
}

/** Lower unit, from the bottom joint. */
export function buildLowerUnit(shape: CoiloverShape): Assembly {
  const assembly: Assembly = {};
  const at = new Matrix4();
  const body = DAMPER.body * shape.diameter;
  if (shape.fork) addFork(assembly, shape);
  else addEye(assembly, DAMPER.eye, -15, 15);
  const foot = shape.fork ? shape.foot : DAMPER.eye * 0.7;
  revolve(piece(assembly, 'steel'), at, pinProfile(body, foot, shape.head, 2), { segments: 28 });
  revolve(piece(assembly, 'dark'), at, ringProfile(body - 1, body + 3, foot, foot + 22, 2), {
    segments: 28,
  });
  const { wire } = shape.spring;
  const perch = shape.perch;
  const outer = shape.diameter / 2;
  revolve(
    piece(assembly, 'dark'),
    at,
    [
      [perch - 14, body - 1],
      [perch - 14, body + 4],
      [perch - 5, body + 5],
      [perch - 4, outer],
      [perch, outer],
      [perch, outer - wire * 1.6],
      [perch + 3, outer - wire * 1.7],
      [perch + 3, body - 1],
    ],
    { segments: 32 },
  );
  revolve(piece(assembly, 'dark'), at, pinProfile(body * 0.94, shape.head - 2, shape.head + 5, 2), {
    segments: 24,
  });
  return assembly;
}

/** Upper unit, from the top joint, z down the damper. */
export function buildUpperUnit(shape: CoiloverShape): Assembly {
  const assembly: Assembly = {};
  const at = new Matrix4();
  addEye(assembly, DAMPER.eye, -15, 15);
  const outer = shape.diameter / 2;
  const { seat } = shape;
  revolve(
    piece(assembly, 'dark'),
    at,
    [
      [10, 0],
      [10, 13],
      [seat - 8, 15],
      [seat - 5, outer],
      [seat, outer],
      [seat, 0],
    ],
    { segments: 32 },
  );
  const shaft = DAMPER.shaft * shape.diameter;
  const end = Math.max(shape.greatest - shape.head + 12, seat + 20);
  revolve(piece(assembly, 'steel'), at, pinProfile(shaft, seat, end), { segments: 18 });
  const stop = 0.27 * shape.diameter;
  revolve(
    piece(assembly, 'stop'),
    at,
    [
      [seat, stop],
      [seat + 6, stop * 1.04],
      [seat + 9, stop * 0.86],
      [seat + 13, stop * 0.92],
      [seat + 18, stop * 0.6],
      [seat + 18, shaft],
    ],
    { segments: 22, crease: 0.9 },
  );
  return assembly;
}

/** Length of the spring for a damper length, mm: from the lower perch to the upper seat. */
export function springLength(shape: CoiloverShape, damperLength: number): number {
  return damperLength - shape.perch - shape.seat;
}
