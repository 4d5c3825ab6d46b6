/** The steering rack: its housing on the body and the bar that moves in it. Vehicle axes, bar at rack 0. */
import type { Vector3 } from 'three';
import type { Model } from '../../../solver/index.ts';
import { rackRange, steeringDirection } from '../../../solver/model/defaults.ts';
import { RACK, RACK_TRAVEL } from '../proportions.ts';
import { addBall, addPin, pinProfile, revolve, ringProfile } from './revolve.ts';
import { type Assembly, axisFrame, piece, toVector } from './solid.ts';

export interface RackShape {
  readonly inner: Vector3;
  /** Unit, towards the wheel (the left). */
  readonly direction: Vector3;
  /** Mouth of the housing, and where the housing is cut: the vehicle's centreline. */
  readonly mouth: Vector3;
  readonly middle: Vector3;
  readonly least: number;
  readonly greatest: number;
}

export function rackShape(model: Model): RackShape {
  const inner = toVector(model.tieRod.inner);
  const direction = toVector(steeringDirection(model.steering)).normalize();
  const [low, high] = rackRange(model.steering);
  const least = low < high ? low : -RACK_TRAVEL;
  const greatest = low < high ? high : RACK_TRAVEL;
  const mouth = inner.clone().addScaledVector(direction, least - RACK.end);
  const toMiddle = Math.min(-40, -mouth.y / direction.y);
  return {
    inner,
    direction,
    mouth,
    middle: mouth.clone().addScaledVector(direction, toMiddle),
    least,
    greatest,
  };
}

export function buildRackHousing(model: Model): Assembly {
  const { mouth, middle, direction } = rackShape(model);
  const assembly: Assembly = {};
  const length = mouth.distanceTo(middle);
  const at = axisFrame(middle, direction);
  const tube = piece(assembly, 'fixed');
  revolve(tube, at, pinProfile(RACK.housing - 3, 0, length - 2, 0.5), { segments: 30 });
  revolve(tube, at, ringProfile(RACK.bar + 1, RACK.housing + 1, length - 26, length, 2), {
    segments: 30,
  });
  for (const share of [0.3, 0.72]) {
    revolve(
      piece(assembly, 'dark'),
      at,
      ringProfile(RACK.housing - 4, RACK.housing + 4, share * length - 14, share * length + 14, 3),
      {
        segments: 30,
      },
    );
  }
  return assembly;
}

/** The moving bar with the inner joint's socket. */
export function buildRackBar(model: Model): Assembly {
  const { inner, direction, least, greatest } = rackShape(model);
  const assembly: Assembly = {};
  const hidden = inner.clone().addScaledVector(direction, -(greatest - least) - RACK.end - 12);
  addPin(
    piece(assembly, 'steel'),
    hidden,
    inner.clone().addScaledVector(direction, -8),
    RACK.bar,
    20,
  );
  addBall(piece(assembly, 'dark'), inner, RACK.joint);
  return assembly;
}
