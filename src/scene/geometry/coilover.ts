/**
 * The coilover as two units that slide: the lower one from the bottom joint with z towards the top (eye or fork, body,
 * perch), the upper one from the top joint with z towards the bottom (eye, spring seat, shaft, bump stop). x is across.
 */
import { Matrix4, Vector3 } from 'three';
import { DAMPER, FORK } from '../proportions.ts';
import type { CoiloverShape } from './coiloverShape.ts';
import { pinProfile, revolve, ringProfile } from './revolve.ts';
import { type Assembly, axisFrame, piece } from './solid.ts';
import { sweep } from './sweep.ts';

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
