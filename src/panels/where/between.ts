/** What a picture holds between its nodes. */
import type { Picture } from '../../../solver/index.ts';

/** The picture's number at a place, between its nodes; NaN out of reach. */
export function valueAt({ xs, ys, values }: Picture, [x, y]: readonly [number, number]): number {
  const on = (list: Float64Array, at: number): readonly [number, number] => {
    const exact = ((at - list[0]!) / (list.at(-1)! - list[0]!)) * (list.length - 1);
    const node = Math.min(list.length - 2, Math.max(0, Math.floor(exact)));
    return [node, exact - node];
  };
  const [column, u] = on(xs, x);
  const [row, v] = on(ys, y);
  const node = row * xs.length + column;
  const low = values[node]! * (1 - u) + values[node + 1]! * u;
  const high = values[node + xs.length]! * (1 - u) + values[node + xs.length + 1]! * u;
  return low * (1 - v) + high * v;
}
