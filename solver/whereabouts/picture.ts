/** The picture: what every place of a square about the present point is judged by, coarse first and then finer. */
import type { Grid } from '../contours.ts';
import type { Model } from '../model/model.ts';
import type { Steps } from '../stops/steps.ts';
import { createJudge, type Judge, judgeAt, rateOff } from './judge.ts';
import { PLANE_AXES, type Question } from './question.ts';

/** A grid over the square, first axis across and second up; row by row, both axes ascending in the vehicle's sense. */
export interface Picture extends Grid {
  /** Rate at ride less the wanted one at each node, degrees over 100 mm: its zero line is the ideal line. */
  readonly rates: Float64Array;
}

/** Nodes along an edge of the finest grid, and how many of its steps the coarser ones take. */
export const NODES = 81;
export const STRIDES: readonly number[] = [8, 4, 2, 1];

function axis(centre: number, half: number): Float64Array {
  return Float64Array.from(
    { length: NODES },
    (_, i) => centre + (half * (2 * i - NODES + 1)) / (NODES - 1),
  );
}

/** An empty picture of a question; the present point is its middle node. */
export function emptyPicture({ place, question }: Judge): Picture {
  const [i, j] = PLANE_AXES[question.plane];
  const nothing = () => new Float64Array(NODES * NODES).fill(Number.NaN);
  const [xs, ys] = [axis(place[i]!, question.half), axis(place[j]!, question.half)];
  return { xs, ys, values: nothing(), rates: nothing() };
}

/** Every `stride`-th node of a picture along both axes. */
export function thinned({ xs, ys, values, rates }: Picture, stride: number): Picture {
  if (stride === 1) return { xs, ys, values, rates };
  const every = (list: Float64Array) => list.filter((_, i) => i % stride === 0);
  const [across, up] = [every(xs), every(ys)];
  const nodes = (list: Float64Array) =>
    Float64Array.from(
      { length: across.length * up.length },
      (_, n) => list[stride * (Math.floor(n / across.length) * xs.length + (n % across.length))]!,
    );
  return { xs: across, ys: up, values: nodes(values), rates: nodes(rates) };
}

/** Fills the nodes of one row that a stride adds to the coarser ones before it. */
function fillRow(
  judge: Judge,
  picture: Picture,
  row: number,
  stride: number,
  before: number,
): void {
  const { xs, ys, values, rates } = picture;
  for (let column = 0; column < NODES; column += stride) {
    const isKnown = row % before === 0 && column % before === 0;
    if (isKnown) continue;
    const node = row * NODES + column;
    values[node] = judgeAt(judge, xs[column]!, ys[row]!);
    rates[node] = Number.isNaN(values[node]) ? Number.NaN : rateOff(judge);
  }
}

/**
 * Works the picture out in steps, row by row; `onStride` is told each time a whole grid of that stride is there. Yields the
 * share done. Places the corner cannot follow hold NaN.
 */
export function* pictureInSteps(
  model: Model,
  question: Question,
  onStride: (picture: Picture, stride: number) => void = () => {},
): Steps<Picture> {
  const judge = createJudge(model, question);
  const picture = emptyPicture(judge);
  // No node is a multiple of nothing: at first none is known.
  let before = 0;
  let done = 0;
  for (const stride of STRIDES) {
    const nodes = ((NODES - 1) / stride + 1) ** 2;
    const known = done;
    for (let row = 0; row < NODES; row += stride) {
      fillRow(judge, picture, row, stride, before);
      done = known + ((nodes - known) * (row + stride)) / (NODES - 1 + stride);
      yield done / (NODES * NODES);
    }
    done = nodes;
    before = stride;
    onStride(picture, stride);
  }
  return picture;
}
