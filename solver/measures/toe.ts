/** Toe between its two usual units. Degrees first; a length means nothing without the diameter it was read at. */
import { radians } from '../units.ts';

/** Toe of one wheel as a length over the diameter it is read at, in the diameter's unit: D·sin(toe), toe-in positive. */
export function toeLength(toe: number, diameter: number): number {
  return diameter * Math.sin(radians(toe));
}
