/** Random buildable corners: a shipped model with every hard point moved, so that most draws can be assembled and moved. */
import fc from 'fast-check';
import { type Model, readModel, type Vector3 } from '../../solver/index.ts';
import { shipped } from './models.ts';

const SPREAD = 28;

const shift = fc.double({ min: -SPREAD, max: SPREAD, noNaN: true });
const vector = fc.tuple(shift, shift, shift);
const angle = fc.double({ min: -60, max: 60, noNaN: true });

function moved(point: Vector3, by: readonly [number, number, number]): Vector3 {
  return [point[0] + by[0], point[1] + by[1], point[2] + by[2]];
}

/** Any of the three general shipped corners, all points moved by up to 28 mm, cams and turns set at random. */
export const buildable: fc.Arbitrary<Model> = fc
  .record({
    base: fc.constantFrom(
      'half-ton-factory',
      'rear-steer-saloon',
      'tall-knuckle-crossover' as const,
    ),
    shifts: fc.array(vector, { minLength: 16, maxLength: 16 }),
    cams: fc.tuple(angle, angle, angle, angle),
    turns: fc.double({ min: -3, max: 3, noNaN: true }),
    camber: fc.double({ min: -4, max: 4, noNaN: true }),
    toe: fc.double({ min: -2, max: 2, noNaN: true }),
  })
  .map(({ base, shifts, cams, turns, camber, toe }) => {
    const model = shipped(base as 'half-ton-factory');
    const { lowerArm, upperArm, tieRod, coilover, antiRollBar, halfShaft } = model;
    const at = (i: number) => shifts[i]!;
    return {
      ...model,
      lowerArm: {
        ...lowerArm,
        frontPivot: moved(lowerArm.frontPivot, at(0)),
        rearPivot: moved(lowerArm.rearPivot, at(1)),
        ballJoint: moved(lowerArm.ballJoint, at(2)),
        frontCam: { throw: 6, angle: cams[0] },
        rearCam: { throw: 6, angle: cams[1], slot: [0.1, 1, 0.2] as Vector3 },
      },
      upperArm: {
        ...upperArm,
        frontPivot: moved(upperArm.frontPivot, at(3)),
        rearPivot: moved(upperArm.rearPivot, at(4)),
        ballJoint: moved(upperArm.ballJoint, at(5)),
        frontCam: { throw: 4, angle: cams[2] },
        rearCam: { throw: 4, angle: cams[3] },
      },
      tieRod: {
        ...tieRod,
        inner: moved(tieRod.inner, at(6)),
        outer: moved(tieRod.outer, at(7)),
        pitch: 1.5,
        turns,
      },
      hub: { face: moved(model.hub.face, at(8)), camber, toe },
      coilover: {
        ...coilover!,
        top: moved(coilover!.top, at(9)),
        bottom: moved(coilover!.bottom, at(10)),
      },
      antiRollBar: {
        ...antiRollBar!,
        leverEnd: moved(antiRollBar!.leverEnd, at(11)),
        link: moved(antiRollBar!.link, at(12)),
      },
      halfShaft: {
        ...halfShaft!,
        inner: moved(halfShaft!.inner, at(13)),
        outer: moved(halfShaft!.outer, at(14)),
      },
    };
  })
  .filter((model) => readModel(model, 'random').ok);

/** Share of the model's travel and rack ranges, −1 to 1 each. */
export const place: fc.Arbitrary<readonly [number, number]> = fc.tuple(
  fc.double({ min: -1, max: 1, noNaN: true }),
  fc.double({ min: -1, max: 1, noNaN: true }),
);

/** Travel and rack, mm, of a place in a model's ranges. */
export function inRange(model: Model, [up, along]: readonly [number, number]): [number, number] {
  const { bump, droop } = model.travel;
  const [left, right] = model.steering?.limit ?? [0, 0];
  return [up > 0 ? up * bump : up * droop, along > 0 ? along * right : -along * left];
}

/** A unit direction in the travel × rack plane, all about. */
export const heading: fc.Arbitrary<readonly [number, number]> = fc
  .integer({ min: 0, max: 359 })
  .map((degrees) => [Math.cos((degrees * Math.PI) / 180), Math.sin((degrees * Math.PI) / 180)]);
