/** The parts that clearances are between, as people call them. */
import type { ClearancePart } from '../../solver/clearance/shapes.ts';

const PARTS: Readonly<Record<ClearancePart, string>> = {
  wheel: 'wheel',
  tyre: 'tyre',
  tieRod: 'tie rod',
  upperArm: 'upper arm',
  lowerArm: 'lower arm',
  coilover: 'coilover',
  antiRollBarLink: 'drop link',
  halfShaft: 'half-shaft',
  knuckle: 'knuckle',
  brake: 'brake',
};

/** A part's name; an obstacle goes by its own. */
export function partWords(name: string): string {
  return (PARTS as Readonly<Record<string, string>>)[name] ?? name;
}

/** "Tie rod to wheel". */
export function pairWords([one, other]: readonly [string, string]): string {
  const text = `${partWords(one)} to ${partWords(other)}`;
  return text.charAt(0).toUpperCase() + text.slice(1);
}
