/**
 * Sizes the model format does not state, mm unless said otherwise: common proportions of such parts, no source. Where
 * a clearance is measured (rod, wheel, tyre, tubes) what is drawn stays inside the model's own surface.
 */

/** Diameter of the anti-roll bar when the model leaves it out. */
export const BAR_DIAMETER = 28;

/** Bush of a pivot, as parts of the arm's tube diameter: shell, rubber and sleeve radii, length. */
export const BUSH = { shell: 0.62, rubber: 0.5, sleeve: 0.24, length: 1.4, bolt: 0.15 } as const;
/** Body-side ears that hold a bush: thickness, room beside the bush, reach inboard in tube diameters. */
export const EAR = { thickness: 6, room: 2, reach: 1.5 } as const;
/** Cam washer: radius, thickness. */
export const CAM = { radius: 22, thickness: 5 } as const;

/**
 * Ball joints: housing radius as part of the tube diameter, within limits; then, as parts of that radius, along the
 * stud from the ball: housing's foot and mouth, knuckle's seat and its height, its radius, the stud's.
 */
export const BALL_JOINT = { part: 0.62, least: 19, largest: 31 } as const;
export const JOINT = {
  foot: -0.85,
  mouth: 0.6,
  seat: 1.2,
  height: 0.95,
  boss: 0.92,
  stud: 0.36,
} as const;
/** Housing radius of the tie rod's outer joint. */
export const ROD_END = 16;

/** Bearing carrier of the knuckle: radii, width, and its outboard face from the hub face. */
export const CARRIER = { outer: 62, bore: 46, width: 56, inboard: 58 } as const;
export const HUB = { flange: 70, thickness: 11, barrel: 36, bolts: 6, circle: 57 } as const;
/** Brake disc: from the hub face to the rotor's outer face, its thickness, hat; and what is left to the rim. */
export const DISC = {
  outboard: 26,
  thickness: 26,
  hat: 80,
  roomToRim: 30,
  largest: 168,
  width: 52,
} as const;
export const CALIPER = { span: 0.92, over: 13, cheek: 18 } as const;

export const WHEEL = { spokes: 8, bore: 40, pad: 82, padThickness: 16, spokeDepth: 17 } as const;
export const TYRE = {
  toe: 15,
  tread: 15,
  sidewall: 8,
  groove: 7,
  grooveWidth: 9,
  pitches: 54,
} as const;

/** Spring: wire as part of its outer diameter; coils within limits, filling that part of its least length. */
export const SPRING = { wire: 0.16, least: 5, most: 10.5, filled: 0.72 } as const;
/** Damper: body and shaft radii as parts of the diameter, lengths at the top, lower perch as part of the least length. */
export const DAMPER = {
  body: 0.31,
  shaft: 0.13,
  topMount: 28,
  leastShaft: 22,
  perch: 0.4,
  eye: 19,
} as const;
/** Least and greatest length of a damper that states none, as parts of its design length. */
export const DAMPER_RANGE = { least: 0.82, greatest: 1.16 } as const;
/** Fork of a coilover that stands astride the half-shaft: half gap, width of its legs, room above the shaft. */
export const FORK = { gap: 26, leg: 13, above: 34 } as const;

export const RACK = { housing: 25, bar: 13, joint: 15, bootOnRod: 46, end: 30, folds: 9 } as const;
/** Rack travel the housing is made for when the model states no limit. */
export const RACK_TRAVEL = 70;

export const CUP = { radius: 44, behind: 32, mouth: 38, stub: 22 } as const;
export const BELL = { radius: 42, mouth: 22, length: 52, stub: 19 } as const;
/** How far a boot's clamp stands out over the mouth it closes on. */
export const CLAMP = 3.5;
export const SHAFT_BOOT = { outer: 86, inner: 104, folds: 5 } as const;
export const LINK = { radius: 6.5, eye: 13 } as const;
export const STRAP = { width: 46, stations: 24, ear: 13, pin: 6 } as const;
