/** The place under a sheet's probe: a cross where the point would stand, and its link in dashes. */
import { Slot } from '../../../solver/index.ts';
import { type PlaceMark, placeMark } from '../../state/placeMark.ts';
import type { Words } from '../labels/labels.ts';
import { mark as cross, dashes } from './pen.ts';
import type { Drawing } from './subject.ts';

const SIZE = 9;
const WORDS: Words = () => 'probe';
const ENDS = { outer: Slot.outer, inner: Slot.inner, upper: Slot.upper } as const;
const _at = new Float64Array(3);

/** Writes where a place of the design pose is now. */
function carry({ place, on }: PlaceMark, data: Float64Array, home: Float64Array): void {
  for (let i = 0; i < 3; i += 1) _at[i] = place[i]!;
  if (on === 'rack') {
    for (let i = 0; i < 3; i += 1) _at[i]! += data[Slot.inner + i]! - home[Slot.inner + i]!;
  }
}

/** Writes where a place of the knuckle's design pose is now: its components in the design frame, in the present one. */
function carryByKnuckle(
  { place }: PlaceMark,
  data: Float64Array,
  origin: ArrayLike<number>,
  axes: readonly ArrayLike<number>[],
): void {
  for (let i = 0; i < 3; i += 1) _at[i] = data[Slot.lower + i]!;
  for (let k = 0; k < 3; k += 1) {
    let along = 0;
    for (let i = 0; i < 3; i += 1) along += (place[i]! - origin[i]!) * axes[k]![i]!;
    for (let i = 0; i < 3; i += 1) _at[i]! += along * data[Slot.frame + 3 * k + i]!;
  }
}

export const drawPlaceMark: Drawing = (pen, { now }) => {
  const { mark } = placeMark.getState();
  if (mark === null) return;
  const { data } = now.pose;
  const { knuckle, home } = now.corner.linkage;
  if (mark.on === 'knuckle') carryByKnuckle(mark, data, knuckle.origin, knuckle.axes);
  else carry(mark, data, home);
  const end = ENDS[mark.to];
  cross(pen, _at[0]!, _at[1]!, _at[2]!, SIZE, 'touch');
  dashes(pen, _at[0]!, _at[1]!, _at[2]!, data[end]!, data[end + 1]!, data[end + 2]!, 'touch');
  pen.label(_at[0]!, _at[1]!, _at[2]!, 'touch', WORDS, 0);
};
