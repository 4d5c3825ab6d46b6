/**
 * The model file, format "armscribe/1", as types. Lengths mm, angles degrees, ISO 8855 vehicle axes
 * (x forward, y left, z up), left front corner. The meaning of every number is the geometry contract's.
 */

/** A point or direction [x, y, z] in vehicle axes, mm for points. */
export type Vector3 = readonly [number, number, number];

/** A point [s, ρ] of a section of revolution: s along the hub axis from the wheel centre plane, outboard positive; ρ the radius. */
export type SectionPoint = readonly [number, number];

/** The body that carries a joint. */
export type Carrier = 'lowerArm' | 'upperArm' | 'knuckle';

/** Eccentric cam on a pivot: shifts it by throw·sin(angle) along `slot` (default [0, 1, 0]). */
export interface Cam {
  readonly slot?: Vector3;
  readonly throw: number;
  readonly angle?: number;
  readonly marks?: number;
}

/** Shims on a pivot: they move it by `thickness` along `direction` (default [0, 1, 0]) from where it is without them. */
export interface Shim {
  readonly direction?: Vector3;
  /** All shims on the pivot together, mm; default 0. */
  readonly thickness?: number;
  /** Of one shim, mm. */
  readonly step?: number;
  /** The greatest thickness that fits, mm. */
  readonly max?: number;
}

export interface Arm {
  readonly frontPivot: Vector3;
  readonly rearPivot: Vector3;
  readonly ballJoint: Vector3;
  readonly tubeDiameter?: number;
  readonly frontCam?: Cam;
  readonly rearCam?: Cam;
  readonly studAxis?: Vector3;
  readonly housingAxis?: Vector3;
  readonly ballJointLimit?: number;
  readonly legs?: { readonly front: readonly Vector3[]; readonly rear: readonly Vector3[] };
}

/** The upper arm's pivots may be set by shims instead of cams. */
export interface UpperArm extends Arm {
  readonly frontShim?: Shim;
  readonly rearShim?: Shim;
}

export interface TieRod {
  readonly inner: Vector3;
  readonly outer: Vector3;
  readonly diameter?: number;
  readonly bends?: readonly Vector3[];
  /** [distance from the outer joint along the rod, diameter from there on], ascending distances. */
  readonly profile?: readonly (readonly [number, number])[];
  readonly studAxis?: Vector3;
  readonly housingAxis?: Vector3;
  readonly pitch?: number;
  readonly turns?: number;
  /** Flats of the adjuster that a wrench counts in one turn. */
  readonly flats?: number;
  readonly endLimit?: number;
  readonly innerLimit?: number;
}

export interface Steering {
  readonly direction?: Vector3;
  readonly limit?: readonly [number, number];
}

export interface Hub {
  readonly face: Vector3;
  readonly camber?: number;
  readonly toe?: number;
}

export interface Wheel {
  readonly diameter: number;
  readonly width: number;
  readonly offset: number;
  readonly spacer?: number;
  readonly section?: readonly SectionPoint[];
  readonly disc?: readonly SectionPoint[];
  /** Stick-on weights: the line of their surface towards the axle, swept all round; no weights when left out. */
  readonly weights?: readonly SectionPoint[];
  readonly thickness?: number;
  readonly mass?: number;
}

export interface Tyre {
  readonly size?: string;
  readonly diameter?: number;
  readonly width?: number;
  readonly loadedRadius?: number;
}

export interface Tube {
  readonly points: readonly Vector3[];
  readonly diameter: number;
}

/** Envelope of disc and caliper about the hub axis: a closed outline, its inside counts as metal. */
export interface Brake {
  readonly section: readonly SectionPoint[];
}

export interface Coilover {
  readonly top: Vector3;
  readonly bottom: Vector3;
  readonly on?: Carrier;
  readonly diameter?: number;
  readonly minLength?: number;
  readonly maxLength?: number;
  readonly springRate?: number;
  readonly designForce?: number;
}

export interface AntiRollBar {
  readonly axis: readonly [Vector3, Vector3];
  readonly leverEnd: Vector3;
  readonly link: Vector3;
  readonly on?: Carrier;
  /** Of the bar itself. */
  readonly diameter?: number;
  /** Of the drop link; default the bar's. */
  readonly linkDiameter?: number;
}

export interface HalfShaft {
  readonly inner: Vector3;
  readonly outer: Vector3;
  readonly diameter?: number;
  readonly innerAxis?: Vector3;
  readonly innerLimit?: number;
  readonly outerLimit?: number;
  readonly plungeIn?: number;
  readonly plungeOut?: number;
}

export interface Strap {
  readonly top: Vector3;
  readonly bottom: Vector3;
  readonly on?: Carrier;
  readonly length: number;
}

export interface Travel {
  readonly bump: number;
  readonly droop: number;
  readonly ride?: number;
}

export type Obstacle =
  | {
      readonly name: string;
      readonly shape: 'tube';
      readonly points: readonly Vector3[];
      readonly diameter: number;
    }
  | {
      readonly name: string;
      readonly shape: 'box';
      readonly min: Vector3;
      readonly max: Vector3;
    }
  | {
      readonly name: string;
      readonly shape: 'mesh';
      /** Path beside the model file; STL, PLY, OBJ or GLB. */
      readonly file: string;
      /** Unit of the file's numbers; only GLB files state their own. */
      readonly unit?: MeshUnit;
      /** Where the file's origin stands, mm; default the vehicle's origin. */
      readonly position?: Vector3;
      /** Turns about the fixed vehicle axes x, then y, then z through the file's origin, degrees; default none. */
      readonly rotation?: Vector3;
      /** Fingerprint of the file meant; another file of the same name is refused. */
      readonly content?: string;
    };

/** Units a mesh file may be said to be in. */
export type MeshUnit = 'mm' | 'cm' | 'm' | 'inch';

export interface Vehicle {
  readonly wheelbase: number;
  readonly cgHeight: number;
  readonly frontBrakeShare: number;
  readonly frontDriveShare: number;
  readonly cornerMass: number;
}

export interface Target {
  readonly value: number;
  readonly plusMinus: number;
}

/** One model file. Optional parts are absent, never null. */
export interface Model {
  readonly format: 'armscribe/1';
  readonly name: string;
  readonly notes?: string;
  readonly lowerArm: Arm;
  readonly upperArm: UpperArm;
  readonly tieRod: TieRod;
  readonly steering?: Steering;
  readonly hub: Hub;
  readonly wheel: Wheel;
  readonly tyre: Tyre;
  readonly knuckle?: { readonly tubes?: readonly Tube[] };
  readonly brake?: Brake;
  readonly coilover?: Coilover;
  readonly antiRollBar?: AntiRollBar;
  readonly halfShaft?: HalfShaft;
  readonly strap?: Strap;
  readonly travel: Travel;
  readonly stops?: { readonly bump?: number; readonly droop?: number };
  readonly obstacles?: readonly Obstacle[];
  readonly required?: Readonly<Record<string, number>>;
  /** Pairs "partA/partB" that are not watched, since they touch by design; none when left out. */
  readonly unwatched?: readonly string[];
  readonly tolerance?: Readonly<Record<string, number>>;
  readonly vehicle?: Vehicle;
  readonly targets?: { readonly camber?: Target; readonly caster?: Target; readonly toe?: Target };
}
