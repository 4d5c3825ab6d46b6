/** A corner's margins watched along a line of poses. */
import { bounderOf, type Keys } from '../certify/bounder.ts';
import type { Cell } from '../certify/cells.ts';
import { type Element, halvesOf } from '../certify/element.ts';
import { provable } from '../certify/provable.ts';
import type { WatchedPair } from '../clearance/pairs.ts';
import { createPose } from '../linkage/solve.ts';
import { placeParts } from '../measures/parts.ts';
import { MET, type Watch } from './crossing.ts';
import { type Interval, quantityOver } from './enclosed.ts';
import type { Line } from './line.ts';
import { type Held, type Margins, marginInto } from './margins.ts';
import { measureQuantities } from './quantity.ts';

/** A quantity is one element: the whole of it. */
const ONE: readonly Element[] = [{ first: 0, second: 0, from: 0, to: 1 }];
const NONE: readonly Element[] = [];

type HeldQuantity = Extract<Held, { by: 'quantity' }>;

/** Travel and rack of a cell need no enclosure. */
function over(line: Line, { quantity }: HeldQuantity, cell: Cell): Interval | null {
  if (quantity === line.along) {
    const middle = cell[line.along];
    return { low: middle - cell.half[line.along], high: middle + cell.half[line.along] };
  }
  const { motion } = cell;
  return motion === null ? null : quantityOver(line.corner, quantity, { ...cell, motion });
}

/** True when the margin cannot be 0 or less in the cell. */
function isPositiveOver(line: Line, held: HeldQuantity, cell: Cell): boolean {
  const interval = over(line, held, cell);
  if (interval === null) return false;
  const { bound, sense } = held;
  return (sense > 0 ? bound - interval.high : interval.low - bound) > MET;
}

/** The elements of a pair that may touch in a cell, halved where that tells more. */
function openElements(
  line: Line,
  pair: WatchedPair,
  keys: Keys,
): { readonly elements: readonly Element[]; readonly open: Watch['open'] } {
  const { shapes, measure } = provable(pair);
  const bounder = bounderOf(line.corner, keys, createPose(), shapes, measure);
  const open: Watch['open'] = (cell, elements) => {
    if (cell.motion === null) return elements;
    const kept: Element[] = [];
    const waiting = elements.slice();
    for (let element = waiting.pop(); element !== undefined; element = waiting.pop()) {
      if (bounder.bound(cell, element, MET) > MET) continue;
      if (bounder.isCoarse()) waiting.push(...halvesOf(element));
      else kept.push(element);
    }
    return kept;
  };
  return { elements: bounder.elements, open };
}

/** True where a held value cannot change along the line. */
function isStill(line: Line, held: Held): boolean {
  if (held.by === 'gap') return held.pair.isConstant;
  if (held.by === 'linkage') return true;
  return held.quantity === (line.along === 'travel' ? 'rack' : 'travel');
}

/** Watches one margin, an index into the list, along a line; a margin that cannot change along it has no elements. */
export function watchOf(line: Line, margins: Margins, index: number, keys: Keys): Watch {
  const held = margins.held[index];
  if (held === undefined) throw new RangeError(`No margin ${index}`);
  const { corner, pose } = line;
  const value = (): number => {
    placeParts(corner, pose.data);
    if (held.by === 'quantity') measureQuantities(corner, pose.data, margins.measures);
    marginInto(margins, pose, index, pose.lastTravel, pose.lastRack);
    return margins.values[index] ?? Number.NaN;
  };
  if (isStill(line, held)) return { value, elements: NONE, open: () => NONE };
  if (held.by === 'gap') return { value, ...openElements(line, held.pair, keys) };
  if (held.by === 'linkage') return { value, elements: NONE, open: () => NONE };
  return {
    value,
    elements: ONE,
    open: (cell) => (isPositiveOver(line, held, cell) ? NONE : ONE),
  };
}
