import { Matrix4, Object3D, Vector3 } from 'three';
import { describe, expect, it } from 'vitest';
import {
  assemble,
  createMeasures,
  createPose,
  measureInto,
  Slot,
  solve,
} from '../../solver/index.ts';
import {
  buildBar,
  buildDropLink,
  linkLength,
  linkRadius,
} from '../../src/scene/geometry/antiRollBar.ts';
import { buildArm } from '../../src/scene/geometry/arm.ts';
import { buildLowerUnit, buildUpperUnit } from '../../src/scene/geometry/coilover.ts';
import { coiloverShape } from '../../src/scene/geometry/coiloverShape.ts';
import { buildShaft } from '../../src/scene/geometry/halfShaft.ts';
import { brakeShape, buildHub, buildRotor } from '../../src/scene/geometry/hub.ts';
import { jointShapes } from '../../src/scene/geometry/joints.ts';
import { buildKnuckle } from '../../src/scene/geometry/knuckle.ts';
import { buildMounts } from '../../src/scene/geometry/mounts.ts';
import { buildRackBar, buildRackHousing, rackShape } from '../../src/scene/geometry/rack.ts';
import { type Assembly, toOnePiece } from '../../src/scene/geometry/solid.ts';
import { buildTieRod } from '../../src/scene/geometry/tieRod.ts';
import { buildTyre } from '../../src/scene/geometry/tyre.ts';
import { buildWheel } from '../../src/scene/geometry/wheel.ts';
import { wheelFrame } from '../../src/scene/geometry/wheelFrame.ts';
import { inverseOf, placeAlong, placeInFrame } from '../../src/scene/placing.ts';
import { FULL_MODEL } from '../support/full-model.ts';
import { SHIPPED, shipped } from '../support/models.ts';

const MODELS = [
  ...SHIPPED.map((name) => ({ name, model: shipped(name) })),
  { name: 'full', model: FULL_MODEL },
];

