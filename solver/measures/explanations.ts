/** What each measure is, in one sentence of plain shop words, sign convention included. */
import type { AxleKey } from './axle.ts';
import type { MeasureKey } from './keys.ts';

export const EXPLANATIONS: Readonly<Record<MeasureKey | AxleKey, string>> = {
  camber:
    'How far the wheel leans from upright, seen from the front: positive when its top leans out, negative when it leans in.',
  caster:
    'How far the steering axis leans, seen from the side: positive when its top leans to the rear, negative when it leans forward.',
  toe: 'Where this one wheel points, seen from above: positive is toe-in, its front edge turned to the centreline; negative is toe-out. With steering lock on, toe is mostly steer.',
  kingpinInclination:
    'How far the line through both ball joints leans, seen from the front: positive when its top leans to the centreline.',
  scrubRadius:
    'Sideways distance on the ground from the steering axis to the middle of the contact patch, square to the wheel as it is steered, so it changes with lock: positive when the contact is outboard.',
  casterTrail:
    'How far the steering axis meets the ground ahead of the contact patch, along the wheel as it is steered: positive when ahead, which pulls the wheel straight.',
  spindleOffset:
    'Sideways distance from the steering axis to the wheel centre, at the height of the wheel centre: positive when the centre is outboard.',
  spindleTrail:
    'How far the steering axis passes ahead of the wheel centre, at the height of the wheel centre: positive when ahead.',
  bumpSteer:
    'How fast toe changes as the wheel rises through this pose, rack held: positive when the front edge goes in. Zero straight ahead is not zero at lock.',
  bumpCamber:
    'How fast camber changes as the wheel rises through this pose: positive when the top goes out, negative when it goes in.',
  bumpCaster:
    'How fast caster changes as the wheel rises through this pose: positive when the steering axis leans further back.',
  halfTrack:
    'Distance from the vehicle’s centreline to the middle of the contact patch; its change through travel drags the tyre sideways.',
  trackRate:
    'How fast the contact patch moves sideways as the wheel rises, mm per mm: positive when it goes out.',
  damperLength: 'Distance between the coilover’s two mountings, centre to centre.',
  motionRatio:
    'Damper movement per wheel movement: 0.6 means that the damper moves 0.6 mm for 1 mm at the wheel. Some quote the inverse.',
  motionRatioRate:
    'How fast the motion ratio grows as the wheel rises, per mm: positive stiffens the corner in bump.',
  springForce:
    'Push of the spring in this pose, from its force in the design pose and its rate; 0 when it hangs loose.',
  wheelRate:
    'Stiffness felt at the wheel: spring rate times motion ratio squared, plus what the changing ratio adds.',
  rideFrequency:
    'How often the body would bounce in a second on this wheel rate, with the corner’s sprung mass, undamped.',
  barMotionRatio:
    'Movement of the anti-roll bar’s lever end per wheel movement: positive when the lever end turns upward with the wheel.',
  strapLength:
    'Distance between the limit strap’s ends; the strap is tight when it equals its length.',
  rollCentreHeight:
    'Geometric roll centre above the ground of this pose; the axle’s only while both wheels stand alike, otherwise this wheel’s line cut at the centreline.',
  frontViewCentreY:
    'Point the wheel turns about for a moment, seen from the front: its place across the vehicle, positive to the left of the centreline.',
  frontViewCentreZ:
    'Point the wheel turns about for a moment, seen from the front: its height in the model’s axes, positive up.',
  sideViewCentreX:
    'Point the wheel turns about for a moment, seen from the side: its place along the vehicle, positive forward.',
  sideViewCentreZ:
    'Point the wheel turns about for a moment, seen from the side: its height in the model’s axes, positive up.',
  antiDive:
    'Share of the brake dive that the arms carry instead of the springs, outboard brakes: positive when it resists dive.',
  antiLift:
    'Share of the lift under front drive that the arms carry instead of the springs, drive torque reacted by the body: positive when it resists lift.',
  steerAngle:
    'How far this wheel has turned from where it points at ride height with the rack centred: positive to the left.',
  steerPerRack:
    'How fast the wheel turns as the rack moves to the left, travel held: positive when it turns left. It differs from lock to lock.',
  innerSteer: 'Steer angle of the wheel on the inside of the turn, both wheels at this travel.',
  outerSteer: 'Steer angle of the wheel on the outside of the turn, both wheels at this travel.',
  ackermann:
    '100 % when both wheels roll about one centre on the rear axle’s line, 0 % when they turn alike, negative when the outer one turns more.',
  turningCircle:
    'Diameter of the circle that the middle of the outer front contact patch rolls at this lock, without slip.',
  outerAngle:
    'Angle between the half-shaft and the hub’s axis, steer and droop together: not what the shaft’s slope shows from the front.',
  innerAngle: 'Angle between the half-shaft and the axis of its inner joint on the body.',
  plunge:
    'How much shorter the half-shaft is than in the design pose: positive when it is pushed in, negative when it is drawn out.',
  lowerBallJoint:
    'Angle between the stud in the knuckle and the axis of the housing in the lower arm.',
  upperBallJoint:
    'Angle between the stud in the knuckle and the axis of the housing in the upper arm.',
  tieRodOuter:
    'Angle between the tie rod end’s stud in the knuckle and the axis of its housing on the rod.',
  tieRodInner: 'Angle between the tie rod and the line the rack moves along.',
};
