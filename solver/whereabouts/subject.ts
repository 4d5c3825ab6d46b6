/** The point that moves: where it stands in a model, a model with it elsewhere, and how well it is known. */
import { tidy } from '../cure/change.ts';
import { add, scale, subtract, type Vector3 } from '../math/vec3.ts';
import type { Model } from '../model/model.ts';
import { plainPath } from '../model/sound/names.ts';
import type { Subject } from './question.ts';

/** Paths in the model file of what moves with a subject. */
export const SUBJECT_PATHS: Readonly<Record<Subject, readonly string[]>> = {
  rodInner: ['tieRod.inner'],
  rodOuter: ['tieRod.outer'],
  upperFront: ['upperArm.frontPivot'],
  upperRear: ['upperArm.rearPivot'],
  upperBoth: ['upperArm.frontPivot', 'upperArm.rearPivot'],
};

/** Where the subject stands in the design pose, mm; of both pivots, the middle between them. */
export function placeOf({ tieRod, upperArm }: Model, subject: Subject): Vector3 {
  switch (subject) {
    case 'rodInner':
      return tieRod.inner;
    case 'rodOuter':
      return tieRod.outer;
    case 'upperFront':
      return upperArm.frontPivot;
    case 'upperRear':
      return upperArm.rearPivot;
    case 'upperBoth':
      return scale(add(upperArm.frontPivot, upperArm.rearPivot), 0.5);
  }
}

/** The model with the subject at a place; everything else keeps its numbers. */
export function withPlace(model: Model, subject: Subject, place: Vector3): Model {
  const { tieRod, upperArm } = model;
  switch (subject) {
    case 'rodInner':
      return { ...model, tieRod: { ...tieRod, inner: place } };
    case 'rodOuter':
      return { ...model, tieRod: { ...tieRod, outer: place } };
    case 'upperFront':
      return { ...model, upperArm: { ...upperArm, frontPivot: place } };
    case 'upperRear':
      return { ...model, upperArm: { ...upperArm, rearPivot: place } };
    case 'upperBoth': {
      const way = subtract(place, placeOf(model, subject));
      const frontPivot = add(upperArm.frontPivot, way);
      const rearPivot = add(upperArm.rearPivot, way);
      return { ...model, upperArm: { ...upperArm, frontPivot, rearPivot } };
    }
  }
}

/**
 * One standard uncertainty of each coordinate of the subject's place, mm, as `tolerance` states it; null where it states
 * none. Of both pivots: that of the middle between two places measured apart from each other.
 */
export function uncertaintyOf({ tolerance = {} }: Model, subject: Subject): number | null {
  const stated = new Map(Object.entries(tolerance).map(([key, mm]) => [plainPath(key), mm]));
  const each = SUBJECT_PATHS[subject].map((path) => stated.get(path) ?? stated.get('default'));
  let squares = 0;
  for (const mm of each) {
    if (mm === undefined) return null;
    squares += mm * mm;
  }
  return Math.sqrt(squares) / each.length;
}

/** The model with the subject at a place, its numbers as they would be written down: to 0.0001 mm. */
export function withPlaceWritten(model: Model, subject: Subject, place: Vector3): Model {
  const { tieRod, upperArm, ...others } = withPlace(model, subject, place);
  const written = (point: Vector3): Vector3 => [tidy(point[0]), tidy(point[1]), tidy(point[2])];
  const isRod = subject === 'rodInner' || subject === 'rodOuter';
  const rod = { ...tieRod, inner: written(tieRod.inner), outer: written(tieRod.outer) };
  const arm = {
    ...upperArm,
    frontPivot: written(upperArm.frontPivot),
    rearPivot: written(upperArm.rearPivot),
  };
  return { ...others, tieRod: isRod ? rod : tieRod, upperArm: isRod ? upperArm : arm };
}
