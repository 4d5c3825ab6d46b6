/** Tables of the parts that make the corner move: arms, tie rod, steering, hub, knuckle. One row a key of the format. */
import type { Arm, Cam, Hub, Model, Shim, Steering, TieRod, Tube, UpperArm } from '../model.ts';
import { list, object, optional, pair, type Reader, refuse, required } from './reader.ts';
import {
  anyNumber,
  between,
  direction,
  limitAngle,
  notNegative,
  number,
  point,
  positive,
  shown,
} from './values.ts';

const cam: Reader<Cam> = object<Cam>('a cam: an object with throw', {
  slot: optional(direction),
  throw: required(notNegative('mm')),
  angle: optional(anyNumber),
  marks: optional(
    number('a whole number of at least 1 and below 1e5', (n) => Number.isInteger(n) && n >= 1),
  ),
});

const shim: Reader<Shim> = object<Shim>('a shim: an object', {
  direction: optional(direction),
  thickness: optional(notNegative('mm')),
  step: optional(positive('mm')),
  max: optional(positive('mm')),
});

const points = list('a list of points [x, y, z] (mm)', point);

const pivots = {
  frontPivot: required(point),
  rearPivot: required(point),
  ballJoint: required(point),
  tubeDiameter: optional(positive('mm')),
  frontCam: optional(cam),
  rearCam: optional(cam),
};

const joint = {
  studAxis: optional(direction),
  housingAxis: optional(direction),
  ballJointLimit: optional(limitAngle),
  legs: optional(
    object<NonNullable<Arm['legs']>>('the legs of a bent arm: an object with front, rear', {
      front: required(points),
      rear: required(points),
    }),
  ),
};

const WANTED_ARM = 'an arm: an object with frontPivot, rearPivot, ballJoint';

export const lowerArm: Reader<Arm> = object<Arm>(WANTED_ARM, { ...pivots, ...joint });

export const upperArm: Reader<UpperArm> = object<UpperArm>(WANTED_ARM, {
  ...pivots,
  frontShim: optional(shim),
  rearShim: optional(shim),
  ...joint,
});

const profileStep: Reader<readonly [number, number]> = {
  wanted: 'a pair [distance from the outer joint, diameter] (mm)',
  read: (value, path) => {
    const [distance, diameter] = pair(profileStep.wanted, anyNumber).read(value, path);
    notNegative('mm, a distance').read(distance, `${path}[0]`);
    positive('mm, a diameter').read(diameter, `${path}[1]`);
    return [distance, diameter];
  },
};

const profileSteps = list(
  'a list of pairs [distance from the outer joint, diameter] (mm)',
  profileStep,
);

const profile: Reader<readonly (readonly [number, number])[]> = {
  ...profileSteps,
  read: (value, path) => {
    const steps = profileSteps.read(value, path);
    steps.forEach(([distance], index) => {
      const before = steps[index - 1]?.[0] ?? 0;
      if (distance < before) {
        refuse(
          `${path}[${index}][0]`,
          String(distance),
          `at least the distance before it, ${before}`,
        );
      }
    });
    return steps;
  },
};

export const tieRod: Reader<TieRod> = object<TieRod>('a tie rod: an object with inner, outer', {
  inner: required(point),
  outer: required(point),
  diameter: optional(positive('mm')),
  bends: optional(points),
  profile: optional(profile),
  studAxis: optional(direction),
  housingAxis: optional(direction),
  pitch: optional(positive('mm per turn')),
  turns: optional(anyNumber),
  flats: optional(
    number('a whole number of at least 2 and below 1e5', (n) => Number.isInteger(n) && n >= 2),
  ),
  endLimit: optional(limitAngle),
  innerLimit: optional(limitAngle),
});

const rackLimit: Reader<readonly [number, number]> = {
  wanted: 'a pair [least rack, greatest rack] (mm)',
  read: (value, path) => {
    const limit = pair(rackLimit.wanted, anyNumber).read(value, path);
    const [least, most] = limit;
    if (least > 0 || most < 0 || least === most) {
      refuse(path, shown(limit), 'the least below the greatest, with 0 between them');
    }
    return limit;
  },
};

const rackDirection: Reader<Required<Steering>['direction']> = {
  ...direction,
  read: (value, path) => {
    const vector = direction.read(value, path);
    if (vector[1] <= 0) refuse(`${path}[1]`, String(vector[1]), 'a number above 0 (to the left)');
    return vector;
  },
};

export const steering: Reader<Steering> = object<Steering>('the steering: an object', {
  direction: optional(rackDirection),
  limit: optional(rackLimit),
});

export const hub: Reader<Hub> = object<Hub>('a hub: an object with face', {
  face: required(point),
  camber: optional(between(-45, 45, 'degrees')),
  toe: optional(between(-45, 45, 'degrees')),
});

/** A tube's centreline. */
export const polyline: Reader<readonly (readonly [number, number, number])[]> = list(
  'a list of at least 2 points [x, y, z] (mm)',
  point,
  2,
);

export const tube: Reader<Tube> = object<Tube>('a tube: an object with points, diameter', {
  points: required(polyline),
  diameter: required(positive('mm')),
});

type Knuckle = NonNullable<Model['knuckle']>;

export const knuckle: Reader<Knuckle> = object<Knuckle>('a knuckle: an object', {
  tubes: optional(list('a list of tubes', tube)),
});
