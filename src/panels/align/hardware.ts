/** The hardware that sets the alignment: where it sits in the model, and the edits that add and remove it. */
import type { Cam, Model, Vector3 } from '../../../solver/index.ts';
import { camSlot } from '../../../solver/model/defaults.ts';
import { radians } from '../../../solver/units.ts';

/** A pivot on which a cam may sit. */
export interface Pivot {
  /** As the contract's settings call its cam. */
  readonly cam: 'lowerFrontCam' | 'lowerRearCam' | 'upperFrontCam' | 'upperRearCam';
  /** As the linkage calls it. */
  readonly pivot: 'lowerFront' | 'lowerRear' | 'upperFront' | 'upperRear';
  readonly arm: 'lowerArm' | 'upperArm';
  readonly end: 'front' | 'rear';
  readonly name: string;
}

/** In the contract's order. */
export const PIVOTS: readonly Pivot[] = [
  {
    cam: 'lowerFrontCam',
    pivot: 'lowerFront',
    arm: 'lowerArm',
    end: 'front',
    name: 'Lower arm, front',
  },
  {
    cam: 'lowerRearCam',
    pivot: 'lowerRear',
    arm: 'lowerArm',
    end: 'rear',
    name: 'Lower arm, rear',
  },
  {
    cam: 'upperFrontCam',
    pivot: 'upperFront',
    arm: 'upperArm',
    end: 'front',
    name: 'Upper arm, front',
  },
  {
    cam: 'upperRearCam',
    pivot: 'upperRear',
    arm: 'upperArm',
    end: 'rear',
    name: 'Upper arm, rear',
  },
];

/** Path of a pivot's cam in the model. */
export function camPath({ arm, end }: Pivot): string {
  return `${arm}.${end}Cam`;
}

/** The cam on a pivot, if there is one. */
export function camOn(model: Model, { arm, end }: Pivot): Cam | undefined {
  return model[arm][`${end}Cam`];
}

/** Throw of a cam that is added, mm: a usual size, no source; to be measured. */
export const USUAL_THROW = 6;

/** Travel of a pivot by its cam, mm along the slot. */
export function camShift(cam: Cam, angle: number): number {
  return cam.throw * Math.sin(radians(angle));
}

const WAYS = [
  ['forward', 'rearward'],
  ['outboard', 'inboard'],
  ['up', 'down'],
] as const;

/** Where a positive and a negative amount along a direction lead, by its greatest component. */
export function waysOf(direction: Vector3): readonly [positive: string, negative: string] {
  const sizes = direction.map(Math.abs);
  const axis = sizes.indexOf(Math.max(...sizes)) as 0 | 1 | 2;
  const [ahead, back] = WAYS[axis];
  return direction[axis] < 0 ? [back, ahead] : [ahead, back];
}

/** Where a cam's pivot goes when it is turned to the positive and to the negative side. */
export function camWays(cam: Cam): readonly [positive: string, negative: string] {
  return waysOf(camSlot(cam));
}

/** A count as people say it: "3 marks", "1 flat", "2.4 marks". */
export function counted(count: number, one: string): string {
  const text = (Math.round(Math.abs(count) * 10) / 10).toString();
  return `${text} ${one}${text === '1' ? '' : 's'}`;
}