describe.each(MODELS)('the corner of $name', ({ model }) => {
  const corner = assemble(model);
  const assemblies: Record<string, Assembly> = {
    lowerArm: buildArm(model, 'lowerArm'),
    upperArm: buildArm(model, 'upperArm'),
    knuckle: buildKnuckle(model),
    tieRod: buildTieRod(corner, new Vector3(0, 1, 0)),
    rack: buildRackHousing(model),
    rackBar: buildRackBar(model),
    hub: buildHub(model),
    rotor: buildRotor(model, false),
    wheel: buildWheel(model, false),
    tyre: buildTyre(model, false),
    mounts: buildMounts(corner),
    ...(model.antiRollBar === undefined
      ? {}
      : { bar: buildBar(model), link: buildDropLink(linkLength(model), linkRadius(model)) }),
    ...(model.coilover === undefined
      ? {}
      : {
          below: buildLowerUnit(coiloverShape(model)),
          above: buildUpperUnit(coiloverShape(model)),
        }),
    shaft: buildShaft(corner.shaft?.designLength ?? 400, 16),
  };

  it('is made of finite points, unit normals and indices that exist', () => {
    for (const [name, assembly] of Object.entries(assemblies)) {
      for (const { positions, normals, indices } of Object.values(assembly)) {
        expect(positions.every(Number.isFinite), name).toBe(true);
        let worst = 0;
        for (let at = 0; at < normals.length; at += 3) {
          const size = Math.hypot(normals[at]!, normals[at + 1]!, normals[at + 2]!);
          worst = Math.max(worst, Math.abs(size - 1));
        }
        expect(worst, name).toBeLessThan(1e-6);
        const last = indices.reduce((most, index) => Math.max(most, index), 0);
        expect(last, name).toBeLessThan(positions.length / 3);
      }
    }
  });

  it('stays within what the graphics can draw: 100,000 triangles, 60 meshes', () => {
    const solids = Object.values(assemblies).flatMap((assembly) => Object.values(assembly));
    const triangles = solids.reduce((sum, { indices }) => sum + indices.length / 3, 0);
    expect(triangles).toBeLessThan(100_000);
    expect(solids.length).toBeLessThan(60);
    expect(triangles).toBeGreaterThan(20_000);
  });

  it('has arms that reach from their pivots to their ball joints', () => {
    for (const name of ['lowerArm', 'upperArm'] as const) {
      const { positions } = assemblies[name]!.arm!;
      for (const point of [model[name].frontPivot, model[name].rearPivot, model[name].ballJoint]) {
        let least = Number.POSITIVE_INFINITY;
        for (let at = 0; at < positions.length; at += 3) {
          const [x, y, z] = positions.slice(at, at + 3) as [number, number, number];
          least = Math.min(least, Math.hypot(x - point[0], y - point[1], z - point[2]));
        }
        expect(least, name).toBeLessThan(40);
      }
    }
  });

  it('points its studs at the knuckle', () => {
    for (const { stud, housing } of Object.values(jointShapes(model))) {
      expect(stud.length()).toBeCloseTo(1, 12);
      expect(stud.dot(housing)).toBeGreaterThan(0);
    }
    const frame = wheelFrame(model);
    expect(frame.determinant()).toBeCloseTo(1, 12);
  });

  it('keeps the brake inside the rim or the envelope that the model states', () => {
    const shape = brakeShape(model);
    expect(shape.low).toBeGreaterThanOrEqual(shape.within[0]);
    expect(shape.high).toBeLessThanOrEqual(Math.max(shape.within[1], shape.high));
    for (const name of ['disc', 'caliper'] as const) {
      const { positions } = { ...assemblies['hub'], ...assemblies['rotor'] }[name] ?? {
        positions: [],
      };
      let reach = 0;
      for (let at = 0; at < positions.length; at += 3)
        reach = Math.max(reach, Math.hypot(positions[at]!, positions[at + 1]!));
      expect(reach, name).toBeLessThan(shape.room + 1e-6);
    }
  });

  it('leaves the rack room to move between its housing and the joint', () => {
    const { inner, mouth, direction, least } = rackShape(model);
    const nearest = inner.clone().addScaledVector(direction, least).sub(mouth).dot(direction);
    expect(nearest).toBeGreaterThan(20);
  });

  it('carries design-pose geometry with its bodies: the ball joints stay where the solver puts them', () => {
    const pose = createPose();
    const measures = createMeasures();
    const { bump } = model.travel;
    expect(solve(corner, pose, bump / 2, 0)).toBe('reached');
    measureInto(corner, pose, measures);
    const object = new Object3D();
    placeInFrame(
      object,
      pose.data,
      Slot.upper,
      Slot.upperFrame,
      inverseOf(corner.linkage.upperArm),
    );
    const onArm = new Vector3(...model.upperArm.ballJoint).applyMatrix4(object.matrix);
    placeInFrame(object, pose.data, Slot.lower, Slot.frame, inverseOf(corner.linkage.knuckle));
    const onKnuckle = new Vector3(...model.upperArm.ballJoint).applyMatrix4(object.matrix);
    expect(onArm.distanceTo(onKnuckle)).toBeLessThan(1e-6);
    expect(onArm.distanceTo(new Vector3().fromArray(pose.data, Slot.upper))).toBeLessThan(1e-6);
  });
});

describe('placing', () => {
  it('hides what is not a number and shows it again', () => {
    const object = new Object3D();
    placeAlong(object, 0, 0, 0, Number.NaN, 0, 1);
    expect(object.visible).toBe(false);
    placeAlong(object, 1, 2, 3, 0, 5, 0);
    expect(object.visible).toBe(true);
    expect(new Vector3(0, 0, 2).applyMatrix4(object.matrix).toArray()).toEqual([1, 4, 3]);
  });

  it('makes right-handed axes in every direction, along the vehicle’s x too', () => {
    const object = new Object3D();
    for (const [x, y, z] of [
      [1, 0, 0],
      [-1, 0.001, 0],
      [0, 1, 0],
      [0.2, -0.4, 0.9],
    ] as const) {
      placeAlong(object, 0, 0, 0, x, y, z);
      expect(new Matrix4().copy(object.matrix).determinant()).toBeCloseTo(1, 12);
    }
  });
});

describe('the held design', () => {
  it('is drawn as one piece with every triangle of its materials', () => {
    const assembly = buildHub(shipped('half-ton-factory'));
    const whole = toOnePiece(assembly).painted!;
    const parts = Object.values(assembly).reduce((sum, { indices }) => sum + indices.length, 0);
    expect(whole.getIndex()!.count).toBe(parts);
    const greatest = Math.max(...(whole.getIndex()!.array as Uint16Array));
    expect(greatest).toBe(whole.getAttribute('position').count - 1);
  });
});
