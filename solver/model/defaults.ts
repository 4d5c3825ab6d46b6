/** What the model format says of keys that are left out. Every program asks here, so that a default is written once. */
import { MM_PER_INCH } from '../units.ts';
import type {
  AntiRollBar,
  Cam,
  Carrier,
  Coilover,
  HalfShaft,
  MeshUnit,
  Model,
  Obstacle,
  Shim,
  Steering,
  TieRod,
  Travel,
  Vector3,
  Wheel,
} from './model.ts';

/** Direction the rack moves the tie rod's inner joint in, not normalised: to the left. */
export function steeringDirection(steering: Steering | undefined): Vector3 {
  return steering?.direction ?? [0, 1, 0];
}

/** [least, greatest] rack displacement, mm; without a stated limit only the straight-ahead rack is swept. */
export function rackRange(steering: Steering | undefined): readonly [number, number] {
  return steering?.limit ?? [0, 0];
}

/** The body that carries a coilover's bottom, a bar's link or a strap's bottom. */
export function carrier(part: { readonly on?: Carrier }): Carrier {
  return part.on ?? 'lowerArm';
}

/** Direction a cam moves its pivot in, not normalised: sideways. */
export function camSlot(cam: Cam): Vector3 {
  return cam.slot ?? [0, 1, 0];
}

/** Setting of a cam, degrees from its middle. */
export function camAngle(cam: Cam | undefined): number {
  return cam?.angle ?? 0;
}

/** Direction shims move their pivot in, not normalised: sideways, outboard. */
export function shimDirection(shim: Shim): Vector3 {
  return shim.direction ?? [0, 1, 0];
}

/** Setting of a pivot's shims: their thickness together, mm. */
export function shimThickness(shim: Shim | undefined): number {
  return shim?.thickness ?? 0;
}

/** Most shims that fit on a pivot when the file does not say, mm. Common practice, no source. */
const MOST_SHIMS = 12;

/** The greatest thickness of shims that a pivot takes, mm; never less than what is there. */
export function shimLimit(shim: Shim): number {
  return shim.max ?? Math.max(MOST_SHIMS, shimThickness(shim));
}

/** Change of the tie rod's length by its setting, mm, positive longer. */
export function tieRodChange(tieRod: TieRod): number {
  return (tieRod.turns ?? 0) * (tieRod.pitch ?? 0);
}

/** Thickness of a wheel's metal, mm. Common practice. */
export function wheelThickness(wheel: Wheel): number {
  return wheel.thickness ?? 6;
}

/** Thickness of the spacer between hub face and wheel, mm. */
export function wheelSpacer(wheel: Wheel): number {
  return wheel.spacer ?? 0;
}

/** Travel at which the vehicle stands, mm. */
export function rideTravel(travel: Travel): number {
  return travel.ride ?? 0;
}

/** Loaded radius as a part of half the overall diameter. Common practice. */
export const LOADED_PART = 0.96;

/** Design-pose angle of the hub axis when left out, degrees: none. */
export function hubAngle(stated: number | undefined): number {
  return stated ?? 0;
}

/** Axis of the half-shaft's inner joint: across the vehicle. */
export function shaftInnerAxis(part: { readonly innerAxis?: Vector3 }): Vector3 {
  return part.innerAxis ?? [0, 1, 0];
}

/** Axis of the tie rod's outer stud: upright. */
export function tieRodStudAxis(tieRod: TieRod): Vector3 {
  return tieRod.studAxis ?? [0, 0, 1];
}

/** Diameter of a tie rod's tube when left out, mm. Common practice, no source. */
const PLAIN_TIE_ROD = 22;

/** Diameter of the tie rod where no profile says otherwise, mm; with a profile alone, its first diameter. */
export function tieRodDiameter(tieRod: TieRod): number {
  return tieRod.diameter ?? tieRod.profile?.[0]?.[1] ?? PLAIN_TIE_ROD;
}

/** Diameters of tubes, coilover, shaft and drop link when left out, mm. Common practice, no source. */
const PLAIN_TUBES = { lowerArm: 42, upperArm: 30 } as const;
const PLAIN_COILOVER = 66;
const PLAIN_SHAFT = 32;
const PLAIN_LINK = 14;

/** Diameter of an arm's tubes, mm. */
export function tubeDiameter(model: Model, arm: 'lowerArm' | 'upperArm'): number {
  return model[arm].tubeDiameter ?? PLAIN_TUBES[arm];
}

/** Diameter of the coilover over its spring, mm. */
export function coiloverDiameter(coilover: Coilover): number {
  return coilover.diameter ?? PLAIN_COILOVER;
}

/** Diameter of the half-shaft, mm. */
export function shaftDiameter(shaft: HalfShaft): number {
  return shaft.diameter ?? PLAIN_SHAFT;
}

/** Diameter of the drop link, mm: where only the bar's is stated the link is taken to be as thick, to be on the safe side. */
export function linkDiameter(bar: AntiRollBar): number {
  return bar.linkDiameter ?? bar.diameter ?? PLAIN_LINK;
}

type MeshObstacle = Extract<Obstacle, { shape: 'mesh' }>;

/** Where a mesh file's origin stands, mm: at the vehicle's. */
export function meshPosition(mesh: MeshObstacle): Vector3 {
  return mesh.position ?? [0, 0, 0];
}

/** Turns of a mesh about the fixed axes x, then y, then z, degrees: none. */
export function meshRotation(mesh: MeshObstacle): Vector3 {
  return mesh.rotation ?? [0, 0, 0];
}

/** The unit of a mesh file's numbers: GLB is in metres by its standard; null where nothing says it. */
export function meshUnit(mesh: MeshObstacle): MeshUnit | null {
  return mesh.unit ?? (/\.glb$/i.test(mesh.file) ? 'm' : null);
}

/** Millimetres in one of a unit. */
export function unitInMillimetres(unit: MeshUnit): number {
  return { mm: 1, cm: 10, m: 1000, inch: MM_PER_INCH }[unit];
}
