/** A limit in words: its name, its bounds and how much of it is left. */
import { isOutside, type Limit } from '../../solver/index.ts';
import { type FigureStyle, figureNumber, figureSteps } from '../words/figures.ts';

const NAMES: Readonly<Record<string, string>> = {
  'steering.limit': 'rack past its limit',
  'stops.bump': 'past the bump stop',
  'stops.droop': 'past the droop stop',
  'lowerArm.ballJointLimit': 'lower ball joint past its limit',
  'upperArm.ballJointLimit': 'upper ball joint past its limit',
  'tieRod.endLimit': 'tie rod outer joint past its limit',
  'tieRod.innerLimit': 'tie rod inner joint past its limit',
  'coilover.minLength': 'damper shorter than it can be',
  'coilover.maxLength': 'damper longer than it can be',
  'strap.length': 'strap longer than it is',
  'halfShaft.outerLimit': 'half-shaft outer joint past its limit',
  'halfShaft.innerLimit': 'half-shaft inner joint past its limit',
  'halfShaft.plungeIn': 'half-shaft pushed in too far',
  'halfShaft.plungeOut': 'half-shaft drawn out too far',
  'antiRollBar.link': 'drop link out of reach of its lever',
};

/** What it means that a pose lies outside of the limit of this name. */
export function limitName(name: string): string {
  return NAMES[name] ?? name;
}

/** How much is left before the nearest bound of any of the limits; negative outside, NaN without limits. */
export function roomLeft(limits: readonly Limit[], value: number): number {
  let left = Number.NaN;
  for (let i = 0; i < limits.length; i += 1) {
    const { least, most } = limits[i] as Limit;
    const room = Math.min(
      least === undefined ? Number.POSITIVE_INFINITY : value - least,
      most === undefined ? Number.POSITIVE_INFINITY : most - value,
    );
    if (!(room >= left)) left = room;
  }
  return left;
}

function shown(value: number, style: FigureStyle): string {
  return `${figureNumber(figureSteps(value, style), style)}${style.unit}`;
}

/** "of 26.00°", "(360.0 mm to 512.0 mm)", "(at least 360.0 mm)". */
export function boundsInWords(limits: readonly Limit[], style: FigureStyle): string {
  const least = limits.find((limit) => limit.least !== undefined)?.least;
  const most = limits.find((limit) => limit.most !== undefined)?.most;
  if (least === undefined) return most === undefined ? '' : `of ${shown(most, style)}`;
  if (most === undefined) return `(at least ${shown(least, style)})`;
  return `(${shown(least, style)} to ${shown(most, style)})`;
}

/** The limits' line under a value: "13.71° left of 26.00°", or "Outside its limit of 26.00°: lowerArm.ballJointLimit". */
export function limitLine(limits: readonly Limit[], value: number, style: FigureStyle): string {
  if (limits.length === 0 || Number.isNaN(value)) return '';
  const bounds = boundsInWords(limits, style);
  const outside = limits.find((limit) => isOutside(limit, value));
  if (outside === undefined) return `${shown(roomLeft(limits, value), style)} left ${bounds}`;
  return `Outside its limit ${bounds}: ${outside.name}`;
}

const MOST_NAMED = 3;

/** "Outside: past the bump stop, …": what the pose lies outside of, the first few by name. */
export function outsideLine(names: readonly string[]): string {
  if (names.length === 0) return '';
  const more = names.length - MOST_NAMED;
  const named = names.slice(0, MOST_NAMED).map(limitName).join(', ');
  return `Outside: ${named}${more > 0 ? ` and ${more} more, marked in the readings` : ''}`;
}
