/** How much of each edge of the window the panels cover: the stage centres the corner in the rest. */
import { view } from '../state/bench.ts';
import type { Insets } from '../state/view.ts';

const NAMES = ['top', 'readings', 'map', 'points', 'foot', 'sheet'] as const;

export type PlaceName = (typeof NAMES)[number];

/** Edges of a place, px. */
export interface Edges {
  readonly top: number;
  readonly right: number;
  readonly bottom: number;
  readonly left: number;
}

export interface Places {
  readonly width: number;
  readonly height: number;
  readonly at: Partial<Readonly<Record<PlaceName, Edges>>>;
}

/** What stays free when a corner panel is taken as part of the left edge, or of the bottom edge: the roomier. */
export function insetsOf({ width, height, at }: Places): Insets {
  const top = at.top?.bottom ?? 0;
  const right = at.readings === undefined ? 0 : width - at.readings.left;
  const low = height - Math.min(at.foot?.top ?? height, at.sheet?.top ?? height);
  const beside = at.points?.right ?? 0;
  if (at.map === undefined) return { top, right, bottom: low, left: beside };
  const left = { top, right, bottom: low, left: Math.max(beside, at.map.right) };
  const under = { top, right, bottom: Math.max(low, height - at.map.top), left: beside };
  const room = (insets: Insets): number =>
    Math.min(width - insets.left - insets.right, height - insets.top - insets.bottom);
  return room(left) >= room(under) ? left : under;
}

function placesIn(frame: HTMLElement): Places {
  const entries = NAMES.flatMap((name) => {
    const element = frame.querySelector(`.place-${name}`);
    return element === null ? [] : [[name, element.getBoundingClientRect()] as const];
  });
  return { width: innerWidth, height: innerHeight, at: Object.fromEntries(entries) };
}

/** Keeps `view.insets` true to the places inside `frame` until the returned function is called. */
export function watchInsets(frame: HTMLElement): () => void {
  const measure = (): void => {
    const insets = insetsOf(placesIn(frame));
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
    for (const place of frame.querySelectorAll('.place')) sizes.observe(place);
  };
  const places = new MutationObserver(observe);
  places.observe(frame, { childList: true });
  observe();
  return () => {
    sizes.disconnect();
    places.disconnect();
  };
}
