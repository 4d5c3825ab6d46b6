/** Judges places of the point that moves: one number each, and the samples of the curve that it is the greatest of. */
import type { Model, Vector3 } from '../model/model.ts';
import { type Curve, createCurve, curveInto } from './curve.ts';
import { PLANE_AXES, type Question, RATE_LENGTH } from './question.ts';
import { placeOf, withPlace } from './subject.ts';

export interface Judge {
  readonly model: Model;
  readonly question: Question;
  /** The present place, mm. */
  readonly place: Vector3;
  readonly curve: Curve;
}

export function createJudge(model: Model, question: Question): Judge {
  const place = placeOf(model, question.subject);
  return { model, question, place, curve: createCurve(model, question) };
}

/** The place in the plane with these coordinates along its two axes, mm; the third coordinate is the present one's. */
export function placeIn({ place, question }: Judge, first: number, second: number): Vector3 {
  const [i, j] = PLANE_AXES[question.plane];
  return [0, 1, 2].map((axis) =>
    axis === i ? first : axis === j ? second : place[axis]!,
  ) as unknown as Vector3;
}

/** The angle at the share s of the way from height i to the next: the cubic with the exact rates at both. */
function between({ heights, angle, rate }: Curve, i: number, s: number): number {
  const h = heights[i + 1]! - heights[i]!;
  const [a, b] = [angle[i]!, angle[i + 1]!];
  const [p, q] = [h * rate[i]!, h * rate[i + 1]!];
  return a + s * (p + s * (3 * (b - a) - 2 * p - q + s * (p + q - 2 * (b - a))));
}

/** Shares at which that cubic less the wanted rate turns back: roots of a quadratic inside 0 to 1. */
function turnsOf({ heights, angle, rate }: Curve, i: number, wanted: number): readonly number[] {
  const h = heights[i + 1]! - heights[i]!;
  const rise = angle[i + 1]! - angle[i]!;
  const [p, q] = [h * rate[i]!, h * rate[i + 1]!];
  const [a, b, c] = [3 * (p + q - 2 * rise), 2 * (3 * rise - 2 * p - q), p - h * wanted];
  const inside = b * b - 4 * a * c;
  if (!(inside >= 0)) return [];
  // The stable form: no difference of nearly equal numbers, and a straight line is no special case.
  const half = -(b + (b < 0 ? -1 : 1) * Math.sqrt(inside)) / 2;
  return [half / a, c / half].filter((share) => share > 0 && share < 1);
}

/** Departure of an angle at a height from the straight line through ride with the wanted rate, degrees. */
function departure({ curve, question }: Judge, height: number, angle: number): number {
  const { heights, ride } = curve;
  return angle - curve.angle[ride]! - question.wanted * (height - heights[ride]!);
}

/** The greatest departure of the curve over its stretch, degrees, never negative. */
function greatestDeparture(judge: Judge): number {
  const { curve, question } = judge;
  const { heights, angle } = curve;
  let greatest = 0;
  for (let i = 0; i < heights.length; i += 1) {
    greatest = Math.max(greatest, Math.abs(departure(judge, heights[i]!, angle[i]!)));
    if (i + 1 === heights.length) break;
    for (const share of turnsOf(curve, i, question.wanted)) {
      const height = heights[i]! + share * (heights[i + 1]! - heights[i]!);
      greatest = Math.max(greatest, Math.abs(departure(judge, height, between(curve, i, share))));
    }
  }
  return greatest;
}

/** Rate at ride of the place judged last less the wanted one, degrees over 100 mm of travel. */
export function rateOff({ curve, question }: Judge): number {
  return RATE_LENGTH * (curve.rate[curve.ride]! - question.wanted);
}

/** What a place is judged by (see `AIMS`), degrees, never negative; NaN where the corner cannot follow the whole stretch. */
export function judgeAt(judge: Judge, first: number, second: number): number {
  const { model, question, curve } = judge;
  const place = placeIn(judge, first, second);
  if (!curveInto(withPlace(model, question.subject, place), curve)) return Number.NaN;
  return question.aim === 'atRide' ? Math.abs(rateOff(judge)) : greatestDeparture(judge);
}

/** Parts of the way between two heights at which departures are sampled. */
const PARTS = 4;

/** Signed departures whose greatest size the number is (but for what lies between samples), of the place judged last. */
export function samplesOf(judge: Judge): Float64Array {
  const { curve, question } = judge;
  if (question.aim === 'atRide') return Float64Array.of(rateOff(judge));
  const { heights } = curve;
  const last = heights.length - 1;
  return Float64Array.from({ length: PARTS * last + 1 }, (_, n) => {
    const i = Math.min(last - 1, Math.floor(n / PARTS));
    const share = n / PARTS - i;
    const height = heights[i]! + share * (heights[i + 1]! - heights[i]!);
    return departure(judge, height, between(curve, i, share));
  });
}
