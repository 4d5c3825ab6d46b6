/** What is asked of a point that may move: which one, in which plane, and what its wheel shall do over travel. */
import type { Model } from '../model/model.ts';

/** What moves: an end of the tie rod, or the upper arm's pivots, each alone or both by the same way. */
export const SUBJECTS = ['rodInner', 'rodOuter', 'upperFront', 'upperRear', 'upperBoth'] as const;
export type Subject = (typeof SUBJECTS)[number];

/** The plane through the present point: y–z as seen from the front, x–z from the side, x–y from above. */
export const PLANES = ['front', 'side', 'above'] as const;
export type Plane = (typeof PLANES)[number];

/** The two vehicle axes of a plane, by their places in a point; the third coordinate stays. */
export const PLANE_AXES: Readonly<Record<Plane, readonly [number, number]>> = {
  front: [1, 2],
  side: [0, 2],
  above: [1, 0],
};

/**
 * What is made small, in degrees:
 * overTravel: the greatest departure over the stretch, at rack 0, of the angle from the straight line through its value at
 * ride with the wanted rate; atRide: the rate at ride less the wanted one, over 100 mm of travel.
 */
export const AIMS = ['overTravel', 'atRide'] as const;
export type Aim = (typeof AIMS)[number];

/** Travel over which rates are told, mm. */
export const RATE_LENGTH = 100;

/** How far the point may move from where it is, mm, never negative, along the plane's two axes. */
export interface Reach {
  readonly first: { readonly minus: number; readonly plus: number };
  readonly second: { readonly minus: number; readonly plus: number };
}

export interface Question {
  readonly subject: Subject;
  readonly plane: Plane;
  readonly aim: Aim;
  /** From the present point to the picture's edges, mm. */
  readonly half: number;
  /** [least, greatest] travel looked at, mm; ride belongs to it whatever is stated. */
  readonly stretch: readonly [number, number];
  /** Wanted rate along travel, degrees per mm: of toe for the tie rod, of camber for the upper arm. */
  readonly wanted: number;
  readonly reach: Reach;
}

/** Droop to bump as the stops allow it, else as the bench sweeps it. */
export function usualStretch({ stops, travel }: Model): readonly [number, number] {
  return [-(stops?.droop ?? travel.droop), stops?.bump ?? travel.bump];
}

/** The angle that the subject is set by. */
export function angleOf(subject: Subject): 'toe' | 'camber' {
  return subject === 'rodInner' || subject === 'rodOuter' ? 'toe' : 'camber';
}
