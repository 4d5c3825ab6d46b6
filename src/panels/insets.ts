/** Which part of the window the panels leave free: the stage frames the corner in the largest free rectangle. */

import { zoomOf } from '../charts/zoom.ts';
import { view } from '../state/bench.ts';
import type { Insets } from '../state/view.ts';

/** What covers the stage for as long as it is open; lines that come and go do not count. */
const COVERING =
  '.place-top, .place-points, .place-map, .place-foot > *, .rail, .place-work, .place-readings, .place-sheet, .place-gap';

/** Edges of a rectangle, px from the window's left and top. */
export interface Edges {
  readonly top: number;
  readonly right: number;
  readonly bottom: number;
  readonly left: number;
}

/** A corner is about this much wider than high, over all viewpoints. */
const ASPECT = 1.15;
/** Least width of the foot beside the map, px. */
const FOOT = 420;

/** How large a corner can be drawn in a rectangle; among equals the roomier one. */
function worth(width: number, height: number): number {
  return Math.min(width, height * ASPECT) + 0.03 * (width + height);
}

/** Borders a free rectangle may have: the window's, and the covering rectangles' own, inside the window. */
function borders(edges: readonly number[], most: number): number[] {
  return [...new Set([0, most, ...edges.filter((edge) => edge > 0 && edge < most)])];
}

/** Pairs of borders across one direction, with the covering rectangles that lie between them. */
function strips(
  covering: readonly Edges[],
  from: 'left' | 'top',
  to: 'right' | 'bottom',
  most: number,
): { low: number; high: number; within: readonly Edges[] }[] {
  const lows = borders(
    covering.map((edges) => edges[to]),
    most,
  );
  const highs = borders(
    covering.map((edges) => edges[from]),
    most,
  );
  return lows.flatMap((low) =>
    highs
      .filter((high) => high > low)
      .map((high) => ({
        low,
        high,
        within: covering.filter((edges) => edges[from] < high && edges[to] > low),
      })),
  );
}

/** The free rectangle in which a corner can be drawn largest, as what is left of it at each of the window's edges, px. */
export function insetsOf(width: number, height: number, covering: readonly Edges[]): Insets {
  let best = { top: 0, right: 0, bottom: 0, left: 0 };
  let most = 0;
  for (const across of strips(covering, 'left', 'right', width)) {
    const free = strips(across.within, 'top', 'bottom', height).filter(
      ({ within }) => within.length === 0,
    );
    for (const upright of free) {
      const value = worth(across.high - across.low, upright.high - upright.low);
      if (value <= most) continue;
      most = value;
      best = {
        top: upright.low,
        right: width - across.high,
        bottom: height - upright.high,
        left: across.low,
      };
    }
  }
  return best;
}

/** True where the foot would not have room between the map, or the points, and what lies at the right. */
function isStacked(frame: HTMLElement): boolean {
  const edge = (selector: string, side: 'left' | 'right', otherwise: number): number =>
    frame.querySelector(selector)?.getBoundingClientRect()[side] ?? otherwise;
  const left = Math.max(edge('.place-map', 'right', 0), edge('.place-points', 'right', 0));
  const right = Math.min(
    edge('.place-work', 'left', innerWidth),
    edge('.place-readings', 'left', innerWidth),
  );
  return right - left < FOOT * zoomOf(frame);
}

/** Keeps `view.insets` true to the places inside `frame` until the returned function is called. */
export function watchInsets(frame: HTMLElement): () => void {
  const measure = (): void => {
    frame.toggleAttribute('data-stacked', isStacked(frame));
    const covering = [...frame.querySelectorAll(COVERING)]
      .map((element) => element.getBoundingClientRect())
      .filter(({ width, height }) => width > 0 && height > 0);
    const insets = insetsOf(innerWidth, innerHeight, covering);
    const now = view.getState().insets;
    const isSame = (Object.keys(insets) as (keyof Insets)[]).every(
      (edge) => Math.abs(insets[edge] - now[edge]) < 1,
    );
    if (!isSame) view.setState({ insets });
  };
  const sizes = new ResizeObserver(measure);
  const observe = (): void => {
    sizes.disconnect();
    sizes.observe(frame);
    for (const place of frame.querySelectorAll(COVERING)) sizes.observe(place);
  };
  const places = new MutationObserver(observe);
  places.observe(frame, { childList: true, subtree: false });
  observe();
  return () => {
    sizes.disconnect();
    places.disconnect();
  };
}
