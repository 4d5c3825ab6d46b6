/**
 * Where everything stands in the two flat buffers of the linkage: `Slot` in a pose buffer (changes with every pose),
 * `Fixed` in a linkage's constants (changes only with the model). Points and vectors take three places, mm and
 * radians inside; a frame [k, m, n] takes nine. Flat Float64Arrays keep a pose free of allocation.
 */
export const Slot = {
  lower: 0,
  upper: 3,
  outer: 6,
  inner: 9,
  centre: 12,
  /** Knuckle frame: k along LB→UB, m towards TO normal to k, n = k × m. */
  frame: 15,
  hubAxis: 24,
  lowerCos: 27,
  lowerSin: 28,
  upperCos: 29,
  upperSin: 30,
  /** Room left in each closed-form step, 1 at best, 0 at a singular pose, negative out of reach. */
  upperRoom: 31,
  rodRoom: 32,
  /** d(wheel centre height)/d(lower arm angle) over the lower arm's radius, positive on the design branch. */
  wheelRoom: 33,
  lowerAngle: 34,
  rack: 35,
  travel: 36,
  /** Rates per radian of the lower arm's angle, rack held. */
  angleLower: 37,
  angleUpper: 40,
  angleOmega: 43,
  angleCentre: 46,
  anglePhi: 49,
  /** Rates per mm of travel, rack held: travelTheta and travelPhi are the arms' angles, rad/mm. */
  travelTheta: 50,
  travelPhi: 51,
  travelOmega: 52,
  travelLower: 55,
  travelUpper: 58,
  travelOuter: 61,
  travelCentre: 64,
  /** Rates per mm of rack, travel held. */
  rackTheta: 67,
  rackPhi: 68,
  rackOmega: 69,
  rackLower: 72,
  rackUpper: 75,
  rackOuter: 78,
  rackCentre: 81,
  /** Frames of the arms (e1 along the pivots, e2 from the axis to the ball joint, e3) and of the tie rod. */
  lowerFrame: 84,
  upperFrame: 93,
  rodFrame: 102,
  /** Angular velocities of the arms per mm of travel. */
  lowerOmega: 111,
  upperOmega: 114,
  /** Second derivatives along travel, rack held, per mm²: ball joints, angular accelerations. */
  lowerBend: 117,
  upperBend: 120,
  lowerAlpha: 123,
  upperAlpha: 126,
  knuckleAlpha: 129,
  /** Scratch of the second derivatives. */
  scratch: 132,
  /** The predictor's guess of the lower arm angle and of its second derivative along travel. */
  guess: 147,
  guessBend: 148,
  /** Carried points of the other parts, the contact point and the wheel's up direction: see measures/parts.ts. */
  damperBottom: 149,
  leverEnd: 152,
  link: 155,
  strapBottom: 158,
  shaftOuter: 161,
  contact: 164,
  wheelUp: 167,
  /** Cosine and sine of the bar's angle from the design pose. */
  leverCos: 170,
  leverSin: 171,
  /** Room of the drop link on the lever's circle; negative: the link cannot reach. */
  leverRoom: 172,
  leverRate: 173,
  rackSpin: 174,
  /** Scratch scalars. */
  scalars: 175,
  size: 183,
} as const;

export const Fixed = {
  /** A circle, then a circle with its sphere: see circle.ts. */
  lowerCircle: 0,
  upperCircle: 13,
  /** The sphere of the upper circle: square of the distance between the ball joints, and which answer (±1). */
  spanSquared: 26,
  upperSide: 27,
  /** The knuckle's triad, see triad.ts: inverse of that distance, TO along k and along m, rod², which answer (±1). */
  triad: 28,
  spanInverse: 28,
  outerAlong: 29,
  outerAside: 30,
  rodSquared: 31,
  rodSide: 32,
  /** Knuckle-fixed points and directions in the knuckle frame [k, m, n], from LB. */
  centreInFrame: 33,
  hubInFrame: 36,
  rackOrigin: 39,
  rackDirection: 42,
  /** Sign of d(wheel centre height)/d(lower arm angle) in the design pose. */
  wheelSide: 45,
  designHeight: 46,
  size: 47,
} as const;
