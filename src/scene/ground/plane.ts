/**
 * The plane the tyre stands on. The picture stands still with the body, so the ground moves: it lies under the contact
 * patch in every pose, at the loaded radius, and what of the unloaded tyre would reach through it is cut off flat.
 */
import { Plane, Vector3 } from 'three';

/** In three's axes: what lies above is kept. */
export const groundPlane: Plane = new Plane(new Vector3(0, 1, 0), 0);

/** Lays the ground at a height in vehicle axes, mm. */
export function layGround(z: number): void {
  groundPlane.constant = -z;
}
