import { describe, expect, it } from 'vitest';
import { assemble, createPose, placeParts, placeRod, Slot, solve } from '../../solver/index.ts';
import { carry, directionBack, directionNow, placeNow } from '../../src/scene/handles/carried.ts';
import { meshKey } from '../../src/state/meshes.ts';
import { hardPoints } from '../../src/state/points.ts';
import type { PreparedMesh } from '../../src/worker/meshJob.ts';
import { FULL_MODEL } from '../support/full-model.ts';

const corner = assemble(FULL_MODEL);
const pose = createPose();
solve(corner, pose, 40, 30);
placeParts(corner, pose.data);
const { data } = pose;

function placed(path: string): number[] {
  const point = hardPoints(FULL_MODEL).find((one) => one.path === path);
  if (point === undefined) throw new Error(path);
  const out = new Float64Array(3);
  placeNow(carry(corner, point), pose, out);
  return [...out];
}

function at(slot: number): number[] {
  return [data[slot]!, data[slot + 1]!, data[slot + 2]!];
}

function expectClose(actual: readonly number[], wanted: readonly number[]): void {
  actual.forEach((part, i) => {
    expect(part).toBeCloseTo(wanted[i]!, 8);
  });
}

describe('placeNow', () => {
  it('is the solver’s own place of every joint it solves', () => {
    expect(pose.outcome).toBe('reached');
    expectClose(placed('lowerArm.ballJoint'), at(Slot.lower));
    expectClose(placed('upperArm.ballJoint'), at(Slot.upper));
    expectClose(placed('tieRod.outer'), at(Slot.outer));
    expectClose(placed('tieRod.inner'), at(Slot.inner));
    expectClose(placed('coilover.bottom'), at(Slot.damperBottom));
    expectClose(placed('antiRollBar.leverEnd'), at(Slot.leverEnd));
    expectClose(placed('antiRollBar.link'), at(Slot.link));
    expectClose(placed('halfShaft.outer'), at(Slot.shaftOuter));
    expectClose(placed('strap.bottom'), at(Slot.strapBottom));
  });

  it('places the rod’s bends where the rod is drawn, and the pivots where their cams put them', () => {
    const rod = new Float64Array(12);
    placeRod(corner, data, rod);
    expectClose(placed('tieRod.bends.0'), [...rod.subarray(3, 6)]);
    expectClose(placed('tieRod.bends.1'), [...rod.subarray(6, 9)]);
    expectClose(placed('lowerArm.frontPivot'), corner.linkage.pivots.lowerFront);
    expectClose(placed('upperArm.rearPivot'), corner.linkage.pivots.upperRear);
  });

  it('leaves the body’s points alone', () => {
    expect(placed('coilover.top')).toEqual(FULL_MODEL.coilover?.top);
  });
});

describe('a mesh obstacle', () => {
  const mesh = {
    name: 'part',
    shape: 'mesh',
    file: 'part.stl',
    unit: 'mm',
    position: [100, 200, 300],
    rotation: [0, 0, 90],
  } as const;
  const model = { ...FULL_MODEL, obstacles: [mesh] };
  const held = assemble(model);
  const point = hardPoints(model).find(({ path }) => path === 'obstacles.0.position')!;

  it('is held at the middle of its box, and at its origin until its file is ready', () => {
    const prepared: PreparedMesh = {
      positions: new Float32Array(),
      normals: new Float32Array(),
      tree: { roots: [], index: null, indirectBuffer: null },
      box: { min: [0, 0, 0], max: [10, 20, 30] },
      triangles: 0,
    };
    const files = new Map([[meshKey(mesh), { state: 'ready' as const, mesh: prepared }]]);
    const out = new Float64Array(3);
    placeNow(carry(held, point, { files, offered: [] }), pose, out);
    // A quarter turn about z brings the middle [5, 10, 15] to [−10, 5, 15].
    expect([...out]).toEqual([90, 205, 315]);
    placeNow(carry(held, point, { files: new Map(), offered: [] }), pose, out);
    expect([...out]).toEqual([100, 200, 300]);
  });
});

describe('directions', () => {
  const points = hardPoints(FULL_MODEL).map((point) => carry(corner, point));

  it.each(points.map((one) => [one.point.path, one] as const))(
    'of %s go there and back',
    (_, one) => {
      const out = new Float64Array(3);
      directionNow(one, pose, [0.2, -0.5, 0.9], out);
      expect(Math.hypot(...out)).toBeCloseTo(Math.hypot(0.2, 0.5, 0.9), 9);
      directionBack(one, pose, out, out);
      expectClose([...out], [0.2, -0.5, 0.9]);
    },
  );

  it('differ from the design’s on a body that has turned', () => {
    const joint = points.find((one) => one.point.path === 'lowerArm.ballJoint');
    const out = new Float64Array(3);
    if (joint !== undefined) directionNow(joint, pose, [0, 1, 0], out);
    expect(out[2]).toBeGreaterThan(0.05);
  });
});
