/** How far a tyre rolls per turn, and what the speedometer makes of another one. */
import { MM_PER_INCH } from '../units.ts';

/**
 * Rolling circumference of a radial tyre per overall diameter: 3.05, less than π because the tyre squats. ETRTO Standards
 * Manual, at 60 km/h, from memory.
 */
export const CIRCUMFERENCE_PER_DIAMETER = 3.05;

const MM_PER_KM = 1e6;
/** A mile of 5280 feet of 12 inches, mm. */
const MM_PER_MILE: number = 5280 * 12 * MM_PER_INCH;

/** Turns of the wheel per km for an overall diameter, mm. */
export function revolutionsPerKm(overallDiameter: number): number {
  return MM_PER_KM / (CIRCUMFERENCE_PER_DIAMETER * overallDiameter);
}

/** Turns of the wheel per mile for an overall diameter, mm. */
export function revolutionsPerMile(overallDiameter: number): number {
  return MM_PER_MILE / (CIRCUMFERENCE_PER_DIAMETER * overallDiameter);
}

/**
 * Error of the speedometer, per cent of the true speed, when a tyre of overall diameter `fitted` replaces one of `present` with
 * which it read true: positive when it reads too much. (indicated − true)/true, the share every circumference has in common.
 */
export function speedometerError(present: number, fitted: number): number {
  return (present / fitted - 1) * 100;
}
