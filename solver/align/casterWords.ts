/** Why a gauge's caster is not the true one, in words. */
import { radians } from '../units.ts';
import type { CasterSweep } from './casterSweep.ts';

/** Differences below this, degrees, are not told. */
const SMALL = 0.005;

function signed(value: number): string {
  return `${value > 0 ? '+' : '−'}${Math.abs(value).toFixed(2)}°`;
}

/** What reading caster from camber change brings in, the greatest part first: one sentence each. */
export function casterReasons(sweep: CasterSweep): readonly string[] {
  const { difference, steer, factor, left, right, straight } = sweep;
  const angle = `${Number(steer.toFixed(1))}°`;
  const exact = 1 / (2 * Math.sin(radians(steer)));
  const both = (key: 'caster' | 'kingpinInclination') =>
    `${left[key].toFixed(2)}° and ${right[key].toFixed(2)}°`;
  const told: readonly (readonly [number, string])[] = [
    [
      difference.rule,
      `the rule multiplies the change by ${factor.toFixed(3)}, where ±${angle} asks for ${exact.toFixed(3)}`,
    ],
    [
      difference.smallAngles,
      `camber and a kingpin inclination of ${straight.kingpinInclination.toFixed(1)}° are taken as small`,
    ],
    [
      difference.staticToe,
      `the plates are zeroed with ${Math.abs(straight.toe).toFixed(2)}° of toe-${straight.toe > 0 ? 'in' : 'out'} on the wheel`,
    ],
    [
      difference.movingAxis,
      `the axis itself moves as it steers, since ride height is held: caster ${both('caster')}, kingpin inclination ${both('kingpinInclination')}, steered left and right`,
    ],
  ];
  return told
    .filter(([value]) => Math.abs(value) >= SMALL)
    .sort(([a], [b]) => Math.abs(b) - Math.abs(a))
    .map(([value, why]) => `${signed(value)}: ${why}.`);
}
