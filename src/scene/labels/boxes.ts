/** Finds room for labels: beside their points, inside the free rectangle, off the labels placed before. Numbers only, px. */

/** Places tried around a point: part of the width to the left, gap to the right, and the same for the height. */
const TRIES: readonly (readonly [wide: number, x: number, high: number, y: number])[] = [
  [0, 10, -1, -6],
  [-1, -10, -1, -6],
  [0, 10, 0, 6],
  [-1, -10, 0, 6],
  [-0.5, 0, -1, -22],
  [-0.5, 0, 0, 22],
  [0, 18, -1, -30],
  [-1, -18, -1, -30],
  [0, 18, 0, 30],
  [-1, -18, 0, 30],
];
/** Free pixels kept between labels. */
const AIR = 2;

export interface Boxes {
  /** Forgets all labels; new ones must lie inside these edges. */
  clear(left: number, top: number, right: number, bottom: number): void;
  /** Finds a place for a label of this size at the point (x, y), into `left` and `top`; false where there is no room. */
  place(x: number, y: number, width: number, height: number): boolean;
  /** True for a point inside the edges. */
  holds(x: number, y: number): boolean;
  left: number;
  top: number;
}

export function createBoxes(most: number): Boxes {
  const taken = new Float64Array(4 * most);
  let count = 0;
  let [minX, minY, maxX, maxY] = [0, 0, 0, 0];

  function isFree(left: number, top: number, right: number, bottom: number): boolean {
    if (left < minX || top < minY || right > maxX || bottom > maxY) return false;
    for (let at = 0; at < 4 * count; at += 4) {
      const isApart =
        left >= taken[at + 2]! + AIR ||
        right + AIR <= taken[at]! ||
        top >= taken[at + 3]! + AIR ||
        bottom + AIR <= taken[at + 1]!;
      if (!isApart) return false;
    }
    return true;
  }

  const boxes: Boxes = {
    left: 0,
    top: 0,
    clear(left, top, right, bottom) {
      count = 0;
      minX = left;
      minY = top;
      maxX = right;
      maxY = bottom;
    },
    holds: (x, y) => x >= minX && x <= maxX && y >= minY && y <= maxY,
    place(x, y, width, height) {
      if (count >= most) return false;
      for (let i = 0; i < TRIES.length; i += 1) {
        const [wide, dx, high, dy] = TRIES[i]!;
        const left = x + wide * width + dx;
        const top = y + high * height + dy;
        if (!isFree(left, top, left + width, top + height)) continue;
        taken[4 * count] = left;
        taken[4 * count + 1] = top;
        taken[4 * count + 2] = left + width;
        taken[4 * count + 3] = top + height;
        count += 1;
        boxes.left = left;
        boxes.top = top;
        return true;
      }
      return false;
    },
  };
  return boxes;
}
