/**
 * Charts of the linkage's poses where travel and rack are none: near a singular pose the same small step of travel or rack
 * belongs to ever longer ways of the knuckle. There a point of the knuckle that moves all the same, watched along one
 * direction (the mark), takes the place of one of the two.
 */
import type { Linkage } from '../linkage/linkage.ts';
import { Slot } from '../linkage/slots.ts';
import { type Motion, motionOf } from './motion.ts';
import {
  type Along,
  along,
  between,
  type Drive,
  determinant,
  type Rates,
  type Rows,
  ratesWithin,
  type Slopes,
  type Solution,
} from './rates.ts';
import {
  constant,
  crossed,
  inverse,
  midLength,
  multiple,
  plus,
  product,
  type Taylor,
  type Triple,
  triple,
} from './taylor.ts';
import { NO_TUBE, settle, straysNumber } from './tube.ts';

/** The mark stands for α; β is whichever of travel and rack is kept. */
export interface Chart {
  readonly kept: 'travel' | 'rack';
  /** Place of the mark's point in a pose: the wheel centre or the tie rod's outer joint. */
  readonly at: number;
  readonly along: Triple;
}

/** Half-sizes of a chart's cell, mm: of the mark's way and of what is kept. */
export interface ChartHalf {
  readonly mark: number;
  readonly kept: number;
}

const NONE: Taylor = constant(0);

/** Share and spin of a step of the mark and of what is kept; null where the chart may be none. */
function solveRows({ kept }: Chart, half: ChartHalf, { arms, spun, pull }: Rows): Solution | null {
  const isRack = kept === 'rack';
  const first = isRack ? arms.rod : arms.height;
  const second = isRack ? spun.rod : spun.height;
  const room = inverse(determinant(first, arms.mark, second, spun.mark));
  const free = inverse(pull);
  if (room === null || free === null) return null;
  const step = isRack ? multiple(half.kept, pull) : constant(half.kept);
  const share = {
    a: product(multiple(-half.mark, second), room),
    b: product(product(step, spun.mark), room),
  };
  const turn = {
    a: product(multiple(half.mark, first), room),
    b: multiple(-1, product(product(step, arms.mark), room)),
  };
  const grown = (byArms: Taylor, bySpin: Taylor): Along<Taylor> =>
    along((side) => plus(product(byArms, share[side]), product(bySpin, turn[side])));
  const keptRate = { a: NONE, b: constant(half.kept) };
  if (isRack) {
    return { share, turn, travel: grown(arms.height, spun.height), rack: keptRate };
  }
  const stretch = grown(arms.rod, spun.rod);
  return { share, turn, travel: keptRate, rack: along((side) => product(stretch[side], free)) };
}

function driveOf(chart: Chart, half: ChartHalf): Drive {
  return { mark: chart, solve: (rows) => solveRows(chart, half, rows) };
}

const NO_TRIPLE = triple(0, 0, 0);
const NO_SLOPES: Slopes = {
  theta: { a: 0, b: 0 },
  phi: { a: 0, b: 0 },
  spin: { a: NO_TRIPLE, b: NO_TRIPLE },
  outer: { a: NO_TRIPLE, b: NO_TRIPLE },
  rack: { a: 0, b: 0 },
};

/** The rates of the pose itself: with nothing moving, the middles of their enclosure are exact. */
function ratesAt(linkage: Linkage, pose: Float64Array, drive: Drive): Rates | null {
  return ratesWithin(linkage, pose, drive, NO_SLOPES, NO_TUBE);
}

function slopesOf({ theta, phi, spin, outer, rack }: Rates): Slopes {
  return {
    theta: along((side) => theta[side].mid),
    phi: along((side) => phi[side].mid),
    spin,
    outer,
    rack: along((side) => rack[side].mid),
  };
}

/** The linkage over a cell of a chart. */
export interface ChartMotion {
  readonly motion: Motion;
  readonly travel: Taylor;
  readonly rack: Taylor;
  /** Positive on the design pose's branch, up to the pose that ends it. */
  readonly determinant: Taylor;
}

function numberOver(mid: number, rates: Along<Taylor>): Taylor {
  return { mid, a: rates.a.mid, b: rates.b.mid, rest: straysNumber(rates) };
}

/** Encloses the linkage over a chart's cell about a solved pose; null where that proves nothing. */
export function encloseChart(
  linkage: Linkage,
  pose: Float64Array,
  chart: Chart,
  half: ChartHalf,
): ChartMotion | null {
  const drive = driveOf(chart, half);
  const centre = ratesAt(linkage, pose, drive);
  if (centre === null) return null;
  const slopes = slopesOf(centre);
  const settled = settle(linkage, pose, drive, slopes);
  if (settled === null) return null;
  const { rates } = settled;
  return {
    motion: motionOf(linkage, pose, slopes, settled),
    travel: numberOver(pose[Slot.travel]!, rates.travel),
    rack: numberOver(pose[Slot.rack]!, rates.rack),
    determinant: multiple(linkage.homeDeterminant < 0 ? -1 : 1, rates.determinant),
  };
}

/** The chart that is farthest from being none at a pose; one that keeps the rack where it must stand still. */
export function chartAt(linkage: Linkage, pose: Float64Array, isRackStill: boolean): Chart | null {
  let found: Rows | null = null;
  const look: Drive = {
    mark: null,
    solve: (rows) => {
      found = rows;
      return null;
    },
  };
  ratesAt(linkage, pose, look);
  if (found === null) return null;
  const { arms, spun, pull }: Rows = found;
  const byRack = Math.hypot(arms.rod.mid, spun.rod.mid) / Math.abs(pull.mid);
  const byTravel = Math.hypot(arms.height.mid, spun.height.mid);
  const kept = isRackStill || byRack >= byTravel ? 'rack' : 'travel';
  const share = kept === 'rack' ? spun.rod.mid : spun.height.mid;
  const turn = kept === 'rack' ? -arms.rod.mid : -arms.height.mid;
  const step = (value: number): Along<Taylor> => ({ a: constant(value), b: NONE });
  const free: Drive = {
    mark: null,
    solve: () => ({ share: step(share), turn: step(turn), travel: step(0), rack: step(0) }),
  };
  const moving = ratesAt(linkage, pose, free);
  return moving === null ? null : markOf(pose, kept, moving);
}

/** Watches whichever of wheel centre and outer joint moves farther, along its way. */
function markOf(
  pose: Float64Array,
  kept: Chart['kept'],
  { spin, lower, outer }: Rates,
): Chart | null {
  const turned = crossed(spin.a, between(pose, Slot.lower, Slot.centre));
  const centre = triple(lower.a.x + turned.x, lower.a.y + turned.y, lower.a.z + turned.z);
  const isOuter = midLength(outer.a) >= midLength(centre);
  const way = isOuter ? outer.a : centre;
  const length = midLength(way);
  if (!(length > 0)) return null;
  return {
    kept,
    at: isOuter ? Slot.outer : Slot.centre,
    along: triple(way.x / length, way.y / length, way.z / length),
  };
}

/** Where the mark is in a pose, mm along its direction. */
export function markAt({ at, along: e }: Chart, pose: Float64Array): number {
  return e.x * pose[at]! + e.y * pose[at + 1]! + e.z * pose[at + 2]!;
}
