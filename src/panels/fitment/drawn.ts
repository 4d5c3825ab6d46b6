/** The outlines of a column's wheel and tyre in the hub's section, and how much of the plane a picture of them needs. Lengths mm. */

import { centrePlane, rimPlaces } from '../../../solver/fitment/rimPlace.ts';
import type { SectionView } from '../../../solver/fitment/sectionView.ts';
import type { Model, SectionPoint } from '../../../solver/index.ts';
import { wheelSpacer, wheelThickness } from '../../../solver/model/defaults.ts';
import { wheelDisc, wheelSection } from '../../../solver/model/rim.ts';
import { tyreDimensions, tyreSection } from '../../../solver/model/tyre.ts';

/** A point of the picture: x from the hub face, outboard positive; y upwards from the hub axis. */
export type PicturePoint = readonly [number, number];

export interface Outlines {
  readonly barrel: readonly PicturePoint[];
  readonly disc: readonly PicturePoint[];
  readonly tyre: readonly PicturePoint[];
  /** The surface of stick-on weights, empty where there are none. */
  readonly weights: readonly PicturePoint[];
  /** The brake's envelope, empty where the model has none. */
  readonly brake: readonly PicturePoint[];
  readonly thickness: number;
  readonly plane: number;
  readonly spacer: number;
}

/** What a picture shows of the plane. */
export interface Window {
  readonly left: number;
  readonly right: number;
  readonly top: number;
  readonly bottom: number;
}

export function outlinesOf({ wheel, tyre, brake }: Model): Outlines {
  const plane = centrePlane(wheel);
  const placed = (points: readonly SectionPoint[]): PicturePoint[] =>
    points.map(([s, radius]) => [s + plane, radius]);
  return {
    barrel: placed(wheelSection(wheel)),
    disc: placed(wheelDisc(wheel)),
    tyre: placed(tyreSection(tyre, wheel)),
    weights: placed(wheel.weights ?? []),
    brake: placed(brake?.section ?? []),
    thickness: wheelThickness(wheel),
    plane,
    spacer: wheelSpacer(wheel),
  };
}

const MARGIN = 16;
/** Room for the rod inboard of the wheel. */
const ROD_ROOM = 70;
/** Room under the hub axis for its words. */
const AXIS_ROOM = 34;

/** The whole half-section of all models, with the rod's way in. */
export function wholeWindow(models: readonly Model[]): Window {
  const places = models.map(rimPlaces);
  const tallest = Math.max(
    ...models.map(({ tyre, wheel }) => tyreDimensions(tyre, wheel).overallDiameter / 2),
  );
  return {
    left: Math.min(...places.map(({ innermost }) => innermost)) - ROD_ROOM,
    right: Math.max(...places.map(({ outermost }) => outermost)) + MARGIN,
    top: tallest + MARGIN,
    bottom: -AXIS_ROOM,
  };
}

/** Half the side of the close view, mm. */
const CLOSE = 55;

/** The place about the rod's least gap to the wheel. */
export function closeWindow({ wheelGap: { from, to } }: SectionView): Window {
  const [x, y] = [(from[0] + to[0]) / 2, (from[1] + to[1]) / 2];
  return { left: x - CLOSE, right: x + CLOSE, top: y + CLOSE, bottom: y - CLOSE };
}

/** The path of a polyline, the picture's y downwards. */
export function pathOf(points: readonly PicturePoint[], isClosed = false): string {
  const path = points
    .map(([x, y], i) => `${i === 0 ? 'M' : 'L'}${x.toFixed(2)} ${(-y).toFixed(2)}`)
    .join('');
  return isClosed ? `${path}Z` : path;
}
