/** One-sided changes of one number of a model: from none up to a greatest. */
import { addScaled, length, scale, type Vector3 } from '../math/vec3.ts';
import type { Model } from '../model/model.ts';
import type { CureKind, Moved } from './cure.ts';

export interface Change {
  readonly kind: CureKind;
  /** What stands before and after the amount in words. */
  readonly says: (amount: number) => readonly [string, string];
  /** The greatest that is tried, mm: a change beyond it is another design. Common practice, no source. */
  readonly most: number;
  /** The model changed by so much, mm. */
  readonly at: (amount: number) => Model;
  /** The numbers that it sets. */
  readonly settings: (amount: number) => readonly Moved[];
  /** True where it leaves part of the range out, in place of moving a part. */
  readonly cutsRange: boolean;
}

/** A number of a model without the dust of sums: to 0.0001 mm. */
export function tidy(value: number): number {
  return Number(value.toFixed(4));
}

/** A point moved by so much along a direction. */
export function movedPoint(point: Vector3, along: Vector3, amount: number): Vector3 {
  const [x, y, z] = addScaled(point, along, amount);
  return [tidy(x), tidy(y), tidy(z)];
}

export const AXES: readonly { readonly label: string; readonly along: Vector3 }[] = [
  { label: 'x', along: [1, 0, 0] },
  { label: 'y', along: [0, 1, 0] },
  { label: 'z', along: [0, 0, 1] },
];

const WAYS: readonly (readonly [string, string])[] = [
  ['forward', 'rearward'],
  ['outboard', 'inboard'],
  ['up', 'down'],
];

/** A component that counts beside the largest: tan 20°. */
const COUNTS = 0.36;

/** A direction in words, its larger components first: "forward and up". */
export function wayWords(direction: Vector3): string {
  const most = Math.max(...direction.map(Math.abs));
  return [0, 1, 2]
    .filter((i) => Math.abs(direction[i]!) >= COUNTS * most)
    .sort((a, b) => Math.abs(direction[b]!) - Math.abs(direction[a]!))
    .map((i) => WAYS[i]![direction[i]! > 0 ? 0 : 1])
    .join(' and ');
}

/** The numbers of a point that move. */
export function pointMoves(label: string, before: Vector3 | null, after: Vector3): Moved[] {
  return AXES.flatMap(({ label: axis }, i) => {
    const was = before === null ? null : before[i]!;
    if (was === after[i]) return [];
    return [{ label: `${label}, ${axis}`, before: was, after: after[i]!, unit: 'mm' as const }];
  });
}

/** Both ways along each axis of the vehicle. */
export function bothWays(): readonly Vector3[] {
  return AXES.flatMap(({ along }) => [along, scale(along, -1)]);
}

/** A direction of length 1; null for none. */
export function unitOrNull(direction: Vector3): Vector3 | null {
  const size = length(direction);
  return size > 1e-9 ? scale(direction, 1 / size) : null;
}
