/**
 * What stands about a wheel, turned into one half-plane through the hub axis: each point by its place along the axis from the hub
 * face and its distance from the axis. Distances to surfaces of revolution are true in it, hence gaps can be read off. Lengths mm.
 */
import { createRodGap, type RodGap, rodGapInto } from '../clearance/rodGap.ts';
import { rodDiameterAt } from '../clearance/rodPieces.ts';
import { type Corner, solve } from '../corner.ts';
import { Slot } from '../linkage/slots.ts';
import { createPose, type Pose } from '../linkage/solve.ts';
import { placeParts } from '../measures/parts.ts';
import { centrePlane } from './rimPlace.ts';

/** [along the hub axis from the hub face, positive outboard; distance from the axis], mm. */
export type HubPoint = readonly [number, number];

/** A stretch of the rod of one diameter. */
export interface RodStretch {
  readonly line: readonly HubPoint[];
  readonly diameter: number;
}

/** The least gap of the rod to wheel or tyre, from surface to surface. */
export interface GapMark {
  readonly gap: number;
  readonly from: HubPoint;
  readonly to: HubPoint;
}

export interface SectionView {
  /** Where the corner stands: as asked, or the last reachable place on the way. */
  readonly travel: number;
  readonly rack: number;
  readonly rod: readonly RodStretch[];
  readonly joints: {
    readonly lowerBallJoint: HubPoint;
    readonly upperBallJoint: HubPoint;
    readonly tieRodOuter: HubPoint;
  };
  readonly wheelGap: GapMark;
  readonly tyreGap: GapMark;
}

/** Steps a stretch of rod is drawn in: turned about the axis, a straight line is a hyperbola. */
const STEPS = 24;

/** Turns a point in vehicle axes into the half-plane of a placed pose. */
function turned(pose: Float64Array, plane: number, x: number, y: number, z: number): HubPoint {
  const px = x - pose[Slot.centre]!;
  const py = y - pose[Slot.centre + 1]!;
  const pz = z - pose[Slot.centre + 2]!;
  const ax = pose[Slot.hubAxis]!;
  const ay = pose[Slot.hubAxis + 1]!;
  const az = pose[Slot.hubAxis + 2]!;
  const s = px * ax + py * ay + pz * az;
  return [s + plane, Math.hypot(px - s * ax, py - s * ay, pz - s * az)];
}

function slotPoint(pose: Float64Array, slot: number, plane: number): HubPoint {
  return turned(pose, plane, pose[slot]!, pose[slot + 1]!, pose[slot + 2]!);
}

function stretches({ pieces }: RodGap, pose: Float64Array, plane: number): RodStretch[] {
  const f = Slot.rodFrame;
  const { points, radii } = pieces;
  const at = (i: number, axis: number): number =>
    pose[Slot.outer + axis]! +
    points[3 * i]! * pose[f + axis]! +
    points[3 * i + 1]! * pose[f + 3 + axis]! +
    points[3 * i + 2]! * pose[f + 6 + axis]!;
  return Array.from(radii, (radius, i) => {
    const line = Array.from({ length: STEPS + 1 }, (_, step) => {
      const part = step / STEPS;
      const [x, y, z] = [0, 1, 2].map(
        (axis) => at(i, axis) + part * (at(i + 1, axis) - at(i, axis)),
      );
      return turned(pose, plane, x!, y!, z!);
    });
    return { line, diameter: 2 * radius };
  });
}

/** The gap's two ends moved from centreline and mid-surface to the surfaces. */
function markOf(rod: RodGap, corner: Corner, pose: Pose, plane: number): GapMark {
  rodGapInto(rod, pose);
  const [x, y, z] = rod.rodPoint;
  const centre = turned(pose.data, plane, x!, y!, z!);
  const metal: HubPoint = [rod.sectionPoint[0] + plane, rod.sectionPoint[1]];
  const apart = Math.hypot(metal[0] - centre[0], metal[1] - centre[1]) || 1;
  const along = (from: HubPoint, to: HubPoint, length: number): HubPoint => [
    from[0] + ((to[0] - from[0]) * length) / apart,
    from[1] + ((to[1] - from[1]) * length) / apart,
  ];
  const rodHalf = rodDiameterAt(corner.model.tieRod, rod.fromOuter) / 2;
  const metalHalf = rod.sections.find(({ name }) => name === rod.place)?.half ?? 0;
  return {
    gap: rod.gap,
    from: along(centre, metal, rodHalf),
    to: along(metal, centre, metalHalf),
  };
}

/** The view of a corner at a place of travel and rack, mm; null where its linkage cannot be put together at all. */
export function sectionView(corner: Corner, travel: number, rack: number): SectionView | null {
  if (corner.linkage.broken !== null) return null;
  const pose = createPose();
  solve(corner, pose, travel, rack);
  placeParts(corner, pose.data);
  const plane = centrePlane(corner.model.wheel);
  const wheel = createRodGap(corner, 'wheel');
  return {
    travel: pose.lastTravel,
    rack: pose.lastRack,
    rod: stretches(wheel, pose.data, plane),
    joints: {
      lowerBallJoint: slotPoint(pose.data, Slot.lower, plane),
      upperBallJoint: slotPoint(pose.data, Slot.upper, plane),
      tieRodOuter: slotPoint(pose.data, Slot.outer, plane),
    },
    wheelGap: markOf(wheel, corner, pose, plane),
    tyreGap: markOf(createRodGap(corner, 'tyre'), corner, pose, plane),
  };
}
