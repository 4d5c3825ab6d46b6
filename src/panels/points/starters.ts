/**
 * Optional parts as a person might first sketch them into the present corner: near the points that are there, sized so
 * that they last the present travel. Proportions are common practice, without a source; everything can be edited after.
 */
import { Measure, type Model, type Vector3 } from '../../../solver/index.ts';
import { wheelThickness } from '../../../solver/model/defaults.ts';
import { specifiedRimDiameter, wheelSection } from '../../../solver/model/rim.ts';
import { reachableRack, setPoseMeasures, spanOf } from './span.ts';

function between(from: Vector3, to: Vector3, share: number): Vector3 {
  return [0, 1, 2].map((axis) => {
    const [a, b] = [from[axis] ?? 0, to[axis] ?? 0];
    return Math.round((a + share * (b - a)) * 2) / 2;
  }) as unknown as Vector3;
}

function moved(point: Vector3, x: number, y: number, z: number): Vector3 {
  return [point[0] + x, point[1] + y, point[2] + z];
}

/** A place on an arm, by its share of the way from between the pivots to the ball joint. */
function onArm(arm: Model['lowerArm'], share: number): Vector3 {
  return between(between(arm.frontPivot, arm.rearPivot, 0.5), arm.ballJoint, share);
}

function roundTo(value: number, step: number): number {
  return Math.round(value / step) * step;
}

/** Spring and damper from the lower arm up past the upper one, with length to spare at both ends of the travel. */
export function withCoilover(model: Model): Model {
  const { lowerArm, upperArm } = model;
  const bottom = moved(onArm(lowerArm, 0.7), 0, 0, 15);
  const height = Math.max(lowerArm.ballJoint[2], upperArm.ballJoint[2]) + 105;
  const inboard = Math.sign(lowerArm.ballJoint[1] - lowerArm.frontPivot[1]) || 1;
  const top: Vector3 = [bottom[0], bottom[1] - inboard * 95, roundTo(height, 5)];
  const plain = { top, bottom, on: 'lowerArm', diameter: 64 } as const;
  const next: Model = { ...model, coilover: plain };
  const span = spanOf(next, 'damperLength');
  const ratio = setPoseMeasures(next)?.[Measure.motionRatio] ?? Number.NaN;
  const load = (model.vehicle?.cornerMass ?? 500) * 9.81;
  return {
    ...next,
    coilover: {
      ...plain,
      ...(span === null
        ? {}
        : {
            minLength: roundTo(span.least - 15, 5),
            maxLength: roundTo(span.most + 10, 5),
          }),
      springRate: 80,
      designForce: ratio > 0.1 ? roundTo(load / ratio, 50) : 8000,
    },
  };
}

/** A bar ahead of the arm, its lever reaching back to a drop link on the arm. */
export function withAntiRollBar(model: Model): Model {
  const { lowerArm } = model;
  const front =
    lowerArm.frontPivot[0] >= lowerArm.rearPivot[0] ? lowerArm.frontPivot : lowerArm.rearPivot;
  const link = moved(onArm(lowerArm, 0.5), 60, 0, 15);
  const leverEnd = moved(link, 5, -10, 80);
  const x = roundTo(front[0] + 160, 5);
  const z = roundTo(leverEnd[2] - 15, 5);
  const half = roundTo(Math.abs(front[1]) * 0.8 + 20, 5);
  const side = Math.sign(front[1]) || 1;
  return {
    ...model,
    antiRollBar: {
      axis: [
        [x, side * half, z],
        [x, -side * half, z],
      ],
      leverEnd,
      link,
      on: 'lowerArm',
      diameter: 28,
    },
  };
}

/** A shaft from inside the pivots to a joint behind the hub's face, with plunge to spare. */
export function withHalfShaft(model: Model): Model {
  const { face } = model.hub;
  const outer = moved(face, 0, -145, 0);
  const pivots = Math.min(model.lowerArm.frontPivot[1], model.lowerArm.rearPivot[1]);
  const inner: Vector3 = [face[0] - 5, roundTo(Math.max(120, pivots - 150), 5), face[2] + 10];
  const plain = { inner, outer, diameter: 30, innerLimit: 24, outerLimit: 46 };
  const span = spanOf({ ...model, halfShaft: plain }, 'plunge');
  const need = span === null ? 20 : Math.max(Math.abs(span.least), Math.abs(span.most));
  const plunge = roundTo(need + 10, 1);
  return { ...model, halfShaft: { ...plain, plungeIn: plunge, plungeOut: plunge } };
}

/** A strap from the body to the lower arm, just taut at full droop. */
export function withStrap(model: Model): Model {
  const bottom = moved(onArm(model.lowerArm, 0.6), -45, 0, 0);
  const top = moved(onArm(model.upperArm, 0.2), -45, 0, 20);
  const plain = { top, bottom, on: 'lowerArm', length: 400 } as const;
  const span = spanOf({ ...model, strap: plain }, 'strapLength');
  return { ...model, strap: { ...plain, length: span === null ? 400 : roundTo(span.most, 1) } };
}

