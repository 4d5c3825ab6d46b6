/** Points between which people measure lengths, and where they stand in a solved pose. */
import type { Corner } from '../corner.ts';
import { Slot } from '../linkage/slots.ts';
import { addScaled, type Vector3 } from '../math/vec3.ts';
import { wheelSpacer } from '../model/defaults.ts';
import type { Model } from '../model/model.ts';

/** Names of the points that a length may be read between: ball centres and bolt centres. */
export const READ_POINTS = [
  'lowerFrontPivot',
  'lowerRearPivot',
  'lowerBallJoint',
  'upperFrontPivot',
  'upperRearPivot',
  'upperBallJoint',
  'tieRodInner',
  'tieRodOuter',
  'wheelCentre',
  'hubFace',
  'damperTop',
  'damperBottom',
  'leverEnd',
  'link',
  'shaftInner',
  'shaftOuter',
] as const;
export type ReadPoint = (typeof READ_POINTS)[number];

interface PointRow {
  readonly label: string;
  readonly needs?: 'coilover' | 'antiRollBar' | 'halfShaft';
  /** Its place in the pose that the buffer holds with all parts placed, mm. */
  readonly at: (corner: Corner, pose: Float64Array) => Vector3;
}

function pointAt(pose: Float64Array, at: number): Vector3 {
  return [pose[at]!, pose[at + 1]!, pose[at + 2]!];
}

function slot(at: number): PointRow['at'] {
  return (_, pose) => pointAt(pose, at);
}

/** W = hub.face + a·(spacer − offset), so the face lies the other way along the hub axis. */
function hubFace({ model: { wheel } }: Corner, pose: Float64Array): Vector3 {
  const out = wheelSpacer(wheel) - wheel.offset;
  return addScaled(pointAt(pose, Slot.centre), pointAt(pose, Slot.hubAxis), -out);
}

/** Names, needs and places of the points. Pivots stand with their cams applied. */
export const POINT_TABLE: Readonly<Record<ReadPoint, PointRow>> = {
  lowerFrontPivot: {
    label: 'lower arm, front pivot',
    at: ({ linkage }) => linkage.pivots.lowerFront,
  },
  lowerRearPivot: { label: 'lower arm, rear pivot', at: ({ linkage }) => linkage.pivots.lowerRear },
  lowerBallJoint: { label: 'lower ball joint', at: slot(Slot.lower) },
  upperFrontPivot: {
    label: 'upper arm, front pivot',
    at: ({ linkage }) => linkage.pivots.upperFront,
  },
  upperRearPivot: { label: 'upper arm, rear pivot', at: ({ linkage }) => linkage.pivots.upperRear },
  upperBallJoint: { label: 'upper ball joint', at: slot(Slot.upper) },
  tieRodInner: { label: 'tie rod, inner end', at: slot(Slot.inner) },
  tieRodOuter: { label: 'tie rod, outer end', at: slot(Slot.outer) },
  wheelCentre: { label: 'wheel centre', at: slot(Slot.centre) },
  hubFace: { label: 'hub face', at: hubFace },
  damperTop: {
    label: 'coilover, top eye',
    needs: 'coilover',
    at: ({ coilover }) => coilover!.top,
  },
  damperBottom: {
    label: 'coilover, bottom eye',
    needs: 'coilover',
    at: slot(Slot.damperBottom),
  },
  leverEnd: { label: 'bar lever, end', needs: 'antiRollBar', at: slot(Slot.leverEnd) },
  link: { label: 'bar link, joint at the arm', needs: 'antiRollBar', at: slot(Slot.link) },
  shaftInner: {
    label: 'half-shaft, inner joint',
    needs: 'halfShaft',
    at: ({ shaft }) => shaft!.inner,
  },
  shaftOuter: { label: 'half-shaft, outer joint', needs: 'halfShaft', at: slot(Slot.shaftOuter) },
};

/** The points that a model has. */
export function readPoints(model: Model): readonly ReadPoint[] {
  return READ_POINTS.filter((point) => {
    const { needs } = POINT_TABLE[point];
    return needs === undefined || model[needs] !== undefined;
  });
}