/** A rack that reaches as far both ways, as far as the linkage allows. */
export function withSteeringLimit(model: Model): Model {
  const reach = reachableRack(model, 70);
  return { ...model, steering: { ...model.steering, limit: [-reach, reach] } };
}

/** A bend near the outer joint, set off downward and inward: the way round a wheel's inner lip. */
export function withTieRodBend(model: Model): Model {
  const { tieRod } = model;
  const bends = tieRod.bends ?? [];
  const last = bends.at(-1) ?? tieRod.inner;
  const bend = moved(
    between(last, tieRod.outer, bends.length === 0 ? 0.72 : 0.5),
    0,
    0,
    bends.length === 0 ? -25 : 0,
  );
  return { ...model, tieRod: { ...tieRod, bends: [...bends, bend] } };
}

/** Targets at what the corner shows now, to be edited. */
export function withTargets(model: Model): Model {
  const measures = setPoseMeasures(model);
  const target = (key: 'camber' | 'caster' | 'toe', step: number, plusMinus: number) => {
    const value = measures?.[Measure[key]] ?? 0;
    return {
      value: Number(roundTo(Number.isFinite(value) ? value : 0, step).toFixed(3)),
      plusMinus,
    };
  };
  return {
    ...model,
    targets: {
      camber: target('camber', 0.05, 0.75),
      caster: target('caster', 0.1, 0.75),
      toe: target('toe', 0.01, 0.05),
    },
  };
}

/** A steering arm, from the lower ball joint to the tie rod's outer joint. */
export function withKnuckleTube(model: Model): Model {
  const tubes = model.knuckle?.tubes ?? [];
  const points = [model.lowerArm.ballJoint, model.tieRod.outer];
  return { ...model, knuckle: { ...model.knuckle, tubes: [...tubes, { points, diameter: 30 }] } };
}

/** A disc with its caliper inside the rim, ending short of the hub's face. */
export function withBrake(model: Model): Model {
  const rim = specifiedRimDiameter(model.wheel.diameter) / 2;
  const radius = roundTo(rim - 42, 1);
  const face = model.wheel.offset;
  return {
    ...model,
    brake: {
      section: [
        [face - 70, radius - 60],
        [face - 70, radius],
        [face - 5, radius],
      ],
    },
  };
}

/** A row of weights 20 mm wide and 5 mm high, inside the barrel where that is narrowest. */
export function withWeights(model: Model): Model {
  const line = wheelSection(model.wheel);
  const [start, narrowest] = line.reduce((best, point) => (point[1] < best[1] ? point : best));
  const radius = roundTo(narrowest - wheelThickness(model.wheel) / 2 - 5, 0.5);
  const from = roundTo(start + 10, 0.5);
  return {
    ...model,
    wheel: {
      ...model.wheel,
      weights: [
        [from, radius],
        [from + 20, radius],
      ],
    },
  };
}

function freeName(model: Model, name: string): string {
  const taken = new Set((model.obstacles ?? []).map((obstacle) => obstacle.name));
  if (!taken.has(name)) return name;
  let count = 2;
  while (taken.has(`${name} ${count}`)) count += 1;
  return `${name} ${count}`;
}

/** A frame rail inboard of the arms' pivots. */
export function withRail(model: Model): Model {
  const { lowerArm, upperArm } = model;
  const pivots = [lowerArm, upperArm].flatMap((arm) => [arm.frontPivot, arm.rearPivot]);
  const outboard = Math.min(...pivots.map((point) => point[1])) - 15;
  const middle = (lowerArm.frontPivot[2] + upperArm.frontPivot[2]) / 2;
  const box = {
    name: freeName(model, 'frame rail'),
    shape: 'box',
    min: [-600, roundTo(outboard - 80, 5), roundTo(middle - 65, 5)],
    max: [600, roundTo(outboard, 5), roundTo(middle + 65, 5)],
  } as const;
  return { ...model, obstacles: [...(model.obstacles ?? []), box] };
}

/** A tube across the vehicle behind the arms, such as a crossmember. */
export function withCrossTube(model: Model): Model {
  const { lowerArm } = model;
  const x = roundTo(Math.min(lowerArm.rearPivot[0], lowerArm.frontPivot[0]) - 80, 5);
  const [y, z] = [roundTo(lowerArm.rearPivot[1] - 20, 5), roundTo(lowerArm.rearPivot[2], 5)];
  const tube = {
    name: freeName(model, 'crossmember'),
    shape: 'tube',
    points: [
      [x, 0, z],
      [x, y, z],
    ],
    diameter: 50,
  } as const;
  return { ...model, obstacles: [...(model.obstacles ?? []), tube] };
}

/** A bend in the middle of an arm's leg, set a little outward. */
export function withLegBend(
  model: Model,
  arm: 'lowerArm' | 'upperArm',
  leg: 'front' | 'rear',
): Model {
  const part = model[arm];
  const legs = part.legs ?? { front: [], rear: [] };
  const from = legs[leg].at(-1) ?? (leg === 'front' ? part.frontPivot : part.rearPivot);
  const bend = moved(between(from, part.ballJoint, 0.5), leg === 'front' ? 15 : -15, 0, 0);
  return { ...model, [arm]: { ...part, legs: { ...legs, [leg]: [...legs[leg], bend] } } };
}
